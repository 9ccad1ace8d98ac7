using System.Text;

namespace SpecLint.Reading;

/// <summary>Texts of JSON strings.</summary>
internal static class JsonText
{
    /// <summary>Resolves the escapes of a string that has none that are malformed; lone surrogates become U+FFFD.</summary>
    public static string Unescape(ReadOnlySpan<byte> raw)
    {
        var text = new StringBuilder(raw.Length);
        int from = 0;
        for (int i = 0; i < raw.Length; i++)
        {
            if (raw[i] != (byte)'\\' || i + 1 >= raw.Length) continue;
            text.Append(Utf8Text.Decode(raw.Slice(from, i - from)));
            i++;
            if (raw[i] == (byte)'u')
            {
                int unit = Hex(raw, i + 1);
                i += 4;
                if (char.IsHighSurrogate((char)unit) && i + 6 < raw.Length + 0 && raw[i + 1] == (byte)'\\' && raw[i + 2] == (byte)'u'
                    && Hex(raw, i + 3) is var low && low >= 0xDC00 && low <= 0xDFFF)
                {
                    text.Append((char)unit).Append((char)low);
                    i += 6;
                }
                else
                {
                    text.Append(unit is < 0 or (>= 0xD800 and <= 0xDFFF) ? '\uFFFD' : (char)unit);
                }
            }
            else
            {
                text.Append(raw[i] switch
                {
                    (byte)'n' => '\n',
                    (byte)'t' => '\t',
                    (byte)'r' => '\r',
                    (byte)'b' => '\b',
                    (byte)'f' => '\f',
                    _ => (char)raw[i],
                });
            }

            from = i + 1;
        }

        if (from < raw.Length) text.Append(Utf8Text.Decode(raw.Slice(from)));
        return text.ToString();
    }

    /// <summary>Offset of the first escape of half a surrogate pair, or -1.</summary>
    public static int FindLoneSurrogate(ReadOnlySpan<byte> raw)
    {
        for (int i = 0; i + 1 < raw.Length; i++)
        {
            if (raw[i] != (byte)'\\') continue;
            int at = i;
            i++;
            if (raw[i] != (byte)'u') continue;
            int unit = Hex(raw, i + 1);
            i += 4;
            if (unit is >= 0xDC00 and <= 0xDFFF) return at;
            if (unit is < 0xD800 or > 0xDBFF) continue;
            int low = i + 6 < raw.Length && raw[i + 1] == (byte)'\\' && raw[i + 2] == (byte)'u' ? Hex(raw, i + 3) : -1;
            if (low is < 0xDC00 or > 0xDFFF) return at;
            i += 6;
        }

        return -1;
    }

    /// <summary>A text as a JSON string, quotes included.</summary>
    public static string Quote(string text)
    {
        var json = new StringBuilder(text.Length + 2).Append('"');
        foreach (char c in text)
        {
            switch (c)
            {
                case '"': json.Append("\\\""); break;
                case '\\': json.Append("\\\\"); break;
                case '\n': json.Append("\\n"); break;
                case '\r': json.Append("\\r"); break;
                case '\t': json.Append("\\t"); break;
                default:
                    if (c < ' ') json.Append("\\u").Append(((int)c).ToString("x4", System.Globalization.CultureInfo.InvariantCulture));
                    else json.Append(c);
                    break;
            }
        }

        return json.Append('"').ToString();
    }

    private static int Hex(ReadOnlySpan<byte> raw, int start)
    {
        if (start + 4 > raw.Length) return -1;
        int value = 0;
        for (int i = start; i < start + 4; i++)
        {
            int digit = raw[i] switch
            {
                >= (byte)'0' and <= (byte)'9' => raw[i] - '0',
                >= (byte)'a' and <= (byte)'f' => raw[i] - 'a' + 10,
                >= (byte)'A' and <= (byte)'F' => raw[i] - 'A' + 10,
                _ => -1,
            };
            if (digit < 0) return -1;
            value = (value << 4) | digit;
        }

        return value;
    }
}
