using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>Rounds amounts to the steps of the bar's tools, and writes them in the unit that they were written in.</summary>
internal static class Rounding
{
    /// <summary>mL; common practice, no source.</summary>
    private const double DefaultJiggerStep = 2.5;

    /// <summary>From this volume on a jug is used, mL; common practice, no source.</summary>
    private const double JugFrom = 200;

    private const double JugStep = 5;

    /// <summary>The amount in base units, rounded to the step of the tool that measures it; never to nothing.</summary>
    /// <param name="baseAmount">mL, g or pieces.</param>
    /// <param name="like">An amount in whose unit it is written.</param>
    /// <param name="settings">Settings, for the steps.</param>
    public static double ToStep(double baseAmount, Quantity like, Settings settings)
    {
        double step = Step(baseAmount, like, settings);
        double steps = Math.Round(baseAmount / step, MidpointRounding.AwayFromZero);
        return Math.Max(1, steps) * step;
    }

    /// <summary>The amount as it is written: a string of JSON with its quotes.</summary>
    public static string Text(double baseAmount, Quantity like)
    {
        double value = (baseAmount - like.Unit.Offset) / like.Unit.Factor;
        string number = Say.Number(value, 3), unit = like.Unit.Name;
        if (number != "1" && like.Unit.System is UnitSystem.Trade or UnitSystem.Piece) unit = Plural(unit);
        return $"\"{number} {unit}\"";
    }

    /// <summary>The plural of a unit that is a word; others have none.</summary>
    private static string Plural(string unit) => unit switch
    {
        "dash" or "splash" or "pinch" => unit + "es",
        "drop" or "dropper" or "spray" or "barspoon" or "piece" or "cup" or "sprig" or "leaf" or "wedge" or "shot" => unit == "leaf" ? "leaves" : unit + "s",
        _ => unit,
    };

    /// <summary>The amount in words, e.g. <c>17.5 ml</c>.</summary>
    public static string Words(double baseAmount, Quantity like) => Text(baseAmount, like).Trim('"');

    /// <summary>The step of the tool that measures an amount, in base units.</summary>
    internal static double Step(double amount, Quantity like, Settings settings)
    {
        switch (like.Dimension)
        {
            case Dimension.Volume when like.Unit.Name is "dash" or "drop" or "barspoon" or "dropper" or "spray":
                return like.Unit.Factor;
            case Dimension.Volume when like.Unit.Name is "ml" or "cl" or "dl" or "l":
                if (amount >= JugFrom) return JugStep;
                return settings.Bar is { Jigger.IsGiven: true } bar && bar.Jigger.Value.Base > 0 ? bar.Jigger.Value.Base : DefaultJiggerStep;
            case Dimension.Volume:
                return like.Unit.Factor / 4;
            case Dimension.Mass:
                double scale = settings.Bar is { Scale.IsGiven: true } b && b.Scale.Value.Base > 0 ? b.Scale.Value.Base : 1;
                return amount < 5 * scale ? scale / 10 : amount >= 1000 * scale ? 10 * scale : scale;
            default:
                return 1;
        }
    }
}
