using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

/// <summary>What the rules of hazards say and look for alike.</summary>
internal static class HazardWords
{
    /// <summary>The caution of the plants and substances.</summary>
    public const string Caution =
        "This can poison a guest. Local law and a qualified toxicologist or the poisons service decide; a figure here only shows what the written amounts come to.";

    /// <summary>The caution of cold, heat and fire.</summary>
    public const string StaffCaution =
        "This can burn, blind or suffocate guests and staff. Local rules, a written risk assessment and trained people come first; a rule here only reads what is written.";

    /// <summary>Number of drinks that a recipe makes; 1 for a preparation.</summary>
    public static double Serves(Recipe recipe) => recipe is Drink { Serves.IsGiven: true } drink && drink.Serves.Value > 0 ? drink.Serves.Value : 1;

    /// <summary>The first text of a line or step that holds a word.</summary>
    public static bool Holds(Given<string> text, string word) => text.IsGiven && Storage.Has(text.Value, word);

    /// <summary>The jurisdictions of a rule in words.</summary>
    public static string Where(HazardRule rule) => rule.Jurisdictions[0] == "any" ? "" : $" in {Say.List(rule.Jurisdictions, "and")}";

    /// <summary>Evidence of a load.</summary>
    public static Evidence Of(RecipeContext context, HazardLoad load) =>
        new("mass of " + load.Id, load.Grams, load.Grams, load.Grams, "g", Place: load.Part.Line.Item.IsGiven ? context.At(load.Part.Line.Item.Span) : null);

    /// <summary>How a load came in, in words: the item, and the preparation that brings it.</summary>
    public static string NameOf(HazardLoad load) => load.Direct ? $"`{load.Id}`" : $"`{load.Id}` (in `{load.Part.Line.Item.Or("")}`)";
}
