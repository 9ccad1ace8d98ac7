namespace SpecLint.Reading;

/// <summary>Why a text is no quantity.</summary>
public enum QuantityFault
{
    /// <summary>It is one.</summary>
    None,

    /// <summary>Nothing is written.</summary>
    Empty,

    /// <summary>A unit without a number, where the unit needs one.</summary>
    NumberMissing,

    /// <summary>A number without a unit.</summary>
    UnitMissing,

    /// <summary>A word that names no unit.</summary>
    UnknownUnit,

    /// <summary>The number cannot be read.</summary>
    BadNumber,

    /// <summary>More digits than are read: seven before the point, eight behind it.</summary>
    TooManyDigits,

    /// <summary>A comma before three digits: thousands or decimals.</summary>
    CommaAmbiguous,

    /// <summary>A range whose second number is below its first.</summary>
    RangeDownwards,

    /// <summary>A negative number that is no temperature.</summary>
    Negative,
}

/// <summary>Why a text is no quantity, and what was probably meant.</summary>
/// <param name="Fault">Why.</param>
/// <param name="Part">The part of the text that cannot be read.</param>
/// <param name="Suggestion">What was probably meant by it, or <see langword="null"/>.</param>
internal readonly record struct QuantityProblem(QuantityFault Fault, string Part = "", string? Suggestion = null)
{
    /// <summary>One sentence about the text.</summary>
    public string Message => Fault switch
    {
        QuantityFault.None => "",
        QuantityFault.Empty => "is empty",
        QuantityFault.NumberMissing => $"has the unit `{Part}` without a number",
        QuantityFault.UnitMissing => "is a number without a unit",
        QuantityFault.UnknownUnit => $"has the unknown unit `{Part}`",
        QuantityFault.TooManyDigits => "has more digits than anyone can weigh",
        QuantityFault.CommaAmbiguous => $"can be read in two ways: the comma in `{Part}` may part thousands or decimals",
        QuantityFault.RangeDownwards => "is a range that runs downwards",
        QuantityFault.Negative => "is negative",
        _ => "has a number that cannot be read",
    };

    /// <summary>What to do.</summary>
    public string Advice => Fault switch
    {
        QuantityFault.None => "",
        QuantityFault.UnitMissing => "Write the unit behind the number.",
        QuantityFault.UnknownUnit when Suggestion is not null => $"The nearest unit is `{Suggestion}`.",
        QuantityFault.UnknownUnit => "Use a unit such as ml, g, oz, dash, piece, °C, min or % w/w, "
            + "or give the word a size under `measures` in bar.json.",
        QuantityFault.TooManyDigits => "Round it, and use a unit that fits.",
        QuantityFault.CommaAmbiguous => "Write it without a comma.",
        QuantityFault.RangeDownwards => "Write the lower number first, as in `20–25 ml`.",
        QuantityFault.Negative => "Only temperatures are below zero.",
        _ => "Write a number and a unit, such as `45 ml`, `1 1/2 oz` or `20–25 g`.",
    };
}

/// <summary>
/// Reads quantities: a number (<c>45</c>, <c>0.5</c>, <c>.5</c>), fraction (<c>1/2</c>, <c>1 1/2</c>, <c>½</c>) or range (<c>20–25</c>,
/// <c>20-25</c>, <c>20 to 25</c>), then a unit, with or without a blank. A decimal comma is read and marked; <c>1-1/2</c> is one and a
/// half, and <c>a dash</c> or <c>twist of</c> is one.
/// </summary>
internal static class QuantityReader
{
    private const int MostWholeDigits = 7;
    private const int MostDecimals = 8;

