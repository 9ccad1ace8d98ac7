namespace SpecLint.Profile;

/// <summary>The facts of a recipe: their names, meanings and units are a contract of the output.</summary>
public enum Fact
{
    /// <summary>mL of the parts before ice or technique.</summary>
    MixVolume,

    /// <summary>Water that the technique adds, % of the mix volume.</summary>
    Dilution,

    /// <summary>mL of liquid in the glass.</summary>
    ServedVolume,

    /// <summary>Ethanol, % vol.</summary>
    Abv,

    /// <summary>Mono- and disaccharides, g per 100 mL (solids: per 100 g).</summary>
    Sugar,

    /// <summary>Dissolved solids as sucrose, % w/w.</summary>
    Brix,

    /// <summary>Titratable acid to pH 8.1 as anhydrous citric acid, g per 100 mL.</summary>
    Acid,

    /// <summary>Sum of the organic acids present, g per 100 mL.</summary>
    AcidAnalysed,

    /// <summary>Sugar over acid.</summary>
    SugarAcidRatio,

    /// <summary>pH, activity scale.</summary>
    Ph,

    /// <summary>Water activity at 25 °C.</summary>
    WaterActivity,

    /// <summary>Density, g/mL.</summary>
    Density,

    /// <summary>Salt as NaCl, g per 100 mL.</summary>
    Salt,

    /// <summary>Temperature as served, °C.</summary>
    Temperature,

    /// <summary>First ice, °C.</summary>
    FreezingPoint,

    /// <summary>Ethanol, g: a drink per serve, a preparation per 100 mL.</summary>
    Alcohol,

    /// <summary>Energy, kcal: a drink per serve, a preparation per 100 mL.</summary>
    Energy,

    /// <summary>Days from made, by the rules of keeping.</summary>
    Life,

    /// <summary>Strength before dilution, % vol.</summary>
    MixAbv,

    /// <summary>Sugar before dilution, g per 100 mL.</summary>
    MixSugar,

    /// <summary>Acid before dilution, g per 100 mL.</summary>
    MixAcid,

    /// <summary>pH before dilution.</summary>
    MixPh,

    /// <summary>Caffeine, mg: a drink per serve, a preparation per 100 mL.</summary>
    Caffeine,

    /// <summary>Quinine, mg: a drink per serve, a preparation per 100 mL.</summary>
    Quinine,

    /// <summary>Sulphite as SO2, mg/L.</summary>
    Sulphite,
}

/// <summary>A fact's value with the range that holds about 95 %, or the reason why it is open.</summary>
/// <param name="Value">The value; meaningless when open.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
/// <param name="From">What it was worked out from: <c>computed</c>, <c>measured</c>, a part's id …</param>
/// <param name="OpenBecause">The reason why it cannot be had; <see langword="null"/> when it is known.</param>
public readonly record struct FactValue(double Value, double Low, double High, string From, string? OpenBecause)
{
    /// <summary>Whether it is known.</summary>
    public bool IsKnown => OpenBecause is null && From is not null;

    /// <summary>An open fact.</summary>
    public static FactValue Open(string because) => new(double.NaN, double.NaN, double.NaN, "", because);
}

/// <summary>Names and units of facts.</summary>
public static class FactNames
{
    private static readonly string[] Names =
    [
        "mixVolume", "dilution", "servedVolume", "abv", "sugar", "brix", "acid", "acidAnalysed", "sugarAcidRatio", "ph",
        "waterActivity", "density", "salt", "temperature", "freezingPoint", "alcohol", "energy", "life",
        "mixAbv", "mixSugar", "mixAcid", "mixPh", "caffeine", "quinine", "sulphite",
    ];

    private static readonly string[] LiquidUnits =
    [
        "mL", "%", "mL", "%{vol}", "g/dL", "%", "g/dL", "g/dL", "1", "[pH]",
        "1", "g/mL", "g/dL", "Cel", "Cel", "g", "kcal", "d",
        "%{vol}", "g/dL", "g/dL", "[pH]", "mg", "mg", "mg/L",
    ];

    /// <summary>Number of facts.</summary>
    public static int Count => Names.Length;

    /// <summary>The name in outputs.</summary>
    public static string Name(Fact fact) => Names[(int)fact];

    /// <summary>The unit in UCUM.</summary>
    /// <param name="fact">The fact.</param>
    /// <param name="solid">Whether it is of a solid: g per 100 g in place of g per 100 mL.</param>
    public static string Unit(Fact fact, bool solid)
    {
        string unit = LiquidUnits[(int)fact];
        return solid && unit == "g/dL" ? "g/(100.g)" : unit;
    }
}
