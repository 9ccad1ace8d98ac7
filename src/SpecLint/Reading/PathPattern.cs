namespace SpecLint.Reading;

/// <summary>
/// A pattern of <c>files</c> or <c>leaveOut</c> in bar.json: <c>*</c> stands for any characters of one name, <c>**</c> for any
/// number of folders, <c>/</c> at the end for all that a folder holds.
/// </summary>
internal sealed class PathPattern
{
    private readonly string[] segments;

    public PathPattern(string pattern)
    {
        pattern = pattern.Replace('\\', '/');
        if (pattern.StartsWith("./", StringComparison.Ordinal)) pattern = pattern.Substring(2);
        if (pattern.EndsWith("/", StringComparison.Ordinal)) pattern += "**";
        segments = [.. pattern.Split('/').Where(s => s.Length > 0)];
    }

    /// <summary>Whether a path from the book's root, with <c>/</c>, is meant.</summary>
    public bool Matches(string path) => Matches(path.Split('/'), 0, path.Count(c => c == '/') + 1, 0);

    /// <summary>Whether a path or a folder that it lies in is meant.</summary>
    public bool MatchesOrHolds(string path)
    {
        string[] names = path.Split('/');
        for (int length = names.Length; length > 0; length--)
        {
            if (Matches(names, 0, length, 0)) return true;
        }

        return false;
    }

    private bool Matches(string[] names, int name, int length, int segment)
    {
        for (; segment < segments.Length; segment++, name++)
        {
            if (segments[segment] == "**")
            {
                if (segment == segments.Length - 1) return name < length;
                for (int next = name; next < length; next++)
                {
                    if (Matches(names, next, length, segment + 1)) return true;
                }

                return false;
            }

            if (name == length || !MatchesName(segments[segment], names[name])) return false;
        }

        return name == length;
    }

    private static bool MatchesName(string pattern, string name)
    {
        int p = 0, n = 0, star = -1, resume = 0;
        while (n < name.Length)
        {
            if (p < pattern.Length && pattern[p] == '*')
            {
                star = p++;
                resume = n;
            }
            else if (p < pattern.Length && pattern[p] == name[n])
            {
                p++;
                n++;
            }
            else if (star >= 0)
            {
                p = star + 1;
                n = ++resume;
            }
            else
            {
                return false;
            }
        }

        while (p < pattern.Length && pattern[p] == '*') p++;
        return p == pattern.Length;
    }
}
