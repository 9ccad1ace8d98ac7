using SpecLint.Book;

namespace SpecLint.Rules.Amounts;

[Rule("SL2003", "ounce-on-solid", "A fluid ounce on something that does not pour", Level.Error, IsCause = true)]
internal sealed partial class OunceOnSolid : RecipeRule
{
    /// <summary>g in an ounce by weight (NIST Handbook 44, appendix C).</summary>
    private const double OunceByWeight = 28.349523125;

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Material is not { } material || !line.Amount.IsGiven || !Written.IsOunce(line.Amount.Value.Unit)) continue;
            if (material.State is not (MaterialState.Powder or MaterialState.Solid) || PiecesByVolume.IsPiece(material)) continue;
            double byShare = Written.GramsMeant(context.Profile, part);
            string grams = $"{Written.Number(Written.Nearest(line.Amount.Value.Value * OunceByWeight, 0.1))} g";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} does not pour, but is measured in fluid ounces "
                    + $"(`{Written.Text(context, line.Amount.Span)}`). An ounce by weight is 28.35 g (NIST Handbook 44), which gives "
                    + $"{grams}.",
                Advice = $"Write {grams} if ounces by weight are meant. If the unit was lost, weigh it.",
                Evidence = [Written.Given(context, line)],
                Corrections = !double.IsNaN(byShare)
                    ? Written.Rest(context, line, byShare)
                    : context.Write(line.Amount.Span, context.Recipe is Prep ? null : grams, $"Read it as ounces by weight: {grams}."),
            });
        }
    }
}
