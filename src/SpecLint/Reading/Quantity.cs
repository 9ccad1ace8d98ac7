namespace SpecLint.Reading;

/// <summary>What a quantity measures; the base unit in which <see cref="Quantity.Base"/> gives it.</summary>
public enum Dimension
{
    /// <summary>A bare number (pH, water activity, a count of drinks).</summary>
    Number,

    /// <summary>Volume, mL.</summary>
    Volume,

    /// <summary>Mass, g.</summary>
    Mass,

    /// <summary>Pieces.</summary>
    Count,

    /// <summary>Temperature, °C.</summary>
    Temperature,

    /// <summary>Duration, s.</summary>
    Duration,

    /// <summary>g per 100 g.</summary>
    PercentByMass,

    /// <summary>g per 100 mL.</summary>
    PercentMassInVolume,

    /// <summary>mL per 100 mL.</summary>
    PercentByVolume,

    /// <summary>A percentage without a basis.</summary>
    PercentOfUnknownBasis,

    /// <summary>Density, g/mL.</summary>
    Density,

    /// <summary>Pressure, bar.</summary>
    Pressure,

    /// <summary>Energy, kcal.</summary>
    Energy,

    /// <summary>Dissolved solids, °Bx.</summary>
    Brix,

    /// <summary>Strength in US proof; base % vol.</summary>
    Proof,

    /// <summary>Relative share ("2 parts").</summary>
    Part,
}

/// <summary>The system that a unit belongs to.</summary>
public enum UnitSystem
{
    /// <summary>SI and metric.</summary>
    Metric,

    /// <summary>US customary.</summary>
    UnitedStates,

    /// <summary>Imperial.</summary>
    Imperial,

    /// <summary>A measure of the trade whose size a house sets (dash, barspoon, oz …).</summary>
    Trade,

    /// <summary>Pieces.</summary>
    Piece,

    /// <summary>None (bare numbers, percentages).</summary>
    None,
}

/// <summary>How a quantity was written, where that matters to a rule.</summary>
[Flags]
public enum QuantityForm
{
    /// <summary>As usual.</summary>
    Plain = 0,

    /// <summary>A comma is used as the decimal point.</summary>
    DecimalComma = 1,

    /// <summary>A range of numbers.</summary>
    Range = 2,

    /// <summary>A unit word without a number ("top", "splash").</summary>
    NumberLeftOut = 4,

    /// <summary>A fraction ("1/2", "1 1/2", "½").</summary>
    Fraction = 8,
}

/// <summary>A unit: what it measures and how it converts to the base unit of its dimension.</summary>
/// <param name="Name">Canonical spelling, e.g. <c>ml</c>, <c>dash</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="System">Its system.</param>
/// <param name="Factor">Base units in one of it (typical).</param>
/// <param name="Low">Base units in one of it, low end (equal to <paramref name="Factor"/> where exact).</param>
/// <param name="High">Base units in one of it, high end.</param>
/// <param name="Offset">Added after the factor (°F to °C).</param>
public sealed record Unit(string Name, Dimension Dimension, UnitSystem System, double Factor, double Low, double High, double Offset = 0);

/// <summary>
/// A number (or range) and a unit, as written. Numbers are in the unit as written; <see cref="Unit"/> converts.
/// </summary>
/// <param name="Value">The number; of a range its middle.</param>
/// <param name="Low">Low end of the range, or the number.</param>
/// <param name="High">High end of the range, or the number.</param>
/// <param name="Unit">The unit; a trade measure has the house's value already.</param>
/// <param name="Form">How it was written.</param>
public readonly record struct Quantity(double Value, double Low, double High, Unit Unit, QuantityForm Form)
{
    /// <summary>What it measures.</summary>
    public Dimension Dimension => Unit.Dimension;

    /// <summary>The typical amount in the base unit of its dimension.</summary>
    public double Base => (Value * Unit.Factor) + Unit.Offset;

    /// <summary>The low end in the base unit.</summary>
    public double BaseLow => (Low * Unit.Low) + Unit.Offset;

    /// <summary>The high end in the base unit.</summary>
    public double BaseHigh => (High * Unit.High) + Unit.Offset;
}
