namespace SpecLint.Science;

/// <summary>How fast heat kills an organism in a medium: D at a reference temperature and z, each with its range.</summary>
/// <param name="Id">Name of the entry, unique.</param>
/// <param name="Organism">Organism.</param>
/// <param name="Medium">Food it was measured in.</param>
/// <param name="LeastDMinutes">Least D: minutes to a tenth of the number at the reference temperature.</param>
/// <param name="MostDMinutes">Greatest D, min.</param>
/// <param name="ReferenceCelsius">Reference temperature, °C.</param>
/// <param name="LeastZ">Least z below the reference: kelvin to a tenth of D; null when not known.</param>
/// <param name="MostZ">Greatest z below the reference, K; null when not known.</param>
/// <param name="ZAbove">z above the reference where it differs, K; null for the same.</param>
/// <param name="FromCelsius">Least temperature that the entry holds for, °C.</param>
/// <param name="ToCelsius">Greatest temperature that the entry holds for, °C.</param>
/// <param name="TargetLog">Log reduction asked for, or null.</param>
/// <param name="Source">Source; "from memory" is said where so.</param>
/// <param name="Note">What a reader ought to know.</param>
[Source("Bigelow, J. Infect. Dis. 29:528, 1921 (D and z); the source of each entry stands in it")]
public sealed record ThermalResistance(
    string Id, string Organism, string Medium, double LeastDMinutes, double MostDMinutes, double ReferenceCelsius, double? LeastZ, double? MostZ,
    double? ZAbove, double FromCelsius, double ToCelsius, double? TargetLog, string Source, string Note = "")
{
    private const string Chilled = "FSA and Chilled Food Association, Best Practice Guidelines for the Production of Chilled Foods, 4th "
        + "ed. 2006, table of equivalents";

    private const string Textbook = "Thermal Food Processing, table 7.1";

    /// <summary>
    /// D at a temperature with the slowest kill of the ranges, min; null outside the entry's temperatures or when z is not known and t is
    /// not the reference.
    /// </summary>
    /// <param name="t">Temperature.</param>
    public double? DMinutes(Celsius t)
    {
        if (!(t.Value >= FromCelsius && t.Value <= ToCelsius))
            return null;
        var distance = t.Value - ReferenceCelsius;
        if (distance == 0)
            return MostDMinutes;
        // Above the reference a great z kills slowest, below it a small one.
        var z = distance > 0 ? ZAbove ?? MostZ : LeastZ;
        return z is { } k ? MostDMinutes * Math.Pow(10, -distance / k) : null;
    }

    /// <summary>All entries. Where no z is known, an entry speaks of its reference temperature alone.</summary>
    public static IReadOnlyList<ThermalResistance> All { get; } =
    [
        new(
            "c-botulinum-non-proteolytic", "Clostridium botulinum, non-proteolytic, spores", "chilled food",
            10.0 / 6, 10.0 / 6, 90, 9, 9, 10, 80, 100, 6, Chilled,
            "90 °C for 10 minutes is 6 log; z of 9 below and 10 above 90 °C is drawn from the table"),
        new(
            "listeria", "Listeria monocytogenes", "any", 2.0 / 6, 2.0 / 6, 70, 7.5, 7.5, null, 60, 85, 6,
            "Gaze et al. 1989, 70 °C for 2 minutes is 6 log; NZ MPI TP 2016/05"),
        new(
            "e-coli-juice", "Escherichia coli O157:H7, acid-adapted", "fruit juice, pH 3.9",
            0.01, 0.01, 71.1, 5.3, 5.3, null, 56, 72, 5, "Mazzotta, J. Food Prot. 64:315, 2001",
            "in juices 5 log at 71.1 °C took 6 to 12 seconds elsewhere, and acid-adapted Listeria was not reduced by 5 log: Topalcengiz, LWT 108475, 2019"),
        new("listeria-60", "Listeria monocytogenes", "not stated", 2.85, 2.85, 60, null, null, null, 60, 60, null, "USDA FSIS 1990, as cited"),
        new("yersinia-milk", "Yersinia enterocolitica", "milk", 0.40, 0.55, 60, null, null, null, 60, 60, null, "Hanna 1977; Lovett 1982, as cited"),
        new(
            "c-botulinum-e", "Clostridium botulinum type E, spores", "not stated", 0.49, 0.74, 82.2, null, null, null, 82.2, 82.2, null,
            "Lynt et al. 1982, as cited"),
        new("s-aureus-chicken", "Staphylococcus aureus", "chicken à la king", 5.37, 5.37, 60, null, null, null, 60, 60, null, Textbook),
        new(
            "salmonella-senftenberg-turkey", "Salmonella Senftenberg (resistant strain)", "ground turkey", 13.24, 13.24, 60, null, null,
            null, 60, 60, null, Textbook, "211 min at 55 °C, 3.43 min at 65 °C: not one z"),
        new(
            "e-coli-turkey", "Escherichia coli O157:H7", "ground turkey", 5.47, 5.47, 60, null, null, null, 60, 60, null, Textbook,
            "79.4 min at 55 °C, 1.69 min at 65 °C: not one z"),
        new(
            "listeria-turkey", "Listeria monocytogenes", "ground turkey", 2.6, 2.6, 57.2, null, null, null, 57.2, 57.2, null, Textbook,
            "81.3 min at 51.7 °C, 0.6 min at 62.8 °C: not one z"),
        new(
            "e-coli-apple", "Escherichia coli O157:H7", "apple juice, pH 3.5", 12, 18, 52, 4.8, 4.8, null, 52, 58, 5,
            "Splittstoesser et al., J. Food Prot. 59:226, 1996, from memory"),
        new(
            "salmonella-whole-egg", "Salmonella Enteritidis", "liquid whole egg", 0.3, 0.4, 60, 4.0, 4.5, null, 55, 65, 9,
            "Humphrey 1990; USDA 1969, from memory"),
        new(
            "c-botulinum-proteolytic", "Clostridium botulinum, proteolytic, spores", "low-acid food", 0.21, 0.21, 121.1, 10, 10, null, 110,
            130, 12, "Stumbo; Esty & Meyer 1922, from memory"),
        new(
            "b-cereus-spores", "Bacillus cereus, spores", "various", 1, 8, 100, 9, 10, null, 90, 105, null, "textbooks, from memory",
            "not killed by boiling a syrup"),
        new("byssochlamys", "Byssochlamys, ascospores", "fruit juice", 1, 12, 90, 6, 7, null, 80, 95, null, "textbooks, from memory", "survives pasteurising"),
        new(
            "alicyclobacillus", "Alicyclobacillus, spores", "fruit juice", 1, 3, 95, 7, 13, null, 80, 100, null, "textbooks, from memory",
            "survives pasteurising; taint"),
    ];

    /// <summary>An entry by its name, or null.</summary>
    /// <param name="id">Name of the entry.</param>
    public static ThermalResistance? ById(string id)
    {
        foreach (var entry in All)
        {
            if (entry.Id == id)
                return entry;
        }

        return null;
    }
}
