namespace SpecLint.Profile;

/// <summary>A computed value with its range of about 95 %.</summary>
/// <param name="Value">The value; NaN outside the range of the model.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
internal readonly record struct Estimate(double Value, double Low, double High)
{
    /// <summary>The same in another unit, or by another amount.</summary>
    public Estimate Times(double factor) => new(Value * factor, Low * factor, High * factor);

    /// <summary>
    /// With the error of the model, which is independent of the inputs and adds by squares, kept to what the quantity can be.
    /// </summary>
    /// <param name="standardError">One standard error of the model, in the unit of the value.</param>
    /// <param name="floor">Least value the quantity can have.</param>
    /// <param name="ceiling">Largest.</param>
    public Estimate With(double standardError, double floor = 0, double ceiling = double.PositiveInfinity)
    {
        double half = standardError * Propagation.Coverage;
        double high = Value + Math.Sqrt(((High - Value) * (High - Value)) + (half * half));
        double low = Value - Math.Sqrt(((Value - Low) * (Value - Low)) + (half * half));
        return new Estimate(Value, Math.Max(Math.Min(floor, Value), low), Math.Max(Value, Math.Min(ceiling, high)));
    }

    /// <summary>As a computed fact; open where it is not a number.</summary>
    public FactValue ToFact() => double.IsNaN(Value) || double.IsNaN(Low) || double.IsNaN(High)
        ? FactValue.Open("it lies outside the range of the model")
        : new FactValue(Value, Low, High, "computed", null);
}
