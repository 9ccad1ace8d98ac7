using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2019", "share-of-one-part", "Shares of the water, not of the whole", Level.Warning)]
internal sealed partial class ShareOfOnePart : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var reading = ShareReading.Of(context);
        if (reading.Fault != ShareFault.OfOnePart) return;
        var first = First(reading);
        double computed = double.NaN;
        for (int i = 0; i < reading.Computed.Length; i++)
        {
            if (context.Profile.Parts[i] == first) computed = reading.Computed[i];
        }

        context.Report(new(Rule)
        {
            At = context.At(first.Line.Share.Span, RecipeContext.PathOf(first.Line, "share")),
            Message = $"The share of {Written.Item(first.Line)}, {Written.Text(context, first.Line.Share.Span)}, is per cent of the "
                + $"{Written.Item(reading.Base!.Line)}. Of the whole it is {Say.Number(computed)} % (a share is of the whole, ISO "
                + "80000-9:2019, mass fraction).",
            Advice = "Write shares of the whole, or leave them out.",
            Evidence = [Proof.Of("share of the whole", computed, "%")],
            Corrections = reading.Write(context, "Write shares of the whole; the amounts stay."),
        });
    }

    /// <summary>The first part whose share is wrong, the one that all are shares of last.</summary>
    private static Part First(ShareReading reading) => reading.Wrong.FirstOrDefault(part => part != reading.Base) ?? reading.Wrong[0];
}
