namespace SpecLint.Science;

/// <summary>What an organism is to a bar.</summary>
public enum OrganismGroup
{
    /// <summary>Makes ill.</summary>
    Pathogen,

    /// <summary>Spoils.</summary>
    Spoilage,

    /// <summary>Wanted in a ferment.</summary>
    Fermentation,
}

/// <summary>The shape of one factor of a growth model.</summary>
public enum GrowthShape
{
    /// <summary>The model does not look at this factor: it holds at the values of its medium only.</summary>
    None,

    /// <summary>Cardinal-parameter function of order 1.</summary>
    Cardinal1,

    /// <summary>Cardinal-parameter function of order 2.</summary>
    Cardinal2,

    /// <summary>Square-root type against a reference (the middle parameter).</summary>
    SquareRoot,

    /// <summary>Linear to the optimum.</summary>
    Linear,

    /// <summary>1 − 10^(pHmin − pH).</summary>
    HydrogenIon,

    /// <summary>(x − min)(max − x), unscaled: the rate constant carries the units.</summary>
    Product,

    /// <summary>(x − min)², unscaled.</summary>
    Square,

    /// <summary>x − min, unscaled.</summary>
    Difference,

    /// <summary>(x − min)² (1 − exp(c (x − max))), unscaled, c the middle parameter.</summary>
    SquareTapered,

    /// <summary>((x − min)(1 − exp(c (x − max))))², unscaled, c the middle parameter.</summary>
    ExtendedSquareRoot,
}

/// <summary>One factor of a growth model.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Min">Least value with growth.</param>
/// <param name="Middle">Optimum, reference or curvature, as the shape has it.</param>
/// <param name="Max">Greatest value with growth.</param>
[Source("Ross & Dalgaard, Secondary models, in McKellar & Lu (ed.), Modeling Microbial Responses in Food, 2004, ch. 3")]
public readonly record struct GrowthFactor(GrowthShape Shape, double Min = 0, double Middle = 0, double Max = 0)
{
    /// <summary>The factor at a value; null when it is no number.</summary>
    /// <param name="x">°C, pH or water activity.</param>
    public double? At(double x) => Shape switch
    {
        GrowthShape.None => 1,
        GrowthShape.Cardinal1 => GrowthFunctions.Cardinal(1, x, Min, Middle, Max),
        GrowthShape.Cardinal2 => GrowthFunctions.Cardinal(2, x, Min, Middle, Max),
        GrowthShape.SquareRoot => GrowthFunctions.SquareRoot(x, Min, Middle),
        GrowthShape.Linear => GrowthFunctions.Linear(x, Min, Middle),
        GrowthShape.HydrogenIon => GrowthFunctions.HydrogenIon(x, Min),
        GrowthShape.Product => double.IsNaN(x) ? null : x <= Min || x >= Max ? 0 : (x - Min) * (Max - x),
        GrowthShape.Square => double.IsNaN(x) ? null : x <= Min ? 0 : (x - Min) * (x - Min),
        GrowthShape.Difference => double.IsNaN(x) ? null : x <= Min ? 0 : x - Min,
        GrowthShape.SquareTapered => double.IsNaN(x) ? null : x <= Min || x >= Max ? 0 : (x - Min) * (x - Min) * (1 - Math.Exp(Middle * (x - Max))),
        GrowthShape.ExtendedSquareRoot => GrowthFunctions.ExtendedSquareRoot(x, 1, Middle, Min, Max),
        _ => null,
    };
}

/// <summary>A closed range of a factor that a model was fitted in.</summary>
/// <param name="Low">Least value.</param>
/// <param name="High">Greatest value.</param>
public readonly record struct FitRange(double Low, double High)
{
    internal bool Covers(double x) => x >= Low && x <= High;
}

/// <summary>A predicted growth rate.</summary>
/// <param name="PerHour">Specific growth rate μ, 1/h (natural logarithm).</param>
/// <param name="Psi">ψ of the interaction; 0 for a model without.</param>
/// <param name="Xi">ξ of the interaction, already in the rate; 1 for a model without.</param>
[Source("Monod, Annu. Rev. Microbiol. 3:371, 1949: doubling time ln 2 / μ")]
public readonly record struct GrowthRate(double PerHour, double Psi, double Xi)
{
    /// <summary>Hours to double; infinite without growth.</summary>
    public double DoublingHours => Math.Log(2) / PerHour;

    /// <summary>Days to ten times the number, without a lag; infinite without growth.</summary>
    public double DaysPerLog10 => Electrolyte.Ln10 / PerHour / 24;
}

/// <summary>
/// A published model of the growth of an organism. It ranks and explains; a rate that it gives never clears a food for keeping,
/// and it says nothing outside the range that it was fitted in. No lag is counted.
/// </summary>
[Source("the paper of each model stands in its property Source")]
public sealed record GrowthModel
{
    /// <summary>Name of the model, unique.</summary>
    public required string Id { get; init; }

    /// <summary>Organism.</summary>
    public required string Organism { get; init; }

