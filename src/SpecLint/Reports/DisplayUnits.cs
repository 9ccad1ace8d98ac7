using System.Globalization;
using System.Text;
using SpecLint.Profile;

namespace SpecLint.Reports;

/// <summary>Units in which amounts are shown to people. Only the view changes: files, JSON and SARIF stay in mL, g and °C.</summary>
public sealed class DisplayUnits
{
    /// <summary>One US fluid ounce, mL (NIST Handbook 44, 2024, appendix C).</summary>
    private const double UsFluidOunce = 29.5735295625;

    /// <summary>One US liquid quart, fluid ounces (NIST Handbook 44, 2024, appendix C).</summary>
    private const double UsQuart = 32;

    /// <summary>One US gallon, fluid ounces (NIST Handbook 44, 2024, appendix C).</summary>
    private const double UsGallon = 128;

    /// <summary>What stands before 100 mL where that is the basis of a content and no amount.</summary>
    private static readonly string[] Basis = ["per ", "in ", "/", "a ", "Weigh "];

    private static readonly string[] Joints = ["–", " to ", " and "];

    private static readonly string[] Units = ["mL", "ml", "cl", "L", "l", "°C"];

    /// <summary>A bar spoon and a dash, mL, where a house gives none (table <c>measures</c>).</summary>
    private const double BarSpoon = 5, Dash = 0.8;

    /// <summary>From these ounces on a quarter is measured, and below them a bar spoon; half way between the two.</summary>
    private const double LeastQuarter = 0.2;

    /// <summary>A difference by rounding that is not worth saying, as a share; common practice, no source.</summary>
    private const double Unsaid = 0.02;

    private readonly bool isUs;
    private readonly string[] kept;

    private DisplayUnits(bool isUs, string[]? kept = null)
    {
        this.isUs = isUs;
        this.kept = kept ?? [];
    }

    /// <summary>mL, l, g, °C.</summary>
    public static DisplayUnits Metric { get; } = new(false);

    /// <summary>US fluid ounces, quarts, gallons and °F; mass stays in grams, as bars weigh.</summary>
    public static DisplayUnits UnitedStates { get; } = new(true);

    /// <summary>The unit in which the volume of a glass is shown on an axis.</summary>
    internal string GlassUnit => isUs ? "oz" : "mL";

    /// <summary>A volume in <see cref="GlassUnit"/>.</summary>
    internal double InGlassUnit(double millilitres) => isUs ? millilitres / UsFluidOunce : millilitres;

    /// <summary>A volume.</summary>
    /// <param name="millilitres">mL.</param>
    public string Volume(double millilitres)
    {
        if (double.IsNaN(millilitres)) return "?";
        if (isUs) return Ounces(millilitres);
        if (Math.Round(millilitres) >= 1000) return $"{Say.Number(millilitres / 1000, 3)} l";
        return $"{Say.Number(millilitres, millilitres < 100 ? 1 : 0)} ml";
    }

    /// <summary>
    /// A volume as a bar measures it out: of US units ounces to a quarter, bar spoons and dashes below, quarts and ounces above; where that
    /// is not what is asked for, the exact value stands beside it.
    /// </summary>
    /// <param name="millilitres">mL.</param>
    public string Pour(double millilitres)
    {
        if (!isUs || !(millilitres > 0)) return Volume(millilitres);
        double ounces = millilitres / UsFluidOunce;
        double quarts = Math.Floor(ounces / UsQuart), rest = Math.Round((ounces - (quarts * UsQuart)) * 4) / 4;
        if (rest == UsQuart) (quarts, rest) = (quarts + 1, 0);
        var (words, measured) = ounces >= LeastQuarter
            ? ($"{(quarts > 0 ? $"{Say.Number(quarts, 0)} qt" : "")}{(quarts > 0 && rest > 0 ? " " : "")}"
                    + $"{(rest > 0 ? $"{Quarters(rest)} oz" : "")}",
                ((quarts * UsQuart) + rest) * UsFluidOunce)
            : millilitres >= BarSpoon / 2 ? Spoons(Math.Round(millilitres / BarSpoon * 2) / 2) : Dashes(Math.Max(1, Math.Round(millilitres / Dash)));
        return Math.Abs(measured - millilitres) <= millilitres * Unsaid ? words : $"{words} ({Volume(millilitres)})";

        static (string, double) Spoons(double number) => ($"{Quarters(number)} {(number > 1 ? "bar spoons" : "bar spoon")}", number * BarSpoon);

        static (string, double) Dashes(double number) => ($"{Say.Number(number, 0)} {(number > 1 ? "dashes" : "dash")}", number * Dash);
    }

