namespace SpecLint.Science;

/// <summary>
/// pH and titratable acidity of a composition from its charge balance.
/// <para>
/// Every acid is spread over its forms by its dissociation constants at the temperature; the charge of all ions sums to
/// nought; activity coefficients are Davies'; pH is −log₁₀ of the activity of hydrogen ions. Concentrations are per kilogram of
/// water, or of water and ethanol where there is ethanol, on which scale the constants of such mixtures are published.
/// Sodium and potassium carry the strong-ion difference; sodium chloride only adds to the ionic strength. Protein, gums and
/// insoluble matter are taken to hold no charge: no general figure for their buffering was found. Ion pairs are left out, so
/// that strong buffers of multivalent acids read high (by 0.1 to 0.2 above an ionic strength of 0.2).
/// </para>
/// </summary>
[Source("Davies, Ion Association, Butterworths 1962, ch. 3 (activity); Stewart, How to Understand Acid–Base, 1981 (strong-ion difference); constants in AcidData")]
public static class AcidBase
{
    /// <summary>Least share of water by mass for an answer: below it (powders, pastes, honey drier than usual) no pH can be shown.</summary>
    public const double LeastWater = 0.15;

    /// <summary>Highest ionic strength for an answer, mol/kg: Davies' equation was checked to 0.6 here, and is used to 1.</summary>
    public const double MostIonicStrength = 1.0;

    /// <summary>Highest sum of acids for an answer, mol/kg (citric acid: 37 % by mass).</summary>
    public const double MostAcid = 3.0;

    /// <summary>Ionic strength of the diluted sample at the end point of a titration, mol/kg.</summary>
    public const double TitrationIonicStrength = 0.05;

    private const int A = AcidData.Count;

    private const int Steps = AcidData.MaxSteps;

    // The constants at the reference temperature, where most answers are wanted.
    private static readonly double[] Constants20 = At20();

    private static readonly double LnKw20 = Electrolyte.LnKw(Celsius.Reference);

    // Charges at the end point of juices, which nearly every titration takes.
    private static readonly double[] JuiceCharges = AtJuiceEndPoint();

    private const double LowestLnH = -14.8 * Electrolyte.Ln10;

    private const double HighestLnH = 1.2 * Electrolyte.Ln10;

    /// <summary>
    /// Error of a computed pH of a known composition. It leans high in strong buffers; the dilute acids and the standards of
    /// the pH scale are met within 0.03.
    /// </summary>
    public static ModelError PhError => new(
        new(0.071), 0, Zero: 0, "[pH]", 1.1, 10.3, "131 points of published buffers and pure acids, rms; 0.01 to 0.03 for buffer standards, up to 0.20 in McIlvaine's buffers above pH 4.6");

    /// <summary>Error of a titratable acidity computed from known acids.</summary>
    public static ModelError TitratableAcidityError => new(
        new(0), 0.002, Zero: 0, "g", 0, double.PositiveInfinity, "16 acids, end points 7.0, 8.1 and 8.2, against a table of equivalents: 0.3 % at most; phosphoric acid depends on the dilution");

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
    /// <param name="cations">Strong cations (sodium, potassium), mol of charge a kilogram.</param>
    /// <param name="anions">Strong anions (chloride), mol of charge a kilogram.</param>
    /// <param name="t">Temperature.</param>
    public static Ph? Ph(ReadOnlySpan<double> molal, MolesPerKilogramWater cations, MolesPerKilogramWater anions, Celsius t)
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

        return sum <= MostAcid && Balance(molal, new Ions(cations.Value, anions.Value, 0, 0), t, 3.5, out var ph, out _) ? new Ph(ph) : null;
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
        if (grams.Length < Components.Count || !Valid(grams) || !(endPoint.Value is >= 6 and <= 9))
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

