using System.Globalization;
using System.Text;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Tests.OfficialDrinks;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Published;

/// <summary>
/// Holds the bands of named styles (<c>styles.json</c>) against published drinks that they were not made of, and writes what
/// they are worth to <c>rules-docs/style-bands.md</c>.
/// </summary>
public sealed class StyleBandTests
{
    private static readonly (Fact Fact, string Name)[] Facts =
        [(Fact.Abv, "strength, % vol"), (Fact.Sugar, "sugar, g/100 mL"), (Fact.Acid, "acid, g/100 mL"), (Fact.SugarAcidRatio, "ratio of sugar to acid"), (Fact.Dilution, "dilution, %")];

    /// <summary>The drinks of the official list by the style that fits them, and the other lists' by their make-up.</summary>
    private static readonly Lazy<(ILookup<string, RecipeProfile> Official, ILookup<string, RecipeProfile> Others)> Drinks = new(() => (
        Profiles(OfficialBook.Input).Where(d => d.Drink.KnownStyle is not null).ToLookup(d => d.Drink.KnownStyle!.Id, d => d.Profile),
        PublishedDrinks.Lists.SelectMany(Profiles).Select(d => (Style: StyleOf(d.Profile), d.Profile)).Where(d => d.Style.Length > 0).ToLookup(d => d.Style, d => d.Profile)));

    /// <summary>The bands were made to describe the official list, and must.</summary>
    [Fact]
    public void No_official_drink_lies_outside_the_bands_of_its_style()
    {
        var outside = Drinks.Value.Official.SelectMany(g => g.SelectMany(p => Facts.Where(f => IsKnown(p, f.Fact) && IsOut(p, Style.Of(g.Key), f.Fact) && p.Get(f.Fact).Low > 0).Select(f => $"{g.Key} {p.Recipe.Id} {f.Name} {p.Get(f.Fact).Value}")));
        Assert.Equal([], outside);
    }

    [Fact]
    public void The_page_says_what_the_bands_of_styles_are_worth()
    {
        var text = new StringBuilder("""
            # Bands of styles

            What the bands of `styles.json` are worth (SL3001 to SL3005), held against drinks that they were not made of: the public
            lists (CC0) and Bullock 1917 in the repository, none of which names a style. Each drink is taken for the style that its
            parts and its method are like, so that some are of another style than the table believes. "Official" counts the drinks of
            the trade's official list (2025), from which most bands were worked out; "outside" those beyond the band, by the value to
            expect and without its range.

            A finding from a band of a style thus says that a drink is unlike the official drinks of the style that it names. It does
            not say that nobody serves it: older and sweeter schools do. Who serves such a drink on purpose names another style, or
            none, and is then held against all published drinks of its make-up ([groups of drinks](drink-groups.md)).

            | style | fact | band | official | outside | other lists | outside |
            | --- | --- | --- | ---: | ---: | ---: | ---: |

            """);
        foreach (var style in Style.All)
        {
            var (official, others) = (Drinks.Value.Official[style.Id].ToList(), Drinks.Value.Others[style.Id].ToList());
            if (others.Count == 0) continue;
            foreach (var (fact, name) in Facts)
            {
                if (style.Seen(fact) is not { } band) continue;
                text.Append(CultureInfo.InvariantCulture, $"| `{style.Id}` | {name} | {band.Low}–{band.High} | {Counts(official, style, fact)} | {Counts(others, style, fact)} |\n");
            }
        }

        Golden.Check(Repository.At("rules-docs", "style-bands.md"), text.ToString());
    }

    private static string Counts(List<RecipeProfile> drinks, Style style, Fact fact)
    {
        var known = drinks.FindAll(p => IsKnown(p, fact));
        int outside = known.Count(p => IsOut(p, style, fact));
        return string.Create(CultureInfo.InvariantCulture, $"{known.Count} | {outside}{(known.Count >= 10 ? $" ({100.0 * outside / known.Count:0} %)" : "")}");
    }

    private static bool IsKnown(RecipeProfile profile, Fact fact) => profile.Get(fact).IsKnown;

    private static bool IsOut(RecipeProfile profile, Style style, Fact fact) =>
        style.Seen(fact) is { } band && (profile.Get(fact).Value < band.Low || profile.Get(fact).Value > band.High);

    private static IEnumerable<(Drink Drink, RecipeProfile Profile)> Profiles(BookInput input)
    {
        var (book, profiles) = Checker.Profile(input);
        return book.Drinks.Select(d => (d, profiles.Of(d)));
    }

    /// <summary>The style whose build a drink has; empty where none is plain.</summary>
    private static string StyleOf(RecipeProfile profile)
    {
        if (PouredDrink.Of(profile) is not { } poured) return "";
        bool topped = profile.Parts.Any(p => p.Phase == PartPhase.Top), shaken = profile.Technique == TechniqueKind.Shaken;
        var eggs = poured.Parts.Where(p => p.Material!.Kind.IsEgg).ToList();
        if (eggs.Exists(p => p.Material!.Of(Science.Component.Fat) > 0.04)) return topped ? "" : "flip";
        return (poured.Group, shaken, topped, eggs.Count > 0) switch
        {
            ("sour", true, false, false) => "shaken-sour",
            ("sour", true, false, true) => "egg-white-sour",
            ("sour" or "long", true, true, false) => "fizz",
            ("creamy", true, false, false) => "creamy",
            ("spirit-forward", false, false, false) => "stirred",
            ("long", false, true, false) => "highball",
            ("aperitif", false, false, false) => "stirred-wine",
            _ => "",
        };
    }
}
