using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

/// <summary>What benzoic and sorbic acid do against yeasts and moulds: their undissociated part alone.</summary>
internal static class Preservatives
{
    /// <summary>mg of undissociated benzoic and sorbic acid in a kilogram from which yeasts and moulds are held back.</summary>
    public static readonly Limit WorkingDose = Limits.Of("preservative-working-dose");

    /// <summary>g/mol.</summary>
    private const double Benzoic = 122.12, Sorbic = 112.13;

    /// <summary>mg/kg of undissociated benzoic and sorbic acid at the pH where least of it works; 0 where the pH is not known.</summary>
    public static double Undissociated(RecipeProfile profile, FactValue ph)
    {
        double kilograms = profile.Mass / 1000;
        if (!ph.IsKnown || !(kilograms > 0)) return 0;
        double sum = 0;
        foreach (var acid in AcidInhibition.Listeria)
        {
            double molar = acid.Acid switch { Component.Benzoic => Benzoic, Component.Sorbic => Sorbic, _ => 0 };
            double grams = profile.Grams[(int)acid.Acid];
            if (molar <= 0 || grams <= 0) continue;
            if (acid.Undissociated(grams * 1000 / molar / kilograms, new Ph(Math.Min(14, ph.High))) is { } part) sum += part * molar;
        }

        return sum;
    }
}