        return moles - grams[(int)Component.Sodium] / AcidData.SodiumMolarMass - grams[(int)Component.Potassium] / AcidData.PotassiumMolarMass;
    }

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
    /// <param name="component">An acid, sodium, potassium or sodium chloride.</param>
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
        Charges(endPoint, TitrationIonicStrength, Celsius.Reference, 0, Constants20, Electrolyte.LnKw(Celsius.Reference), charges, squares);
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

    /// <summary>
    /// Mean charge and mean square of the charge of each acid (mol a mol) at a pH and an ionic strength; returns the molalities of
    /// hydrogen and hydroxide ions.
    /// </summary>
    internal static (double Hydrogen, double Hydroxide) Charges(
        Ph ph, double strength, Celsius t, double ethanol, ReadOnlySpan<double> constants, double lnWater, Span<double> charges, Span<double> squares)
    {
        var lnGamma = -Electrolyte.Ln10 * Electrolyte.Slope(t.Value, ethanol) * Electrolyte.Davies(strength);
        var raise = Math.Exp(-2 * lnGamma);
        var hydrogen = Math.Exp(-ph.Value * Electrolyte.Ln10 - lnGamma);
        var (first, second, third) = (raise / hydrogen, raise * raise / hydrogen, raise * raise * raise / hydrogen);
        for (int a = 0, s = 0; a < A; a++, s += Steps)
        {
            var one = constants[s] * first;
            var two = one * constants[s + 1] * second;
            var three = two * constants[s + 2] * third;
            var share = 1 / (1 + one + two + three);
            charges[a] = (one + 2 * two + 3 * three) * share;
            squares[a] = (one + 4 * two + 9 * three) * share;
        }

        return (hydrogen, Math.Exp(lnWater) * first);
    }

    /// <summary>Strong ions of a solution, mol a kilogram of solvent, and what the solvent is.</summary>
    internal readonly record struct Ions(double Cations, double Anions, double Salt, double Ethanol);

    /// <summary>Molalities of a composition; false where the limits of this class forbid an answer.</summary>
    internal static bool Dissolve(ReadOnlySpan<double> grams, Span<double> molal, out Ions ions)
    {
        ions = default;
        if (grams.Length < Components.Count || !Valid(grams))
            return false;
        double total = 0;
        for (var i = 0; i < Components.Count; i++)
            total += grams[i];
        var water = grams[(int)Component.Water];
        var ethanol = grams[(int)Component.Ethanol];
        if (!(water > 0) || !(water >= LeastWater * total) || ethanol > Electrolyte.MostEthanol * (water + ethanol))
            return false;
        var perKilogram = 1000 / (water + ethanol);
        double acid = 0;
        for (var c = Components.FirstAcid; c <= Component.CarbonDioxide; c++)
        {
            var a = c - Components.FirstAcid;
            molal[a] = grams[(int)c] * AcidData.InverseMolarMass[a] * perKilogram;
            acid += molal[a];
        }

        for (var a = Component.CarbonDioxide - Components.FirstAcid + 1; a < A; a++)
            molal[a] = 0;
        ions = new Ions(
            (grams[(int)Component.Sodium] / AcidData.SodiumMolarMass + grams[(int)Component.Potassium] / AcidData.PotassiumMolarMass) * perKilogram,
            0,
            grams[(int)Component.SodiumChloride] / AcidData.SodiumChlorideMolarMass * perKilogram,
            ethanol / (water + ethanol));
        return acid <= MostAcid;
    }

    /// <summary>Solves the charge balance: Newton on ln m(H⁺) within a bracket, inside a fixed point on the ionic strength.</summary>
    internal static bool Balance(ReadOnlySpan<double> molal, Ions ions, Celsius t, double guess, out double ph, out double strength)
    {
        ph = strength = 0;
        if (!Electrolyte.Covers(t) || !(ions.Ethanol is >= 0 and <= Electrolyte.MostEthanol) || !(ions.Cations >= 0) || !(ions.Anions >= 0)
            || ions.Salt > MostIonicStrength || 0.5 * (ions.Cations + ions.Anions) > MostIonicStrength)
            return false;

        Span<double> amount = stackalloc double[A];
        Span<double> constant = stackalloc double[A * Steps];
        Span<double> working = stackalloc double[A * Steps];
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
            for (var s = 0; s < Steps; s++)
            {
                constant[count * Steps + s] = s >= AcidData.StepCount[a] ? 0
                    : factor * (reference ? Constants20[a * Steps + s] : Math.Exp(LnK(a * Steps + s, u, v)));
            }

            count++;
        }

        amount = amount.Slice(0, count);
        var water = Math.Exp(reference ? LnKw20 : Electrolyte.LnKw(t)) * factor;
        var slope = Electrolyte.Ln10 * Electrolyte.Slope(t.Value, ions.Ethanol);
        var strong = ions.Cations - ions.Anions;
        var inert = ions.Salt + 0.5 * (ions.Cations + ions.Anions);

        var x = double.IsNaN(guess) ? -3.5 * Electrolyte.Ln10 : Clamp(-guess * Electrolyte.Ln10, LowestLnH, HighestLnH);
        var at = inert + 0.02;
        double before = 0, gapBefore = 0;
        for (var round = 0; round < 60; round++)
        {
            var lnGamma = -slope * Electrolyte.Davies(at);
            var raise = Math.Exp(-2 * lnGamma);
            var (raise2, raise3) = (raise * raise, raise * raise * raise);
            for (var i = 0; i < count * Steps; i += Steps)
            {
                working[i] = constant[i] * raise;
                working[i + 1] = constant[i + 1] * raise2;
                working[i + 2] = constant[i + 2] * raise3;
            }

            x = Root(amount, working, water * raise, strong, x, out var fromIons);
            var now = inert + fromIons;
            var gap = now - at;
            if (Math.Abs(gap) <= 1e-11 + 1e-9 * now)
            {
                strength = now;
                ph = -(x + lnGamma) / Electrolyte.Ln10;
                return now <= MostIonicStrength && ph is >= 0 and <= 14;
            }

            // Secant on the gap after the first rounds, kept to where Davies' equation behaves.
            var next = now;
            if (round > 0 && gap != gapBefore)
            {
                var secant = at - gap * (at - before) / (gap - gapBefore);
                if (secant >= inert && secant <= 2 * MostIonicStrength)
                    next = secant;
            }

            (before, gapBefore) = (at, gap);
            at = Clamp(next, inert, 2 * MostIonicStrength);
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

    private static double LnK(int index, double u, double v) =>
        AcidData.LnK25[index] + AcidData.Enthalpy[index] * u + AcidData.HeatCapacity[index] * v;

    private static double Clamp(double value, double low, double high) => value < low ? low : value > high ? high : value;

    private static bool Valid(ReadOnlySpan<double> grams)
    {
        for (var i = 0; i < Components.Count; i++)
        {
            if (!(grams[i] >= 0) || grams[i] > 1e12)
                return false;
        }

        return true;
    }
}
