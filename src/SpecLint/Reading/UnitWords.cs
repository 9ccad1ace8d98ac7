namespace SpecLint.Reading;

/// <summary>
/// The units whose size is fixed, with the words that name them. Trade measures, whose size a house sets, are in
/// <c>Catalogue/Tables/measures.json</c>.
/// </summary>
/// <remarks>
/// Factors: NIST Special Publication 811 (2008), appendix B, and NIST Handbook 44 (2024), appendix C, for US customary units;
/// Weights and Measures Act 1985 (UK), schedule 1, for imperial ones; 1 kcal = 4.184 kJ (thermochemical, SP 811). US
/// proof is twice the percentage by volume (27 CFR 5.1). A month is a twelfth of a mean Gregorian year.
/// </remarks>
internal static class UnitWords
{
    /// <summary>A bare number.</summary>
    public static readonly Unit Number = new("", Dimension.Number, UnitSystem.None, 1, 1, 1);

    /// <summary>°Brix, also for a bare number under a property that is one.</summary>
    public static readonly Unit Brix = new("°Bx", Dimension.Brix, UnitSystem.None, 1, 1, 1);

    private const double UsFluidOunce = 29.5735295625;
    private const double ImperialFluidOunce = 28.4130625;
    private const double Day = 86400;

    /// <summary>A unit and its words; a blank in a word may be left out, case does not matter.</summary>
    internal readonly record struct Entry(Unit Unit, string[] Words);