    /// <summary>What it is to a bar.</summary>
    public required OrganismGroup Group { get; init; }

    /// <summary>The food or medium the model was fitted in.</summary>
    public required string Medium { get; init; }

    /// <summary>Rate at the optimum or the reference, 1/h, or the constant before unscaled factors.</summary>
    public required double Constant { get; init; }

    /// <summary>Factor of the temperature, °C.</summary>
    public GrowthFactor Temperature { get; init; }

    /// <summary>Factor of the pH.</summary>
    public GrowthFactor Ph { get; init; }

    /// <summary>Factor of the water activity.</summary>
    public GrowthFactor WaterActivity { get; init; }

    /// <summary>Temperatures of the fit, °C.</summary>
    public required FitRange TemperatureRange { get; init; }

    /// <summary>pH of the fit; null when the model has no pH: it then speaks of its medium alone.</summary>
    public FitRange? PhRange { get; init; }

    /// <summary>Water activities of the fit; null when the model has none.</summary>
    public FitRange? WaterActivityRange { get; init; }

    /// <summary>Acids that slow the growth.</summary>
    public IReadOnlyList<AcidInhibition> Acids { get; init; } = [];

    /// <summary>True when factors near their limits act together (ψ and ξ).</summary>
    public bool Interaction { get; init; }

    /// <summary>Author, journal, year.</summary>
    public required string Source { get; init; }

    /// <summary>What a reader of a result ought to know.</summary>
    public string Note { get; init; } = "";

    /// <summary>
    /// The growth rate; null outside the fit range of any factor that the model has. Factors that it has not are not looked at.
    /// </summary>
    /// <param name="t">Temperature.</param>
    /// <param name="ph">pH.</param>
    /// <param name="waterActivity">Water activity.</param>
    /// <param name="grams">Composition that the acids are taken from; empty for none.</param>
    public GrowthRate? Rate(Celsius t, Ph ph, WaterActivity waterActivity, ReadOnlySpan<double> grams = default)
    {
        if (!TemperatureRange.Covers(t.Value) || PhRange is { } p && !p.Covers(ph.Value) || WaterActivityRange is { } w && !w.Covers(waterActivity.Value))
            return null;
        if (Temperature.At(t.Value) is not { } byT || Ph.At(Ph.Shape == GrowthShape.None ? 0 : ph.Value) is not { } byPh
            || WaterActivity.At(WaterActivity.Shape == GrowthShape.None ? 0 : waterActivity.Value) is not { } byWater)
            return null;
        var rate = Constant * byT * byPh * byWater;
        Span<double> phi = stackalloc double[3 + MostAcids];
        var used = 0;
        phi[used++] = Phi(Temperature, byT);
        phi[used++] = Phi(Ph, byPh);
        phi[used++] = Phi(WaterActivity, byWater);
        if (!grams.IsEmpty)
        {
            for (var i = 0; i < Acids.Count; i++)
            {
                var acid = Acids[i];
                if (AcidBase.Molality(grams, acid.Acid) is not { } total || acid.Undissociated(total.Value * 1000, ph) is not { } undissociated)
                    return null;
                if (total.Value == 0)
                    continue;
                rate *= acid.Factor(undissociated);
                phi[used++] = acid.Phi(undissociated);
            }
        }

        if (!Interaction)
            return new GrowthRate(rate, 0, 1);
        if (GrowthFunctions.Psi(phi.Slice(0, used)) is not { } psi || GrowthFunctions.Xi(psi) is not { } xi)
            return null;
        return new GrowthRate(rate * xi, psi, xi);
    }

    /// <summary>
    /// Growth over a list of holds without a lag, log₁₀; null when any of them lies outside the fit range.
    /// </summary>
    /// <param name="holds">Temperatures and how long each lasts.</param>
    /// <param name="ph">pH.</param>
    /// <param name="waterActivity">Water activity.</param>
    /// <param name="grams">Composition that the acids are taken from; empty for none.</param>
    public double? Log10Increase(ReadOnlySpan<Hold> holds, Ph ph, WaterActivity waterActivity, ReadOnlySpan<double> grams = default)
    {
        double logs = 0;
        foreach (var hold in holds)
        {
            if (!(hold.Minutes >= 0) || Rate(hold.Temperature, ph, waterActivity, grams) is not { } rate)
                return null;
            logs += rate.PerHour * hold.Minutes / 60 / Electrolyte.Ln10;
        }

        return logs;
    }

    private const int MostAcids = 8;

    // φ of a gamma factor: (1 − √γ)², 0 from the reference upward.
    private static double Phi(GrowthFactor factor, double gamma)
    {
        if (factor.Shape == GrowthShape.None || gamma >= 1)
            return 0;
        var root = 1 - Math.Sqrt(gamma);
        return root * root;
    }
}

/// <summary>A temperature held for a time.</summary>
/// <param name="Temperature">Temperature.</param>
/// <param name="Minutes">Minutes.</param>
public readonly record struct Hold(Celsius Temperature, double Minutes);
