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
    public bool Matches(string path) => Matches(path.Split('/'), path.Count(c => c == '/') + 1);

    /// <summary>Whether a path or a folder that it lies in is meant.</summary>
    public bool MatchesOrHolds(string path)
    {
        string[] names = path.Split('/');
        for (int length = names.Length; length > 0; length--)
        {
            if (Matches(names, length)) return true;
        }

        return false;
    }

    /// <summary>
    /// The shortest way that a <c>**</c> can be passed leaves the most to those that follow, so only the last one met is lengthened:
    /// the cost is at most names times segments, whatever a pattern looks like.
    /// </summary>
    private bool Matches(string[] names, int length)
    {
        int name = 0, segment = 0, star = -1, resume = 0;
        while (true)
        {
            if (segment < segments.Length && segments[segment] == "**")
            {
                if (segment == segments.Length - 1) return name < length;
                star = segment++;
                resume = name;
            }
            else if (segment < segments.Length && name < length && MatchesName(segments[segment], names[name]))
            {
                segment++;
                name++;
            }
            else if (segment == segments.Length && name == length)
            {
                return true;
            }
            else if (star < 0 || name == length)
            {
                return false;
            }
            else
            {
                segment = star + 1;
                name = ++resume;
            }
        }
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
