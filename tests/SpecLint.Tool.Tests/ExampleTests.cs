using System.CommandLine.Parsing;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The examples in the help of each verb are run as printed, and each of its options is completed from its first letters.</summary>
public sealed class ExampleTests
{
    /// <summary>The verbs, but for the server of the editor, which ends with its client, and the page, which needs the portable tool.</summary>
    public static TheoryData<string> Verbs => [.. Shell.Verbs.Select(v => v.Name).Except(["editor", "bench"], StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Verbs))]
    public void The_examples_of_a_verb_run_as_printed(string verb)
    {
        using var folder = new TestFolder();
        DocumentationTests.Prepare(folder, verb == "compare" ? ["recipes", "old-recipes"] : ["recipes"]);
        DocumentationTests.Git(folder, "tag", "v1.0");
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "my-bar", "--empty").Status);
        File.Copy(folder["old-recipes.txt"], folder["recipes/drinks.txt"]);
        folder.Write("recipes/drinks.csv", "name,item,amount\nLow Sun,gin,2 oz\nLow Sun,lemon juice,3/4 oz\n");
        folder.Write("recipes/quay-drinks.csv", "item,price,size\ngin,24.50,700 ml\n");
        foreach (string name in new[] { "drinks.txt", "drinks.csv", "quay-drinks.csv" }) File.Copy(folder["recipes/" + name], folder[name]);
        foreach (string example in Shell.Verbs.Single(v => v.Name == verb).Examples)
        {
            // What a shell makes of a page of the manual or of a script, and what ends only with its user.
            string line = example.Split('>')[0].Split('|')[0];
            if (line.StartsWith("source", StringComparison.Ordinal) || line.Contains("--watch", StringComparison.Ordinal)) continue;
            string from = line.Contains("recipes", StringComparison.Ordinal)
                || line.Contains("my-bar", StringComparison.Ordinal)
                || verb is "start" or "combine"
                ? folder.Path
                : folder["recipes"];
            var run = ToolRun.With(from, new RunOptions { Today = ToolRun.Day }, [.. CommandLineParser.SplitCommandLine(line).Skip(1)]);
            Assert.True(run.Status is 0 or 1, $"{line}\n{run.Error}");
            string output = line.Split(" --output ") is [_, var file] ? file.Trim() : "";
            Assert.True(output.Length == 0 || File.Exists(Path.Combine(from, output)), line);
        }
    }

    [Fact]
    public void Every_option_in_the_help_of_a_verb_is_completed()
    {
        foreach (var verb in Shell.Verbs)
        {
            var help = ToolRun.In(Path.GetTempPath(), verb.Name, "--help");
            string[] options = [.. help.Output.Split('\n').Where(l => l.StartsWith("  --", StringComparison.Ordinal)).Select(l => l.Trim().Split(' ', ',')[0])];
            foreach (string option in options)
            {
                string line = $"speclint {verb.Name} {option.Substring(0, option.Length - 1)}";
                Assert.Contains(option, ToolRun.In(Path.GetTempPath(), $"[suggest:{line.Length}]", line).Output.Split('\n'));
            }
        }
    }
}
