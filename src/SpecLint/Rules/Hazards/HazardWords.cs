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
        "This can poison a guest. Local law and a qualified toxicologist or the poisons service decide. A figure here only adds up the "
            + "written amounts.";

    /// <summary>The caution of cold, heat and fire.</summary>
    public const string StaffCaution =
        "This can burn, blind or suffocate guests and staff. Local rules, a written risk assessment and trained people come first. A "
            + "rule here only reads what is written.";

    /// <summary>The first text of a line or step that holds a word.</summary>
    public static bool Holds(Given<string> text, string word) => text.IsGiven && Storage.Has(text.Value, word);

    /// <summary>Whether a text holds a word or a phrase as whole words, whatever its case.</summary>
    public static bool HasWords(string text, string phrase)
    {
        for (int at = 0; (at = text.IndexOf(phrase, at, StringComparison.OrdinalIgnoreCase)) >= 0; at++)
        {
            int end = at + phrase.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end]))) return true;
        }

        return false;
    }

    /// <summary>Whether a text holds one of some phrases as whole words.</summary>
    public static bool HasWords(Given<string> text, IReadOnlyList<string> phrases)
    {
        if (!text.IsGiven) return false;
        for (int i = 0; i < phrases.Count; i++)
        {
            if (HasWords(text.Value, phrases[i])) return true;
        }

        return false;
    }

    /// <summary>Where the item of a line stands, whether it can be read as an id or not.</summary>
    public static TextSpan SpanOf(Line line) => line.Item.IsGiven ? line.Item.Span : line.ItemText.IsGiven ? line.ItemText.Span : line.Span;

    /// <summary>The harm of a hazard in brackets, as it goes into a sentence; empty where none is told.</summary>
    public static string HarmOf(Hazard hazard) => hazard.Harm.Length == 0 ? "" : $" ({hazard.Harm})";

    /// <summary>Where the amount of a load belongs of which nobody can tell how much there is: its item.</summary>
    public static Spot OpenAmountOf(RecipeContext context, Line line) => context.At(SpanOf(line), RecipeContext.PathOf(line, "amount"));

    /// <summary>The strictest rule of a hazard that applies, of equals the first; <see langword="null"/> where none does.</summary>
    public static HazardRule? Strictest(RecipeContext context, Hazard hazard, Func<RecipeContext, HazardRule, bool> applies)
    {
        HazardRule? strictest = null;
        foreach (var rule in hazard.Rules)
        {
            if (applies(context, rule) && (strictest is null || rule.Level > strictest.Level)) strictest = rule;
        }

        return strictest;
    }

    /// <summary>What a rule of a hazard controls, as evidence.</summary>
    public static Evidence Of(HazardRule rule) => Proof.Of("rule", rule.Control + (rule.About.Length == 0 ? "" : ", " + rule.About));

    /// <summary>The jurisdictions of a rule in words.</summary>
    public static string Where(HazardRule rule) => rule.Jurisdictions[0] == "any" ? "" : $" in {Say.List(rule.Jurisdictions, "and")}";

    /// <summary>Evidence of a load.</summary>
    public static Evidence Of(RecipeContext context, HazardLoad load) =>
        Proof.Of("mass of " + load.Id, load.Grams, "g") with
        {
            Place = load.Part.Line.Item.IsGiven ? context.At(load.Part.Line.Item.Span) : null,
        };

    /// <summary>How a load came in, in words: the item, and the preparation that brings it.</summary>
    public static string NameOf(HazardLoad load) => load.Direct ? $"`{load.Id}`" : $"`{load.Id}` (in `{load.Part.Line.Item.Or("")}`)";
}
