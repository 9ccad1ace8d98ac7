using SpecLint.Catalogue;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>What a part is in a drink.</summary>
internal enum PartRole
{
    /// <summary>Anything else: egg, dairy, mild juice, what lengthens.</summary>
    Other,

    /// <summary>A spirit.</summary>
    Strong,

    /// <summary>A liqueur, a wine, bitters, or what has their strength.</summary>
    WithAlcohol,

    /// <summary>As sour as lemon or lime.</summary>
    Sour,

    /// <summary>A syrup.</summary>
    Sweet,
}

/// <summary>Tells what a part is by what is in it.</summary>
internal static class PartRoles
{
    /// <summary>Shares by mass from which a part is strong, has the strength of wine, is a liqueur, is a syrup; and up to which it has no alcohol.</summary>
    private const double StrongFrom = 0.2, WineFrom = 0.04, LiqueurSugar = 0.1, SyrupSugar = 0.3, NoAlcohol = 0.005;

    private static readonly Limit Sharp = Limits.Of("amount-sour-juice");

    /// <summary>The role of a material.</summary>
    public static PartRole Of(Material material)
    {
        if (material.Kind.IsDairy) return PartRole.Other;
        double ethanol = material.Of(Component.Ethanol), sugar = Solving.SugarOf(material.PerGram);
        if (ethanol > StrongFrom && sugar < LiqueurSugar) return PartRole.Strong;
        if (ethanol > WineFrom) return PartRole.WithAlcohol;
        if (100 * Solving.AcidsOf(material.PerGram) >= Sharp.Value && sugar < SyrupSugar && material.Kind.Sours) return PartRole.Sour;
        return ethanol < NoAlcohol && sugar >= SyrupSugar ? PartRole.Sweet : PartRole.Other;
    }
}
