namespace SpecLint.Science;

/// <summary>
/// Calcium and magnesium among the anions of acids: each takes one of them into a pair, M + L = ML, by its stability constant at zero
/// ionic strength (25 °C, at every temperature) and the Debye–Hückel term of the charges. What stands in pairs still counts with the acid, so that an
/// acid gives up its protons the more readily.
/// </summary>
internal struct IonPairs
{
    private const int Steps = AcidData.MaxSteps;

    private readonly double calcium;
    private readonly double magnesium;
    private double freeCalcium;
    private double freeMagnesium;

    /// <param name="calcium">All calcium, mol/kg.</param>
    /// <param name="magnesium">All magnesium, mol/kg.</param>
    public IonPairs(double calcium, double magnesium)
    {
        this.calcium = freeCalcium = calcium;
        this.magnesium = freeMagnesium = magnesium;
    }

    /// <summary>Raises the constants of the acids by the pairs that the free ions form with each of their anions.</summary>
    /// <param name="place">The place of each acid in <see cref="AcidData.All"/>.</param>
    /// <param name="working">Constants of the steps, changed.</param>
    /// <param name="raise">γ⁻² of an ion of one charge.</param>
    public readonly void Strengthen(ReadOnlySpan<int> place, Span<double> working, double raise)
    {
        for (var i = 0; i < place.Length; i++)
        {
            var before = 1.0;
            for (var s = 0; s < AcidData.StepCount[place[i]]; s++)
            {
                var now = 1 + InPairs(place[i], s, raise);
                working[(i * Steps) + s] *= now / before;
                before = now;
            }
        }
    }

    /// <summary>Works out the free ions anew from the solution; true when they no longer move.</summary>
    /// <param name="place">The place of each acid.</param>
    /// <param name="amount">Molality of each acid.</param>
    /// <param name="working">Constants as raised by <see cref="Strengthen"/>.</param>
    /// <param name="raise">γ⁻² of an ion of one charge.</param>
    /// <param name="h">Molality of hydrogen ions.</param>
    /// <param name="strength">Ionic strength as if there were no pairs and no calcium or magnesium; put right.</param>
    public bool Settle(ReadOnlySpan<int> place, ReadOnlySpan<double> amount, ReadOnlySpan<double> working, double raise, double h, ref double strength)
    {
        // Bound to anions, as a multiple of what is free.
        double calciumBound = 0, magnesiumBound = 0, change = 0;
        for (var i = 0; i < place.Length; i++)
        {
            var one = working[i * Steps] / h;
            var two = one * working[(i * Steps) + 1] / h;
            var three = two * working[(i * Steps) + 2] / h;
            var share = amount[i] / (1 + one + two + three);
            Bind(place[i], 0, one * share, raise, ref calciumBound, ref magnesiumBound, ref change);
            Bind(place[i], 1, two * share, raise, ref calciumBound, ref magnesiumBound, ref change);
            Bind(place[i], 2, three * share, raise, ref calciumBound, ref magnesiumBound, ref change);
        }

        var nextCalcium = calcium / (1 + calciumBound);
        var nextMagnesium = magnesium / (1 + magnesiumBound);
        strength += change + (2 * (freeCalcium + freeMagnesium));
        var settled = Math.Abs(nextCalcium - freeCalcium) <= 1e-9 * calcium && Math.Abs(nextMagnesium - freeMagnesium) <= 1e-9 * magnesium;

        // Where most is bound the plain step swings: the geometric mean of both ends goes straight.
        freeCalcium = Math.Sqrt(nextCalcium * freeCalcium);
        freeMagnesium = Math.Sqrt(nextMagnesium * freeMagnesium);
        return settled;
    }

    private readonly void Bind(int acid, int step, double anions, double raise, ref double calciumBound, ref double magnesiumBound, ref double change)
    {
        if (!(anions > 0))
            return;
        var charge = step + 1;
        var perFree = Lowered(raise, charge);
        var (ofCalcium, ofMagnesium) = (AcidData.CalciumPairs[(acid * Steps) + step] * perFree, AcidData.MagnesiumPairs[(acid * Steps) + step] * perFree);
        var paired = (ofCalcium * freeCalcium) + (ofMagnesium * freeMagnesium);
        var free = anions / (1 + paired);
        calciumBound += ofCalcium * free;
        magnesiumBound += ofMagnesium * free;

        // The pair has the charge 2 − z in place of −z.
        change += 0.5 * paired * free * (((2 - charge) * (2 - charge)) - (charge * charge));
    }

    private readonly double InPairs(int acid, int step, double raise)
    {
        var i = (acid * Steps) + step;
        return ((AcidData.CalciumPairs[i] * freeCalcium) + (AcidData.MagnesiumPairs[i] * freeMagnesium)) * Lowered(raise, step + 1);
    }

    // γ(M) γ(L)/γ(ML): z² of the pair is 4z less than that of its parts.
    private static double Lowered(double raise, int charge)
    {
        var square = 1 / (raise * raise);
        return charge switch { 1 => square, 2 => square * square, _ => square * square * square };
    }
}
