namespace SpecLint.Science;

/// <summary>Cations that salts are made of here.</summary>
internal enum Cation
{
    Sodium,
    Potassium,
    Calcium,
    Magnesium,
}

/// <summary>Anions that salts are made of here; those of acids of food stand together.</summary>
internal enum Anion
{
    Organic,
    Chloride,
    Sulphate,
    Bicarbonate,
}

/// <summary>
/// The salts that the ions of a composition come to: cations share the anions in proportion, by equivalents. Anions are taken in the order chloride,
/// sulphate, those of the acids as far as they can give up protons, bicarbonate; what is left counts with the acids. Sodium chloride is a component of its
/// own and is not among them.
/// </summary>
[Source("Young and Smith, J. Phys. Chem. 58:716, 1954 (salts of a mixture by equivalent fractions)")]
internal static class Salts
{
    /// <summary>Number of pairs of a cation and an anion.</summary>
    public const int Count = 16;

    private const double SulphateMolarMass = 96.063;

    // mol of charge a gram of acid when it has given up all protons that it does below pH 9.
    private static readonly double[] Capacity = Capacities();

    /// <summary>Whether a composition has ions beyond those of sodium chloride.</summary>
    public static bool Any(ReadOnlySpan<double> grams) =>
        grams[(int)Component.Potassium] > 0 || grams[(int)Component.Sodium] > 0 || grams[(int)Component.Calcium] > 0 || grams[(int)Component.Magnesium] > 0;

    /// <summary>The place of a salt: those of food acids, which nearly every drink has, come first.</summary>
    public static int Place(Cation cation, Anion anion) => ((int)anion * 4) + (int)cation;

    /// <summary>Equivalents of each salt.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <param name="equivalents">Receives mol of charge, by <see cref="Place"/>, of those that there are.</param>
    /// <returns>The salts that there are: bit n stands for the n-th place.</returns>
    public static uint Of(ReadOnlySpan<double> grams, Span<double> equivalents)
    {
        var sodium = grams[(int)Component.Sodium] * (1 / AcidData.SodiumMolarMass);
        var potassium = grams[(int)Component.Potassium] * (1 / AcidData.PotassiumMolarMass);
        var calcium = grams[(int)Component.Calcium] * (2 / AcidData.CalciumMolarMass);
        var magnesium = grams[(int)Component.Magnesium] * (2 / AcidData.MagnesiumMolarMass);
        var all = sodium + potassium + calcium + magnesium;
        if (!(all > 0))
            return 0;
        var chloride = grams[(int)Component.Chloride] * (1 / AcidData.ChlorideMolarMass);
        var sulphate = grams[(int)Component.Sulphate] * (2 / SulphateMolarMass);
        var gas = grams[(int)Component.CarbonDioxide];
        double bicarbonate = 0;
        if (chloride + sulphate > all)
        {
            var share = all / (chloride + sulphate);
            chloride *= share;
            sulphate *= share;
        }

        var organic = all - chloride - sulphate;
        if (gas > 0 && organic > 0)
        {
            bicarbonate = Math.Min(gas / 44.0095, Math.Max(0, organic - CapacityOf(grams)));
            organic -= bicarbonate;
        }

        var cations = (sodium, potassium, calcium, magnesium);
        uint present = 0;
        Share(equivalents, Anion.Organic, organic / all, cations, ref present);
        if (organic < all)
        {
            Share(equivalents, Anion.Chloride, chloride / all, cations, ref present);
            Share(equivalents, Anion.Sulphate, sulphate / all, cations, ref present);
            Share(equivalents, Anion.Bicarbonate, bicarbonate / all, cations, ref present);
        }

        return present;
    }

    private static void Share(
        Span<double> equivalents, Anion anion, double share, (double Sodium, double Potassium, double Calcium, double Magnesium) cations, ref uint present)
    {
        if (!(share > 0))
            return;
        var place = (int)anion * 4;
        Put(equivalents, place, cations.Sodium * share, ref present);
        Put(equivalents, place + 1, cations.Potassium * share, ref present);
        Put(equivalents, place + 2, cations.Calcium * share, ref present);
        Put(equivalents, place + 3, cations.Magnesium * share, ref present);
    }

    private static void Put(Span<double> equivalents, int place, double amount, ref uint present)
    {
        if (!(amount > 0))
            return;
        equivalents[place] = amount;
        present |= 1u << place;
    }

    private static double CapacityOf(ReadOnlySpan<double> grams)
    {
        double sum = 0;
        for (var c = (int)Components.FirstAcid; c <= (int)Components.LastAcid; c++)
            sum += grams[c] * Capacity[c - (int)Components.FirstAcid];
        return sum;
    }

