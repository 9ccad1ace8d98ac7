namespace SpecLint.Science;

/// <summary>What a published heat process is for.</summary>
public enum HeatedProduct
{
    /// <summary>Milk and whey under 10 % fat, without sweetener.</summary>
    Milk,

    /// <summary>Cream of 10 % fat and more, or milk with added sweetener.</summary>
    Cream,

    /// <summary>Egg-nog and mixes for frozen desserts.</summary>
    EggNog,

    /// <summary>Dairy, ultra-pasteurised.</summary>
    UltraPasteurisedDairy,

    /// <summary>Egg white.</summary>
    EggWhite,

    /// <summary>Whole egg.</summary>
    WholeEgg,

    /// <summary>Whole egg with less than 2 % of other things.</summary>
    WholeEggBlend,

    /// <summary>Whole egg with yolk to 24 to 38 % solids.</summary>
    FortifiedWholeEgg,

    /// <summary>Whole egg with 2 % of salt and more.</summary>
    SaltedWholeEgg,

    /// <summary>Whole egg with 2 to 12 % of sugar.</summary>
    SweetenedWholeEgg,

    /// <summary>Yolk.</summary>
    Yolk,

    /// <summary>Yolk with 2 % of sugar and more.</summary>
    SweetenedYolk,

    /// <summary>Yolk with 2 to 12 % of salt.</summary>
    SaltedYolk,

    /// <summary>Chilled food in sealed packs: 6 log of non-proteolytic Clostridium botulinum, at the core.</summary>
    ChilledSealedFood,

    /// <summary>Juice of pH 4 and below: 5 log, general example.</summary>
    SourJuice,

    /// <summary>Apple juice and cider of pH 4 and below: 5 log, Cryptosporidium counted.</summary>
    AppleJuice,

    /// <summary>Cooked and chilled food: 6 log of Listeria monocytogenes, at the core.</summary>
    CookChill,

    /// <summary>Dried egg white in the hot room.</summary>
    DriedEggWhite,
}

/// <summary>A published heat process: a temperature and the least time at it.</summary>
/// <param name="Product">What it is for.</param>
/// <param name="Temperature">Temperature.</param>
/// <param name="Seconds">Least time, s.</param>
/// <param name="Source">Source; "from memory" is said where so.</param>
public sealed record HeatProcess(HeatedProduct Product, Celsius Temperature, double Seconds, string Source);

/// <summary>
/// Published heat processes, as data. A process is met by a row of its table, never by a figure between two rows. Local code and a
/// licensed process authority have the last word.
/// </summary>
[Source("US Pasteurized Milk Ordinance; US 9 CFR 590.570 and 590.575; FSA and Chilled Food Association 2006; the source of each row stands in it")]
public static class HeatProcesses
{
    private const string Dairy = "Michigan MCL 288.697 and Texas 25 TAC 217.1(68)(A), the definitions of the US Pasteurized Milk Ordinance";

    private const string Egg = "US 9 CFR 590.570, table I, as in force to 2022; a performance standard and FSIS guidance since (85 FR 68640)";

    private const string Juice = "FDA, Juice HACCP Hazards and Controls Guidance, 1st ed. 2004, V.C 5.2";

    private const string Chilled = "FSA and Chilled Food Association, Best Practice Guidelines for the Production of Chilled Foods, 4th "
        + "ed. 2006, table of equivalents";

