namespace SpecLint.Science;

/// <summary>A pH with what makes it uncertain beyond the masses it was computed from.</summary>
/// <param name="Value">pH.</param>
/// <param name="Model">Error of the acid model.</param>
/// <param name="Minerals">What ions that no table lists can do.</param>
/// <param name="Protein">What the buffering of protein leaves open.</param>
/// <param name="IsTested">Whether the model was held against measurement at this ionic strength and share of ethanol.</param>
public readonly record struct UncertainPh(Ph Value, StandardError Model, StandardError Minerals, StandardError Protein, bool IsTested)
{
    /// <summary>All of it together.</summary>
    public StandardError StandardError => Model.With(Minerals).With(Protein);
}

/// <summary>Strong ions of a solution.</summary>
/// <param name="Sodium">Sodium, mol/kg, that of sodium chloride included.</param>
/// <param name="Potassium">Potassium, mol/kg.</param>
/// <param name="Calcium">Calcium, mol/kg.</param>
/// <param name="Magnesium">Magnesium, mol/kg.</param>
/// <param name="Chloride">Chloride, mol/kg, that of sodium chloride included.</param>
public readonly record struct StrongIons(
    MolesPerKilogramWater Sodium,
    MolesPerKilogramWater Potassium,
    MolesPerKilogramWater Calcium,
    MolesPerKilogramWater Magnesium,
    MolesPerKilogramWater Chloride);

/// <summary>
/// pH and titratable acidity of a composition from its charge balance.
/// <para>
/// Every acid is spread over its forms by its dissociation constants at the temperature; the charge of all ions sums to
/// nought; activity coefficients are those of the specific ion interaction theory, log γ = −A z² √I/(1 + 1.5 √I) + Σ ε m, with ε of each anion
/// in sodium and potassium, and of hydrogen in chloride; calcium and magnesium form pairs with the anions by their stability constants.
/// pH is −log₁₀ of the activity of hydrogen ions. Concentrations are per kilogram of
/// water, or of water and ethanol where there is ethanol, on which scale the constants of such mixtures are published.
/// Sodium, potassium, calcium and magnesium less chloride and sulphate carry the strong-ion difference. Protein buffers with its
/// carboxyl groups, about 1 mol/kg: <see cref="PhWithRange"/> says how far that is known. Gums and insoluble matter are taken to hold no charge.
/// </para>
/// </summary>
[Source(
    "Grenthe, Plyasunov & Spahiu, Modelling in Aquatic Chemistry, NEA 1997, ch. IX (activity); Stewart, How to Understand Acid–Base, "
        + "1981 (strong-ion difference); constants in AcidData")]
public static class AcidBase
{
    /// <summary>Least share of water by mass for an answer: below it (powders, pastes, honey drier than usual) no pH can be shown.</summary>
    public const double LeastWater = 0.15;

    /// <summary>Highest ionic strength for an answer, mol/kg: the theory is used to 3.5 mol/kg; see <see cref="TestedIonicStrength"/>.</summary>
    public const double MostIonicStrength = 3.0;

    /// <summary>Highest ionic strength of the buffers that the model was held against, mol/kg.</summary>
    public const double TestedIonicStrength = 0.6;

    /// <summary>Highest sum of acids for an answer, mol/kg (citric acid: 37 % by mass).</summary>
    public const double MostAcid = 3.0;

    /// <summary>Ionic strength of the diluted sample at the end point of a titration, mol/kg.</summary>
    public const double TitrationIonicStrength = 0.05;

    private const int A = AcidData.Count;

    private const int Steps = AcidData.MaxSteps;

    private static readonly int[] EveryAcid = [.. Enumerable.Range(0, A)];

    // The constants at the reference temperature, where most answers are wanted.
    internal static readonly double[] Constants20 = At20();

    internal static readonly double LnKw20 = Electrolyte.LnKw(Celsius.Reference);

    // Charges at the end point of juices, which nearly every titration takes.
    private static readonly double[] JuiceCharges = AtJuiceEndPoint();

    private const double LowestLnH = -14.8 * Electrolyte.Ln10;

    private const double HighestLnH = 1.2 * Electrolyte.Ln10;

