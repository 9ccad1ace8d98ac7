namespace Saltmarsh.Rules;

/// <summary>A limit that the house has set for itself.</summary>
/// <param name="Value">The value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Source">Where it is written down.</param>
internal sealed record HouseLimit(double Value, string Unit, string Source);

/// <summary>The house's limits, in one place, each with its source: a finding names both.</summary>
internal static class HouseLimits
{
    /// <summary>Most sugar of a drink as served.</summary>
    public static readonly HouseLimit Sugar = new(12, "g/100 mL", "house book of The Saltmarsh Room, 2026");
}
