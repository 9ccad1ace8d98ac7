using System.Globalization;

namespace SpecLint.Vocabulary;

/// <summary>A value with its range.</summary>
public interface IRanged
{
    /// <summary>Typical value.</summary>
    double Value { get; }

    /// <summary>Low end of a range of about 95 %.</summary>
    double Low { get; }

    /// <summary>High end.</summary>
    double High { get; }
}

/// <summary>Words for numbers, alike in every finding: invariant, with the unit, with the range in brackets.</summary>
public static class Say
{
    private static readonly double[] Powers = [1, 10, 100, 1e3, 1e4, 1e5, 1e6];

    /// <summary>A number with as many digits as it bears.</summary>
    public static string Number(double value)
    {
        double size = Math.Abs(value);
        int decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
        return Number(value, decimals);
    }

    /// <summary>
    /// A number with at most so many decimals; trailing zeros and a minus before nought are left out. What is no number is said in
    /// a word.
    /// </summary>
    public static string Number(double value, int decimals)
    {
        if (double.IsNaN(value)) return "unknown";
        if (double.IsInfinity(value)) return value > 0 ? "countless" : "endlessly little";
        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        if (rounded == 0) rounded = 0;
        double scaled = decimals < Powers.Length ? Math.Round(Math.Abs(rounded) * Powers[decimals]) : double.NaN;
        if (!(scaled < 1e15)) return rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);

        // Digits from the last to the first: every message has some numbers, and formats are slow.
        Span<char> text = stackalloc char[24];
        int at = text.Length;
        long left = (long)scaled;
        for (; decimals > 0 && left % 10 == 0; decimals--) left /= 10;
        for (int digit = 0; digit <= decimals || left > 0; digit++)
        {
            if (digit == decimals && decimals > 0) text[--at] = '.';
            text[--at] = (char)('0' + (left % 10));
            left /= 10;
        }

        if (rounded < 0) text[--at] = '-';
        return text.Slice(at).ToString();
    }

    /// <summary>A number with its unit, e.g. <c>45 mL</c>.</summary>
    public static string With(double value, string unit) => unit.Length == 0 ? Number(value) : $"{Number(value)} {unit}";

    /// <summary>A value with its unit and range, e.g. <c>15.2 % vol (14.1–16.3)</c>; the range is left out where it says nothing.</summary>
    public static string Range(double value, double low, double high, string unit)
    {
        string low1 = Number(low), high1 = Number(high);
        string main = With(value, unit);
        return low1 == high1 ? main : $"{main} ({Between(low1, high1)})";
    }

    /// <summary>Two ends as one range: <c>14.1–16.3</c>, and <c>-6.8 to -6.4</c> where a dash would stand beside a minus.</summary>
    /// <param name="low">The low end in digits.</param>
    /// <param name="high">The high end in digits.</param>
    internal static string Between(string low, string high) => low + Joint(low, high) + high;

    /// <summary>What stands between two ends in digits.</summary>
    internal static string Joint(string low, string high) => IsNegative(low) || IsNegative(high) ? " to " : "–";

    private static bool IsNegative(string digits) => digits.Length > 0 && digits[0] is '-' or '−';

    /// <summary>A fact in words, e.g. <c>15.2 % vol (14.1–16.3)</c>.</summary>
    public static string Fact<T>(Fact fact, T value, bool solid = false)
        where T : IRanged => Range(value.Value, value.Low, value.High, Unit(fact, solid));

    /// <summary>A pH, two decimals.</summary>
    public static string Ph<T>(T value)
        where T : IRanged
    {
        string low = Number(value.Low, 2), high = Number(value.High, 2);
        return low == high ? Number(value.Value, 2) : $"{Number(value.Value, 2)} ({Between(low, high)})";
    }

    /// <summary>The unit of a fact as people write it.</summary>
    public static string Unit(Fact fact, bool solid = false) => FactNames.Unit(fact, solid) switch
    {
        "%{vol}" => "% vol",
        "g/dL" => "g/100 mL",
        "g/(100.g)" => "g/100 g",
        "Cel" => "°C",
        "[pH]" or "1" => "",
        "d" => "d",
        var unit => unit,
    };

    /// <summary>Names in a row: <c>a</c>, <c>a and b</c>, <c>a, b and c</c>.</summary>
    public static string List(IReadOnlyList<string> names, string last = "and") => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => string.Join(", ", names.Take(names.Count - 1)) + $" {last} {names[names.Count - 1]}",
    };

    /// <summary>A count with its noun: <c>1 line</c>, <c>3 lines</c>.</summary>
    public static string Count(int count, string noun) => count == 1 ? $"1 {noun}" : $"{count} {noun}s";
}
