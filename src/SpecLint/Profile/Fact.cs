namespace SpecLint.Profile;

/// <summary>A fact's value with the range that holds about 95 %, or the reason why it is open.</summary>
/// <param name="Value">The value; meaningless when open.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
/// <param name="From">What it was worked out from: <c>computed</c>, <c>measured</c>, a part's id …</param>
/// <param name="OpenBecause">The reason why it cannot be had; <see langword="null"/> when it is known.</param>
public readonly record struct FactValue(double Value, double Low, double High, string From, string? OpenBecause)
{
    private const string ComputedOutside = "computed, outside the tested range";

    /// <summary>Whether it is known.</summary>
    public bool IsKnown => OpenBecause is null && From is not null;

    /// <summary>Whether it was worked out where its model was not held against measurement: the range is then a guess.</summary>
    public bool IsOutsideTestedRange { get; init; }

    /// <summary>The same, marked where its model was not held against measurement.</summary>
    /// <param name="isTested">Whether it was.</param>
    internal FactValue Tested(bool isTested) =>
        isTested || IsOutsideTestedRange || !IsKnown ? this : this with { From = From == "computed" ? ComputedOutside : $"{From}, outside the tested range", IsOutsideTestedRange = true };

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
