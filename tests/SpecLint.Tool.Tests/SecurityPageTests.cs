using System.Text.RegularExpressions;

namespace SpecLint.Tool.Tests;

/// <summary>The page on security says what holds each of its claims; those tests are there, and what it says of the program as a whole is so.</summary>
public class SecurityPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.At(".github", "SECURITY.md"));

    [Fact]
    public void Every_test_that_it_names_is_there_and_every_row_names_one()
    {
        string[] files = [.. Directory.GetFiles(Repository.At("tests"), "*Tests.cs", SearchOption.AllDirectories)
            .Select(f => Path.GetFileNameWithoutExtension(f))];
        string[] rows = [.. Page.Split('\n')
            .Where(l => l.StartsWith("| ", StringComparison.Ordinal)
                && !l.StartsWith("| input", StringComparison.Ordinal)
                && !l.StartsWith("| ---", StringComparison.Ordinal))];
        Assert.True(rows.Length >= 10);
        Assert.All(rows, r => Assert.Matches("`[A-Za-z]+Tests`[^|]*[|]$", r.TrimEnd()));
        Assert.All(Regex.Matches(Page, "`([A-Za-z]+Tests)`").Select(m => m.Groups[1].Value), t => Assert.Contains(t, files));
    }

    /// <summary>Neither the command nor the library can open a connection: they know nothing that can.</summary>
    [Fact]
    public void The_program_refers_to_nothing_of_the_network()
    {
        foreach (var assembly in new[] { typeof(Host).Assembly, typeof(Checker).Assembly, typeof(Science.Components).Assembly })
        {
            foreach (var known in assembly.GetReferencedAssemblies())
                Assert.DoesNotMatch(@"^System[.]Net([.]|$)", known.Name);
        }
    }
}
