using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What the water of a mix holds of each solute: beyond it there are crystals, or a solution that nobody measured.</summary>
internal static class Solubilities
{
    private static readonly double[] MostShare = AtReference();

    /// <summary>Whether every solute is within its solubility in the water there is at 20 °C, and within what its tables reach to.</summary>
    public static bool HoldAll(Mix of)
    {
        double water = of.Of(Component.Water);

        // Spirits dissolve otherwise than water does: their solutes are not judged here.
        if (of.Of(Component.Ethanol) > water) return true;
        for (int c = 0; c < MostShare.Length; c++)
        {
            double mass = of.Grams[c];
            if (mass > 0 && mass > MostShare[c] * (mass + water)) return false;
        }

        return true;
    }

    private static double[] AtReference()
    {
        var most = new double[Components.Count];
        for (int c = 0; c < most.Length; c++) most[c] = SolubilityModel.Of((Component)c, Celsius.Reference)?.Value ?? Mixture.HighestTestedShare((Component)c);
        foreach (var (solute, limit) in new[]
        {
            (Component.Tartaric, "solubility-tartaric-20"), (Component.Succinic, "solubility-succinic-20"), (Component.Ascorbic, "solubility-ascorbic-20"),
            (Component.Fumaric, "solubility-fumaric-20"),
            (Component.Erythritol, "solubility-erythritol-25"), (Component.Xylitol, "solubility-xylitol-25"),
            (Component.Sorbitol, "solubility-sorbitol-25"), (Component.Maltitol, "solubility-maltitol-25"),
        })
            most[(int)solute] = Limits.Of(limit).Value / 100;
        return most;
    }
}
