namespace SpecLint.Tests.Support;

/// <summary>Golden files: what a run gives is held against a file of the project.</summary>
internal static class Golden
{
    /// <summary>Set to 1 to write golden files anew.</summary>
    public const string Switch = "SPECLINT_UPDATE";

    private static readonly bool Update = Environment.GetEnvironmentVariable(Switch) == "1";

    /// <summary>Compares, or writes the file when the switch is set.</summary>
    /// <param name="path">The file.</param>
    /// <param name="actual">What it is to hold.</param>
    /// <param name="write">Whether to write it without the switch too: for a list that is made from other files of the project.</param>
    public static void Check(string path, string actual, bool write = false)
    {
        actual = actual.Replace("\r\n", "\n", StringComparison.Ordinal);
        if (Update || write)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
            return;
        }

        string expected = File.Exists(path) ? File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal) : "";
        if (expected == actual) return;
        string name = Path.GetRelativePath(Repository.Root, path).Replace('\\', '/');
        Assert.Fail($"{name} is stale. Look at the change, then run: {Switch}=1 dotnet test tests/SpecLint.Tests\n{FirstDifference(expected, actual)}");
    }

    private static string FirstDifference(string expected, string actual)
    {
        string[] e = expected.Split('\n'), a = actual.Split('\n');
        for (int i = 0; i < Math.Max(e.Length, a.Length); i++)
        {
            string x = i < e.Length ? e[i] : "(end)", y = i < a.Length ? a[i] : "(end)";
            if (x != y) return $"line {i + 1}\n  file: {x}\n  now:  {y}";
        }

        return "";
    }
}
