namespace SpecLint.Vocabulary;

/// <summary>Names and units of facts.</summary>
public static class FactNames
{
    private static readonly string[] Names =
    [
        "mixVolume", "dilution", "servedVolume", "abv", "sugar", "brix", "acid", "acidAnalysed", "sugarAcidRatio", "ph",
        "waterActivity", "density", "salt", "temperature", "freezingPoint", "alcohol", "energy", "life",
        "mixAbv", "mixSugar", "mixAcid", "mixPh", "caffeine", "quinine", "sulphite", "cost",
    ];

    private static readonly string[] LiquidUnits =
    [
        "mL", "%", "mL", "%{vol}", "g/dL", "%", "g/dL", "g/dL", "1", "[pH]",
        "1", "g/mL", "g/dL", "Cel", "Cel", "g", "kcal", "d",
        "%{vol}", "g/dL", "g/dL", "[pH]", "mg", "mg", "mg/L", Currency,
    ];

    /// <summary>The sign of a currency that nobody names; outputs put the bar's own in its place.</summary>
    public const string Currency = "¤";

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