    private static double[] Capacities()
    {
        const double highest = 9;
        var capacity = new double[Components.LastAcid - Components.FirstAcid + 1];
        for (var a = 0; a < capacity.Length; a++)
        {
            var acid = AcidData.All[a];
            capacity[a] = acid.Steps.Count(s => s.Pka < highest) / acid.MolarMass;
        }

        return capacity;
    }
}

/// <summary>What one equivalent of a salt does to a solution.</summary>
/// <param name="Volume">Apparent volume, cm³, of the salt's ions (for anions of acids: of the cation in place of hydrogen): a + b w + c w².</param>
/// <param name="LastShare">Last w, the share of all solutes in solutes and water, to which that was fitted.</param>
/// <param name="Refraction">Grams of sucrose that bend light as it does: a + b w.</param>
/// <param name="Room">Activity of water at 25 °C.</param>
/// <param name="Freezing">The same at the freezing point.</param>
internal readonly record struct SaltEffect(Parabola Volume, double LastShare, Parabola Refraction, OsmoticCurve Room, OsmoticCurve Freezing);

/// <summary>a + b x + c x².</summary>
internal readonly record struct Parabola(double A, double B, double C)
{
    public double At(double x) => A + (x * (B + (x * C)));
}

/// <summary>
/// −ln a<sub>w</sub> of a salt alone over M<sub>W</sub> x, x its equivalents a kilogram of water: n + a √x/(1 + √x) + b x + c x², n the particles of an
/// equivalent that no other component counts; held at the last x measured, and the whole at saturation.
/// </summary>
internal readonly record struct OsmoticCurve(double Particles, double A, double B, double C, double Last, double Saturated)
{
    private const double KilogramsPerMole = WaterActivityModel.MolarWater / 1000;

    /// <summary>−ln a<sub>w</sub>.</summary>
    public double LogActivity(double x)
    {
        x = Math.Min(x, Saturated);
        var y = Math.Min(x, Last);
        var root = Math.Sqrt(y);
        return KilogramsPerMole * x * (Particles + (A * root / (1 + root)) + (y * (B + (y * C))));
    }
}

/// <summary>
/// The effects of salts as data. Volumes: potassium chloride, sodium bicarbonate and trisodium citrate from the CRC Handbook (20 °C); calcium and magnesium
/// chloride, sulphates, potassium bicarbonate from the correlation of Laliberté 2009 at 20 °C; the rest by adding up ions. Refraction: the same three from the
/// handbook's n(D), the others by the Lorentz–Lorenz formula from those densities and molar refractions (9.2 NaCl, 11.28 KCl, 18.7 CaCl₂, 16.8 MgCl₂,
/// 13.3 MgSO₄, 15.1 Na₂SO₄, 19.3 K₂SO₄ cm³/mol; those of divalent salts from memory). Activity of water: Pitzer's equations at 25 °C with
/// the parameters of Pitzer and Mayorga 1973 and of PHREEQC's
/// pitzer.dat; at the freezing point the CRC Handbook, the Smithsonian Physical Tables (9th ed. 1956) and Melinder (CaCl₂, by way of CoolProp); own fits.
/// </summary>
[Source(
    "CRC Handbook of Chemistry and Physics, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions; M. Laliberté, J. Chem. Eng. "
        + "Data 54 (2009) 1725")]
[Source(
    "K. S. Pitzer and G. Mayorga, J. Phys. Chem. 77 (1973) 2300; Forsythe, Smithsonian Physical Tables, 9th ed. 1956, freezing point "
        + "lowering by electrolytes; Melinder, IIR 2010")]
internal static class SaltEffects
{
    /// <summary>By <see cref="Salts.Place"/>.</summary>
    public static readonly SaltEffect[] All = Make();

