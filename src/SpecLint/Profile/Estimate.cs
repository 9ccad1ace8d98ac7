using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>A computed value with its range of about 95 %.</summary>
/// <param name="Value">The value; NaN outside the range of the model.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
internal readonly record struct Estimate(double Value, double Low, double High)
{
    /// <summary>Whether the model was held against measurement there.</summary>
    public bool IsTested { get; init; } = true;

    /// <summary>The same, marked where the model was not held against measurement there.</summary>
    public Estimate Tested(bool isTested) => this with { IsTested = IsTested && isTested };

    /// <summary>The same in another unit, or by another amount.</summary>
    public Estimate Times(double factor) => this with { Value = Value * factor, Low = Low * factor, High = High * factor };

    /// <summary>With the error of the model, which is independent of the inputs and adds by squares.</summary>
    /// <param name="error">The error of the model at the value, in the unit of the value.</param>
    public Estimate With(StandardError error)
    {
        double half = error.Tolerance.HalfWidth;
        double below = Math.Sqrt(((Value - Low) * (Value - Low)) + (half * half));
        double above = Math.Sqrt(((High - Value) * (High - Value)) + (half * half));
        return this with { Low = Value - below, High = Value + above };
    }

    /// <summary>Kept to what the quantity can be.</summary>
    /// <param name="floor">Least value the quantity can have.</param>
    /// <param name="ceiling">Largest.</param>
    public Estimate Within(double floor, double ceiling) =>
        this with { Low = Math.Max(Math.Min(floor, Value), Low), High = Math.Min(Math.Max(ceiling, Value), High) };

    /// <summary>Kept at 0 or more.</summary>
    public Estimate NotNegative => Within(0, double.PositiveInfinity);

    /// <summary>As a computed fact; open where it is not a number.</summary>
    public FactValue ToFact() => double.IsNaN(Value) || double.IsNaN(Low) || double.IsNaN(High)
        ? FactValue.Open("it lies outside the range of the model")
        : new FactValue(Value, Low, High, "computed", null).Tested(IsTested);
}
