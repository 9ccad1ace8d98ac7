using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Amounts;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4016", "syrup-by-volume", "Dry sugar of a syrup measured by volume", Level.Warning, Needs = [Fact.Sugar], IsCause = true)]
[Limit("tolerance-bulk-density", "Bulk")]
internal sealed partial class SyrupByVolume : PrepRule
{
    /// <summary>Whether this rule speaks of the sugar of a preparation.</summary>
    internal static bool IsOf(Prep prep) => prep.Family.OrNone().IsSweet;

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!IsOf(prep)) return;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { Kind.IsSugar: true, State: not MaterialState.Liquid }) continue;
            if (part.Line.Amount is not { IsGiven: true, Value: { Dimension: Dimension.Volume } amount } || !part.IsWeighed) continue;
            if (Written.IsOunce(amount.Unit)) continue;
            double meant = Written.GramsMeant(context.Profile, part);

            // What the yield leaves for it, where a measure of sugar may weigh that much or its figure is that many grams.
            double grams = meant >= part.Grams.Low * (1 - (Bulk.Value / 100)) && meant <= part.Grams.High * (1 + (2 * Bulk.Value / 100))
                ? Math.Round(meant)
                : Math.Round(part.Grams.Typical);
            string item = part.Line.Item.Or("sugar");
            var sugar = context.Fact(Fact.Sugar);
            bool another = prep.Target is { Brix.IsGiven: true } or { Sugar.IsGiven: true } && grams != Math.Round(meant);
            context.Report(new(Rule)
            {
                At = context.AmountOf(part.Line),
                Message = $"{Rounding.Words(amount.Base, amount)} of {item} is "
                    + $"{Say.Range(part.Grams.Typical, part.Grams.Low, part.Grams.High, "g")}, depending on "
                    + $"how it is packed{(sugar.IsKnown ? $", which makes {Say.Fact(Fact.Sugar, sugar)} of sugar" : "")}. The same "
                    + $"figures by mass make a different syrup (bulk density within {Say.With(Bulk.Value, "%")}; {Bulk.Source}).",
                Advice = $"Weigh it: {Say.Number(grams)} g if a level measure is meant.",
                Evidence = [Proof.Of(item, amount, context.At(part.Line.Amount.Span)), Proof.Of(Fact.Sugar, sugar), Proof.Of(Bulk)],
                Corrections = context.Write(part.Line.Amount.Span, another ? null : $"{Say.Number(grams)} g"),
            });
        }
    }
}