    private static SaltEffect[] Make()
    {
        const double none = double.PositiveInfinity;
        var all = new SaltEffect[Salts.Count];

        // Sodium. The chloride is the component's own curve (CRC) in equivalents; here it comes only of mixing other salts.
        Put(
            Cation.Sodium, Anion.Chloride, new(16.999, 21.082, -20.199), 0.26, new(70.7, -21.5, 0),
            new(2, -0.5209, 0.1284, 0.0040, 6.15, 6.15), new(2, -0.5299, 0.0747, 0.0065, 5.2, 5.2));
        Put(
            Cation.Sodium, Anion.Sulphate, new(7.057, 36.011, -14.832), 0.20, new(75.870, -48.807, 0),
            new(1.5, -0.9095, -0.0162, 0.0068, 4, 4), new(1.5, -0.9095, -0.0162, 0.0068, 4, 4));
        Put(
            Cation.Sodium, Anion.Bicarbonate, new(-26.958, 59.769, 0), 0.049, new(81.626, -119.163, 0),
            new(1, -0.7370, 0.1031, -0.0152, 1, 1.23), new(1, -0.7138, -0.0543, 0, 0.85, 1.0));
        Put(
            Cation.Sodium, Anion.Organic, new(-19.107, 17.898, 13.564), 0.32, new(63.999, -33.953, 0), new(1, -0.9188, 0.0685, 0, 4, none),
            new(1, -0.9188, 0.0685, 0, 2.2, none));

        // Potassium.
        Put(
            Cation.Potassium, Anion.Chloride, new(27.127, 20.217, -21.382), 0.24, new(69.452, -10.666, 0),
            new(2, -0.5622, 0.0788, -0.0006, 4.8, 4.8), new(2, -0.6007, 0.0625, -0.0055, 3.3, 3.3));
        Put(
            Cation.Potassium, Anion.Sulphate, new(17.240, 31.854, -4.712), 0.11, new(76.075, -44.039, 0),
            new(1.5, -1.0992, 0.1120, -0.0272, 1.3, 1.3), new(1.5, -1.0555, 0.0335, 0, 1, 1));
        Put(
            Cation.Potassium, Anion.Bicarbonate, new(-17.282, 38.261, -21.883), 0.20, new(82.076, -41.623, 0),
            new(1, -0.7460, 0.0834, -0.0178, 3, 3.3), new(1, -0.7460, 0.0834, -0.0178, 2, 2.5));

        // As sodium; the volume moved by the difference of the two acetates (Laliberté 2009).
        Put(
            Cation.Potassium, Anion.Organic, new(-9.195, 10, 10), 0.32, new(63.999, -33.953, 0), new(1, -0.9188, 0.0685, 0, 4, none),
            new(1, -0.9188, 0.0685, 0, 2.2, none));

        // Calcium.
        Put(
            Cation.Calcium, Anion.Chloride, new(11.162, 7.788, 12.014), 0.45, new(89.961, -11.516, 0),
            new(1.5, -0.8681, 0.2830, 0.0021, 9, 13.4), new(1.5, -0.3816, 0.1276, 0.0177, 7.4, 7.7));
        Put(
            Cation.Calcium, Anion.Sulphate, new(1.22, 30, 0), 0.01, new(83, -33, 0), new(1, -1.0585, 0.0507, 0.0104, 0.03, 0.03),
            new(1, -1.1592, 0.1237, -0.0027, 0.03, 0.03));
        Put(Cation.Calcium, Anion.Bicarbonate, new(-32.8, 50, 0), 0.05, new(82, -42, 0), new(0.5, -0.45, 0, 0, 0.1, 0.1), new(0.5, -0.45, 0, 0, 0.1, 0.1));
        Put(Cation.Calcium, Anion.Organic, new(-22.5, 17, 17), 0.10, new(64, -34, 0), new(0.5, -0.45, 0.05, 0, 1, none), new(0.5, -0.45, 0.05, 0, 1, none));

        // Magnesium.
        Put(
            Cation.Magnesium, Anion.Chloride, new(9.240, 10.979, 7.614), 0.32, new(81.504, -14.882, 0),
            new(1.5, -0.8317, 0.3108, 0.0064, 8, 11), new(1.5, -0.8317, 0.3108, 0.0064, 6, 6));
        Put(
            Cation.Magnesium, Anion.Sulphate, new(-0.654, 38.738, -34.880), 0.27, new(83.139, -33.286, 0),
            new(1, -1.0585, 0.0507, 0.0104, 6, 5.7), new(1, -1.1592, 0.1237, -0.0027, 3, 3.6));
        Put(Cation.Magnesium, Anion.Bicarbonate, new(-34.7, 50, 0), 0.05, new(82, -42, 0), new(0.5, -0.45, 0, 0, 0.1, 0.1), new(0.5, -0.45, 0, 0, 0.1, 0.1));
        Put(Cation.Magnesium, Anion.Organic, new(-28.6, 17, 17), 0.12, new(64, -34, 0), new(0.5, -0.45, 0.05, 0, 1, none), new(0.5, -0.45, 0.05, 0, 1, none));
        return all;

        void Put(Cation cation, Anion anion, Parabola volume, double lastShare, Parabola refraction, OsmoticCurve room, OsmoticCurve freezing) =>
            all[Salts.Place(cation, anion)] = new SaltEffect(volume, lastShare, refraction, room, freezing);
    }
}
