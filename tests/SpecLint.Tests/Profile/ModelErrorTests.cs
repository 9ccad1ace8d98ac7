using System.Text.RegularExpressions;

namespace SpecLint.Tests.Profile;

/// <summary>Ranges take their errors from the models: each that is declared is read, and the profile has none of its own.</summary>
public sealed partial class ModelErrorTests
{
    [Fact]
    public void Every_declared_error_has_a_reader()
    {
        var sources = Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(f => (Name: Path.GetFileNameWithoutExtension(f), Text: Comment().Replace(File.ReadAllText(f), ""))).ToList();
        var unread = new List<string>();
        foreach (var (name, text) in sources)
        {
            foreach (Match declared in Declaration().Matches(text))
            {
                string error = declared.Groups[1].Value;
                bool isRead = sources.Any(s => Regex.IsMatch(s.Text, $@"\b{name}\.{error}\b")) || Regex.Count(text, $@"\b{error}\.At\(") > 0;
                if (!isRead) unread.Add($"{name}.{error}");
            }
        }

        Assert.Equal([], unread.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_profile_has_no_error_of_its_own()
    {
        var faults = Directory.EnumerateFiles(Repository.At("src", "SpecLint", "Profile"), "*.cs")
            .SelectMany(f => Literal().Matches(File.ReadAllText(f)).Select(m => $"{Path.GetFileName(f)}: {m.Value}"));
        Assert.Equal([], faults.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex(@"///[^\n]*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"static ModelError (\w+)\s*=>")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"(\.With\(|new StandardError\(|new Tolerance\(|ModelError\(new\w*\()\s*[\d.]+[^)]*\)")]
    private static partial Regex Literal();
}