    /// <summary>All rows.</summary>
    public static IReadOnlyList<HeatProcess> All { get; } =
    [
        new(HeatedProduct.Milk, new(63), 1800, Dairy),
        new(HeatedProduct.Milk, new(72), 15, Dairy),
        new(HeatedProduct.Milk, new(89), 1, Dairy),
        new(HeatedProduct.Milk, new(90), 0.5, Dairy),
        new(HeatedProduct.Milk, new(94), 0.1, Dairy),
        new(HeatedProduct.Milk, new(96), 0.05, Dairy),
        new(HeatedProduct.Milk, new(100), 0.01, Dairy),
        new(HeatedProduct.Cream, new(66), 1800, Dairy),
        new(HeatedProduct.Cream, new(75), 15, Dairy),
        new(HeatedProduct.Cream, new(92), 1, Dairy),
        new(HeatedProduct.Cream, new(93), 0.5, Dairy),
        new(HeatedProduct.Cream, new(97), 0.1, Dairy),
        new(HeatedProduct.EggNog, new(69), 1800, Dairy),
        new(HeatedProduct.EggNog, new(80), 25, Dairy),
        new(HeatedProduct.EggNog, new(83), 15, Dairy),
        new(HeatedProduct.UltraPasteurisedDairy, new(138), 2, Dairy),
        new(HeatedProduct.EggWhite, new(56.7), 210, Egg),
        new(HeatedProduct.EggWhite, new(55.6), 372, Egg),
        new(HeatedProduct.WholeEgg, new(60), 210, Egg),
        new(HeatedProduct.WholeEggBlend, new(61.1), 210, Egg),
        new(HeatedProduct.WholeEggBlend, new(60), 372, Egg),
        new(HeatedProduct.FortifiedWholeEgg, new(62.2), 210, Egg),
        new(HeatedProduct.FortifiedWholeEgg, new(61.1), 372, Egg),
        new(HeatedProduct.SaltedWholeEgg, new(63.3), 210, Egg),
        new(HeatedProduct.SaltedWholeEgg, new(62.2), 372, Egg),
        new(HeatedProduct.SweetenedWholeEgg, new(61.1), 210, Egg),
        new(HeatedProduct.SweetenedWholeEgg, new(60), 372, Egg),
        new(HeatedProduct.Yolk, new(61.1), 210, Egg),
        new(HeatedProduct.Yolk, new(60), 372, Egg),
        new(HeatedProduct.SweetenedYolk, new(63.3), 210, Egg),
        new(HeatedProduct.SweetenedYolk, new(62.2), 372, Egg),
        new(HeatedProduct.SaltedYolk, new(63.3), 210, Egg),
        new(HeatedProduct.SaltedYolk, new(62.2), 372, Egg),
        new(HeatedProduct.ChilledSealedFood, new(80), 7740, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(81), 6000, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(82), 4620, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(83), 3600, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(84), 2760, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(85), 2160, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(86), 1680, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(87), 1320, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(88), 1020, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(89), 780, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(90), 600, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(91), 474, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(92), 378, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(93), 300, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(94), 240, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(95), 192, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(96), 150, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(97), 120, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(98), 96, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(99), 78, Chilled),
        new(HeatedProduct.ChilledSealedFood, new(100), 60, Chilled),
        new(HeatedProduct.SourJuice, new(71.1), 3, "Mazzotta, J. Food Prot. 64:315, 2001"),
        new(HeatedProduct.AppleJuice, new(71.1), 6, Juice),
        new(HeatedProduct.AppleJuice, new(73.9), 2.8, Juice),
        new(HeatedProduct.AppleJuice, new(76.7), 1.3, Juice),
        new(HeatedProduct.AppleJuice, new(79.4), 0.6, Juice),
        new(HeatedProduct.AppleJuice, new(82.2), 0.3, Juice),
        new(HeatedProduct.CookChill, new(70), 120, "UK and EU cook-chill practice; NZ MPI TP 2016/05"),
        new(HeatedProduct.DriedEggWhite, new(54.4), 604800, "US 9 CFR 590.575, as in force to 2022"),
    ];

    /// <summary>
    /// Whether a record meets a row of the product's table: some stretch of it stays at or above the row's temperature for its time. Null for a record
    /// that is none (fewer than two readings, time running back, a figure that is none).
    /// </summary>
    /// <param name="product">What is heated.</param>
    /// <param name="record">Readings of the coldest part, in order of time; straight lines between them.</param>
    public static bool? Meets(HeatedProduct product, ReadOnlySpan<TemperatureReading> record)
    {
        if (record.Length < 2)
            return null;
        for (var i = 0; i < record.Length; i++)
        {
            if (!(Math.Abs(record[i].Minutes) < double.MaxValue) || !(Math.Abs(record[i].Temperature.Value) < double.MaxValue)
                || i > 0 && record[i].Minutes < record[i - 1].Minutes)
                return null;
        }

        foreach (var process in All)
        {
            if (process.Product == product && LongestSecondsAt(record, process.Temperature.Value) >= process.Seconds * (1 - 1e-9))
                return true;
        }

        return false;
    }

    private static double LongestSecondsAt(ReadOnlySpan<TemperatureReading> record, double celsius)
    {
        double longest = 0, run = 0;
        for (var i = 1; i < record.Length; i++)
        {
            var (a, b) = (record[i - 1].Temperature.Value, record[i].Temperature.Value);
            var seconds = (record[i].Minutes - record[i - 1].Minutes) * 60;
            if (a >= celsius && b >= celsius)
                run += seconds;
            else if (a >= celsius)
            {
                longest = Math.Max(longest, run + seconds * (a - celsius) / (a - b));
                run = 0;
            }
            else
                run = b >= celsius ? seconds * (b - celsius) / (b - a) : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
