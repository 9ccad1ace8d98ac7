using System.Text.RegularExpressions;

namespace SpecLint.Tests.House;

/// <summary>The namespaces of the library stand in one order (DEVELOPERS.md), and none looks up to one behind it.</summary>
public sealed partial class DirectionTests
{
    /// <summary>From the ground up: each may use those before it.</summary>
    private static readonly string[] Order =
    [
        "Vocabulary", "Reading", "Book", "Binding", "Catalogue", "Linking", "RecipeText", "Profile", "Findings", "Rules", "Live", "Service",
        "Changes", "Reports", "Bench",
    ];

    [Fact]
    public void No_namespace_uses_one_that_stands_behind_it() => Assert.Equal([], StepsBack());

    [Fact]
    public void The_order_is_the_one_that_is_written_down()
    {
        string written = File.ReadAllText(Repository.At("DEVELOPERS.md"));
        Assert.Contains(string.Join(" → ", Order), written, StringComparison.Ordinal);
    }

    private static IEnumerable<string> StepsBack()
    {
        foreach (string name in Order)
        {
            var uses = new SortedSet<string>(StringComparer.Ordinal);
            foreach (string file in Directory.EnumerateFiles(Repository.At("src", "SpecLint", name), "*.cs", SearchOption.AllDirectories))
            {
                foreach (Match use in Use().Matches(File.ReadAllText(file))) uses.Add(use.Groups["name"].Value);
            }

            foreach (string use in uses.Where(u => Array.IndexOf(Order, u) > Array.IndexOf(Order, name))) yield return $"{name} uses {use}";
        }
    }

    [GeneratedRegex(@"^using SpecLint\.(?<name>[A-Z][A-Za-z]+)[.;]|(?<![\w.])(?:SpecLint\.)?(?<name>Vocabulary|Reading|Binding|Catalogue|Linking|Profile|Findings|Rules|Service|Changes|Reports|Bench)\.(?!IsGiven|Value|Index)[A-Z]\w+\.[A-Z]", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Use();
}
