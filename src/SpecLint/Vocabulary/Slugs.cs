namespace SpecLint.Vocabulary;

/// <summary>Names as ids.</summary>
internal static class Slugs
{
    /// <summary>A name as an id: lower case, runs of other characters become one hyphen.</summary>
    public static string Of(string name)
    {
        var slug = new System.Text.StringBuilder(name.Length);
        foreach (char c in name.Normalize(System.Text.NormalizationForm.FormD))
        {
            if (System.Globalization.CharUnicodeInfo.GetUnicodeCategory(c) == System.Globalization.UnicodeCategory.NonSpacingMark || c == '\'' || c == '’') continue;
            char lower = char.ToLowerInvariant(c);
            if (lower is (>= 'a' and <= 'z') or (>= '0' and <= '9')) slug.Append(lower);
            else if (slug.Length > 0 && slug[slug.Length - 1] != '-') slug.Append('-');
        }

        if (slug.Length > 0 && slug[slug.Length - 1] == '-') slug.Length--;
        return slug.ToString();
    }
}
