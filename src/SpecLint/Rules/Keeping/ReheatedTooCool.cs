using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule("SL5039", "reheated-too-cool", "A chilled preparation is held hot without being heated through first", Level.Warning, Safety = true)]
[Limit("reheat-temperature", "Reheat")]
[Limit("food-code-hot-hold")]
[Limit("hot-hold-gb")]
internal sealed partial class ReheatedTooCool : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        double held = Storage.Celsius(prep, context.Settings);
        if (!(held >= StoredTooWarm.HotLimitOf(context.Settings).Value) || ColdPart(context) is not { } part) return;

        // What a reading shows to be sour needs no heat to keep.
        if (context.Profile.Keeping!.Verdict == KeepingVerdict.NotControlled) return;
        double hottest = double.NaN;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Boils) return;
            if (KeepingWords.HeatOf(step) is { IsGiven: true } heat && !(heat.Value.BaseLow <= hottest)) hottest = heat.Value.BaseLow;
        }

        if (hottest >= Reheat.Value) return;
        bool stated = !double.IsNaN(hottest);
        string heated = stated ? $"is heated to {KeepingWords.Degrees(hottest)} only" : "no step says how hot it becomes";
        context.Report(new(Rule)
        {
            Answer = stated ? Answer.Broken : Answer.NotShown,
            At = context.ItemOf(part.Line),
            Message = $"`{part.Line.Item.Or("")}` was made ahead and chilled, and {heated} before it is held at "
                + $"{KeepingWords.Degrees(held)}. What was cooled is heated to {KeepingWords.Degrees(Reheat.Value)} for 15 s, within 2 h, "
                + $"before it is held hot ({Reheat.Source}{(Reheat.AppliesIn(context.Settings) ? "" : ", the yardstick here")}).",
            Advice = $"Add a step that heats it to {KeepingWords.Degrees(Reheat.Value)}, and hold it hot only then.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("held at", held, "Cel"), Proof.Of(Reheat)],
        });
    }

    /// <summary>The first part that is a preparation of the book which needs cold and is not held hot itself.</summary>
    private static Part? ColdPart(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Beside
                && part.Item?.File is Prep inner
                && context.Profile.Set.TryBefore(inner, context.Profile)?.Keeping is { HoldsPerishable: true } state
                && state.Verdict != KeepingVerdict.NotControlled
                && !(Storage.Celsius(inner, context.Settings) >= StoredTooWarm.HotLimitOf(context.Settings).Value))
                return part;
        }

        return null;
    }
}