    private static readonly double[] Powers = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8];

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">The text.</param>
    /// <param name="measures">The units.</param>
    /// <param name="quantity">
    /// The quantity; where only the unit is missing, the bare number with <see cref="Dimension.Number"/>.
    /// </param>
    /// <param name="problem">Why it cannot be read.</param>
    /// <returns>Whether it could be read.</returns>
    public static bool TryRead(string text, Measures measures, out Quantity quantity, out QuantityProblem problem) =>
        TryRead(text.AsSpan(), measures, out quantity, out problem);

    /// <inheritdoc cref="TryRead(string, Measures, out Quantity, out QuantityProblem)"/>
    public static bool TryRead(ReadOnlySpan<char> text, Measures measures, out Quantity quantity, out QuantityProblem problem)
    {
        quantity = default;
        int end = text.Length;
        while (end > 0 && Measures.IsBlank(text[end - 1])) end--;
        text = text.Slice(0, end);
        int at = 0;
        SkipBlanks(text, ref at);
        if (at == text.Length)
        {
            problem = new QuantityProblem(QuantityFault.Empty);
            return false;
        }

        if (!StartsNumber(text[at])) return TryReadBareWord(text.Slice(at), measures, out quantity, out problem);

        var form = QuantityForm.Plain;
        var fault = ReadNumber(text, ref at, ref form, out double low, out bool negative, out int numberStart);
        if (fault != QuantityFault.None)
        {
            problem = new QuantityProblem(fault, text.Slice(numberStart, at - numberStart).ToString());
            return false;
        }

        double high = low;
        if (ReadRangeSign(text, ref at))
        {
            form |= QuantityForm.Range;
            fault = ReadNumber(text, ref at, ref form, out high, out bool highIsNegative, out numberStart);
            negative |= highIsNegative;
            if (fault == QuantityFault.None && high < low) fault = QuantityFault.RangeDownwards;
            if (fault != QuantityFault.None)
            {
                problem = new QuantityProblem(fault, text.Slice(numberStart, at - numberStart).ToString());
                return false;
            }
        }

        SkipBlanks(text, ref at);
        double middle = low == high ? low : (low + high) / 2;
        if (at == text.Length)
        {
            quantity = new Quantity(middle, low, high, UnitWords.Number, form);
            problem = new QuantityProblem(negative ? QuantityFault.Negative : QuantityFault.UnitMissing);
            return false;
        }

        var rest = text.Slice(at);
        if (!measures.TryFind(rest, out var word))
        {
            bool number = StartsNumber(rest[0]) || rest[0] is ',' or '/' or '\u2044';
            string part = rest.ToString();
            problem = number
                ? new QuantityProblem(QuantityFault.BadNumber, part)
                : new QuantityProblem(QuantityFault.UnknownUnit, part, measures.Nearest(part, fits: null));
            return false;
        }

        if (negative && word.Unit.Dimension != Dimension.Temperature)
        {
            problem = new QuantityProblem(QuantityFault.Negative);
            return false;
        }

        quantity = new Quantity(middle, low, high, word.Unit, form);
        problem = default;
        return true;
    }

    /// <summary>A text with its decimal commas made points.</summary>
    internal static string WithPoints(string text)
    {
        var fixedText = text.ToCharArray();
        for (int i = 1; i + 1 < fixedText.Length; i++)
        {
            if (fixedText[i] == ',' && IsDigit(fixedText[i - 1]) && IsDigit(fixedText[i + 1])) fixedText[i] = '.';
        }

        return new string(fixedText);
    }

    private static bool TryReadBareWord(ReadOnlySpan<char> text, Measures measures, out Quantity quantity, out QuantityProblem problem)
    {
        if (measures.TryFind(WithoutArticle(text), out var word) || measures.TryFind(text, out word))
        {
            quantity = word.StandsAlone ? new Quantity(1, 1, 1, word.Unit, QuantityForm.NumberLeftOut) : default;
            problem = word.StandsAlone ? default : new QuantityProblem(QuantityFault.NumberMissing, text.ToString());
            return word.StandsAlone;
        }

        quantity = default;
        problem = new QuantityProblem(QuantityFault.BadNumber, text.ToString());
        return false;
    }

    /// <summary><c>a dash of</c> as <c>dash</c>.</summary>
    private static ReadOnlySpan<char> WithoutArticle(ReadOnlySpan<char> text)
    {
        int from = 0, to = text.Length;
        if (to > 2 && text[0] is 'a' or 'A')
        {
            int behind = text[1] is 'n' or 'N' ? 2 : 1;
            if (behind < to && Measures.IsBlank(text[behind])) from = behind;
            SkipBlanks(text, ref from);
        }

        if (to - from > 3 && text[to - 2] is 'o' or 'O' && text[to - 1] is 'f' or 'F' && Measures.IsBlank(text[to - 3]))
        {
            to -= 3;
            while (to > from && Measures.IsBlank(text[to - 1])) to--;
        }

        return text.Slice(from, to - from);
    }

    private static QuantityFault ReadNumber(
        ReadOnlySpan<char> text, ref int at, ref QuantityForm form, out double value, out bool negative, out int start)
    {
        start = at;
        negative = at < text.Length && text[at] is '-' or '\u2212';
        if (negative) at++;
        var fault = ReadUnsigned(text, ref at, ref form, out value);
        if (negative) value = -value;
        return fault;
    }

    private static QuantityFault ReadUnsigned(ReadOnlySpan<char> text, ref int at, ref QuantityForm form, out double value)
    {
        value = 0;
        if (at >= text.Length) return QuantityFault.BadNumber;
        if (Vulgar(text[at]) is var alone and > 0)
        {
            at++;
            form |= QuantityForm.Fraction;
            value = alone;
            return QuantityFault.None;
        }

        int digitsStart = at;
        long whole = 0;
        while (at < text.Length && IsDigit(text[at]))
        {
            if (at - digitsStart == MostWholeDigits) return QuantityFault.TooManyDigits;
            whole = (whole * 10) + (text[at] - '0');
            at++;
        }

        int digits = at - digitsStart;
        bool separated = at + 1 < text.Length && text[at] is '.' or ',' && IsDigit(text[at + 1]);
        if (digits == 0 && !separated) return QuantityFault.BadNumber;
        if (separated) return ReadDecimals(text, ref at, ref form, whole, digits, text[digitsStart], out value);

        value = whole;
        if (digits > 3) return QuantityFault.None;
        if (at < text.Length && text[at] is '/' or '\u2044') return ReadFraction(text, ref at, ref form, whole, out value);

        // "1-1/2 oz" is one and a half: as a range it would run downwards.
        if (at + 1 < text.Length && text[at] == '-' && ProperFraction(text, at + 1, out int behind, out double part))
        {
            at = behind;
            form |= QuantityForm.Fraction;
            value = whole + part;
            return QuantityFault.None;
        }

        int ahead = at;
        SkipBlanks(text, ref ahead);
        if (ahead < text.Length && Vulgar(text[ahead]) is var vulgar and > 0)
        {
            at = ahead + 1;
            form |= QuantityForm.Fraction;
            value = whole + vulgar;
            return QuantityFault.None;
        }

        if (ahead > at && ahead < text.Length && IsDigit(text[ahead])) return ReadMixed(text, ref at, ahead, ref form, whole, out value);
        return QuantityFault.None;
    }

    /// <summary>A fraction below one, as <c>1/2</c> or <c>½</c>.</summary>
    private static bool ProperFraction(ReadOnlySpan<char> text, int at, out int behind, out double value)
    {
        behind = at + 1;
        value = Vulgar(text[at]);
        if (value > 0) return true;
        int start = at, over = 0;
        while (at < text.Length && IsDigit(text[at]) && at - start < 3) over = (over * 10) + (text[at++] - '0');
        if (at == start || at >= text.Length || text[at] is not ('/' or '\u2044')) return false;
        var form = QuantityForm.Plain;
        bool read = ReadFraction(text, ref at, ref form, over, out value) == QuantityFault.None;
        behind = at;
        return read && value is > 0 and < 1;
    }

    private static QuantityFault ReadDecimals(
        ReadOnlySpan<char> text, ref int at, ref QuantityForm form, long whole, int digits, char firstDigit, out double value)
    {
        bool comma = text[at] == ',';
        at++;
        int start = at;
        long mantissa = whole;
        value = 0;
        while (at < text.Length && IsDigit(text[at]))
        {
            if (at - start == MostDecimals) return QuantityFault.TooManyDigits;
            mantissa = (mantissa * 10) + (text[at] - '0');
            at++;
        }

        int decimals = at - start;
        if (comma)
        {
            // "1,250 g" is 1250 g to one reader and 1.25 g to another; "0,125 l" is not.
            if (digits == 0) return QuantityFault.BadNumber;
            bool again = at + 1 < text.Length && text[at] is ',' or '.' && IsDigit(text[at + 1]);
            if ((decimals == 3 && firstDigit != '0') || again) return QuantityFault.CommaAmbiguous;
            form |= QuantityForm.DecimalComma;
        }

        // Fifteen digits fit a double exactly, so that one division rounds once.
        value = mantissa / Powers[decimals];
        return QuantityFault.None;
    }

    private static QuantityFault ReadFraction(ReadOnlySpan<char> text, ref int at, ref QuantityForm form, long numerator, out double value)
    {
        at++;
        int start = at;
        int denominator = 0;
        while (at < text.Length && IsDigit(text[at]) && at - start < 3)
        {
            denominator = (denominator * 10) + (text[at] - '0');
            at++;
        }

        value = 0;
        if (at == start || text[start] == '0') return QuantityFault.BadNumber;
        form |= QuantityForm.Fraction;
        value = (double)numerator / denominator;
        return QuantityFault.None;
    }

    private static QuantityFault ReadMixed(ReadOnlySpan<char> text, ref int at, int ahead, ref QuantityForm form, long whole, out double value)
    {
        value = whole;
        int digitsStart = ahead;
        long numerator = 0;
        while (ahead < text.Length && IsDigit(text[ahead]) && ahead - digitsStart < 3)
        {
            numerator = (numerator * 10) + (text[ahead] - '0');
            ahead++;
        }

        if (ahead >= text.Length || text[ahead] is not ('/' or '\u2044')) return QuantityFault.None;
        at = ahead;
        var fault = ReadFraction(text, ref at, ref form, numerator, out double fraction);
        value = whole + fraction;
        return fault;
    }

    /// <summary>A dash, or "to" between blanks, that a number follows.</summary>
    private static bool ReadRangeSign(ReadOnlySpan<char> text, ref int at)
    {
        int ahead = at;
        SkipBlanks(text, ref ahead);
        if (ahead >= text.Length) return false;
        if (text[ahead] is '-' or (>= '\u2010' and <= '\u2014'))
        {
            ahead++;
            SkipBlanks(text, ref ahead);
        }
        else if (ahead > at && ahead + 3 <= text.Length && text[ahead] is 't' or 'T'
            && text[ahead + 1] is 'o' or 'O' && Measures.IsBlank(text[ahead + 2]))
        {
            ahead += 2;
            SkipBlanks(text, ref ahead);
        }
        else
        {
            return false;
        }

        if (ahead >= text.Length || !StartsNumber(text[ahead])) return false;
        at = ahead;
        return true;
    }

    private static bool StartsNumber(char c) => IsDigit(c) || c is '.' or '-' or '\u2212' || Vulgar(c) > 0;

    private static bool IsDigit(char c) => c is >= '0' and <= '9';

    private static void SkipBlanks(ReadOnlySpan<char> text, ref int at)
    {
        while (at < text.Length && Measures.IsBlank(text[at])) at++;
    }

    private static double Vulgar(char c) => c switch
    {
        '½' => 1.0 / 2,
        '⅓' => 1.0 / 3,
        '⅔' => 2.0 / 3,
        '¼' => 1.0 / 4,
        '¾' => 3.0 / 4,
        '⅕' => 1.0 / 5,
        '⅖' => 2.0 / 5,
        '⅗' => 3.0 / 5,
        '⅘' => 4.0 / 5,
        '⅙' => 1.0 / 6,
        '⅚' => 5.0 / 6,
        '⅐' => 1.0 / 7,
        '⅛' => 1.0 / 8,
        '⅜' => 3.0 / 8,
        '⅝' => 5.0 / 8,
        '⅞' => 7.0 / 8,
        '⅑' => 1.0 / 9,
        '⅒' => 1.0 / 10,
        _ => 0,
    };
}
