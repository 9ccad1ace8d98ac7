using System.Text;

namespace SpecLint.Reading;

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
}
