using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5003", "reading-near-limit", "A reading is too close to a limit for the meter to tell which side it is on", Level.Warning,
    Safety = true, IsConsequence = true, Needs = [Fact.Ph, Fact.WaterActivity])]
[Limit("table-b-ph")]
[Limit("table-b-water-activity")]
[Limit("acidified-ph")]
internal sealed partial class ReadingNearLimit : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Measured is not { } measured || !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays)) return;
        var state = context.Profile.Keeping!;
        if (state is not { NearLimit: true, HoldsPerishable: true, Verdict: not KeepingVerdict.NotControlled }
            || Storage.IsFrozen(Storage.Celsius(prep, context.Settings)))
            return;
        bool byPh = measured.Ph.IsGiven;
        string reading = byPh
            ? $"pH {Say.Ph(state.Ph)}"
            : $"water activity {Say.Range(state.WaterActivity.Value, state.WaterActivity.Low, state.WaterActivity.High, "")}";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(byPh ? measured.Ph.Span : measured.WaterActivity.Span, byPh ? "measured.ph" : "measured.waterActivity"),
            Message = $"The reading, {reading} with the error of the meter, crosses a limit of table {state.Table}, so it shows "
                + $"nothing ({KeepingTables.Source}).",
            Advice = byPh
                ? "Measure again with a meter calibrated that day and named under `measured`, or bring the pH down by 0.1."
                : "Measure again, or remove more water or add more sugar or salt.",
            Caution = KeepingWords.Caution,
            Evidence = KeepingWords.Evidence(context, state),
        });
    }
}
