namespace SpecLint.Science;

/// <summary>
/// A standard error: one standard deviation of the distribution of a value about the truth, in the unit of the value.
/// It is no range: <see cref="Tolerance"/> is.
/// </summary>
/// <param name="Value">Standard deviation, 0 or more.</param>
public readonly record struct StandardError(double Value)
{
    /// <summary>Standard deviations to each side that hold 95 % of a normal distribution.</summary>
    public const double Coverage = 1.96;

    /// <summary>The half width of the range that holds about 95 %.</summary>
    [Source("JCGM 100:2008, 6.3.3: coverage factor 1.96 for 95 % of a normal distribution")]
    public Tolerance Tolerance => new(Coverage * Value);

    /// <summary>The standard error of the sum of two independent errors.</summary>
    /// <param name="other">The other error, in the same unit.</param>
    [Source("JCGM 100:2008, 5.1.2: independent variances add")]
    public StandardError With(StandardError other) => new(Math.Sqrt((Value * Value) + (other.Value * other.Value)));
}

/// <summary>A tolerance: the half width of the range that holds about 95 %, as meters, scales and printed ranges give it.</summary>
/// <param name="HalfWidth">Half width, 0 or more, in the unit of the value.</param>
public readonly record struct Tolerance(double HalfWidth)
{
    /// <summary>The standard error of a normal distribution with this half width.</summary>
    [Source("JCGM 100:2008, 4.3.4: a quoted half width of 95 % divided by 1.96")]
    public StandardError StandardError => new(HalfWidth / StandardError.Coverage);
}

/// <summary>
/// How far a model is from measurement, as data: the standard error at a value is √(f² + (s·(value − z))²), with a floor f, a share s
/// and the value z from which the share counts (a water activity of 1, the density of water, a freezing point of 0).
/// </summary>
/// <param name="Floor">The standard error that remains where the share comes to nought, in <paramref name="Unit"/>.</param>
/// <param name="Share">Standard error as a share of the distance from <paramref name="Zero"/>.</param>
/// <param name="Zero">The value from which the share counts, in <paramref name="Unit"/>.</param>
/// <param name="Unit">UCUM unit of the value.</param>
/// <param name="Lowest">Lowest value that was held against measurement.</param>
/// <param name="Highest">Highest value that was held against measurement.</param>
/// <param name="Measured">How the figure was measured: the tables, their points, or the judgement it rests on.</param>
public readonly record struct ModelError(StandardError Floor, double Share, double Zero, string Unit, double Lowest, double Highest, string Measured)
{
    /// <summary>The standard error of the model where it answers a value.</summary>
    /// <param name="value">The value, in <see cref="Unit"/>.</param>
    /// <returns>Standard error in the same unit; also outside the tested range, where it is a guess: see <see cref="IsTested"/>.</returns>
    [Source("JCGM 100:2008, 5.1.2: independent variances add")]
    public StandardError At(double value) => Floor.With(new(Share * Math.Abs(value - Zero)));

    /// <summary>Whether the model was held against measurement where it answers a value.</summary>
    /// <param name="value">The value, in <see cref="Unit"/>.</param>
    [Source("JCGM 200:2012, 2.45: a validation holds for the range it was made over")]
    public bool IsTested(double value) => value >= Lowest && value <= Highest;
}
