namespace SpecLint.Science;

/// <summary>What a juice holds by its pH and titratable acidity.</summary>
/// <param name="TotalAcid">Sum of the acids of the shares, all forms, in the whole composition.</param>
/// <param name="Potassium">Strong-ion difference as potassium of equal charge, ions already in the composition left out.</param>
/// <param name="Chloride">Where protein takes up more acid than its ions balance, that difference as chloride.</param>
public readonly record struct JuiceAcids(Grams TotalAcid, Grams Potassium, Grams Chloride);

/// <summary>Minerals of a food table, in grams of the element.</summary>
/// <param name="Potassium">K, g.</param>
/// <param name="Sodium">Na, g, sodium chloride left out.</param>
/// <param name="Calcium">Ca, g.</param>
/// <param name="Magnesium">Mg, g.</param>
/// <param name="Chloride">Cl, g, sodium chloride left out.</param>
/// <param name="Nitrate">NO₃, g: 0.1 % and more in celery, beetroot and leaves.</param>
public readonly record struct Minerals(Grams Potassium, Grams Sodium, Grams Calcium, Grams Magnesium, Grams Chloride, Grams Nitrate);

/// <summary>
/// The ions of a juice. Either its pH and titratable acidity are known, and the total of its acids and its strong-ion difference
/// follow (two balances, two unknowns); or its acids and minerals were analysed, and its pH follows (<see cref="AcidBase"/>).
/// The second way serves sour juices; in juices whose cations nearly balance their acids (tomato, carrot, cucumber) the
/// acids that no table lists decide, and only a measured pH will do.
/// </summary>
[Source("Stewart, How to Understand Acid–Base, 1981 (strong-ion difference); charge balance and titration as in AcidBase")]
public static class Juice
{
    private const int A = AcidData.Count;

    private const int Rounds = 200;

    /// <summary>
    /// Backs out the total of the acids and the strong-ion difference of a juice from its measured pH and titratable acidity.
    /// Null when no such solution exists: a pH below that of the acids alone, an acidity used up by the acids
    /// already given, or the limits of <see cref="AcidBase"/>.
    /// </summary>
    /// <param name="juice">
    /// The juice: water, sugars, and the minor acids and sodium that are known (phosphoric, ascorbic); acids named in
    /// <paramref name="shares"/> and potassium are left unread. Of one litre when the acidity is in g/L, of 100 g when in g per 100 g.
    /// </param>
    /// <param name="shares">Masses by <see cref="Component"/> whose proportions are those of the acids (citric 9, malic 1); other components nought.</param>
    /// <param name="measured">Measured pH.</param>
    /// <param name="titratable">Titratable acidity in the composition, as the basis acid.</param>
    /// <param name="basis">The acid that the acidity is given as.</param>
    /// <param name="endPoint">End point of the titration.</param>
    /// <param name="t">Temperature of the pH measurement.</param>
    public static JuiceAcids? BackOut(
        ReadOnlySpan<double> juice, ReadOnlySpan<double> shares, Ph measured, Grams titratable, TitrationBasis basis, Ph endPoint, Celsius t)
    {
        Span<double> known = stackalloc double[A];
        Span<double> unknown = stackalloc double[A];
        if (!Electrolyte.Covers(t) || !(measured.Value is >= 0.5 and <= 9) || !(endPoint.Value is >= 6 and <= 9)
            || !(titratable.Value >= 0) || shares.Length < Components.Count || !AcidBase.Dissolve(juice, known, out var ions))
            return null;
        double sum = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            if (!(shares[(int)c] >= 0))
                return null;
            sum += shares[(int)c];
        }

        if (!(sum > 0) || double.IsInfinity(sum))
            return null;
        var kilograms = (juice[(int)Component.Water] + juice[(int)Component.Ethanol]) / 1000;
        for (var a = 0; a <= Components.LastAcid - Components.FirstAcid; a++)
        {
            // Moles of this acid in a gram of the mixture.
            unknown[a] = shares[(int)Components.FirstAcid + a] / sum * AcidData.InverseMolarMass[a];
            if (unknown[a] > 0)
                known[a] = 0;
        }

        Span<double> atEnd = stackalloc double[A];
        AcidBase.TitrationCharges(endPoint, atEnd);
        atEnd[AcidData.IndexOf(Component.CarbonDioxide)] = 0;
        var equivalents = titratable.Value / Titration.GramsPerEquivalent(basis) / kilograms;
        var alone = ions with { Potassium = 0 };
        var others = alone.Strong;
        ions = alone;

