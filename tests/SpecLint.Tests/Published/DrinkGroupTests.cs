using System.Globalization;
using System.Text;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Tests.OfficialDrinks;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Published;

/// <summary>
/// Derives the bands of the groups of drinks (<c>drink-groups.json</c>) from the published lists, and what they are worth
/// (<c>rules-docs/drink-groups.md</c>): each drink is held against the bands made of all the others.
/// </summary>
public sealed class DrinkGroupTests
{
    /// <summary>How far the bands are widened beyond the published drinks.</summary>
    private const double Widened = 1.3;

    /// <summary>Groups of fewer drinks have no bands.</summary>
    private const int Fewest = 50;

    /// <summary>A fact has no band where more than this share of the published drinks lie outside what the others make, %.</summary>
    private const double MostOut = 1.5;

    private const string Source = "official list of the trade (2025), public lists (CC0) and Bullock 1917, computed";

    private static readonly (string Id, string Name)[] Groups =
    [
        ("creamy", "creamy drinks"), ("puree", "drinks of purée"), ("long", "long drinks"), ("sour", "sours"), ("fruity", "fruity drinks"),
        ("aperitif", "aperitifs"), ("spirit-forward", "spirit-forward drinks"),
    ];

    private static readonly Lazy<List<PouredDrink>> Drinks = new(Poured);

    [Fact]
    public void The_table_is_what_the_published_drinks_give()
    {
        var text = new StringBuilder($"{{\n  \"source\": \"{Source}\",\n  \"groups\": [");
        string comma = "";
        foreach (var (id, name) in Groups)
        {
            var drinks = Of(id);
            if (drinks.Count < Fewest) continue;
            var facts = Described(drinks).Select(f => (Fact: f, Band: BandOf(drinks, f), Usual: Usual(drinks, f))).ToList();
            if (facts.Count == 0) continue;
            text.Append(CultureInfo.InvariantCulture, $"{comma}\n    {{ \"id\": \"{id}\", \"name\": \"{name}\", \"count\": {drinks.Count}");
            foreach (var (fact, band, usual) in facts) text.Append(
                CultureInfo.InvariantCulture,
                $", \"{DrinkGroup.Facts[fact]}\": {{ \"low\": {Round(band.Low)}, \"usualLow\": {Round(usual.Low)}, \"usualHigh\": "
                    + $"{Round(usual.High)}, \"high\": {Round(band.High)} }}");
            text.Append(" }");
            comma = ",";
        }

        Golden.Check(Repository.At("src", "SpecLint", "Catalogue", "Tables", "drink-groups.json"), text.Append("\n  ]\n}\n").ToString());
    }

    [Fact]
    public void The_page_says_what_the_bands_are_worth()
    {
        var text = new StringBuilder($$"""
            # Groups of drinks

            What published drinks come to as poured, before ice, by what they are made up of (SL3026). Derived by a test from the
            lists in the repository: {{Source}}. Drinks whose amounts are broken in the list are left out. A band is
            the lowest and the highest of them, 0.3 times wider; "usual" leaves out the outermost 2 in 100 at each end. "Outside" counts the drinks that lie outside the band made of all the
            others (leave one out); a fact of which more than {{MostOut.ToString(CultureInfo.InvariantCulture)}} % do so has no band, nor has a group of fewer than {{Fewest}} drinks.

            | group | drinks | fact | usual | band | outside | used |
            | --- | ---: | --- | --- | --- | ---: | --- |

            """);
        int all = 0, outside = 0;
        foreach (var (id, name) in Groups)
        {
            var drinks = Of(id);
            var used = drinks.Count < Fewest ? [] : Described(drinks);
            for (int f = 0; f < DrinkGroup.Facts.Length && drinks.Count > 1; f++)
            {
                Band band = BandOf(drinks, f), usual = Usual(drinks, f);
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"| {name} | {drinks.Count} | {DrinkGroup.Facts[f]} | {Round(usual.Low)}–{Round(usual.High)} | "
                        + $"{Round(band.Low)}–{Round(band.High)} | {drinks.Count(d => IsOut(drinks, d, f))} | "
                        + $"{(used.Contains(f) ? "yes" : "no")} |\n");
            }

            all += drinks.Count;
            outside += drinks.Count(d => used.Exists(f => IsOut(drinks, d, f)));
        }

        text.Append(
            CultureInfo.InvariantCulture,
            $"\nOf {all} published drinks, {outside} ({100.0 * outside / all:0.0} %) lie outside one of the bands in use "
                + $"made of the others.\n");
        Assert.True(outside * 50 <= all, $"{outside} of {all} published drinks would get a finding from the others");
        Golden.Check(Repository.At("rules-docs", "drink-groups.md"), text.ToString());
    }

    private static List<PouredDrink> Of(string group) => Drinks.Value.FindAll(d => d.Group == group);

    private static List<int> Described(List<PouredDrink> drinks) =>
        [.. Enumerable.Range(0, DrinkGroup.Facts.Length)
            .Where(f => 100.0 * drinks.Count(d => IsOut(drinks, d, f)) / drinks.Count <= MostOut && BandOf(drinks, f).High < 1000)];

    private static bool IsOut(List<PouredDrink> drinks, PouredDrink drink, int fact)
    {
        double value = drink.Facts[fact];
        var band = BandOf(drinks.Where(d => d != drink), fact);
        return !double.IsNaN(value) && !double.IsInfinity(value) && (value < band.Low || value > band.High);
    }

    private static Band BandOf(IEnumerable<PouredDrink> drinks, int fact)
    {
        double low = double.PositiveInfinity, high = 0;
        foreach (var drink in drinks)
        {
            double value = drink.Facts[fact];
            if (double.IsNaN(value) || double.IsInfinity(value)) continue;
            low = Math.Min(low, value);
            high = Math.Max(high, value);
        }

        return new Band(low / Widened, high * Widened);
    }

    /// <summary>All but the outermost 2 in 100 at each end.</summary>
    private static Band Usual(List<PouredDrink> drinks, int fact)
    {
        var values = drinks.Select(d => d.Facts[fact]).Where(v => !double.IsNaN(v) && !double.IsInfinity(v)).Order().ToList();
        int left = (int)Math.Ceiling(values.Count / 50.0);
        return new Band(values[left], values[^(left + 1)]);
    }

    private static string Round(double value) => value.ToString(value < 0.1 ? "0.####" : value < 10 ? "0.##" : "0.#", CultureInfo.InvariantCulture);

    private static List<PouredDrink> Poured()
    {
        // Drinks whose amounts are known to be broken (judged.csv) describe nothing.
        var broken = Csv.Read(Repository.At("tests", "SpecLint.Tests", "Published", "judged.csv"))
            .Where(r => r[3] == "true" && (r[1].StartsWith("SL2", StringComparison.Ordinal) || r[1] is "SL3017" or "SL3026"))
            .Select(r => r[0])
            .ToHashSet(StringComparer.Ordinal);
        var drinks = new List<PouredDrink>();
        foreach (var list in PublishedDrinks.Lists.Prepend(OfficialBook.WithoutStyles))
        {
            var (book, profiles) = Checker.Profile(list);
            foreach (var drink in book.Drinks)
            {
                if (!broken.Contains(drink.Id) && PouredDrink.Of(profiles.Of(drink)) is { } poured) drinks.Add(poured);
            }
        }

        return drinks;
    }
}
