using SpecLint.Findings;

namespace SpecLint.Rules.Keeping;

[Rule("SL5033", "reading-out-of-date", "The readings were taken before the recipe changed", Level.Warning)]
internal sealed partial class ReadingOutOfDate : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Recipe is not { StaleBecause: { } because, AsMeasured: { } measured }) return;
        var read = new List<string>();
        if (measured.Ph.IsGiven) read.Add($"pH {Say.Number(measured.Ph.Value.Value, 2)}");
        if (measured.Brix.IsGiven) read.Add($"{Say.Number(measured.Brix.Value.Value, 1)} °Brix");
        if (measured.Abv.IsGiven) read.Add($"{Say.Number(measured.Abv.Value.Base, 1)} % vol");
        if (measured.WaterActivity.IsGiven) read.Add($"water activity {Say.Number(measured.WaterActivity.Value.Value, 2)}");
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(measured.Span, "measured"),
            Message = $"The readings{(read.Count > 0 ? $" ({string.Join(", ", read)})" : "")} {because}. Measured before the change, they "
                + "replace no computed value and clear nothing.",
            Advice = $"Measure it again and write the readings with `speclint record {context.Id}`.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("measured", string.Join(", ", read), context.At(measured.Span))],
        });
    }
}