        Span<double> charges = stackalloc double[A];
        Span<double> squares = stackalloc double[A];
        Span<double> constants = stackalloc double[A * AcidData.MaxSteps];
        Span<double> working = stackalloc double[A * AcidData.MaxSteps];
        AcidBase.Constants(t, ions.Ethanol, constants);
        Span<int> numbers = stackalloc int[A];
        var acids = AcidBase.Present(known, unknown, numbers);
        var lnWater = Electrolyte.LnKw(t) - Electrolyte.Ln10 * Electrolyte.Shift(ions.Ethanol);
        var strength = Spectators(ions) + 0.05;
        for (var round = 0; round < Rounds; round++)
        {
            AcidBase.InMedium(acids, constants, ions, working);
            var (hydrogen, hydroxide) = AcidBase.Charges(
                measured, new AcidMedium(strength, t, ions.Ethanol, ions.Chloride, lnWater), acids, working, charges, squares);
            double fixedEnd = 0, fixedNow = 0, fixedSquares = 0, freeEnd = 0, freeNow = 0, freeSquares = 0;
            foreach (var a in acids)
            {
                fixedEnd += known[a] * atEnd[a];
                fixedNow += known[a] * charges[a];
                fixedSquares += known[a] * squares[a];
                freeEnd += unknown[a] * atEnd[a];
                freeNow += unknown[a] * charges[a];
                freeSquares += unknown[a] * squares[a];
            }

            var total = (equivalents - (hydrogen - hydroxide) - (fixedEnd - fixedNow)) / (freeEnd - freeNow);
            var strong = fixedEnd + freeEnd * total - equivalents;
            if (!(total >= 0) || !(total <= 1000 * AcidBase.MostAcid))
                return null;
            // Below nought the anions win, which they can by the positive charge of protein.
            var potassium = strong - others;
            ions = alone with
            {
                Potassium = Math.Min(Math.Max(0, potassium), 2 * AcidBase.MostIonicStrength),
                Chloride = alone.Chloride + Math.Min(Math.Max(0, -potassium), alone.Protein),
            };
            var now = Spectators(ions) + 0.5 * (hydrogen + hydroxide + fixedSquares + freeSquares * total);
            if (Math.Abs(now - strength) <= 1e-10 + 1e-9 * now)
            {
                return now <= AcidBase.MostIonicStrength && potassium >= -alone.Protein
                    ? new JuiceAcids(
                        new Grams(total * kilograms),
                        new Grams(Math.Max(0, potassium) * kilograms * AcidData.PotassiumMolarMass),
                        new Grams(Math.Max(0, -potassium) * kilograms * AcidData.ChlorideMolarMass))
                    : null;
            }

            strength = Math.Min(now, 2 * AcidBase.MostIonicStrength);
        }