    /// <summary>The same units, by which a sentence leaves the names of a book as they are, whatever amounts stand in them.</summary>
    public DisplayUnits Keeping(Linking.LinkedBook book) =>
        !isUs
            ? this
            : new DisplayUnits(
                true,
                [.. book.Files.Where(f => f.Name.IsGiven)
                    .Select(f => f.Name.Value)
                    .Where(n => Turn(n, beside: false) != n)
                    .Distinct()
                    .OrderByDescending(n => n.Length)
                    .ThenBy(n => n, StringComparer.Ordinal)]);

    private static string Quarters(double number)
    {
        double whole = Math.Floor(number);
        string part = (number - whole) switch { 0.25 => "¼", 0.5 => "½", 0.75 => "¾", _ => "" };
        return whole == 0 ? part : Say.Number(whole, 0) + part;
    }

    /// <summary>A mass.</summary>
    /// <param name="grams">g.</param>
    public string Mass(double grams) =>
        double.IsNaN(grams) ? "?" : !isUs && grams >= 1000 ? $"{Say.Number(grams / 1000, 3)} kg" : $"{Say.Number(grams, grams < 100 ? 1 : 0)} g";

    /// <summary>A temperature.</summary>
    /// <param name="celsius">°C.</param>
    public string Temperature(double celsius) => isUs ? $"{Say.Number(Fahrenheit(celsius), 0)} °F" : $"{Say.Number(celsius, 1)} °C";

    /// <summary>A number with its unit as <see cref="Say.With"/> writes it, in these units.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit in words: <c>mL</c> and <c>°C</c> are turned into others.</param>
    public string With(double value, string unit)
    {
        var (scale, shift, shown) = Of(value, unit);
        return Say.With((value * scale) + shift, shown);
    }

    /// <summary>The ends of a range, without the unit, in that of <see cref="With"/>; empty where they say nothing.</summary>
    /// <param name="value">The typical value, which decides the unit.</param>
    /// <param name="low">Low end.</param>
    /// <param name="high">High end.</param>
    /// <param name="unit">The unit of all three.</param>
    /// <param name="between">What stands between the ends; a dash, or a word beside a minus, where it is not given.</param>
    public string Ends(double value, double low, double high, string unit, string? between = null)
    {
        var (scale, shift, _) = Of(value, unit);
        string first = Say.Number((low * scale) + shift), last = Say.Number((high * scale) + shift);
        return first == last ? "" : first + (between ?? Say.Joint(first, last)) + last;
    }

    /// <summary>A value with its unit and range, as <see cref="Say.Range"/> writes it, in these units.</summary>
    public string Range(double value, double low, double high, string unit)
    {
        string ends = Ends(value, low, high, unit);
        return ends.Length == 0 ? With(value, unit) : $"{With(value, unit)} ({ends})";
    }

    /// <summary>A fact in words, in these units.</summary>
    public string FactOf(Fact fact, FactValue value, bool solid = false) =>
        fact == Fact.Ph || fact == Fact.MixPh ? Say.Ph(value) : Range(value.Value, value.Low, value.High, Say.Unit(fact, solid));

    /// <summary>
    /// A sentence in which volumes and temperatures are shown in these units. What is written the way a file writes it
    /// ("Write 30 ml.") keeps its words and gets the other unit beside it; what stands in quotes or backticks stays as it is.
    /// </summary>
    public string Sentence(string text) => isUs ? Turn(text, beside: true) : text;

    /// <summary>A sentence in which all volumes and temperatures are turned into these units: for people who read no file.</summary>
    public string Spoken(string text) => isUs ? Turn(text, beside: false) : text;

    private string Turn(string text, bool beside)
    {
        var turned = new StringBuilder(text.Length + 16);
        for (int at = 0; at < text.Length;)
        {
            int end = text[at] is '`' or '"' ? text.IndexOf(text[at], at + 1) : -1;
            if (end < 0 && (at == 0 || !char.IsLetterOrDigit(text[at - 1])) && Array.Find(kept, n => StartsAt(text, at, n)) is { } name)
                end = at + name.Length - 1;
            if (end >= 0)
            {
                turned.Append(text, at, end + 1 - at);
                at = end + 1;
            }
            else if (TryTurn(text, at, beside, out int length, out string shown))
            {
                turned.Append(shown);
                at += length;
            }
            else
            {
                turned.Append(text[at++]);
            }
        }

        return turned.ToString();
    }

