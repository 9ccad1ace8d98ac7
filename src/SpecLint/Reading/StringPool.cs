namespace SpecLint.Reading;

/// <summary>Keeps short texts that recur in every file (ids, verbs), one pool a thread.</summary>
internal static class StringPool
{
    private const int Size = 2048;
    private const int Longest = 32;

    [ThreadStatic]
    private static string?[]? pool;

    /// <summary>The text of bytes; one and the same object where it was asked for lately.</summary>
    public static string Get(ReadOnlySpan<byte> utf8)
    {
        if (utf8.IsEmpty) return "";
        if (utf8.Length > Longest) return Utf8Text.Decode(utf8);
        uint hash = 2166136261;
        foreach (byte b in utf8) hash = (hash ^ b) * 16777619;
        pool ??= new string?[Size];
        int slot = (int)((hash ^ (hash >> 15)) & (Size - 1));
        string? kept = pool[slot];
        if (kept is not null && IsSame(kept, utf8)) return kept;
        string text = Utf8Text.Decode(utf8);
        pool[slot] = text;
        return text;
    }

    private static bool IsSame(string text, ReadOnlySpan<byte> utf8)
    {
        if (text.Length != utf8.Length) return false;
        for (int i = 0; i < utf8.Length; i++)
        {
            // A byte of 0x80 or more never equals the character it is part of.
            if (text[i] != utf8[i] || utf8[i] >= 0x80) return false;
        }

        return true;
    }
}
