using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2018", "share-against-amount", "A share that disagrees with the amount beside it", Level.Warning)]
[Limit("amount-share-of-amount", "Apart")]
internal sealed partial class ShareAgainstAmount : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var reading = ShareReading.Of(context);
        if (reading.Fault != ShareFault.NotTheAmounts) return;
        var parts = context.Profile.Parts;
        var worst = reading.Wrong[0];
        double most = 0, computed = double.NaN;
        for (int i = 0; i < parts.Count; i++)
        {
            if (!reading.Wrong.Contains(parts[i])) continue;
            double apart = Math.Abs(parts[i].Line.Share.Value.Value - reading.Computed[i]) / reading.Computed[i];
            if (!(apart <= most)) (most, worst, computed) = (apart, parts[i], reading.Computed[i]);
        }

        string more = reading.Wrong.Count > 1 ? $", and {Say.Count(reading.Wrong.Count - 1, "other share")} with it" : "";
        context.Report(new(Rule)
        {
            At = context.At(worst.Line.Share.Span, RecipeContext.PathOf(worst.Line, "share")),
            Message = $"The share of {Written.Item(worst.Line)} is given as {Written.Text(context, worst.Line.Share.Span)}, but its "
                + $"amount comes to {Say.Number(computed)} %{more} (differences up to {Say.Number(Apart.Value)} % and rounding are "
                + $"ignored; {Apart.Source}).",
            Advice = "Find out which of the two is made, and correct the other. Shares are computed from amounts.",
            Evidence = [Proof.Of("share by the amounts", computed, "%"), Proof.Of(Apart)],
            Corrections = reading.Write(context, "Write the shares computed from the amounts."),
        });
    }
}
