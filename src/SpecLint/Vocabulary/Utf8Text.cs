using System.Text;

namespace SpecLint.Vocabulary;

/// <summary>UTF-8 helpers that both target frameworks share.</summary>
internal static class Utf8Text
{
    /// <summary>Decodes UTF-8; invalid bytes become U+FFFD.</summary>
    public static unsafe string Decode(ReadOnlySpan<byte> utf8)
    {
        if (utf8.IsEmpty) return "";
#if NET
        return Encoding.UTF8.GetString(utf8);
#else
        fixed (byte* first = utf8) return Encoding.UTF8.GetString(first, utf8.Length);
#endif
    }

    /// <summary>Decodes valid UTF-8 into characters; answers how many, or -1 where they do not fit.</summary>
    public static unsafe int DecodeTo(ReadOnlySpan<byte> utf8, Span<char> text)
    {
        if (utf8.IsEmpty) return 0;
        if (utf8.Length > text.Length) return -1;
#if NET
        return Encoding.UTF8.GetChars(utf8, text);
#else
        fixed (byte* first = utf8)
        {
            fixed (char* to = text) return Encoding.UTF8.GetChars(first, utf8.Length, to, text.Length);
        }
#endif
    }

    /// <summary>Offset of the first byte, at or behind a start, that is no UTF-8 (RFC 3629); -1 where there is none.</summary>
    public static int FindInvalid(ReadOnlySpan<byte> text, int start)
    {
#if NET
        if (System.Text.Unicode.Utf8.IsValid(text.Slice(start))) return -1;
#endif
        int i = start;
        while (i < text.Length)
        {
            if (text[i] < 0x80)
            {
                i++;
                continue;
            }

            int length = LengthOfSequence(text, i);
            if (length == 0) return i;
            i += length;
        }

        return -1;
    }

    /// <summary>Bytes of the character at an offset; 1 where it is no UTF-8.</summary>
    public static int LengthOfCharacter(ReadOnlySpan<byte> text, int at) => text[at] < 0x80 ? 1 : Math.Max(1, LengthOfSequence(text, at));

    private static int LengthOfSequence(ReadOnlySpan<byte> text, int at)
    {
        byte lead = text[at];
        int length = lead switch
        {
            >= 0xC2 and <= 0xDF => 2,
            >= 0xE0 and <= 0xEF => 3,
            >= 0xF0 and <= 0xF4 => 4,
            _ => 0,
        };
        if (length == 0 || at + length > text.Length) return 0;
        for (int i = 1; i < length; i++)
        {
            if ((text[at + i] & 0xC0) != 0x80) return 0;
        }

        byte second = text[at + 1];
        bool outside = (lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F)
            || (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F);
        return outside ? 0 : length;
    }
}
