namespace SpecLint.Science;

/// <summary>Where an organism stops growing when all else is at its best. A limit left open is null.</summary>
/// <param name="Organism">Organism.</param>
/// <param name="Group">What it is to a bar.</param>
/// <param name="LowestCelsius">Least temperature, °C.</param>
/// <param name="HighestCelsius">Greatest temperature, °C.</param>
/// <param name="LowestPh">Least pH.</param>
/// <param name="HighestPh">Greatest pH.</param>
/// <param name="LowestWaterActivity">Least water activity.</param>
/// <param name="MostSalt">Greatest salt in the water phase, g per 100 g.</param>
/// <param name="Source">Source; "from memory" is said where so.</param>
[Source("US FDA, Fish and Fishery Products Hazards and Controls, appendix 4, table A-1, 2011 and 2022")]
public sealed record GrowthLimit(
    string Organism, OrganismGroup Group, double? LowestCelsius, double? HighestCelsius, double? LowestPh, double? HighestPh,
    double? LowestWaterActivity, double? MostSalt, string Source)
{
    /// <summary>
    /// Whether growth is ruled out by one factor alone: true when a known factor lies beyond its limit, false when all four known
    /// factors lie within, null when a factor that might rule it out is not known. A limit is not a margin: an uncertain value
    /// belongs on the worse side before it is asked about.
    /// </summary>
    /// <param name="t">Temperature.</param>
    /// <param name="ph">pH, or null.</param>
    /// <param name="waterActivity">Water activity, or null.</param>
    public bool? RulesOut(Celsius? t, Ph? ph, WaterActivity? waterActivity)
    {
        if (t is { } a && (a.Value < LowestCelsius || a.Value > HighestCelsius) || ph is { } b && (b.Value < LowestPh || b.Value > HighestPh)
            || waterActivity is { } c && c.Value < LowestWaterActivity)
            return true;
        var known = (t.HasValue || LowestCelsius is null && HighestCelsius is null) && (ph.HasValue || LowestPh is null && HighestPh is null)
            && (waterActivity.HasValue || LowestWaterActivity is null);
        return known ? false : null;
    }
}

/// <summary>Limits of growth, as data.</summary>
[Source(
    "US FDA, Fish and Fishery Products Hazards and Controls, appendix 4, table A-1, 2011 and 2022; general food microbiology for yeasts "
        + "and moulds (from memory)")]
public static class GrowthLimits
{
    private const string Fda = "US FDA, Fish and Fishery Products Hazards and Controls, app. 4, table A-1 (2011, 2022)";

    private const string FdaMemory = Fda + ", from memory";

    private const string Textbook = "general food microbiology, from memory";

    /// <summary>All limits.</summary>
    public static IReadOnlyList<GrowthLimit> All { get; } =
    [
        new("Clostridium botulinum, type A and proteolytic B and F", OrganismGroup.Pathogen, 10, 48, 4.6, 9, 0.935, 10, Fda),
        new("Clostridium botulinum, type E and non-proteolytic B and F", OrganismGroup.Pathogen, 3.3, 45, 5.0, 9, 0.97, 5, Fda),
        new("Bacillus cereus", OrganismGroup.Pathogen, 4, 55, 4.3, 9.3, 0.92, 10, FdaMemory),
        new("Listeria monocytogenes", OrganismGroup.Pathogen, -0.4, 45, 4.4, 9.4, 0.92, 10, FdaMemory),
        new("Salmonella spp.", OrganismGroup.Pathogen, 5.2, 46.2, 3.7, 9.5, 0.94, 8, FdaMemory),
        new("Escherichia coli, pathogenic", OrganismGroup.Pathogen, 6.5, 49.4, 4, 10, 0.95, 6.5, FdaMemory),
        new("Staphylococcus aureus", OrganismGroup.Pathogen, 7, 50, 4, 10, 0.83, 20, FdaMemory),
        new("Staphylococcus aureus, toxin", OrganismGroup.Pathogen, 10, 48, 4, 9.8, 0.85, 10, FdaMemory),
        new("Clostridium perfringens", OrganismGroup.Pathogen, 10, 52, 5, 9, 0.93, 7, FdaMemory),
        new("Yersinia enterocolitica", OrganismGroup.Pathogen, -1.3, 42, 4.2, 10, 0.945, 7, FdaMemory),
        new("Shigella spp.", OrganismGroup.Pathogen, 6.1, 47.1, 4.8, 9.3, 0.96, 5.2, FdaMemory),
        new("most spoilage yeasts", OrganismGroup.Spoilage, 0, 40, 1.5, 8.5, 0.88, null, Textbook),
        new("osmophilic yeasts", OrganismGroup.Spoilage, 4, 42, 1.8, 8, 0.62, null, Textbook),
        new("most moulds", OrganismGroup.Spoilage, 0, 35, 1.5, 9, 0.80, null, Textbook),
        new("xerophilic moulds", OrganismGroup.Spoilage, 4, 37, 2, 9, 0.61, null, Textbook),
        new("any organism", OrganismGroup.Spoilage, null, null, null, null, 0.60, null, Textbook),
    ];
}
