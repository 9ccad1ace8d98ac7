namespace SpecLint.Science;

/// <summary>
/// Saturation of one solute in water. Tables are read by straight lines between their points; outside their first and last
/// point, and for solutes without a table, the answer is null.
/// </summary>
[Source(SucroseSource)]
public static class SolubilityModel
{
    internal const string SucroseSource =
        "CRC Handbook sucrose solubility as kept by M. T. Flanagan, Sucrose class, 2008; Mohos, Confectionery and Chocolate Engineering, 2010, "
        + "App. 2 (Antokolskaya 1964); 15 °C and 65 °C left out as off the smooth curve";

    private const string SugarsSource =
        "Gillis (maltose), Hudson (lactose), Combs and Bele (glucose) as tabulated by B. Lowe, Experimental Cookery, 1937, Solubility of sugars";

    private const string MalicSource =
        "A. Apelblat et al., vapour pressure over saturated solutions of malic, tartaric and citric acid, J. Chem. Thermodyn. 27 (1995) 35: "
        + "ln m = −113.096 + 3707.6/T + 18.075 ln T";

    private const string TartaricSource = "Smith (ed.), Food Additives Data Book, 2003, tartaric acid: 139 g per 100 g water at 25 °C";

    private const string SaltSource =
        "CRC Handbook of Chemistry and Physics, sodium chloride 26.4 % by mass at 20 °C (35.9 g per 100 g water); from memory, "
        + "and 0 °C 26.3 %, 60 °C 27.1 %, 100 °C 28.1 %, from memory";

    private const string CitricSource = "CRC Handbook, citric acid 59.2 % at 20 °C, 54.0 % at 10 °C, 64.3 % at 30 °C by mass; from memory";

    private static ReadOnlySpan<double> Sucrose =>
    [
        0, 64.18, 5, 64.87, 10, 65.58, 20, 67.09, 25, 67.89, 30, 68.80, 35, 69.55, 40, 70.42, 45, 71.32, 50, 72.25, 55, 73.20, 60, 74.18,
        70, 76.22, 75, 77.27, 80, 78.36, 85, 79.46, 90, 80.61, 95, 81.77, 100, 82.97,
    ];

    private static ReadOnlySpan<double> Maltose =>
        [0.6, 36.1, 21, 44.1, 29.6, 48, 34.4, 49.6, 43.5, 55.3, 49.4, 58.3, 54.2, 60.2, 59.8, 63.7, 66.3, 66.7, 74.2, 72.3, 87, 79.3, 96.5, 85.1];

    private static ReadOnlySpan<double> Lactose => [0, 10.6, 15, 14.5, 25, 17.8, 39, 24, 49, 29.8, 64, 39.7, 74, 46.3, 89, 58.2];

    private static ReadOnlySpan<double> Glucose => [20, 49.7, 63, 73.7];

    private static ReadOnlySpan<double> Salt => [0, 26.3, 20, 26.4, 60, 27.1, 100, 28.1];

    private static ReadOnlySpan<double> Citric => [10, 54.0, 20, 59.2, 30, 64.3];

    /// <summary>Error of a solubility: the two tables of sucrose differ by no more.</summary>
    public static ModelError Error =>
        new(
            new(0.003),
            0,
            Zero: 0,
            "1",
            0.64,
            0.73,
            "sucrose: largest difference between the two tables, 0 to 50 °C; other solutes are known less well");

    /// <summary>Mass fraction of a saturated solution of one solute in water.</summary>
    /// <param name="solute">
    /// Sucrose, glucose (20 to 63 °C), maltose, lactose, sodium chloride, citric (10 to 30 °C), malic (0 to 100 °C) or tartaric acid (25
    /// °C).
    /// </param>
    /// <param name="t">Temperature, °C.</param>
    /// <returns>Mass fraction; null for another solute or outside the table.</returns>
    [Source(SucroseSource)]
    [Source(SugarsSource)]
    [Source(MalicSource)]
    [Source(TartaricSource)]
    [Source(SaltSource)]
    [Source(CitricSource)]
    public static MassFraction? Of(Component solute, Celsius t)
    {
        return solute switch
        {
            Component.Sucrose => Read(Sucrose, t.Value),
            Component.Glucose => Read(Glucose, t.Value),
            Component.Maltose => Read(Maltose, t.Value),
            Component.Lactose => Read(Lactose, t.Value),
            Component.SodiumChloride => Read(Salt, t.Value),
            Component.Citric => Read(Citric, t.Value),
            Component.Malic when t.Value is >= 0 and <= 100 => Malic(t.Kelvin),
            Component.Tartaric when t.Value is >= 24.5 and <= 25.5 => new(139.0 / 239),
            _ => null,
        };
    }

    private static MassFraction Malic(double kelvin)
    {
        var molality = Math.Exp(-113.096 + (3707.6 / kelvin) + (18.075 * Math.Log(kelvin)));
        var grams = molality * 134.087 / 1000;
        return new(grams / (1 + grams));
    }

    // Pairs of °C and % by mass.
    private static MassFraction? Read(ReadOnlySpan<double> table, double t)
    {
        if (!(t >= table[0] && t <= table[table.Length - 2]))
            return null;
        var i = 2;
        while (table[i] < t)
            i += 2;
        var share = (t - table[i - 2]) / (table[i] - table[i - 2]);
        return new((table[i - 1] + (share * (table[i + 1] - table[i - 1]))) / 100);
    }
}
