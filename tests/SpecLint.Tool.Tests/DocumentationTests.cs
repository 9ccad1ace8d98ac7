using System.CommandLine.Parsing;
using System.Diagnostics;
using System.Text.RegularExpressions;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>Every command that the pages for users print is run as printed, page by page, in a fresh folder.</summary>
public sealed partial class DocumentationTests
{
    public static TheoryData<string> Pages() =>
        [.. Documents().Where(d => CommandsOf(d).Count > 0).Select(d => Path.GetRelativePath(Repository.Root, d).Replace('\\', '/'))];

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_commands_of_a_page_run_as_printed(string page)
    {
        using var folder = new TestFolder();
        var commands = CommandsOf(Path.Combine(Repository.Root, page));
        Prepare(folder, [.. new[] { "my-bar", "recipes" }.Where(b => !commands.Exists(c => c.StartsWith("speclint start " + b, StringComparison.Ordinal)))]);
        var options = new RunOptions { Today = ToolRun.Day };
        foreach (string line in commands)
        {
            string[] args = [.. CommandLineParser.SplitCommandLine(line).Skip(1)];
            var run = ToolRun.With(folder.Path, options, args);
            Assert.True(run.Status is 0 or 1, $"{page}: {line}\n{run.Error}");
        }
    }

    [Fact]
    public void Each_link_of_a_page_leads_to_a_file()
    {
        foreach (string document in Documents())
        {
            foreach (Match link in Link().Matches(File.ReadAllText(document)))
            {
                string target = link.Groups["target"].Value;
                if (target.Contains("://", StringComparison.Ordinal)) continue;
                string full = Path.GetFullPath(target.Split('#')[0], Path.GetDirectoryName(document)!);
                Assert.True(target.StartsWith('#') || File.Exists(full) || Directory.Exists(full), $"{document}: {target}");
            }
        }
    }

    /// <summary>What the pages presuppose: the demo book, where the page does not make one itself, in a repository with a branch, a text of recipes.</summary>
    internal static void Prepare(TestFolder folder, string[] books)
    {
        foreach (string book in books) Assert.Equal(0, ToolRun.In(folder.Path, "start", book).Status);
        File.WriteAllText(folder["old-recipes.txt"], "Low Sun\n2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nShake with ice and strain.\n");
        Git(folder, "init", "-q", "-b", "main");
        Git(folder, "add", "-A");
        Git(folder, "-c", "user.name=Noor Kessel", "-c", "user.email=noor@saltmarsh.example", "commit", "-q", "-m", "as found");
    }

    internal static void Git(TestFolder folder, params string[] args)
    {
        using var git = Process.Start(new ProcessStartInfo("git", args) { WorkingDirectory = folder.Path })!;
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
    }

    private static IEnumerable<string> Documents() =>
        Directory.GetFiles(Path.Combine(Repository.Root, "rules-docs"), "*.md")
            .Where(f => !Path.GetFileName(f).StartsWith("SL", StringComparison.Ordinal))
            .Append(Path.Combine(Repository.Root, "README.md"))
            .Order(StringComparer.Ordinal);

    /// <summary>
    /// Lines of shell blocks that begin with the command; what is behind a # is a remark of the page. An editor's server and a watch end
    /// only with their user.
    /// </summary>
    private static List<string> CommandsOf(string document) =>
        [.. ShellBlock().Matches(File.ReadAllText(document).ReplaceLineEndings("\n")).SelectMany(m => m.Groups["text"].Value.Split('\n'))
            .Select(l => Remark().Replace(l, "").Trim()).Where(l => l.StartsWith("speclint ", StringComparison.Ordinal)
                && !l.Contains('>', StringComparison.Ordinal))];

    [GeneratedRegex("```sh\n(?<text>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture)]
    private static partial Regex ShellBlock();

    [GeneratedRegex(@"\s+#\s.*$")]
    private static partial Regex Remark();

    [GeneratedRegex(@"\]\((?<target>[^)\s]+)\)", RegexOptions.ExplicitCapture)]
    private static partial Regex Link();
}
