using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2006", "pieces-by-volume", "Something that is counted, measured by volume", Level.Error, IsCause = true)]
internal sealed partial class PiecesByVolume : RecipeRule
{
    /// <summary>Whether a material comes in pieces that are counted.</summary>
    internal static bool IsPiece(Material material) =>
        material.State == MaterialState.Solid
        && (material.Kind.ComesInPieces || (material.Kind.MayComeInPieces && !double.IsNaN(material.Piece.Typical)));

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (part.Material is not { } material || !line.Amount.IsGiven || !IsPiece(material)) continue;
            var amount = line.Amount.Value;
            if (!Written.IsPoured(amount.Unit) || (context.Recipe is Prep && amount.Unit.Name == "l")) continue;
            double count = Math.Max(1, Math.Round(amount.Value));
            bool few = Written.IsOunce(amount.Unit) && count <= Guards.CountablePieces;
            string written = $"{Written.Number(count)} {material.Kind.Piece}{(count == 1 ? "" : "s")}";
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} is counted or weighed, but is measured by volume "
                    + $"(`{Written.Text(context, line.Amount.Span)}`). The unit was probably lost.",
                Advice = few
                    ? $"Write `{written}`, or the weight in grams."
                    : "Write the number of pieces or the weight in grams. If its juice is meant, name the juice.",
                Evidence = [Written.Given(context, line)],
                Corrections = context.Write(line.Amount.Span, few ? written : null),
            });
        }
    }
}
