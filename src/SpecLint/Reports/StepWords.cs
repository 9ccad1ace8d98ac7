using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>The method of a recipe in words for those who make it.</summary>
internal static class StepWords
{
    /// <summary>A step as a short sentence: <c>Shake gin, lime juice with cubed ice, 12 s</c>.</summary>
    /// <param name="step">The step.</param>
    /// <param name="nameOf">The name of an id.</param>
    /// <param name="units">Units of volume and temperature.</param>
    public static string Of(Step step, Func<string, string> nameOf, DisplayUnits units)
    {
        string verb = (step.Written.Length > 0 ? step.Written : step.Verb.Id).Replace('-', ' ');
        string first = verb.Length == 0 ? "…" : char.ToUpperInvariant(verb[0]) + verb.Substring(1);
        if (step.Items.Count > 0) first += " " + Say.List([.. step.Items.Select(i => nameOf(i.Value))]);
        if (step.Amount.IsGiven) first += $", {Written(step.Amount.Value, units)}";
        if (step.HasIce) first += $" with {(step.IceWritten.Length > 0 ? step.IceWritten : step.Ice.Value.Id).Replace('-', ' ')} ice";
        if (step.Into.IsGiven) first += $" into the {step.Into.Value.Replace('-', ' ')}";
        if (step.Vessel.IsGiven) first += $", in {nameOf(step.Vessel.Value.Id)}";
        if (step.At.IsGiven) first += $", at {Written(step.At.Value, units)}";
        if (step.To.IsGiven) first += $", to {Written(step.To.Value, units)}";
        if (step.For.IsGiven) first += $", {Written(step.For.Value, units)}";
        if (step.Until.IsGiven) first += $", until {step.Until.Value}";
        return step.Note.IsGiven ? $"{first} ({step.Note.Value})" : first;
    }

    /// <summary>An amount as the recipe writes it, in the units of the view where it is metric.</summary>
    internal static string Written(Quantity amount, DisplayUnits units) => amount switch
    {
        { Dimension: Dimension.Volume, Unit.System: UnitSystem.Metric } when amount.Low == amount.High => units.Pour(amount.Base),
        { Dimension: Dimension.Temperature } => units.Temperature(amount.Base),
        _ => Rounding.Words(amount.Base, amount),
    };
}
