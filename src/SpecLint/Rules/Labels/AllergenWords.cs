using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>Words that the allergen rules share.</summary>
internal static class AllergenWords
{
    public const string Caution =
        "An allergen can kill. This is computed from the recipe alone. Check the supplier's specifications and what else is handled at "
            + "the station, and follow the local food code.";

    /// <summary>How an allergen comes in, for people.</summary>
    public static string Way(AllergenOrigin origin)
    {
        string role = origin.Part.Line.Role switch
        {
            LineRole.Garnish => "with the garnish ",
            LineRole.Rim => "with the rim ",
            LineRole.Rinse => "with the rinse ",
            LineRole.Wash => "with the wash ",
            LineRole.Fining => "with the fining ",
            _ => "with ",
        };
        string way = role + $"`{origin.Through[0]}`";
        return origin.Through.Count == 1 ? way : way + $" (made with {string.Join(" of ", origin.Through.Skip(1).Select(i => $"`{i}`"))})";
    }

    /// <summary>How an allergen comes in, as evidence.</summary>
    public static Evidence ComesIn(RecipeContext context, AllergenOrigin origin, string name = "comes in") =>
        Proof.Of(name, string.Join(" > ", origin.Through), context.At(origin.Part.Line.Span));

    /// <summary>Who asks for it of what, as a sentence without its full stop: in the US and Canada the law is about packed food.</summary>
    public static string Asks(FoundAllergen found)
    {
        FixedList<string> poured = [.. found.In.Where(j => j is not ("US" or "CA" or "JP"))];
        string verb = (poured.Count == 0 ? found.In : poured).Count == 1 ? "asks" : "ask";
        string sentence = poured.Count > 0
            ? $"{Say(poured)} {verb} for it, also for drinks that are not packed"
            : found.In.Contains("US")
                ? $"{Say(found.In)} {verb} for it on packed food, and for poured drinks where the state has adopted 3-602.12 of the "
                    + "Food Code 2022"
                : $"{Say(found.In)} {verb} for it on packed food, and a guest with an allergy asks for it at the bar";
        return char.ToUpperInvariant(sentence[0]) + sentence.Substring(1);
    }

    /// <summary>
    /// Whether what asks for it asks it of labels only: in the US sulphites are named on what is packed, and are not among the
    /// major allergens of which the Food Code wants guests to be told.
    /// </summary>
    public static bool IsOfLabelsOnly(FoundAllergen found) =>
        !double.IsNaN(found.Category.Threshold) && found.In.All(static j => j == "US");

    /// <summary>Whether the law that lists it, or that the ingredient contains it, is known from memory alone.</summary>
    public static bool IsRecalled(FoundAllergen found) => found.Category.Mark == Mark.Memory || found.Origin.Mark == Mark.Memory;

    /// <summary>The list that declares; not given where the recipe declares nothing.</summary>
    public static Given<FixedList<Given<string>>> Declared(Recipe recipe) => recipe.Declares?.Allergens ?? default;

    /// <summary>Whether the recipe says that it may contain it.</summary>
    public static bool SaysMay(Recipe recipe, string token) => recipe.Declares is { } d && AllergenTable.Covers(d.MayContain, token);

    /// <summary>Places by their codes, for people.</summary>
    public static string Places(IReadOnlyList<string> codes) => Say(codes);

    private static string Say(IReadOnlyList<string> codes) =>
        Vocabulary.Say.List([.. codes.Select(c => c switch
        {
            "EU" => "the EU",
            "GB" => "Great Britain",
            "US" => "the US",
            "CA" => "Canada",
            "AU" => "Australia",
            "NZ" => "New Zealand",
            "CH" => "Switzerland",
            "JP" => "Japan",
            _ => c,
        })]);
}