        return null;
    }

    /// <summary>
    /// <see cref="BackOut"/> written into the composition: the acids of the shares and potassium are replaced. False, and the
    /// composition untouched, when there is no solution. Titratable acidity as anhydrous citric acid to pH 8.1.
    /// </summary>
    /// <param name="juice">The juice, changed in place.</param>
    /// <param name="shares">Proportions of the acids by mass.</param>
    /// <param name="measured">Measured pH.</param>
    /// <param name="titratable">Titratable acidity in the composition, as anhydrous citric acid to pH 8.1.</param>
    /// <param name="t">Temperature of the pH measurement.</param>
    public static bool TryBackOut(Span<double> juice, ReadOnlySpan<double> shares, Ph measured, Grams titratable, Celsius t)
    {
        if (BackOut(juice, shares, measured, titratable, TitrationBasis.CitricAnhydrous, Titration.JuiceEndPoint, t) is not { } found)
            return false;
        double sum = 0;
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
            sum += shares[(int)c];
        for (var c = Components.FirstAcid; c <= Components.LastAcid; c++)
        {
            if (shares[(int)c] > 0)
                juice[(int)c] = found.TotalAcid.Value * shares[(int)c] / sum;
        }

        juice[(int)Component.Potassium] = found.Potassium.Value;
        juice[(int)Component.Chloride] += found.Chloride.Value;
        return true;
    }

    /// <summary>
    /// The potassium that brings a composition of known acids to its measured pH: the strong-ion difference less the sodium
    /// that is in it. Null when the acids alone do not reach so low a pH, or beyond the limits of <see cref="AcidBase"/>.
    /// </summary>
    /// <param name="grams">The composition; its potassium is left unread.</param>
    /// <param name="measured">Measured pH.</param>
    /// <param name="t">Temperature of the measurement.</param>
    public static Grams? PotassiumForPh(ReadOnlySpan<double> grams, Ph measured, Celsius t)
    {
        Span<double> molal = stackalloc double[A];
        if (!Electrolyte.Covers(t) || !(measured.Value is >= 0.5 and <= 12) || !AcidBase.Dissolve(grams, molal, out var ions))
            return null;
        ions = ions with { Potassium = 0 };
        var kilograms = (grams[(int)Component.Water] + grams[(int)Component.Ethanol]) / 1000;
        if (ions.Pairs)
            return PotassiumBySearch(molal, ions, measured, t) is { } found ? new Grams(found * kilograms * AcidData.PotassiumMolarMass) : null;
        var others = ions.Strong;
        Span<double> charges = stackalloc double[A];
        Span<double> squares = stackalloc double[A];
        Span<double> constants = stackalloc double[A * AcidData.MaxSteps];
        Span<double> working = stackalloc double[A * AcidData.MaxSteps];
        AcidBase.Constants(t, ions.Ethanol, constants);
        Span<int> numbers = stackalloc int[A];
        var acids = AcidBase.Present(molal, molal, numbers);
        var lnWater = Electrolyte.LnKw(t) - Electrolyte.Ln10 * Electrolyte.Shift(ions.Ethanol);
        var strength = Spectators(ions) + 0.05;
        for (var round = 0; round < Rounds; round++)
        {
            AcidBase.InMedium(acids, constants, ions, working);
            var (hydrogen, hydroxide) = AcidBase.Charges(
                measured, new AcidMedium(strength, t, ions.Ethanol, ions.Chloride, lnWater), acids, working, charges, squares);
            double charge = 0, square = 0;
            foreach (var a in acids)
            {
                charge += molal[a] * charges[a];
                square += molal[a] * squares[a];
            }

            var potassium = charge - hydrogen + hydroxide - others;
            ions = ions with { Potassium = Math.Min(Math.Max(0, potassium), 2 * AcidBase.MostIonicStrength) };
            var now = Spectators(ions) + 0.5 * (hydrogen + hydroxide + square);
            if (Math.Abs(now - strength) <= 1e-10 + 1e-9 * now)
                return now <= AcidBase.MostIonicStrength && potassium >= 0 ? new Grams(potassium * kilograms * AcidData.PotassiumMolarMass) : null;

            strength = Math.Min(now, 2 * AcidBase.MostIonicStrength);
        }

        return null;
    }

    // What strong ions add to the ionic strength, none of them in pairs.
    private static double Spectators(AcidBase.Ions ions) => ions.Inert + 2 * (ions.Calcium + ions.Magnesium);

    // Beside calcium and magnesium, which form pairs: by bisection on the whole balance, mol/kg; the pH rises with potassium.
    private static double? PotassiumBySearch(ReadOnlySpan<double> molal, AcidBase.Ions ions, Ph measured, Celsius t)
    {
        double low = 0, high = AcidBase.MostIonicStrength;
        if (!AcidBase.Balance(molal, ions, t, measured.Value, out var ph, out _) || ph > measured.Value)
            return null;
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (AcidBase.Balance(molal, ions with { Potassium = middle }, t, measured.Value, out ph, out _) && ph < measured.Value)
                low = middle;
            else
                high = middle;
        }

        return high < AcidBase.MostIonicStrength ? (low + high) / 2 : null;
    }

    /// <summary>
    /// The potassium of the charge of all strong cations less the strong anions: K/39.098 + Na/22.990 + 2 Ca/40.078 +
    /// 2 Mg/24.305 − Cl/35.453 − NO₃/62.005. Null when the anions outweigh the cations or a mass is negative. A food table that
    /// lists no chloride makes the result too high, most of all in vegetables.
    /// </summary>
    /// <param name="minerals">Masses of the elements.</param>
    [Source("IUPAC standard atomic weights 2021; strong-ion difference after Stewart 1981")]
    public static Grams? PotassiumOf(Minerals minerals)
    {
        double k = minerals.Potassium.Value, na = minerals.Sodium.Value, ca = minerals.Calcium.Value, mg = minerals.Magnesium.Value,
            cl = minerals.Chloride.Value, nitrate = minerals.Nitrate.Value;
        if (!(k >= 0 && na >= 0 && ca >= 0 && mg >= 0 && cl >= 0 && nitrate >= 0))
            return null;
        var charge = k / AcidData.PotassiumMolarMass + na / AcidData.SodiumMolarMass + 2 * ca / 40.078 + 2 * mg / 24.305 - cl / 35.453 - nitrate / 62.005;
        return charge >= 0 && !double.IsInfinity(charge) ? new Grams(charge * AcidData.PotassiumMolarMass) : null;
    }

    /// <summary>Phosphoric acid of the phosphorus of a food table, all of it taken as inorganic phosphate: H₃PO₄ = 3.164 P.</summary>
    /// <param name="phosphorus">Phosphorus.</param>
    [Source("IUPAC standard atomic weights 2021: H3PO4 97.995, P 30.974")]
    public static Grams PhosphoricOf(Grams phosphorus) => new(phosphorus.Value * 97.995 / 30.974);
}