    /// <summary>Turns an amount that begins at a place: a number or two, a unit, and the range in brackets that may follow.</summary>
    private static bool TryTurn(string text, int start, bool beside, out int length, out string shown)
    {
        (length, shown) = (0, "");
        if (start > 0 && (char.IsLetterOrDigit(text[start - 1]) || text[start - 1] is '.' or ',' or '/' or '-' or '−' or '_')) return false;
        int at = start;
        if (!TryNumber(text, ref at, out double a)) return false;
        double? b = null;
        string joint = "";
        foreach (string between in Joints)
        {
            int next = at + between.Length;
            if (!StartsAt(text, at, between) || !TryNumber(text, ref next, out double second) || next >= text.Length || text[next] != ' ') continue;
            (b, joint, at) = (second, between, next);
            break;
        }

        if (at >= text.Length || text[at] is not (' ' or '\u00a0')) return false;
        int from = at + 1;
        string? unit = Array.Find(
            Units,
            u => StartsAt(text, from, u)
                && (from + u.Length == text.Length || !(char.IsLetterOrDigit(text[from + u.Length]) || text[from + u.Length] == '/')));
        if (unit is null || StartsAt(text, from + unit.Length, " a litre")) return false;
        if (a == 100 && b is null && Array.Exists(Basis, w => start >= w.Length && StartsAt(text, start - w.Length, w))) return false;
        at = from + unit.Length;
        bool isHot = unit == "°C";
        double scale = unit switch { "cl" => 10, "l" or "L" => 1000, _ => 1 };
        double last = (b ?? a) * scale;
        string end = isHot ? UnitedStates.Temperature(last) : Ounces(last), first = b is null ? "" : Bare(a * scale, last, isHot);
        shown = b is null ? end : first + (joint == "–" ? Say.Joint(first, end) : joint) + end;
        if (beside && unit is "ml" or "cl" or "l")
        {
            shown = $"{text.Substring(start, at - start)} ({shown})";
        }
        else if (StartsAt(text, at, " ("))
        {
            int inner = at + 2;
            if (TryNumber(text, ref inner, out double low)
                && TryJoint(text, ref inner)
                && TryNumber(text, ref inner, out double high)
                && StartsAt(text, inner, ")"))
            {
                shown += $" ({Say.Between(Bare(low * scale, last, isHot), Bare(high * scale, last, isHot))})";
                at = inner + 1;
            }
        }

        length = at - start;
        return true;
    }

    /// <summary>What stands between the ends of a range as <see cref="Say"/> writes it.</summary>
    private static bool TryJoint(string text, ref int at)
    {
        string joint = StartsAt(text, at, "–") ? "–" : StartsAt(text, at, " to ") ? " to " : "";
        at += joint.Length;
        return joint.Length > 0;
    }

    private static bool StartsAt(string text, int at, string what) => string.CompareOrdinal(text, at, what, 0, what.Length) == 0;

    /// <summary>A number with a point, without an exponent, that is not the beginning of a longer word of digits.</summary>
    private static bool TryNumber(string text, ref int at, out double value)
    {
        int end = at;
        if (end < text.Length && text[end] is '-' or '−') end++;
        int digits = end;
        while (end < text.Length
            && (text[end] is >= '0' and <= '9'
                || (text[end] == '.' && end > digits && end + 1 < text.Length && text[end + 1] is >= '0' and <= '9'))) end++;
        value = 0;
        if (end == digits
            || !double.TryParse(
                text.Substring(at, end - at).Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out value))
            return false;
        at = end;
        return true;
    }

    /// <summary>A number without its unit, in the unit that another of the same text takes.</summary>
    private static string Bare(double value, double like, bool isHot)
    {
        if (isHot) return Say.Number(Fahrenheit(value), 0);
        var (size, _) = SizeOf(like);
        double shown = value / UsFluidOunce / size;
        return Say.Number(shown, shown < 10 ? 2 : 1);
    }

    private static string Ounces(double millilitres)
    {
        var (size, name) = SizeOf(millilitres);
        double shown = millilitres / UsFluidOunce / size;
        return $"{Say.Number(shown, Math.Abs(shown) < 10 ? 2 : 1)} {name}";
    }

    private static (double Size, string Name) SizeOf(double millilitres)
    {
        double ounces = Math.Abs(millilitres) / UsFluidOunce;
        return ounces >= UsGallon ? (UsGallon, "gal") : ounces >= UsQuart ? (UsQuart, "qt") : (1, "oz");
    }

    private static double Fahrenheit(double celsius) => (celsius * 9 / 5) + 32;

    private (double Scale, double Shift, string Unit) Of(double value, string unit)
    {
        if (!isUs) return (1, 0, unit);
        if (unit == "°C") return (9 / 5.0, 32, "°F");
        if (unit != "mL") return (1, 0, unit);
        var (size, name) = SizeOf(value);
        return (1 / UsFluidOunce / size, 0, name);
    }
}
