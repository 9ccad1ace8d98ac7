using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules;

/// <summary>What kind of thing a part is, as far as rules ask.</summary>
internal static class Substances
{
    /// <summary>Dissolved carbon dioxide from which a liquid is counted as sparkling, g in a gram (about one volume).</summary>
    private const double SparklingFrom = 0.002;

    /// <summary>Whether it fizzes: it is of a kind that always does, or it holds the gas.</summary>
    public static bool IsSparkling(Material? material) =>
        material is not null
        && (material.Kind.IsSparkling || material.Of(Component.CarbonDioxide) > SparklingFrom);

    /// <summary>Whether it may bring gas into a closed vessel: it fizzes, or is a ferment that nobody says is still.</summary>
    public static bool MayBringGas(Material? material) =>
        IsSparkling(material) || material is { Kind.IsLiveCulture: true, State: MaterialState.Liquid };

    /// <summary>Whether it is white of egg: protein, and no fat to speak of.</summary>
    public static bool IsEggWhite(Material? material) =>
        material is { Kind.IsEgg: true } && material.Of(Component.Protein) > 0.05 && material.Of(Component.Fat) < 0.01;

    /// <summary>Whether it is whole egg or yolk.</summary>
    public static bool IsYolkyEgg(Material? material) => material is { Kind.IsEgg: true } && material.Of(Component.Fat) >= 0.04;

    /// <summary>Whether it is milk, cream or the like.</summary>
    public static bool IsDairy(Material? material) => material is { Kind.IsDairy: true };

    /// <summary>Whether it is dry acid or a bought solution of acid.</summary>
    public static bool IsAcid(Material? material) => material is { Kind.IsAcid: true };

    /// <summary>Whether it is fruit juice or an adjusted juice.</summary>
    public static bool IsJuice(Material? material) => material is { Kind.IsJuice: true };

    /// <summary>Whether it is salt or salt water, bought or made.</summary>
    public static bool IsSalt(Material? material) => material is { Kind.IsSalt: true };

    /// <summary>Whether it is bitters, bought or made.</summary>
    public static bool IsBitters(Material? material) => material is { Kind.IsBitters: true };

    /// <summary>Whether it is plain water.</summary>
    public static bool IsWater(Material? material) => material is { Kind.IsWater: true } && material.Of(Component.Water) > 0.995;
}
