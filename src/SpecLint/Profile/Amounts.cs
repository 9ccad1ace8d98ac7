using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>Turns the amount of a line into mass.</summary>
internal static class Amounts
{
    private const double Coverage = 1.96;

    /// <summary>Mass and volume of an amount of a material; NaN where they cannot be had.</summary>
    public static (Trace Grams, double Millilitres, string Why) Weigh(Quantity amount, Material material, Settings settings)
    {
        var nothing = new Trace(double.NaN, double.NaN, double.NaN);
        double typical = amount.Base, low = amount.BaseLow, high = amount.BaseHigh;
        switch (amount.Dimension)
        {
            case Dimension.Mass:
                double weighing = Tolerances.WeighingShare(typical, settings);
                return (Widen(typical, low, high, weighing), typical / material.Density, "");
            case Dimension.Volume:
                if (double.IsNaN(material.Density)) return (nothing, typical, $"the density of {material.Id} is not known");
                double pouring = amount.Unit.System == UnitSystem.Trade ? 0 : Tolerances.PouringShare(typical);
                var millilitres = Widen(typical, low, high, pouring);
                double d = material.Density;
                double bulk = material.State == MaterialState.Liquid ? 0 : Tolerances.BulkDensityShare;
                return (Widen(millilitres.Typical * d, millilitres.Low * d, millilitres.High * d, bulk), typical, "");
            case Dimension.Count:
                var whole = new PieceSize(material.Piece.Typical, material.Piece.Low, material.Piece.High);
                var piece = PieceTable.Weigh(material.Ingredient, material.Kind, amount.Unit.Name, whole);
                if (!piece.IsKnown) return (nothing, double.NaN, $"the mass of one {amount.Unit.Name} of {material.Id} is not known");
                return (new Trace(typical * piece.Typical, low * piece.Low, high * piece.High), typical * piece.Typical / material.Density, "");
            case Dimension.Part:
                return (nothing, double.NaN, "parts have no size until the whole has one");
            default:
                return (nothing, double.NaN, $"{amount.Unit.Name} is not an amount of a substance");
        }
    }

    /// <summary>Standard uncertainties, as shares of the mass.</summary>
    public static (double Up, double Down) Uncertainty(Trace grams) =>
        grams.Typical <= 0 ? (0, 0) : ((grams.High - grams.Typical) / grams.Typical / Coverage, (grams.Typical - grams.Low) / grams.Typical / Coverage);

    private static Trace Widen(double typical, double low, double high, double share)
    {
        // Independent contributions add by squares (JCGM 100:2008, 5.1.2).
        double up = Math.Sqrt(Square(high - typical) + Square(typical * share));
        double down = Math.Sqrt(Square(typical - low) + Square(typical * share));
        return new Trace(typical, Math.Max(0, typical - down), typical + up);
    }

    private static double Square(double x) => x * x;
}
