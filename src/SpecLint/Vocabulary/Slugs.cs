using System.Globalization;
using System.Text;

namespace SpecLint.Vocabulary;

/// <summary>Names as ids.</summary>
internal static class Slugs
{
    /// <summary>Base letters of U+00C0 to U+017F, the accented Latin letters, one a letter; a blank where there is none.</summary>
    private const string Latin =
        "aaaaaaaceeeeiiiidnooooo ouuuuytsaaaaaaaceeeeiiiidnooooo ouuuuyty" +
        "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiijjkkklllllll" +
        "lllnnnnnnnnnoooooooorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

    /// <summary>Rows of a table by their names as ids; of two rows with one name the first has it.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="names">The names of a row.</param>
    public static Dictionary<string, T> Index<T>(IEnumerable<T> rows, Func<T, IEnumerable<string>> names)
    {
        var index = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            foreach (string name in names(row))
            {
                string slug = Of(name);
                if (!index.ContainsKey(slug)) index[slug] = row;
            }
        }

        return index;
    }

    /// <summary>A name with its umlauts written as two letters, as German is where a keyboard has none.</summary>
    public static string WithoutUmlauts(string name) =>
        name.Replace("ä", "ae").Replace("ö", "oe").Replace("ü", "ue").Replace("Ä", "Ae").Replace("Ö", "Oe").Replace("Ü", "Ue");

    /// <summary>
    /// A name as an id: lower case, accents and apostrophes left out, runs of other characters become one hyphen. The letters are
    /// folded by a table, because a program without culture data does not take accents off.
    /// </summary>
    public static string Of(string name)
    {
        if (IsSlug(name)) return name;
        var slug = new StringBuilder(name.Length);
        foreach (char c in name)
        {
            if (c is '\'' or '’' || (c > 127 && CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark)) continue;
            char lower = c is >= '\u00C0' and <= '\u017F' ? Latin[c - '\u00C0'] : char.ToLowerInvariant(c);
            if (c is 'Œ' or 'œ' or 'Æ' or 'æ' or 'ß' or 'ẞ') slug.Append(c switch { 'Œ' or 'œ' => "oe", 'Æ' or 'æ' => "ae", _ => "ss" });
            else if (lower is (>= 'a' and <= 'z') or (>= '0' and <= '9')) slug.Append(lower);
            else if (slug.Length > 0 && slug[slug.Length - 1] != '-') slug.Append('-');
        }

        if (slug.Length > 0 && slug[slug.Length - 1] == '-') slug.Length--;
        return slug.ToString();
    }

    /// <summary>Whether a name is written as an id already: small letters and digits, single hyphens between them.</summary>
    private static bool IsSlug(string name)
    {
        char before = '-';
        foreach (char c in name)
        {
            if (c is not ((>= 'a' and <= 'z') or (>= '0' and <= '9')) && (c != '-' || before == '-')) return false;
            before = c;
        }

        return before != '-';
    }
}
