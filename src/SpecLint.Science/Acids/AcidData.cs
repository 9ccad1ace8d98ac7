namespace SpecLint.Science;

/// <summary>How the ion that a dissociation step makes behaves among other ions, at 25 °C and zero ionic strength.</summary>
/// <param name="Sodium">Coefficient ε of its specific interaction with sodium ions, kg/mol.</param>
/// <param name="Potassium">The same with potassium ions, kg/mol.</param>
/// <param name="Calcium">log₁₀ of the stability constant of its pair with one calcium ion, kg/mol; null where none was found.</param>
/// <param name="Magnesium">The same with magnesium, kg/mol.</param>
/// <param name="Source">Where the figures were read; "from memory" is said where so.</param>
public readonly record struct AnionConstants(double Sodium, double Potassium, double? Calcium, double? Magnesium, string Source);

/// <summary>One dissociation step of an acid in water at 25 °C and zero ionic strength.</summary>
/// <param name="Pka">pKa at 25 °C, molal scale, zero ionic strength.</param>
/// <param name="EnthalpyKilojoules">Standard enthalpy of dissociation, kJ/mol; 0 where none was found.</param>
/// <param name="HeatCapacityJoules">Standard heat capacity of dissociation, J/(mol K); 0 where none was found.</param>
/// <param name="Source">Where the constants were read; "from memory" is said where so.</param>
/// <param name="Anion">How the ion that the step makes behaves among other ions.</param>
public readonly record struct DissociationStep(double Pka, double EnthalpyKilojoules, double HeatCapacityJoules, string Source, AnionConstants Anion);

/// <summary>An acid: molar mass and dissociation steps.</summary>
/// <param name="Name">Name in lower case ("citric").</param>
/// <param name="Component">The component of a composition it is, or null (phthalic acid stands here for the buffer standards alone).</param>
/// <param name="MolarMass">
/// g/mol, of the form a composition weighs (anhydrous; carbon dioxide as CO₂, gluconic acid as its lactone, sulphuric acid as SO₄).
/// </param>
/// <param name="Steps">The dissociation steps, strongest first; three at most.</param>
public sealed record Acid(string Name, Component? Component, double MolarMass, IReadOnlyList<DissociationStep> Steps)
{
    /// <summary>
    /// pKa of a step at a temperature and zero ionic strength:
    /// ln K(T) = ln K(T₀) + ΔH/R (1/T₀ − 1/T) + ΔCp/R (T₀/T − 1 + ln T/T₀), T₀ = 298.15 K.
    /// Null outside 0 to 50 °C, the range of the measurements behind the constants, and for a step the acid does not have.
    /// </summary>
    /// <param name="step">1 for the first proton.</param>
    /// <param name="t">Temperature.</param>
    [Source(
        "Goldberg, Kishore & Lennen, Thermodynamic Quantities for the Ionization Reactions of Buffers, J. Phys. Chem. Ref. Data 31:231, "
            + "2002, section 4, the integrated van 't Hoff equation")]
    public double? Pka(int step, Celsius t)
    {
        if (step < 1 || step > Steps.Count || !Electrolyte.Covers(t))
            return null;
        var s = Steps[step - 1];
        return s.Pka - Electrolyte.VanTHoff(s.EnthalpyKilojoules * 1000, s.HeatCapacityJoules, t) / Electrolyte.Ln10;
    }
}

/// <summary>The acids the charge balance knows, in the order of <see cref="Science.Component"/>, as data.</summary>
[Source(
    "Goldberg, Kishore & Lennen, J. Phys. Chem. Ref. Data 31:231, 2002; Hummel et al., Chemical Thermodynamics of Compounds and Complexes "
        + "with Selected Organic Ligands, NEA 2005; NIST Standard Reference Database 46 as in the minteq.v4 file of PHREEQC; the source "
        + "of each constant stands beside it")]
public static class AcidData
{
    /// <summary>Number of acids: the length of a span of molalities by acid.</summary>
    public const int Count = 19;

    /// <summary>Steps kept for each acid; those an acid does not have are nought.</summary>
    internal const int MaxSteps = 3;

    private const string Goldberg = "Goldberg, Kishore & Lennen, J. Phys. Chem. Ref. Data 31:231, 2002; pKa also NIST 46 (minteq.v4)";

    private const string EdenBates = "Eden & Bates, Dissociation constants and related thermodynamic quantities for DL-malic acid, J. Res. NBS 62:161, 1959";

    private const string Aqion = "Table of organic acids of a public hydrochemistry text; ΔH and ΔCp of Goldberg et al. 2002";

    private const string Nea =
        "ε(Na) and log K: ThermoChimie sit.dat of PHREEQC (Hummel, Anderegg et al., NEA 2005; Grivé, Campos et al. 2013); ε(K): NEA 2005, from memory";

