using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2030", "word-without-size", "A word for an amount that every hand pours differently", Level.Warning)]
[Limit("amount-no-size", "Most")]
internal sealed partial class WordWithoutSize : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double whole = double.NaN;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Phase == PartPhase.Beside) continue;
            var amount = line.Amount.Value;
            if (amount is { Dimension: Dimension.Count, Unit.Name: "handful" or "can" })
            {
                bool can = amount.Unit.Name == "can";
                context.Report(new(Rule)
                {
                    AskedLevel = can ? null : Level.Note,
                    At = context.AmountOf(line),
                    Message = $"`{Written.Text(context, line.Amount.Span)}` of {Written.Item(line)} has no size, so the volume, "
                        + "strength and sugar of the drink are unknown.",
                    Advice = can
                        ? "Write its millilitres, or give `can` its size under `measures` in bar.json."
                        : "Weigh it once and write the grams, or count the leaves.",
                });
                continue;
            }

            if (amount is not { Dimension: Dimension.Volume, Unit.System: UnitSystem.Trade }) continue;
            if (amount.Unit.Name is not ("top" or "splash" or "float" or "shot" or "measure" or "wineglass" or "bottle")) continue;
            if (amount.Unit.Low == amount.Unit.High) continue;
            if (double.IsNaN(whole)) whole = Written.Poured(context.Profile);
            double spread = amount.BaseHigh - amount.BaseLow;
            if (!(whole > 0) || spread <= whole * Most.Value / 100) continue;
            string usual = $"{Written.Number(amount.Base)} ml";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),

                // The trade's own lists top with soda or sparkling wine by eye.
                AskedLevel = part.Material is { Kind: { Lengthens: true } or { IsWater: true } } ? Level.Note : null,
                Message = $"`{Written.Text(context, line.Amount.Span)}` of {Written.Item(line)} is "
                    + $"{Say.Range(amount.Base, amount.BaseLow, amount.BaseHigh, "mL")}, depending on who pours: "
                    + $"{Say.Number(spread / whole * 100, 0)} % of a drink of {Say.With(whole, "mL")}, above the "
                    + $"{Say.Number(Most.Value)} % that is ignored ({Most.Source}).",
                Advice = $"Write millilitres (the figures here use {usual}), or give `{amount.Unit.Name}` its "
                    + "size under `measures` in bar.json.",
                Evidence = [Written.Given(context, line), Proof.Of(Most)],
                Corrections = context.Write(line.Amount.Span, usual, $"Write {usual}, the usual amount."),
            });
        }
    }
}