    /// <summary>Error of a computed pH of a known composition of acids and ions; see <see cref="PhWithRange"/> for minerals and protein.</summary>
    public static ModelError PhError => new(
        new(0.05), 0, Zero: 0, "[pH]", 1.1, 10.3, "131 points of published buffers and pure acids, rms; 0.01 for buffer standards, to "
            + "0.10 in McIlvaine's buffers (0.04 of it their scale)");

    /// <summary>Error of a titratable acidity computed from known acids.</summary>
    public static ModelError TitratableAcidityError => new(
        new(0), 0.002, Zero: 0, "g", 0, double.PositiveInfinity, "16 acids, end points 7.0, 8.1 and 8.2, against a table of "
            + "equivalents: 0.3 % at most; phosphoric acid depends on the dilution");

    /// <summary>pH of a composition; null when unknown (see the limits of this class; temperature 0 to 50 °C; ethanol to half the solvent).</summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="t">Temperature.</param>
    public static Ph? Ph(ReadOnlySpan<double> grams, Celsius t) => Ph(grams, t, new Ph(3.5));

    /// <summary>pH of a composition, from a starting guess near the answer (for gradients); the answer does not depend on the guess.</summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="t">Temperature.</param>
    /// <param name="guess">A pH near the answer.</param>
    public static Ph? Ph(ReadOnlySpan<double> grams, Celsius t, Ph guess)
    {
        Span<double> molal = stackalloc double[A];
        return Dissolve(grams, molal, out var ions) && Balance(molal, ions, t, guess.Value, out var ph, out _) ? new Ph(ph) : null;
    }

    /// <summary>
    /// pH of a composition with its slope by each mass, for a propagation of uncertainty. The balance is solved once; a small change of the
    /// mass of an acid then moves the solution by the implicit function theorem, so that a slope costs one look at the balance and not a
    /// solution. For salts, and where ions form pairs, it is solved again.
    /// </summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="t">Temperature.</param>
    /// <param name="wanted">Bit n is set where the slope by the n-th component is wanted.</param>
    /// <param name="slopes">Receives the slopes, 1/g, by <see cref="Component"/>; what is not wanted, or outside the model, is nought.</param>
    /// <returns>Null where <see cref="Ph(ReadOnlySpan{double}, Celsius)"/> is; then no slope is written.</returns>
    [Source("implicit function theorem on the charge balance of this class")]
    public static Ph? PhWithSlopes(ReadOnlySpan<double> grams, Celsius t, ulong wanted, Span<double> slopes)
    {
        Span<double> molal = stackalloc double[A];
        if (!Dissolve(grams, molal, out var ions) || !Balance(molal, ions, t, 3.5, out var ph, out var strength))
            return null;
        Span<double> moved = stackalloc double[Components.Count];
        grams.CopyTo(moved);
        double total = 0;
        foreach (var g in grams)
            total += g;
        var step = total * SlopeStep;
        var plane = default(BalanceTangent);
        var hasPlane = !ions.Pairs && plane.TryTouch(molal, ions, t, ph, strength);
        slopes.Clear();
        for (var c = 0; c < grams.Length; c++)
        {
            if ((wanted & (1UL << c)) == 0)
                continue;
            moved[c] = grams[c] + step;
            if (Dissolve(moved, molal, out var other))
            {
                // Salts are solved for: the root in the ionic strength bends most where there is little of them, and the first calcium or
                // magnesium forms pairs.
                if (hasPlane && c <= (int)Components.LastAcid && !other.Pairs)
                    slopes[c] = plane.Rise(molal, other, t) / step;
                else if (Balance(molal, other, t, ph, out var after, out _))
                    slopes[c] = (after - ph) / step;
            }

            moved[c] = grams[c];
        }

        return new Ph(ph);
    }

    // Share of the whole by which a mass is moved for its slope.
    private const double SlopeStep = 1e-5;

