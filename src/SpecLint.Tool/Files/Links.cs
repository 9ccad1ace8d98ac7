namespace SpecLint.Tool;

/// <summary>Where symbolic links lead.</summary>
internal static class Links
{
    private const int LongestChain = 40;

    /// <summary>Whether a file lies within a folder once every link on the way to it is resolved.</summary>
    /// <param name="realFolder">The folder, without links (<see cref="RealPath"/>).</param>
    /// <param name="path">Full path of the file.</param>
    public static bool LeadsWithin(string realFolder, string path) =>
        RealPath(path).StartsWith(Path.TrimEndingDirectorySeparator(realFolder) + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>A full path with every link in it resolved; empty for a chain of more than 40 links, which leads nowhere.</summary>
    public static string RealPath(string path)
    {
        int links = 0;
        var parts = new Stack<string>(path.Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse());
        string real = Path.GetPathRoot(path)!;
        if (real.Length > 1 && parts.Count > 0) parts.Pop();
        while (parts.Count > 0)
        {
            string part = parts.Pop();
            if (part == "..")
            {
                real = Path.GetDirectoryName(real) ?? real;
                continue;
            }

            if (part == ".") continue;
            string next = Path.Combine(real, part);
            string? target = new FileInfo(next).LinkTarget;
            if (target is null)
            {
                real = next;
                continue;
            }

            if (++links > LongestChain) return "";
            if (Path.IsPathRooted(target)) real = Path.GetPathRoot(target)!;
            foreach (string step in target.Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse()) parts.Push(step);
        }

        return real;
    }
}