    private const string Nist = "ε(Na): ThermoChimie sit.dat of PHREEQC, ε(K): NEA 2005, from memory; log K: NIST 46 (minteq.v4)";

    internal const string ProteinSource =
        "carboxyl groups of ovalbumin, β-lactoglobulin and serum albumin, 1.0 to 1.5 mol/kg, pK 4.0 to 4.6: Cannan, Kibrick and Palmer "
        + "1941 and 1942, Tanford et al. 1955, from memory";

    /// <summary>Positive charge of protein, mol/g: as much as its carboxyl groups leave negative at an isoelectric point of pH 5.</summary>
    internal const double ProteinBase = 0.91e-3;

    private const string Kin =
        "ε as of its kin (acetate, gluconate, oxalate); log K: Martell & Smith, Critical Stability Constants, from memory, where one is given";

    /// <summary>All acids; an acid's place is its index.</summary>
    public static IReadOnlyList<Acid> All { get; } =
    [
        new("citric", Component.Citric, 192.124,
            [
                new(3.128, 4.07, -131, Goldberg, new(-0.05, -0.04, 1.53, 1.31, Nea)),
                new(4.761, 2.23, -178, Goldberg, new(-0.04, -0.01, 2.92, 2.60, Nea)),
                new(6.396, -3.38, -254, Goldberg, new(-0.076, 0.02, 4.80, 4.81, Nea)),
            ]),
        new("malic", Component.Malic, 134.087,
            [new(3.458, 2.95, -155, EdenBates, new(-0.07, -0.01, 1.06, null, Kin)), new(5.097, -1.18, -221, EdenBates, new(-0.08, 0.07, 2.66, 2.3, Kin))]),
        new("tartaric", Component.Tartaric, 150.087,
            [new(3.036, 3.19, -147, Goldberg, new(-0.07, -0.01, 1.11, null, Kin)), new(4.366, 0.93, -218, Goldberg, new(-0.08, 0.07, 2.80, 1.9, Kin))]),
        new("lactic", Component.Lactic, 90.078, [new(3.86, -0.33, -170, Aqion, new(0.08, 0.09, 1.48, 1.37, Kin))]),
        new("acetic", Component.Acetic, 60.052, [new(4.756, -0.41, -142, Goldberg, new(0.08, 0.09, 1.18, 1.27, Nist))]),
        new("phosphoric", Component.Phosphoric, 97.995,
            [
                new(2.148, -8.0, -141, Goldberg, new(-0.08, -0.14, 1.35, 1.68, Nist)),
                new(7.198, 3.6, -230, Goldberg, new(-0.15, -0.10, 2.66, 2.80, Nist)),
                new(12.35, 16.0, -242, Goldberg, new(-0.25, -0.09, 6.46, 4.65, Nist)),
            ]),
        new("succinic", Component.Succinic, 118.088,
            [new(4.207, 3.0, -121, Aqion, new(-0.07, -0.01, null, null, Kin)), new(5.636, -0.5, -217, Aqion, new(-0.08, 0.07, 2.34, 2.27, Nea))]),
        new("ascorbic", Component.Ascorbic, 176.124,
            [
                new(4.17, 16.2, 0, "CRC Handbook, from memory; ΔH doubtful", new(-0.07, -0.07, null, null, Kin)),
                new(11.57, 0, 0, "CRC Handbook, from memory", new(-0.08, 0.07, null, null, Kin)),
            ]),
        new("oxalic", Component.Oxalic, 90.034,
            [new(1.27, -3.9, -231, Aqion, new(-0.07, -0.01, null, null, Nea)), new(4.266, 7.0, -231, Aqion, new(-0.08, 0.07, 3.19, 3.56, Nea))]),
        new("fumaric", Component.Fumaric, 116.072,
            [
                new(3.03, 0.4, -140, "CRC Handbook 3.03", new(-0.07, -0.01, null, null, Kin)),
                new(4.49, -2.9, -180, "CRC Handbook 4.44 to 4.49; other tables 4.38: doubtful", new(-0.08, 0.07, 2.0, null, Kin)),
            ]),
        new("quinic", Component.Quinic, 192.167, [new(3.46, 0, 0, "literature 3.36 to 3.58, from memory", new(-0.07, -0.07, null, null, Kin))]),
        new("gluconic", Component.Gluconic, 178.140, [new(3.86, 0, 0, "NIST 46, from memory", new(-0.07, -0.07, 1.73, 0.81, Nea))]),
        new("benzoic", Component.Benzoic, 122.121,
            [new(4.202, 0.46, 0, "NIST 46 (minteq.v4): log K 4.202, ΔH of association −0.46 kJ/mol", new(0.08, 0.09, null, null, Kin))]),
        new("sorbic", Component.Sorbic, 112.127,
            [new(4.76, 0, 0, "Mejlholm & Dalgaard, J. Food Prot. 72:2132, 2009 (pKa used)", new(0.08, 0.09, null, null, Kin))]),
        new("carbonic", Component.CarbonDioxide, 44.0095,
            [new(6.351, 9.15, -371, Goldberg, new(0, -0.06, 1.27, 1.01, Nist)), new(10.329, 14.7, -249, Goldberg, new(-0.08, 0.02, 3.22, 2.92, Nist))]),
        new("sulphuric", Component.Sulphate, 96.063,
            [
                new(-3, 0, 0, "a strong acid: any figure below 0 gives the same", new(-0.01, -0.01, null, null, Nea)),
                new(1.98, -22.4, 0, "ThermoChimie sit.dat of PHREEQC (Grenthe, Fuger et al., NEA 1992)", new(-0.12, -0.12, 2.31, 2.23, Nea)),
            ]),
        new("protein", Component.Protein, 1000, [new(4.0, 0, 0, ProteinSource, new(0, 0, null, null, ProteinSource))]),
        new("phthalic", null, 166.131,
            [
                new(2.95, -2.7, -91, Goldberg, new(-0.07, -0.01, null, null, Kin)),
                new(5.408, -2.17, -295, Goldberg, new(-0.08, 0.07, null, null, Kin)),
            ]),
        new("isocitric", null, 192.124,
            [
                new(3.287, 0, 0, "Martell & Smith, Critical Stability Constants, from memory", new(-0.05, -0.04, null, null, Kin)),
                new(4.714, 0, 0, "the same", new(-0.04, -0.01, null, null, Kin)),
                new(6.396, 0, 0, "the same", new(-0.076, 0.02, null, null, Kin)),
            ]),
    ];