    /// <summary>
    /// pH of a composition with what makes it uncertain beyond its masses. Ions that no table lists are one part: as a charge of one standard error of
    /// 0.3 mmol/kg and 4 % of the strong-ion difference that tables list, more and less of it. The charge that protein takes up is the other: half to
    /// twice of what its carboxyl groups do here. Both are judgement; the error of the model is <see cref="PhError"/>.
    /// </summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="t">Temperature.</param>
    /// <param name="listed">Share of the strong ions that was listed by tables of foods, 0 to 1: a salt that was weighed out has just its own ions.</param>
    /// <returns>Null where <see cref="Ph(ReadOnlySpan{double}, Celsius)"/> is.</returns>
    [Source("Stewart, How to Understand Acid–Base, 1981 (strong-ion difference); " + AcidData.ProteinSource)]
    public static UncertainPh? PhWithRange(ReadOnlySpan<double> grams, Celsius t, double listed = 1)
    {
        Span<double> molal = stackalloc double[A];
        if (!(listed is >= 0 and <= 1) || !Dissolve(grams, molal, out var ions) || !Balance(molal, ions, t, 3.5, out var ph, out var strength))
            return null;
        var unlisted = UnlistedIons + UnlistedShare * listed * Math.Abs(ions.Strong - ions.Protein);
        var more95 = new StandardError(unlisted).Tolerance.HalfWidth;
        double minerals = 0, protein = 0;
        if (Balance(molal, ions with { Protein = ions.Protein + more95 }, t, ph, out var above, out _)
            && Balance(molal, ions with { Protein = ions.Protein - more95 }, t, ph, out var below, out _))
            minerals = new Tolerance((above - below) / 2).StandardError.Value;
        var groups = molal[AcidData.Protein];
        if (groups > 0)
        {
            // Where it grew, protein holds a counter-ion at each group: more or less of it moves the pH only by what it takes up since.
            molal[AcidData.Protein] = groups / ProteinSpread;
            if (Balance(molal, ions with { Protein = ions.Protein - groups + (groups / ProteinSpread) }, t, ph, out var less, out _))
                protein = Math.Abs(ph - less);
            molal[AcidData.Protein] = groups * ProteinSpread;
            if (Balance(molal, ions with { Protein = ions.Protein - groups + (groups * ProteinSpread) }, t, ph, out var more, out _))
                protein = Math.Max(protein, Math.Abs(more - ph));
        }

        var tested = strength <= TestedIonicStrength && ions.Ethanol <= TestedEthanol;
        return new UncertainPh(new Ph(ph), PhError.At(ph), new StandardError(minerals), new Tolerance(protein).StandardError, tested);
    }

    // mol/kg, and a share of the strong-ion difference: what food tables leave out (minor ions) and the spread of what they list.
    private const double UnlistedIons = 0.3e-3;
    private const double UnlistedShare = 0.04;
    private const double ProteinSpread = 2;

    /// <summary>Highest share of ethanol in water and ethanol by mass at which shifts of the constants were compared with measurements.</summary>
    public const double TestedEthanol = 0.5;

    /// <summary>Ionic strength of a composition at its own pH; null when its pH is unknown.</summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="t">Temperature.</param>
    public static MolesPerKilogramWater? IonicStrength(ReadOnlySpan<double> grams, Celsius t)
    {
        Span<double> molal = stackalloc double[A];
        return Dissolve(grams, molal, out var ions) && Balance(molal, ions, t, 3.5, out _, out var strength)
            ? new MolesPerKilogramWater(strength)
            : null;
    }

    /// <summary>pH of acids and strong ions in water; null when unknown.</summary>
    /// <param name="molal">Total molality of each acid in all its forms, by its place in <see cref="AcidData.All"/>, mol/kg.</param>
    /// <param name="ions">Strong ions.</param>
    /// <param name="t">Temperature.</param>
    public static Ph? Ph(ReadOnlySpan<double> molal, StrongIons ions, Celsius t)
    {
        if (molal.Length < A)
            return null;
        double sum = 0;
        for (var a = 0; a < A; a++)
        {
            if (!(molal[a] >= 0))
                return null;
            sum += molal[a];
        }

        var strong = new Ions(ions.Sodium.Value, ions.Potassium.Value, ions.Calcium.Value, ions.Magnesium.Value, ions.Chloride.Value, 0, 0);
        return sum <= MostAcid && Balance(molal, strong, t, 3.5, out var ph, out _) ? new Ph(ph) : null;
    }

