using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using Microsoft.Extensions.FileSystemGlobbing;
using SpecLint.Binding;
using SpecLint.Tool.Tests.Readme;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The library chooses the files of a book as the command does, from a listing of their paths.</summary>
public class BookFilesTests
{
    [Fact]
    public void Hidden_folders_other_books_and_other_files_are_left_out() =>
        Assert.Equal(
            ["a.drink.json", "bar.json", "deep/er/b.prep.json"],
            BookFiles.Choose(["deep\\er\\b.prep.json", "bar.json", "a.drink.json", ".git/c.drink.json", "node_modules/x/d.drink.json", "pop-up/bar.json", "pop-up/e.drink.json", "package.json", "a.drink.json"], null));

    [Fact]
    public void Bytes_are_asked_for_the_files_of_the_book_alone()
    {
        var asked = new List<string>();
        var files = BookFiles.Read(["bar.json", "drinks/a.drink.json", "drafts/b.drink.json", "c.menu.json"], path =>
        {
            asked.Add(path);
            return path == "bar.json" ? """{ "files": ["**/*.drink.json"], "leaveOut": ["drafts/"] }"""u8.ToArray() : "{}"u8.ToArray();
        });
        Assert.Equal(["bar.json", "drinks/a.drink.json"], files.Select(f => f.Path));
        Assert.Equal(["bar.json", "drinks/a.drink.json"], asked.Distinct().Order(StringComparer.Ordinal));
    }

    /// <summary>The dialect of patterns is that of the well-known library for them, by its word on random patterns and listings.</summary>
    [Fact]
    public void Patterns_mean_what_they_mean_elsewhere()
    {
        var name = Words("a", "b", "ab", "old");
        var folder = Gen.OneOf(name, Words("*", "**", "a*", "*b"));
        var path = from folders in name.Array[0, 3] from file in name from ending in Words(".drink.json", ".prep.json") select string.Join('/', [.. folders, file + ending]);
        var pattern = from folders in folder.Array[0, 3] from last in Words("*", "**", "**/", "*.json", "*.drink.json", "a.prep.json", "a*", "*.prep.json") select string.Join('/', [.. folders, last]);
        Gen.Select(path.Array[1, 12], pattern.Array[1, 2], pattern.Array[0, 2]).Sample(
            t =>
            {
                var (paths, files, leaveOut) = t;
                var matcher = new Matcher(StringComparison.Ordinal);
                foreach (string f in files) matcher.AddInclude(f);
                foreach (string l in leaveOut) matcher.AddExclude(l);
                string bar = JsonSerializer.Serialize(new { files, leaveOut });
                var chosen = BookFiles.Read([.. paths, "bar.json"], p => p == "bar.json" ? System.Text.Encoding.UTF8.GetBytes(bar) : []).Select(f => f.Path).Where(p => p != "bar.json");
                var wanted = matcher.Match(paths).Files.Select(f => f.Path).Distinct().Order(StringComparer.Ordinal);
                Assert.Equal(wanted, chosen);
            },
            iter: LongRun.Cases(2_000, 100_000));
    }

    /// <summary>
    /// What <c>leaveOut</c> leaves out is what git ignores by the same pattern from the root (gitignore), on random patterns. A slash at
    /// the end stands for all that a folder holds, which to git is <c>/**</c>.
    /// </summary>
    [Fact]
    public void Patterns_mean_what_they_mean_to_git()
    {
        string[] names = ["a", "b", "ab", "old", "x.drink.json", "y.prep.json", "ab.drink.json"], pieces = ["*", "**", "a*", "*b", "a", "ab", "old", "*.json", "*.drink.json", "x*"];
        var random = new Random(20261125);
        using var git = new Changes.GitFolder();
        for (int i = 0; i < 120; i++) git.Write($"{string.Concat(Enumerable.Range(0, random.Next(4)).Select(_ => names[random.Next(4)] + "/"))}{names[random.Next(4, 7)]}", "{}");
        git.Git("add", "-A");
        string[] paths = git.Git("ls-files", "-z").Split('\0', StringSplitOptions.RemoveEmptyEntries);
        Assert.True(paths.Length > 50);
        for (int i = LongRun.Cases(40, 2_000); i > 0; i--)
        {
            string pattern = string.Join('/', Enumerable.Range(0, random.Next(1, 5)).Select(_ => pieces[random.Next(pieces.Length)])) + (random.Next(5) == 0 ? "/" : "");
            string bar = JsonSerializer.Serialize(new { leaveOut = new[] { pattern } });
            var ours = BookFiles.Read([.. paths, "bar.json"], p => p == "bar.json" ? System.Text.Encoding.UTF8.GetBytes(bar) : []).Select(f => f.Path).Where(p => p != "bar.json");
            string ignore = "/" + (pattern.EndsWith('/') ? pattern + "**" : pattern);
            var theirs = paths.Except(git.Git("ls-files", "-z", "--cached", "--ignored", "--exclude=" + ignore).Split('\0', StringSplitOptions.RemoveEmptyEntries));
            Assert.True(theirs.Order(StringComparer.Ordinal).SequenceEqual(ours.Order(StringComparer.Ordinal)), $"{pattern}: git {string.Join(' ', theirs.Except(ours))}, we {string.Join(' ', ours.Except(theirs))}");
        }
    }