    /// <summary>Molar mass of sodium chloride, g/mol.</summary>
    internal const double SodiumChlorideMolarMass = 58.443;

    /// <summary>Molar mass of sodium, g/mol.</summary>
    internal const double SodiumMolarMass = 22.990;

    /// <summary>Molar mass of potassium, g/mol.</summary>
    internal const double PotassiumMolarMass = 39.098;

    /// <summary>Molar mass of calcium, g/mol.</summary>
    internal const double CalciumMolarMass = 40.078;

    /// <summary>Molar mass of magnesium, g/mol.</summary>
    internal const double MagnesiumMolarMass = 24.305;

    /// <summary>Molar mass of chloride, g/mol.</summary>
    internal const double ChlorideMolarMass = 35.453;

    // Ahead of what is worked out from it.
    internal static readonly double[] LnK25 = Flat(s => -s.Pka * Electrolyte.Ln10);

    // The same constants laid flat for the solver: of ε the step's ion less the one before it, of a pair its constant (0: none).
    internal static readonly double[] SodiumSteps = Steps(a => a.Sodium);
    internal static readonly double[] PotassiumSteps = Steps(a => a.Potassium);
    internal static readonly double[] CalciumPairs = Flat(s => Constant(s.Anion.Calcium));
    internal static readonly double[] MagnesiumPairs = Flat(s => Constant(s.Anion.Magnesium));
    internal static readonly double[] Enthalpy = Flat(s => s.EnthalpyKilojoules * 1000 / Electrolyte.GasConstant);
    internal static readonly double[] HeatCapacity = Flat(s => s.HeatCapacityJoules / Electrolyte.GasConstant);
    internal static readonly double[] InverseMolarMass = [.. All.Select(a => 1 / a.MolarMass)];
    internal static readonly int[] StepCount = [.. All.Select(a => a.Steps.Count)];

    /// <summary>The index of a component among the acids, or −1.</summary>
    public static int IndexOf(Component component) =>
        component is >= Components.FirstAcid and <= Component.Sulphate ? component - Components.FirstAcid : -1;

    /// <summary>The place of protein, whose carboxyl groups stand here as an acid of 1 mol/kg.</summary>
    internal const int Protein = Component.Sulphate - Components.FirstAcid + 1;

    /// <summary>The acid that a component is, or null.</summary>
    public static Acid? Of(Component component) => IndexOf(component) is >= 0 and var i ? All[i] : null;

    private static double Constant(double? log) => log is { } l ? Math.Pow(10, l) : 0;

    private static double[] Steps(Func<AnionConstants, double> of)
    {
        var steps = Flat(s => of(s.Anion));
        for (var i = steps.Length - 1; i > 0; i--)
        {
            if (i % MaxSteps > 0 && LnK25[i] != 0)
                steps[i] -= steps[i - 1];
        }

        return steps;
    }

    private static double[] Flat(Func<DissociationStep, double> value)
    {
        var flat = new double[Count * MaxSteps];
        for (var a = 0; a < Count; a++)
        {
            for (var s = 0; s < All[a].Steps.Count; s++)
                flat[a * MaxSteps + s] = value(All[a].Steps[s]);
        }

        return flat;
    }
}