    /// <summary>
    /// Titratable acidity of a composition: the base that brings the diluted sample to the end point, as grams of the basis acid in
    /// the whole composition (of one litre: g/L; of 100 mL: g per 100 mL). Nought when the composition stands above the end point.
    /// Carbon dioxide is driven off before a titration and is not counted. Null for an end point outside pH 6 to 9.
    /// The sample is taken as diluted to an ionic strength of 0.05 at 20 °C, as the methods have it.
    /// </summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="endPoint">End point, for example <see cref="Titration.JuiceEndPoint"/>.</param>
    /// <param name="basis">The acid to give the result as.</param>
    [Source("AOAC 942.15; IFU method 3; charge balance as for the pH")]
    public static Grams? TitratableAcidity(ReadOnlySpan<double> grams, Ph endPoint, TitrationBasis basis)
    {
        if (Equivalents(grams, endPoint) is not { } moles)
            return null;
        return new Grams(Math.Max(0, moles) * Titration.GramsPerEquivalent(basis));
    }

    /// <summary>
    /// Base that a composition takes up to the end point, mol; negative when it stands above the end point. Null for an end point
    /// outside pH 6 to 9.
    /// </summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="endPoint">End point.</param>
    public static double? Equivalents(ReadOnlySpan<double> grams, Ph endPoint)
    {
        if (!Composition.IsValid(grams, out _) || !(endPoint.Value is >= 6 and <= 9))
            return null;
        Span<double> atEndPoint = stackalloc double[A];
        scoped ReadOnlySpan<double> charges = JuiceCharges;
        if (endPoint.Value != Titration.JuiceEndPoint.Value)
        {
            TitrationCharges(endPoint, atEndPoint);
            charges = atEndPoint;
        }

        double moles = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            var a = c - Components.FirstAcid;
            moles += grams[(int)c] * AcidData.InverseMolarMass[a] * charges[a];
        }