    /// <summary>A pattern that could be passed in ever so many ways, over a path as deep as the system allows; it would run for years.</summary>
    [Fact]
    public void A_pattern_of_many_stars_costs_no_more_than_it_is_long()
    {
        string bar = JsonSerializer.Serialize(new { leaveOut = new[] { string.Concat(Enumerable.Repeat("**/a/", 60)) + "b" } });
        string path = string.Concat(Enumerable.Repeat("a/", 400)) + "x.drink.json";
        Assert.Equal(2, BookFiles.Read([path, "bar.json"], p => p == "bar.json" ? System.Text.Encoding.UTF8.GetBytes(bar) : []).Count);
    }

    [Fact]
    public void The_program_of_the_readme_is_the_one_that_is_compiled_here()
    {
        string readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md")).ReplaceLineEndings("\n");
        string block = Regex.Match(readme, "## From a program\n.*?```csharp\n(.*?)```", RegexOptions.Singleline).Groups[1].Value;
        string source = File.ReadAllText(Path.Combine(Repository.Root, "tests/SpecLint.Tool.Tests/Readme/LibraryProgram.cs")).ReplaceLineEndings("\n");
        string usings = string.Concat(Regex.Matches(source, "^using .*\n", RegexOptions.Multiline).Select(m => m.Value));
        string body = Regex.Match(source, "        // begin\n(.*?)\n\n        // end", RegexOptions.Singleline).Groups[1].Value;
        Assert.Equal(usings + "\n" + string.Join('\n', body.Split('\n').Select(l => l.Length > 8 ? l[8..] : "")) + "\n", block);
        Assert.True(block.TrimEnd('\n').Split('\n').Length <= 18, "The program is to stay short.");
    }

    [Fact]
    public void The_program_of_the_readme_gives_the_findings_of_the_command()
    {
        using var book = SmallBook.WithBroken();
        book.Write("drinks/ebb.drink.json", SmallBook.Broken);
        book.Write(".cache/no.drink.json", SmallBook.Broken);
        book.Write("drafts/no.drink.json", SmallBook.Broken);
        book.Write("pop-up/bar.json", SmallBook.Bar);
        book.Write("pop-up/no.drink.json", SmallBook.Broken);
        book.Write("bar.json", SmallBook.Bar.Replace("\"name\"", "\"leaveOut\": [ \"drafts/\" ], \"name\"", StringComparison.Ordinal));
        var before = Console.Out;
        using var written = new StringWriter();
        int status;
        try
        {
            Console.SetOut(written);
            status = LibraryProgram.Run([book.Path, "2026-11-25"]);
        }
        finally
        {
            Console.SetOut(before);
        }

        var command = ToolRun.In(book.Path, "check", "--on", "2026-11-25", "--format", "json");
        using var report = JsonDocument.Parse(command.Output);
        var findings = report.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.NotEmpty(findings);
        foreach (var finding in findings)
        {
            Assert.Contains(finding.GetProperty("rule").GetString()!, written.ToString(), StringComparison.Ordinal);
            Assert.Contains(finding.GetProperty("message").GetString()!, written.ToString(), StringComparison.Ordinal);
        }

        Assert.Equal(findings.Count, written.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Equal(command.Status, status);
    }

    private static Gen<string> Words(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);
}
