using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Reading;

namespace SpecLint.Reports;

/// <summary>What the JSON outputs share: options, numbers, addresses.</summary>
internal static class JsonOutput
{
    /// <summary>
    /// Indented, with the same line ends on every system; letters beyond ASCII stay
    /// readable, control characters are escaped as JSON asks.
    /// </summary>
    public static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
#if NET
        NewLine = "\n",
#endif
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly JsonEncodedText StartLine = JsonEncodedText.Encode("startLine");
    private static readonly JsonEncodedText StartColumn = JsonEncodedText.Encode("startColumn");
    private static readonly JsonEncodedText EndLine = JsonEncodedText.Encode("endLine");
    private static readonly JsonEncodedText EndColumn = JsonEncodedText.Encode("endColumn");
    private static readonly JsonEncodedText ByteOffset = JsonEncodedText.Encode("byteOffset");
    private static readonly JsonEncodedText ByteLength = JsonEncodedText.Encode("byteLength");

    /// <summary>
    /// A number at six significant digits: more than any input bears, and few enough that the last bit of a
    /// platform's arithmetic does not show.
    /// </summary>
    public static string Number(double value)
    {
        string text = value.ToString("G6", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>Hands what is written so far to the stream, once it is much: a writer keeps all of it until it is told.</summary>
    public static void PassOn(this Utf8JsonWriter json)
    {
        if (json.BytesPending > 1 << 15) json.Flush();
    }

    /// <summary>Writes a number; nothing where it is not finite.</summary>
    public static void WriteFinite(this Utf8JsonWriter json, string name, double value)
    {
        if (double.IsNaN(value) || double.IsInfinity(value)) return;
        json.WritePropertyName(name);
        WriteNumber(json, value);
    }

    /// <summary>The same with a name that is encoded already.</summary>
    public static void WriteFinite(this Utf8JsonWriter json, JsonEncodedText name, double value)
    {
        if (double.IsNaN(value) || double.IsInfinity(value)) return;
        json.WritePropertyName(name);
        WriteNumber(json, value);
    }

    /// <summary>Writes a text; nothing where it is empty or missing.</summary>
    public static void WriteGiven(this Utf8JsonWriter json, string name, string? text)
    {
        if (!string.IsNullOrEmpty(text)) json.WriteString(name, WellFormed(text!));
    }

    /// <summary>The same with a name that is encoded already.</summary>
    public static void WriteGiven(this Utf8JsonWriter json, JsonEncodedText name, string? text)
    {
        if (!string.IsNullOrEmpty(text)) json.WriteString(name, WellFormed(text!));
    }

    /// <summary>A text whose lone surrogates are replaced: no UTF-8 can hold them.</summary>
    public static string WellFormed(string text)
    {
#if NET
        if (text.AsSpan().IndexOfAnyInRange('\uD800', '\uDFFF') < 0) return text;
#endif
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i])) continue;
            if (char.IsSurrogatePair(text, i)) i++;
            else return Replace(text);
        }

        return text;
    }

    /// <summary>A relative path as a URI reference: segments percent-encoded, parted by <c>/</c>.</summary>
    public static string Address(string path) => string.Join("/", path.Split('/').Select(s => Uri.EscapeDataString(WellFormed(s))));

    /// <summary>Writes a place as line, column and bytes.</summary>
    public static void WriteRegion(this Utf8JsonWriter json, string name, Place place)
    {
        json.WriteStartObject(name);
        WriteInside(json, place);
    }

    /// <summary>The same with a name that is encoded already.</summary>
    public static void WriteRegion(this Utf8JsonWriter json, JsonEncodedText name, Place place)
    {
        json.WriteStartObject(name);
        WriteInside(json, place);
    }

    private static void WriteInside(Utf8JsonWriter json, Place place)
    {
        var start = place.Start;
        var end = place.End;
        json.WriteNumber(StartLine, start.Line);
        json.WriteNumber(StartColumn, start.Column);
        json.WriteNumber(EndLine, end.Line);
        json.WriteNumber(EndColumn, end.Column);
        json.WriteNumber(ByteOffset, place.Span.Start);
        json.WriteNumber(ByteLength, place.Span.Length);
        json.WriteEndObject();
    }

    private static void WriteNumber(Utf8JsonWriter json, double value)
    {
        // Most limits are whole numbers: no shortest decimal need be looked for.
        if (value != 0 && value == Math.Truncate(value) && Math.Abs(value) < 1e6)
        {
            json.WriteNumberValue((int)value);
            return;
        }

#if NET
        Span<byte> text = stackalloc byte[32];
        if (value != 0 && value.TryFormat(text, out int length, "G6", CultureInfo.InvariantCulture))
        {
            json.WriteRawValue(text.Slice(0, length), skipInputValidation: true);
            return;
        }
#endif
        json.WriteRawValue(Number(value), skipInputValidation: true);
    }

    private static string Replace(string text)
    {
        var kept = new System.Text.StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogatePair(text, i)) kept.Append(text[i]).Append(text[++i]);
            else kept.Append(char.IsSurrogate(text[i]) ? '\uFFFD' : text[i]);
        }

        return kept.ToString();
    }
}