        return moles - StrongBase(grams);
    }

    // Moles of charge of strong cations beyond strong anions; sodium chloride has none, and protein has given up its protons at every end point.
    private static double StrongBase(ReadOnlySpan<double> grams) =>
        grams[(int)Component.Sodium] / AcidData.SodiumMolarMass + grams[(int)Component.Potassium] / AcidData.PotassiumMolarMass
        + 2 * (grams[(int)Component.Calcium] / AcidData.CalciumMolarMass + grams[(int)Component.Magnesium] / AcidData.MagnesiumMolarMass)
        - grams[(int)Component.Chloride] / AcidData.ChlorideMolarMass
        - 2 * grams[(int)Component.Sulphate] * AcidData.InverseMolarMass[AcidData.IndexOf(Component.Sulphate)]
        + grams[(int)Component.Protein] * (AcidData.ProteinBase - AcidData.InverseMolarMass[AcidData.Protein]);

    /// <summary>
    /// Strong cations that nothing in a composition balances, mol: neither strong anions, nor its acids up to pH 9, nor bicarbonate. A plant
    /// or a salt has none; a table that lists its metals and not its anions makes them. Nought for an invalid composition.
    /// </summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    [Source("electroneutrality; charges as for the titration")]
    public static double Unbalanced(ReadOnlySpan<double> grams) =>
        Equivalents(grams, new Ph(9)) is { } moles
            ? Math.Max(
                0, -moles - grams[(int)Component.CarbonDioxide] * AcidData.InverseMolarMass[AcidData.IndexOf(Component.CarbonDioxide)])
            : 0;

    /// <summary>
    /// Protons an acid gives up to the end point of a titration (citric acid to pH 8.1: 2.99). Null for a component that is no acid
    /// and for an end point outside pH 6 to 9.
    /// </summary>
    /// <param name="acid">An acid.</param>
    /// <param name="endPoint">End point.</param>
    public static double? ProtonsTitrated(Component acid, Ph endPoint) =>
        AcidData.IndexOf(acid) is >= 0 and var i ? ProtonsTitrated(AcidData.All[i], endPoint) : null;

    /// <summary>Protons an acid of <see cref="AcidData.All"/> gives up to the end point of a titration; null outside pH 6 to 9.</summary>
    /// <param name="acid">An acid.</param>
    /// <param name="endPoint">End point.</param>
    public static double? ProtonsTitrated(Acid acid, Ph endPoint)
    {
        if (!(endPoint.Value is >= 6 and <= 9))
            return null;
        Span<double> charges = stackalloc double[A];
        TitrationCharges(endPoint, charges);
        for (var a = 0; a < A; a++)
        {
            if (ReferenceEquals(AcidData.All[a], acid))
                return charges[a];
        }

        return null;
    }

    /// <summary>
    /// The part of an acid that holds all its protons, at a pH: total / (1 + Σ K₁…Kₖ / a(H⁺)ᵏ) with the constants at zero ionic
    /// strength, as inhibition by acids is published. Null for a component that is no acid and outside 0 to 50 °C and pH 0 to 14.
    /// </summary>
    /// <param name="acid">An acid.</param>
    /// <param name="total">Its molality in all forms.</param>
    /// <param name="ph">pH.</param>
    /// <param name="t">Temperature.</param>
    [Source("Mejlholm & Dalgaard, J. Food Prot. 72:2132, 2009, undissociated acid = total / (1 + 10^(pH − pKa)); here over all steps")]
    public static MolesPerKilogramWater? Undissociated(Component acid, MolesPerKilogramWater total, Ph ph, Celsius t)
    {
        var a = AcidData.IndexOf(acid);
        if (a < 0 || !Electrolyte.Covers(t) || !(ph.Value is >= 0 and <= 14) || !(total.Value >= 0))
            return null;
        var (u, v) = Electrolyte.Terms(t.Kelvin);
        var lnH = -ph.Value * Electrolyte.Ln10;
        double lnTerm = 0, sum = 1;
        for (var s = 0; s < AcidData.StepCount[a]; s++)
        {
            lnTerm += LnK(a * Steps + s, u, v) - lnH;
            sum += Math.Exp(lnTerm);
        }

        return new MolesPerKilogramWater(total.Value / sum);
    }

    /// <summary>Molality of a dissolved component in a composition, per kilogram of water; null without water.</summary>
    /// <param name="grams">Masses in grams by <see cref="Component"/>.</param>
    /// <param name="component">An acid, a strong ion or sodium chloride.</param>
    [Source("IUPAC, Quantities, Units and Symbols in Physical Chemistry, 3rd ed. 2007, section 2.10, molality")]
    public static MolesPerKilogramWater? Molality(ReadOnlySpan<double> grams, Component component)
    {
        if (grams.Length < Components.Count || !(grams[(int)Component.Water] > 0))
            return null;
        double molarMass;
        switch (component)
        {
            case Component.SodiumChloride: molarMass = AcidData.SodiumChlorideMolarMass; break;
            case Component.Sodium: molarMass = AcidData.SodiumMolarMass; break;
            case Component.Potassium: molarMass = AcidData.PotassiumMolarMass; break;
            case Component.Calcium: molarMass = AcidData.CalciumMolarMass; break;
            case Component.Magnesium: molarMass = AcidData.MagnesiumMolarMass; break;
            case Component.Chloride: molarMass = AcidData.ChlorideMolarMass; break;
            default:
                if (AcidData.Of(component) is not { } acid)
                    return null;
                molarMass = acid.MolarMass;
                break;
        }

        return new MolesPerKilogramWater(1000 * grams[(int)component] / molarMass / grams[(int)Component.Water]);
    }

    /// <summary>Charges of each acid (mol a mol) at the end point of a titration, 20 °C and ionic strength 0.05.</summary>
    internal static void TitrationCharges(Ph endPoint, Span<double> charges)
    {
        Span<double> squares = stackalloc double[A];
        Charges(
            endPoint,
            new AcidMedium(TitrationIonicStrength, Celsius.Reference, 0, 0, Electrolyte.LnKw(Celsius.Reference)),
            EveryAcid,
            Constants20,
            charges,
            squares);
    }

    /// <summary>Dissociation constants of all acids at a temperature and a share of ethanol.</summary>
    internal static void Constants(Celsius t, double ethanol, Span<double> constants)
    {
        var factor = Math.Exp(-Electrolyte.Ln10 * Electrolyte.Shift(ethanol));
        if (t.Value == 20)
        {
            for (var i = 0; i < A * Steps; i++)
                constants[i] = Constants20[i] * factor;
            return;
        }

        var (u, v) = Electrolyte.Terms(t.Kelvin);
        for (var i = 0; i < A * Steps; i++)
            constants[i] = AcidData.LnK25[i] == 0 ? 0 : Math.Exp(LnK(i, u, v)) * factor;
    }

    /// <summary>Constants among the ions of a medium: each step's interaction with sodium, potassium and chloride taken in.</summary>
    internal static void InMedium(ReadOnlySpan<int> acids, ReadOnlySpan<double> constants, Ions ions, Span<double> into)
    {
        foreach (var a in acids)
        {
            for (var i = a * Steps; i < (a + 1) * Steps; i++)
                into[i] = constants[i] == 0 ? 0 : constants[i] * Interaction(i, ions);
        }
    }

    /// <summary>The numbers of the acids that one of two lists holds: most are in none, and need not be worked out in every round.</summary>
    internal static ReadOnlySpan<int> Present(ReadOnlySpan<double> molal, ReadOnlySpan<double> others, Span<int> acids)
    {
        var count = 0;
        for (var a = 0; a < A; a++)
        {
            if (molal[a] != 0 || others[a] != 0)
                acids[count++] = a;
        }

        return acids.Slice(0, count);
    }

    // What the medium does to a dissociation constant of molalities, its Debye–Hückel part left out.
    internal static double Interaction(int step, Ions ions) => Electrolyte.PowerOfTen(
        -AcidData.SodiumSteps[step] * ions.Sodium - AcidData.PotassiumSteps[step] * ions.Potassium - Electrolyte.HydrogenChloride * ions.Chloride);

    /// <summary>
    /// Mean charge and mean square of the charge of each acid (mol a mol) at a pH and an ionic strength; returns the molalities of
    /// hydrogen and hydroxide ions.
    /// </summary>
    internal static (double Hydrogen, double Hydroxide) Charges(
        Ph ph, AcidMedium medium, ReadOnlySpan<int> acids, ReadOnlySpan<double> constants, Span<double> charges, Span<double> squares)
    {
        var (strength, t, ethanol, chloride, lnWater) = medium;
        var lnGamma = -Electrolyte.Ln10 * Electrolyte.Slope(t.Value, ethanol) * Electrolyte.DebyeHuckel(strength);
        var raise = Math.Exp(-2 * lnGamma);
        var hydrogen = Math.Exp(-Electrolyte.Ln10 * (ph.Value + Electrolyte.HydrogenChloride * chloride) - lnGamma);
        var (first, second, third) = (raise / hydrogen, raise * raise / hydrogen, raise * raise * raise / hydrogen);
        foreach (var a in acids)
        {
            var s = a * Steps;
            var one = constants[s] * first;
            var two = one * constants[s + 1] * second;
            var three = two * constants[s + 2] * third;
            var share = 1 / (1 + one + two + three);
            charges[a] = (one + 2 * two + 3 * three) * share;
            squares[a] = (one + 4 * two + 9 * three) * share;
        }

        return (hydrogen, Math.Exp(lnWater) * first);
    }

    /// <summary>
    /// Strong ions of a solution, mol a kilogram of solvent, those of sodium chloride and the positive charge of protein included, and the
    /// share of ethanol in the solvent.
    /// </summary>
    internal readonly record struct Ions(double Sodium, double Potassium, double Calcium, double Magnesium, double Chloride, double Protein, double Ethanol)
    {
        /// <summary>Charge of the cations less that of chloride, mol/kg.</summary>
        public double Strong => Sodium + Potassium + Protein - Chloride + 2 * (Calcium + Magnesium);

        /// <summary>What the ions that form no pairs add to the ionic strength, mol/kg.</summary>
        public double Inert => 0.5 * (Sodium + Potassium + Chloride);

        /// <summary>Whether there are ions that form pairs.</summary>
        public bool Pairs => Calcium > 0 || Magnesium > 0;

        /// <summary>Whether no molality is negative or not a number.</summary>
        public bool Valid => !double.IsNaN(Protein) && Sodium >= 0 && Potassium >= 0 && Calcium >= 0 && Magnesium >= 0 && Chloride >= 0;
    }

    /// <summary>Molalities of a composition; false where the limits of this class forbid an answer.</summary>
    internal static bool Dissolve(ReadOnlySpan<double> grams, Span<double> molal, out Ions ions)
    {
        ions = default;
        if (!Composition.IsValid(grams, out var total) || total > 1e12)
            return false;
        var water = grams[(int)Component.Water];
        var ethanol = grams[(int)Component.Ethanol];
        if (!(water > 0) || !(water >= LeastWater * total) || ethanol > Electrolyte.MostEthanol * (water + ethanol))
            return false;
        var perKilogram = 1000 / (water + ethanol);
        double acid = 0;
        for (var c = Components.FirstAcid; c <= Component.Sulphate; c++)
        {
            var a = c - Components.FirstAcid;
            molal[a] = grams[(int)c] * AcidData.InverseMolarMass[a] * perKilogram;
            acid += molal[a];
        }

        for (var a = AcidData.Protein + 1; a < A; a++)
            molal[a] = 0;
        molal[AcidData.Protein] = grams[(int)Component.Protein] * AcidData.InverseMolarMass[AcidData.Protein] * perKilogram;
        var salt = grams[(int)Component.SodiumChloride] * (1 / AcidData.SodiumChlorideMolarMass) * perKilogram;
        ions = new Ions(
            grams[(int)Component.Sodium] * (1 / AcidData.SodiumMolarMass) * perKilogram + salt,
            grams[(int)Component.Potassium] * (1 / AcidData.PotassiumMolarMass) * perKilogram,
            grams[(int)Component.Calcium] * (1 / AcidData.CalciumMolarMass) * perKilogram,
            grams[(int)Component.Magnesium] * (1 / AcidData.MagnesiumMolarMass) * perKilogram,
            grams[(int)Component.Chloride] * (1 / AcidData.ChlorideMolarMass) * perKilogram + salt,
            grams[(int)Component.Protein] * AcidData.ProteinBase * perKilogram,
            ethanol / (water + ethanol));
        return acid <= MostAcid;
    }

    /// <summary>
    /// Solves the charge balance: Newton on ln m(H⁺) within a bracket, inside a fixed point on the ionic strength and on free calcium and
    /// magnesium.
    /// </summary>
    internal static bool Balance(ReadOnlySpan<double> molal, Ions ions, Celsius t, double guess, out double ph, out double strength)
    {
        ph = strength = 0;
        if (!Electrolyte.Covers(t) || !(ions.Ethanol is >= 0 and <= Electrolyte.MostEthanol) || !ions.Valid || ions.Inert > MostIonicStrength)
            return false;

        Span<double> amount = stackalloc double[A];
        Span<double> constant = stackalloc double[A * Steps];
        Span<double> working = stackalloc double[A * Steps];
        Span<int> place = stackalloc int[A];
        var shift = Electrolyte.Shift(ions.Ethanol);
        var factor = shift == 0 ? 1 : Math.Exp(-Electrolyte.Ln10 * shift);
        var reference = t.Value == 20;
        var (u, v) = reference ? default : Electrolyte.Terms(t.Kelvin);
        var count = 0;
        for (var a = 0; a < A; a++)
        {
            if (!(molal[a] > 0))
                continue;
            amount[count] = molal[a];
            place[count] = a;
            for (var s = 0; s < Steps; s++)
            {
                constant[count * Steps + s] = s >= AcidData.StepCount[a] ? 0
                    : factor * Interaction(a * Steps + s, ions) * (reference ? Constants20[a * Steps + s] : Math.Exp(LnK(a * Steps + s, u, v)));
            }

            count++;
        }

        amount = amount.Slice(0, count);
        var water = Math.Exp(reference ? LnKw20 : Electrolyte.LnKw(t)) * factor;
        var slope = Electrolyte.Ln10 * Electrolyte.Slope(t.Value, ions.Ethanol);
        var (strong, inert) = (ions.Strong, ions.Inert);
        var pairs = ions.Pairs ? new IonPairs(ions.Calcium, ions.Magnesium) : default;

        var x = double.IsNaN(guess) ? -3.5 * Electrolyte.Ln10 : Clamp(-guess * Electrolyte.Ln10, LowestLnH, HighestLnH);
        var at = inert + 0.02;
        double before = 0, gapBefore = 0;
        for (var round = 0; round < (ions.Pairs ? 400 : 60); round++)
        {
            var lnGamma = -slope * Electrolyte.DebyeHuckel(at);
            var raise = Math.Exp(-2 * lnGamma);
            var (raise2, raise3) = (raise * raise, raise * raise * raise);
            for (var i = 0; i < count * Steps; i += Steps)
            {
                working[i] = constant[i] * raise;
                working[i + 1] = constant[i + 1] * raise2;
                working[i + 2] = constant[i + 2] * raise3;
            }

            if (ions.Pairs)
                pairs.Strengthen(place.Slice(0, count), working, raise);
            x = Root(amount, working, water * raise, strong, x, out var fromIons);
            var now = inert + fromIons;
            var settled = true;
            if (ions.Pairs)
                settled = pairs.Settle(place.Slice(0, count), amount, working, raise, Math.Exp(x), ref now);
            var gap = now - at;
            if (settled && Math.Abs(gap) <= 1e-11 + 1e-9 * now)
            {
                strength = now;
                ph = -(x + lnGamma) / Electrolyte.Ln10 - Electrolyte.HydrogenChloride * ions.Chloride;
                return now <= MostIonicStrength && ph is >= 0 and <= 14;
            }

            // Secant on the gap after the first rounds, kept to where the theory behaves; free ions of pairs move too, so that there it waits.
            var next = ions.Pairs ? 0.5 * (now + at) : now;
            if (!ions.Pairs && round > 0 && gap != gapBefore)
            {
                var secant = at - gap * (at - before) / (gap - gapBefore);
                if (secant >= inert && secant <= 2 * MostIonicStrength)
                    next = secant;
            }

            (before, gapBefore) = (at, gap);
            at = Clamp(next, ions.Pairs ? 0 : inert, 2 * MostIonicStrength);
        }

        return false;
    }

    // ln m(H⁺) at given constants; the balance rises with it, so one root lies in the bracket.
    private static double Root(ReadOnlySpan<double> amount, ReadOnlySpan<double> k, double water, double strong, double x, out double ionic)
    {
        var (low, high) = (LowestLnH, HighestLnH);
        var h = Math.Exp(x);
        ionic = 0;
        for (var i = 0; i < 80; i++)
        {
            var inverse = 1 / h;
            var hydroxide = water * inverse;
            var balance = h - hydroxide + strong;
            var slope = h + hydroxide;
            double squares = 0;
            for (int a = 0, s = 0; a < amount.Length; a++, s += Steps)
            {
                var one = k[s] * inverse;
                var two = one * k[s + 1] * inverse;
                var three = two * k[s + 2] * inverse;
                var n = amount[a] / (1 + one + two + three);
                var charge = (one + 2 * two + 3 * three) * n;
                var square = (one + 4 * two + 9 * three) * n;
                balance -= charge;
                slope += square - charge * charge / amount[a];
                squares += square;
            }

            ionic = 0.5 * (h + hydroxide + squares);
            if (balance > 0)
                high = x;
            else
                low = x;
            var step = -balance / slope;
            if (Math.Abs(step) < 1e-10)
                break;
            var next = x + step;
            if (next <= low || next >= high)
            {
                next = 0.5 * (low + high);
                if (high - low < 1e-12)
                    break;
            }

            x = next;
            h = Math.Exp(x);
        }

        return x;
    }

    private static double[] AtJuiceEndPoint()
    {
        var charges = new double[A];
        TitrationCharges(Titration.JuiceEndPoint, charges);
        return charges;
    }

    private static double[] At20()
    {
        var (u, v) = Electrolyte.Terms(Celsius.Reference.Kelvin);
        var constants = new double[A * Steps];
        for (var i = 0; i < constants.Length; i++)
            constants[i] = AcidData.LnK25[i] == 0 ? 0 : Math.Exp(LnK(i, u, v));
        return constants;
    }

    internal static double LnK(int index, double u, double v) =>
        AcidData.LnK25[index] + AcidData.Enthalpy[index] * u + AcidData.HeatCapacity[index] * v;

    private static double Clamp(double value, double low, double high) => value < low ? low : value > high ? high : value;
}

/// <summary>What acids dissociate in.</summary>
/// <param name="Strength">Ionic strength, mol/kg of water.</param>
/// <param name="T">Temperature.</param>
/// <param name="Ethanol">Share of ethanol by mass, 0 to 1.</param>
/// <param name="Chloride">Chloride, mol/kg of water.</param>
/// <param name="LnWater">Natural logarithm of the ion product of water.</param>
internal readonly record struct AcidMedium(double Strength, Celsius T, double Ethanol, double Chloride, double LnWater);
