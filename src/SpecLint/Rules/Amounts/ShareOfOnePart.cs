using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2019", "share-of-one-part", "Shares of the water, not of the whole", Level.Warning)]
internal sealed partial class ShareOfOnePart : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var reading = ShareReading.Of(context);
        if (reading.Fault != ShareFault.OfOnePart) return;
        var parts = context.Profile.Parts;
        var first = reading.Wrong[0];
        for (int i = 0; i < reading.Wrong.Count; i++)
        {
            if (reading.Wrong[i] == reading.Base) continue;
            first = reading.Wrong[i];
            break;
        }

        double computed = double.NaN;
        for (int i = 0; i < parts.Count; i++)
        {
            if (parts[i] == first) computed = reading.Computed[i];
        }

        var edits = reading.Edits(context);
        context.Report(new(Rule)
        {
            At = context.At(first.Line.Share.Span, RecipeContext.PathOf(first.Line, "share")),
            Message = $"The share of {Written.Item(first.Line)}, {Written.Text(context, first.Line.Share.Span)}, is per cent of the "
                + $"{Written.Item(reading.Base!.Line)}. Of the whole it is {Say.Number(computed)} % (a share is of the whole, ISO "
                + $"80000-9:2019, mass fraction).",
            Advice = "Write shares of the whole, or leave them out.",
            Evidence = [Proof.Of("share of the whole", computed, "%")],
            Corrections = edits.Count > 0 ? [new Correction(CorrectionGrade.Assured, "Write shares of the whole; the amounts stay.", edits)] : [],
        });
    }
}
