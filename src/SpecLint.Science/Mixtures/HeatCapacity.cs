namespace SpecLint.Science;

/// <summary>Specific heat capacity in joules per gram and kelvin.</summary>
/// <param name="Value">J/(g·K).</param>
public readonly record struct JoulesPerGramKelvin(double Value);

/// <summary>
/// Specific heat capacity of a composition: c = c<sub>EW</sub>(p, t) (m<sub>E</sub> + m<sub>W</sub>)/m + Σ c<sub>i</sub>(t) m<sub>i</sub>/m.
/// c<sub>EW</sub> is a polynomial in the mass fraction p of ethanol and in t, fitted to measured curves of 11 to 60 % and to pure water and
/// ethanol; sugars count as in the formula for sugar solutions, other solids as the pure food components.
/// Valid for −20 to 40 °C; null outside.
/// </summary>
[Source(Ethanol)]
[Source(Sugar)]
[Source(Foods)]
public static class HeatCapacity
{
    private const string Ethanol =
        "Å. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010, ethanol–water, by way of the SecCool data of "
        + "CoolProp; water by IAPWS-95; "
        + "pure ethanol from memory; own fit";

    private const string Sugar = "Bubník et al., Sugar Technologists Manual, 1995: c = 4184 − 2971 B + 460 B + 7.5 B t J/(kg K), form as used by S. Llano 2005";

    private const string Foods = "Y. Choi and M. R. Okos, Effects of temperature and composition on the thermal properties of foods, "
        + "1986, heat capacities of pure components";

    private static ReadOnlySpan<double> At0 => [4.21457, 2.94141, -14.57704, 15.96683, -6.27005];

    private static ReadOnlySpan<double> Per10K => [-0.01461, -0.00148, 0.47838, -0.39761];

    /// <summary>Specific heat capacity of a composition.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="t">Temperature, −20 to 40 °C.</param>
    /// <returns>J/(g·K); null outside the range or for an invalid composition.</returns>
    [Source(Ethanol)]
    [Source(Sugar)]
    [Source(Foods)]
    public static JoulesPerGramKelvin? Of(ReadOnlySpan<double> grams, Celsius t) =>
        Composition.IsValid(grams, out var total) && t.Value is >= -20 and <= 40 ? new(Joules(grams, t.Value) / total) : null;

    /// <summary>Specific heat capacity of ice Ih.</summary>
    /// <param name="t">Temperature, −40 to 0 °C.</param>
    /// <returns>J/(g·K): 2.0967 + 0.0073 t; null outside the range.</returns>
    [Source("IAPWS R10-06, Equation of State 2006 for H2O Ice Ih; straight line through −18, −10, −1 and 0 °C, within 0.001")]
    public static JoulesPerGramKelvin? OfIce(Celsius t) => t.Value is >= -40 and <= 0 ? new(Ice(t.Value)) : null;

    internal static double Ice(double t) => 2.0967 + (0.0073 * t);

    /// <summary>Heat capacity of ethanol and water, J/(g·K).</summary>
    internal static double EthanolWaterAt(double p, double t) => Polynomial.At(At0, p) + (t / 10 * Polynomial.At(Per10K, p));

    /// <summary>Heat capacity of the whole, J/K; the caller keeps to the range.</summary>
    internal static double Joules(ReadOnlySpan<double> grams, double t)
    {
        var solvent = grams.Of(Component.Water) + grams.Of(Component.Ethanol);
        var sum = solvent > 0 ? solvent * EthanolWaterAt(grams.Of(Component.Ethanol) / solvent, t) : 0;
        for (var i = (int)Component.Sucrose; i < grams.Length; i++)
        {
            if (grams[i] > 0)
                sum += grams[i] * Solid((Component)i, t);
        }

        return sum;
    }

    private static double Solid(Component component, double t) => component switch
    {
        Component.Protein => 2.0082 + (1.2089e-3 * t) - (1.3129e-6 * t * t),
        Component.Fat => 1.9842 + (1.4733e-3 * t) - (4.8008e-6 * t * t),
        Component.Fibre or Component.OtherInsoluble => 1.8459 + (1.8306e-3 * t) - (4.6509e-6 * t * t),
        (>= Component.SodiumChloride and <= Component.Chloride) or Component.Sulphate => 1.0926 + (1.8896e-3 * t) - (3.6817e-6 * t * t),
        _ => 1.673 + (7.5e-3 * t),
    };
}
