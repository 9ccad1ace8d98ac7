namespace SpecLint.Book;

/// <summary>The form of the fingerprint that a reading bears: <c>r</c>, a version, a dash and 16 hexadecimal digits.</summary>
internal static class FingerprintForm
{
    private const int Digits = 16;

    /// <summary>Whether a text has the form of a fingerprint of any version.</summary>
    public static bool IsOne(string text)
    {
        int dash = text.IndexOf('-');
        if (dash < 2 || text[0] != 'r' || text.Length != dash + 1 + Digits) return false;
        for (int i = 1; i < text.Length; i++)
        {
            bool good = i < dash ? text[i] is >= '0' and <= '9' : i == dash || text[i] is (>= '0' and <= '9') or (>= 'a' and <= 'f');
            if (!good) return false;
        }

        return true;
    }
}
