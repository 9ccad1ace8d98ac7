namespace SpecLint.Science;

/// <summary>Temperature in degrees Celsius (ITS-90).</summary>
/// <param name="Value">°C.</param>
public readonly record struct Celsius(double Value)
{
    /// <summary>0 °C in kelvin.</summary>
    public const double ZeroInKelvin = 273.15;

    /// <summary>The reference temperature of strengths and volumes, 20 °C.</summary>
    public static Celsius Reference => new(20);

    /// <summary>The same temperature in kelvin.</summary>
    public double Kelvin => Value + ZeroInKelvin;
}

/// <summary>Volume in millilitres.</summary>
/// <param name="Value">mL.</param>
public readonly record struct Millilitres(double Value);

/// <summary>Mass in grams.</summary>
/// <param name="Value">g.</param>
public readonly record struct Grams(double Value);

/// <summary>Density in kilograms per cubic metre (grams per litre).</summary>
/// <param name="Value">kg/m³.</param>
public readonly record struct KilogramsPerCubicMetre(double Value)
{
    /// <summary>The same density in g/mL.</summary>
    public double GramsPerMillilitre => Value / 1000;
}

/// <summary>Mass concentration in grams per litre of solution at 20 °C.</summary>
/// <param name="Value">g/L.</param>
public readonly record struct GramsPerLitre(double Value);

/// <summary>Share of mass, 0 to 1.</summary>
/// <param name="Value">kg/kg.</param>
public readonly record struct MassFraction(double Value);

/// <summary>Share of ethanol by volume at 20 °C, 0 to 1 (0.40 is 40 % vol).</summary>
/// <param name="Value">L of pure ethanol a litre of mixture, both at 20 °C.</param>
public readonly record struct AlcoholByVolume(double Value)
{
    /// <summary>The same strength in % vol.</summary>
    public double Percent => Value * 100;

    /// <summary>A strength given in % vol.</summary>
    public static AlcoholByVolume FromPercent(double percent) => new(percent / 100);
}

/// <summary>Molality in moles per kilogram of water.</summary>
/// <param name="Value">mol/kg.</param>
public readonly record struct MolesPerKilogramWater(double Value);

/// <summary>pH on the activity scale.</summary>
/// <param name="Value">−log₁₀ a(H⁺).</param>
public readonly record struct Ph(double Value);

/// <summary>Water activity, 0 to 1.</summary>
/// <param name="Value">Partial pressure of water over that of pure water at the same temperature.</param>
public readonly record struct WaterActivity(double Value);

/// <summary>Dissolved solids as sucrose, °Brix (g per 100 g).</summary>
/// <param name="Value">% w/w.</param>
public readonly record struct DegreesBrix(double Value);

/// <summary>Energy in kilojoules, with kilocalories as a label gives both.</summary>
/// <param name="Kilojoules">kJ.</param>
/// <param name="Kilocalories">kcal.</param>
public readonly record struct FoodEnergy(double Kilojoules, double Kilocalories);

/// <summary>Gauge or absolute pressure in bar, as the member that gives it says.</summary>
/// <param name="Value">bar.</param>
public readonly record struct Bar(double Value);

/// <summary>The published source of a formula or a value.</summary>
[AttributeUsage(
    AttributeTargets.Method | AttributeTargets.Property | AttributeTargets.Field | AttributeTargets.Class | AttributeTargets.Struct,
    AllowMultiple = true)]
public sealed class SourceAttribute(string citation) : Attribute
{
    /// <summary>Author, title, year, section.</summary>
    public string Citation { get; } = citation;
}