    public static IEnumerable<Entry> Fixed()
    {
        yield return Exact(
            "ml", Dimension.Volume, UnitSystem.Metric, 1,
            "ml", "millilitre", "millilitres", "milliliter", "milliliters", "cc", "cm3", "cm³");
        yield return Exact("cl", Dimension.Volume, UnitSystem.Metric, 10, "cl", "centilitre", "centilitres", "centiliter", "centiliters");
        yield return Exact("dl", Dimension.Volume, UnitSystem.Metric, 100, "dl", "decilitre", "decilitres", "deciliter", "deciliters");
        yield return Exact("l", Dimension.Volume, UnitSystem.Metric, 1000, "l", "litre", "litres", "liter", "liters");
        yield return Exact("hl", Dimension.Volume, UnitSystem.Metric, 100_000, "hl", "hectolitre", "hectolitres", "hectoliter", "hectoliters");
        yield return Exact("µl", Dimension.Volume, UnitSystem.Metric, 0.001, "µl", "ul", "microlitre", "microlitres", "microliter", "microliters");

        yield return Exact("g", Dimension.Mass, UnitSystem.Metric, 1, "g", "gram", "grams", "gramme", "grammes");
        yield return Exact(
            "kg", Dimension.Mass, UnitSystem.Metric, 1000,
            "kg", "kilogram", "kilograms", "kilogramme", "kilogrammes", "kilo", "kilos");
        yield return Exact("mg", Dimension.Mass, UnitSystem.Metric, 0.001, "mg", "milligram", "milligrams", "milligramme", "milligrammes");
        yield return Exact("µg", Dimension.Mass, UnitSystem.Metric, 1e-6, "µg", "ug", "mcg", "microgram", "micrograms");

        yield return Exact("oz US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce, "oz us", "us oz", "fl oz us", "us fl oz", "[foz_us]");
        yield return Exact("tsp US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce / 6, "tsp us", "us tsp", "[tsp_us]");
        yield return Exact("tbsp US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce / 2, "tbsp us", "us tbsp", "[tbs_us]");
        yield return Exact(
            "cup US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce * 8,
            "cup us", "us cup", "cups us", "us cups", "[cup_us]");
        yield return Exact(
            "pint US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce * 16,
            "pint us", "us pint", "pints us", "us pints", "[pt_us]");
        yield return Exact(
            "quart US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce * 32, "quart us", "us quart", "quarts us", "us quarts",
            "[qt_us]");
        yield return Exact(
            "gallon US", Dimension.Volume, UnitSystem.UnitedStates, UsFluidOunce * 128, "gallon us", "us gallon", "gallons us",
            "us gallons", "[gal_us]");
        yield return Exact(
            "oz UK", Dimension.Volume, UnitSystem.Imperial, ImperialFluidOunce, "oz uk", "uk oz", "oz imp", "imp oz", "fl oz uk",
            "uk fl oz", "fl oz imp", "imp fl oz", "[foz_br]");
        yield return Exact(
            "pint UK", Dimension.Volume, UnitSystem.Imperial, ImperialFluidOunce * 20, "pint uk", "uk pint", "pints uk", "uk pints",
            "imp pint", "imp pints", "imperial pint", "imperial pints", "[pt_br]");
        yield return Exact(
            "quart UK", Dimension.Volume, UnitSystem.Imperial, ImperialFluidOunce * 40, "quart uk", "uk quart", "quarts uk", "uk quarts",
            "imp quart", "imp quarts", "[qt_br]");
        yield return Exact(
            "gallon UK", Dimension.Volume, UnitSystem.Imperial, ImperialFluidOunce * 160, "gallon uk", "uk gallon", "gallons uk",
            "uk gallons", "imp gallon", "imp gallons", "[gal_br]");
        yield return Exact("oz av", Dimension.Mass, UnitSystem.UnitedStates, 28.349523125, "oz av", "oz avdp", "oz wt", "[oz_av]");
        yield return Exact("lb", Dimension.Mass, UnitSystem.UnitedStates, 453.59237, "lb", "lb.", "lbs", "lbs.", "pound", "pounds", "[lb_av]");

        yield return Exact(
            "°C", Dimension.Temperature, UnitSystem.Metric, 1, "° c", "c", "℃", "deg c", "degree c", "degrees c", "celsius",
            "degrees celsius", "cel");
        yield return new Entry(
            new Unit("°F", Dimension.Temperature, UnitSystem.UnitedStates, 5.0 / 9, 5.0 / 9, 5.0 / 9, -160.0 / 9),
            ["° f", "f", "℉", "deg f", "degree f", "degrees f", "fahrenheit", "degrees fahrenheit", "[degf]"]);
        yield return new Entry(new Unit("K", Dimension.Temperature, UnitSystem.Metric, 1, 1, 1, -273.15), ["k", "kelvin"]);

        yield return Exact("s", Dimension.Duration, UnitSystem.Metric, 1, "s", "sec", "sec.", "secs", "second", "seconds");
        yield return Exact("min", Dimension.Duration, UnitSystem.Metric, 60, "min", "min.", "mins", "minute", "minutes");
        yield return Exact("h", Dimension.Duration, UnitSystem.Metric, 3600, "h", "hr", "hr.", "hrs", "hour", "hours");
        yield return Exact("d", Dimension.Duration, UnitSystem.Metric, Day, "d", "day", "days");
        yield return Exact("week", Dimension.Duration, UnitSystem.Metric, 7 * Day, "week", "weeks", "wk", "wks");
        yield return new Entry(
            new Unit("month", Dimension.Duration, UnitSystem.Metric, 30.436875 * Day, 28 * Day, 31 * Day),
            ["month", "months", "mo"]);
        yield return new Entry(
            new Unit("year", Dimension.Duration, UnitSystem.Metric, 365.2425 * Day, 365 * Day, 366 * Day),
            ["year", "years", "yr", "yrs", "a"]);

        yield return Exact("%", Dimension.PercentOfUnknownBasis, UnitSystem.None, 1, "%", "percent", "per cent");
        yield return Exact(
            "% w/w", Dimension.PercentByMass, UnitSystem.None, 1, "% w/w", "% (w/w)", "% m/m", "% (m/m)", "% mass", "% by mass",
            "% by weight", "% wt", "% wt/wt", "g/100 g");
        yield return Exact("g/kg", Dimension.PercentByMass, UnitSystem.None, 0.1, "g/kg");
        yield return Exact("ppm", Dimension.PercentByMass, UnitSystem.None, 1e-4, "ppm", "mg/kg");
        yield return Exact(
            "% w/v", Dimension.PercentMassInVolume, UnitSystem.None, 1,
            "% w/v", "% (w/v)", "% m/v", "% (m/v)", "% wt/vol", "g/100 ml", "g/dl");
        yield return Exact("g/l", Dimension.PercentMassInVolume, UnitSystem.None, 0.1, "g/l", "mg/ml");
        yield return Exact("mg/l", Dimension.PercentMassInVolume, UnitSystem.None, 1e-4, "mg/l");
        yield return Exact(
            "% v/v", Dimension.PercentByVolume, UnitSystem.None, 1, "% v/v", "% (v/v)", "% vol", "% vol.", "vol %", "% abv", "abv", "% alc",
            "% alc/vol", "% alc. vol", "% by volume", "ml/100 ml");
        yield return Exact("ml/l", Dimension.PercentByVolume, UnitSystem.None, 0.1, "ml/l");
        yield return new Entry(Brix, ["° bx", "bx", "° brix", "brix", "degrees brix", "deg bx"]);
        yield return Exact("proof", Dimension.Proof, UnitSystem.UnitedStates, 0.5, "proof", "us proof", "° proof");

        yield return Exact("g/ml", Dimension.Density, UnitSystem.Metric, 1, "g/ml", "g/cm3", "g/cm³", "g/cc", "kg/l");
        yield return Exact("kg/m³", Dimension.Density, UnitSystem.Metric, 0.001, "kg/m³", "kg/m3");
        yield return Exact("bar", Dimension.Pressure, UnitSystem.Metric, 1, "bar");
        yield return Exact("mbar", Dimension.Pressure, UnitSystem.Metric, 0.001, "mbar");
        yield return Exact("kPa", Dimension.Pressure, UnitSystem.Metric, 0.01, "kpa");
        yield return Exact("psi", Dimension.Pressure, UnitSystem.UnitedStates, 0.0689475729, "psi", "psig", "[psi]");
        yield return Exact("atm", Dimension.Pressure, UnitSystem.Metric, 1.01325, "atm");
        yield return Exact("kcal", Dimension.Energy, UnitSystem.Metric, 1, "kcal", "calories");
        yield return Exact("kJ", Dimension.Energy, UnitSystem.Metric, 1 / 4.184, "kj");

        yield return Exact("part", Dimension.Part, UnitSystem.None, 1, "part", "parts");

        yield return Piece("piece", "pieces", "pc", "pcs", "each", "ea", "whole", "fruit", "fruits");
        yield return Piece("leaf", "leaves");
        yield return Piece("sprig", "sprigs");
        yield return Piece("wedge", "wedges");
        yield return Piece("wheel", "wheels");
        yield return Piece("half wheel", "half wheels", "half-wheel", "half-wheels", "half moon", "half moons");
        yield return Piece("half", "halves");
        yield return Piece("quarter", "quarters");
        yield return Piece("segment", "segments");
        yield return Piece("squeeze", "squeezes");
        yield return Piece("slice", "slices");
        yield return Piece("twist", "twists");
        yield return Piece("peel", "peels", "zest", "zests", "coin", "coins");
        yield return Piece("strip", "strips", "ribbon", "ribbons");
        yield return Piece("cube", "cubes");
        yield return Piece("egg", "eggs");
        yield return Piece("white", "whites", "egg white", "egg whites");
        yield return Piece("yolk", "yolks", "egg yolk", "egg yolks");
        yield return Piece("stick", "sticks");
        yield return Piece("sheet", "sheets");
        yield return Piece("pod", "pods");
        yield return Piece("bunch", "bunches");
        yield return Piece("head", "heads");
        yield return Piece("stalk", "stalks", "stem", "stems", "spear", "spears");
        yield return Piece("clove", "cloves");
        yield return Piece("bean", "beans");
        yield return Piece("berry", "berries");
        yield return Piece("cherry", "cherries");
        yield return Piece("olive", "olives");
        yield return Piece("flower", "flowers", "petal", "petals");
        yield return Piece("frond", "fronds");
        yield return Piece("star", "stars");
        yield return Piece("chunk", "chunks");
        yield return Piece("bag", "bags", "sachet", "sachets");
        yield return Piece("tablet", "tablets");
        yield return Piece("can", "cans");
        yield return Piece("charge", "charges", "charger", "chargers");
    }

    private static Entry Exact(string name, Dimension dimension, UnitSystem system, double factor, params string[] words) =>
        new(new Unit(name, dimension, system, factor, factor, factor), words);

    private static Entry Piece(string name, params string[] more) =>
        new(new Unit(name, Dimension.Count, UnitSystem.Piece, 1, 1, 1), [name, .. more]);
}
