using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>Units in which amounts are shown to people. Only the view changes: files and JSON stay in mL, g and °C.</summary>
public sealed class DisplayUnits
{
    /// <summary>One US fluid ounce, mL (NIST Handbook 44, 2024, appendix C).</summary>
    private const double UsFluidOunce = 29.5735295625;

    private readonly bool isUs;

    private DisplayUnits(bool isUs) => this.isUs = isUs;

    /// <summary>mL, l, g, °C.</summary>
    public static DisplayUnits Metric { get; } = new(false);

    /// <summary>US fluid ounces and °F; mass stays in grams, as bars weigh.</summary>
    public static DisplayUnits UnitedStates { get; } = new(true);

    /// <summary>A volume.</summary>
    /// <param name="millilitres">mL.</param>
    public string Volume(double millilitres)
    {
        if (double.IsNaN(millilitres)) return "?";
        if (isUs) return $"{Say.Number(millilitres / UsFluidOunce, millilitres < 10 * UsFluidOunce ? 2 : 1)} oz";
        return millilitres >= 1000 ? $"{Say.Number(millilitres / 1000, 3)} l" : $"{Say.Number(millilitres, millilitres < 100 ? 1 : 0)} ml";
    }

    /// <summary>A mass.</summary>
    /// <param name="grams">g.</param>
    public string Mass(double grams) =>
        double.IsNaN(grams) ? "?" : !isUs && grams >= 1000 ? $"{Say.Number(grams / 1000, 3)} kg" : $"{Say.Number(grams, grams < 100 ? 1 : 0)} g";

    /// <summary>A temperature.</summary>
    /// <param name="celsius">°C.</param>
    public string Temperature(double celsius) => isUs ? $"{Say.Number((celsius * 9 / 5) + 32, 0)} °F" : $"{Say.Number(celsius, 1)} °C";
}
