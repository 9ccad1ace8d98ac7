using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule("SL8034", "wash-line-over-brim", "A glass of the house whose wash line lies above its brim", Level.Warning)]
internal sealed partial class WashLineOverBrim : FileRule
{
    public override void Check(FileContext context)
    {
        if (context.File is not Bar bar) return;
        foreach (var glass in bar.Glasses.Values)
        {
            if (!glass.Brim.IsGiven || !glass.WashLine.IsGiven) continue;
            var (brim, line) = (glass.Brim.Value, glass.WashLine.Value);
            if (brim.Dimension != line.Dimension || line.Base <= brim.Base) continue;
            context.Report(new(Rule)
            {
                At = context.At(glass.WashLine.Span, $"glasses.{glass.Id}.washLine"),
                Key = glass.Id,
                Message = $"The wash line of `{glass.Id}` is at {Say.With(line.Base, "mL")}, above its brim at {Say.With(brim.Base, "mL")}: a "
                    + "drink filled to it runs over.",
                Advice = "Fill the glass with water, once to the wash line and once to the brim, and weigh it: a gram is a millilitre.",
                Evidence =
                [
                    Proof.Of("wash line", line, context.At(glass.WashLine.Span)),
                    Proof.Of("brim", brim, context.At(glass.Brim.Span)),
                ],
                Related = [context.See(glass.Brim.Span, "the brim")],
                Corrections = Correction.Propose(
                    "Exchange the two.",
                    new TextEdit(context.At(glass.WashLine.Span), context.File.Source.TextOf(glass.Brim.Span)),
                    new TextEdit(context.At(glass.Brim.Span), context.File.Source.TextOf(glass.WashLine.Span))),
            });
        }
    }
}
