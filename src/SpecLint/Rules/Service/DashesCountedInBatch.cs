using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

[Rule("SL8015", "dashes-counted-in-batch", "Dashes or drops counted out by the dozen", Level.Note)]
[Limit("dashes-counted", "Most")]
internal sealed partial class DashesCountedInBatch : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Amount is not { IsGiven: true, Value: { Unit.Name: "dash" or "drop" } amount }) continue;
            if (amount.Value < Most.Value) continue;

            // Where bar.json gives the dash its size, so many dashes are a volume.
            if (context.Settings.Bar is { } bar && bar.Measures.ContainsKey(amount.Unit.Name)) continue;
            double millilitres = amount.Base >= 10 ? Math.Round(amount.Base) : Math.Round(amount.Base, 1);
            string item = part.Line.Item.Or("it"), words = Rounding.Words(amount.Base, amount);
            context.Report(new(Rule)
            {
                At = context.AmountOf(part.Line),
                Message = $"{words} of {item} is {Say.Range(amount.Base, amount.BaseLow, amount.BaseHigh, "mL")}, depending on the "
                    + $"hand and the bottle, and nobody counts more than {Say.Number(Most.Value, 0)} the same way twice ({Most.Source}).",
                Advice = $"Measure {Say.With(millilitres, "mL")}. With bitters add half, taste, and add more.",
                Evidence = [Proof.Of(item, amount, context.At(part.Line.Amount.Span)), Proof.Of(Most)],
                Corrections = context.Write(part.Line.Amount.Span, $"{Say.Number(millilitres)} ml"),
            });
        }
    }
}
