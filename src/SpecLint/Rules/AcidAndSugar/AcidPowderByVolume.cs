using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4012: dry acid of a cordial or juice measured by volume.</summary>
internal sealed class AcidPowderByVolume : PrepRule
{
    private static readonly Limit Bulk = Limits.Of("tolerance-bulk-density");

    private static readonly RuleInfo Rule = new("SL4012", "dry-acid-by-volume", "Dry acid measured by the spoon or the millilitre", Level.Warning)
    {
        Limits = [Bulk.Id],
        IsCause = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { Kind: "acid", State: MaterialState.Powder } || !part.Line.Amount.IsGiven) continue;
            var amount = part.Line.Amount.Value;
            if (amount.Dimension != Dimension.Volume) continue;
            string item = part.Line.Item.Or("the acid"), words = Rounding.Words(amount.Base, amount);
            double low = part.Grams.Low, high = part.Grams.High, typical = part.Grams.Typical;
            bool known = part.IsWeighed;
            double grams = known ? Math.Round(typical, typical < 10 ? 1 : 0) : double.NaN;
            context.Report(new Finding(Rule)
            {
                Place = context.At(part.Line.Amount.Span),
                Subject = context.Id,
                Path = RecipeContext.PathOf(part.Line, "amount"),
                Message = known
                    ? $"{words} of {item} is {Say.Range(typical, low, high, "g")} by how it is packed (bulk density within {Say.With(Bulk.Value, "%")}; {Bulk.Source}), and the acid of the whole goes with it."
                    : $"{words} of {item} has no set mass, and the acid of the whole goes with it.",
                Advice = known ? $"Weigh it: {Say.Number(grams)} g, if a level measure is meant." : "Weigh it.",
                Evidence = [Proof.Of(item, amount, context.At(part.Line.Amount.Span)), Proof.Of(Bulk)],
                Corrections = known ? [new Correction(CorrectionGrade.Proposed, $"Write {Say.Number(grams)} g.", [new TextEdit(context.At(part.Line.Amount.Span), $"\"{Say.Number(grams)} g\"")])] : [],
            });
        }
    }
}
