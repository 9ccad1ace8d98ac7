using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4025", "not-separated", "A wash, clarification or infusion from which nothing is taken out again", Level.Warning)]
internal sealed partial class NotSeparated : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Method.Count == 0 || !prep.Family.IsGiven) return;
        var family = prep.Family.Value;
        string? left = family.IsMilkWash ? "the curd"
            : family.IsFatWash ? "the fat"
            : family.TakesProteinOut ? "what clouds it"
            : Steeped(context, prep) is { } plant ? $"`{plant}`"
            : null;
        if (left is null) return;
        bool separates = false, cools = false;
        foreach (var step in prep.Method)
        {
            // A verb that nothing is known of may do anything.
            var verb = step.Verb;
            separates |= !verb.IsKnown || verb.Strains;
            cools |= !verb.IsKnown || verb.Cools || verb.Freezes || IsCold(step.At) || IsCold(step.To);
        }

        if (separates && (cools || !family.IsFatWash || !context.Profile.Parts.Any(static p => p.Material is { Kind.IsFat: true }))) return;
        context.Report(new(Rule)
        {
            At = context.VerbOf(prep.Method[prep.Method.Count - 1]),
            AskedLevel = separates ? Level.Note : null,
            Message = separates
                ? "The fat is strained out, and no step chills it first: what is liquid runs through with the spirit (common practice, "
                    + "no source)."
                : $"No step takes {left} out again: it is not strained, filtered, skimmed or settled (common practice, no source).",
            Advice = separates
                ? "Chill it until the fat is hard, and then lift it off and strain."
                : "Write the step that separates it, and how clear it has to be.",
        });
    }

    private static bool IsCold(Given<Quantity> at) => at.IsGiven && at.Value.Base <= Guards.KeptCold;

    /// <summary>A solid plant that is steeped or cooked in what is poured, and stays whole: not blended, ground or juiced.</summary>
    private static string? Steeped(RecipeContext context, Prep prep)
    {
        bool steeps = false;
        foreach (var step in prep.Method)
        {
            if (!step.Verb.IsKnown || step.Verb.Strains || step.Verb.Agitates || step.Verb.Ferments) return null;
            steeps |= step.Verb.Extracts || (step.Verb.Heats && step.For.IsGiven);
        }

        if (!steeps || prep.Family.Value is not { IsStrained: true }) return null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Mix && part.Material is { State: MaterialState.Solid, Kind.IsBotanical: true })
                return part.Line.Item.Or("the plant");
        }

        return null;
    }
}
