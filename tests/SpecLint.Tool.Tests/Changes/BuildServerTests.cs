using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Rules;
using SpecLint.Tool.Tests.Support;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>Annotations, JUnit and the log for code scanning.</summary>
public partial class BuildServerTests
{
    [Theory]
    [InlineData("50 % off", "50 %25 off")]
    [InlineData("a\r\nb", "a%0D%0Ab")]
    [InlineData("%0A", "%250A")]
    [InlineData("a:b,c", "a:b,c")]
    public void Data_of_a_command_is_escaped_as_the_runner_reads_it(string text, string escaped) => Assert.Equal(escaped, GitHubReport.Data(text));

    [Theory]
    [InlineData("a:b,c%\n", "a%3Ab%2Cc%25%0A")]
    [InlineData("::error::", "%3A%3Aerror%3A%3A")]
    public void A_property_of_a_command_is_escaped_as_the_runner_reads_it(string text, string escaped) => Assert.Equal(escaped, GitHubReport.Property(text));

    [Fact]
    public void The_text_of_a_recipe_cannot_forge_a_command()
    {
        using var book = SmallBook.WithBroken();
        string[] hostile = ["x\\n::error file=a::forged", "x\\r\\n::stop-commands::t", "##[error]forged", "::set-output name=a::b", "%0A::warning::forged", "x\\u2028::error::forged", "\\u001b[31m"];
        for (int i = 0; i < hostile.Length; i++)
            book.Write($"a,b:c%0A::error::{i}.drink.json", SmallBook.Broken.Replace("no-such-thing", hostile[i], StringComparison.Ordinal).Replace("\"glass\"", $"\"{hostile[i]}\"", StringComparison.Ordinal));
        book.Write("summary.md", "before\n");
        var run = ToolRun.With(book.Path, new RunOptions { Variables = new Dictionary<string, string> { ["GITHUB_STEP_SUMMARY"] = book["summary.md"] } }, "check", "--format", "github");
        Assert.Equal(1, run.Status);
        string[] lines = run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(lines[..^1], l => Assert.Matches(Command(), l));
        Assert.Matches("^[0-9]+ errors, ", lines[^1]);
        Assert.DoesNotContain('\r', run.Output);
        Assert.DoesNotContain('\u001b', run.Output);

        // The runner reads a line as a command of the old kind only where it is none of the new kind.
        Assert.DoesNotContain("##[", lines[^1], StringComparison.Ordinal);
        foreach (string line in lines[..^1])
        {
            var match = Command().Match(line);
            foreach (string pair in match.Groups["properties"].Value.Split(','))
            {
                Assert.Contains(pair.Split('=', 2)[0], new[] { "file", "line", "endLine", "col", "endColumn", "title" });
                Assert.DoesNotContain(':', pair);
            }
        }

        string summary = File.ReadAllText(book["summary.md"]);
        Assert.StartsWith("before\n### SpecLint\n", summary, StringComparison.Ordinal);
        Assert.All(summary.Split('\n').Where(l => l.StartsWith("| error", StringComparison.Ordinal)), l => Assert.Equal(5, l.Replace("\\|", "", StringComparison.Ordinal).Count(c => c == '|')));
    }

    [Fact]
    public void Errors_come_first_and_ten_of_a_level_at_most()
    {
        using var book = SmallBook.WithBroken();
        for (int i = 0; i < 14; i++) book.Write($"d{i:00}.drink.json", SmallBook.Broken.Replace("45 ml", "45,0 ml", StringComparison.Ordinal));
        var run = ToolRun.With(book.Path, new RunOptions { Variables = new Dictionary<string, string> { ["GITHUB_STEP_SUMMARY"] = book["summary.md"] } }, "check", "--format", "github");
        string[] kinds = [.. run.Output.Split('\n').Where(l => l.StartsWith("::", StringComparison.Ordinal)).Select(l => l.Split(' ')[0][2..])];
        Assert.Equal(10, kinds.Count(k => k == "error"));
        Assert.Equal(10, kinds.Count(k => k == "warning"));
        Assert.True(Array.LastIndexOf(kinds, "error") < Array.IndexOf(kinds, "warning"));
        string last = run.Output.Split('\n').Where(l => l.StartsWith("::error", StringComparison.Ordinal)).Last();
        Assert.Matches("^::error title=SpecLint::[0-9]+ more errors; the full list is in the summary of the step.$", last);
        using var all = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "json").Bytes);
        int errors = all.RootElement.GetProperty("counts").GetProperty("error").GetInt32();
        Assert.Contains($"::{errors - 9} more errors", last, StringComparison.Ordinal);
        Assert.Equal(errors, File.ReadAllLines(book["summary.md"]).Count(l => l.StartsWith("| error |", StringComparison.Ordinal)));
    }

    [Fact]
    public void Files_of_annotations_are_addressed_from_the_root_of_the_repository()
    {
        using var demo = new DemoBook();
        var run = ToolRun.In(demo.Path, "check", "--format", "github");
        Assert.Contains("::error file=house/the book/redshank.drink.json,line=8,endLine=8,col=15,endColumn=35,title=SL9001 unknown-reference::", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Junit_counts_what_it_holds()
    {
        using var book = SmallBook.WithBroken();
        book.Write("b.drink.json", SmallBook.Broken.Replace("\"glass\"", "\"accept\": [ { \"rule\": \"SL9001\", \"because\": \"it <arrives> & \\u0007 \\ud800\", \"until\": \"2026-12-01\" } ],\n  \"glass\"", StringComparison.Ordinal));
        var run = ToolRun.In(book.Path, "check", "--format", "junit");
        Assert.Equal(1, run.Status);
        var root = XDocument.Parse(run.Output).Root!;
        Assert.Equal(root.Descendants("testcase").Count(), (int)root.Attribute("tests")!);
        Assert.Equal(root.Descendants("failure").Count(), (int)root.Attribute("failures")!);
        foreach (var suite in root.Elements("testsuite"))
        {
            Assert.Equal(suite.Elements("testcase").Count(), (int)suite.Attribute("tests")!);
            Assert.Equal(suite.Descendants("failure").Count(), (int)suite.Attribute("failures")!);
            Assert.Equal(suite.Descendants("skipped").Count(), (int)suite.Attribute("skipped")!);
        }

        Assert.Contains(root.Descendants("failure"), f => f.Value.Contains("no-such-thing", StringComparison.Ordinal));
        Assert.Equal("accepted: it <arrives> & \\u0007 \uFFFD", root.Descendants("skipped").First().Attribute("message")!.Value);
        Assert.Equal(4, root.Elements("testsuite").Count());
    }

    [Fact]
    public void The_log_for_code_scanning_leaves_out_what_is_accepted()
    {
        using var book = SmallBook.WithBroken();
        book.Write("b.drink.json", SmallBook.Broken.Replace("\"glass\"", "\"accept\": [ { \"rule\": \"SL9001\", \"because\": \"it arrives tomorrow\", \"until\": \"2026-12-01\" } ],\n  \"glass\"", StringComparison.Ordinal));
        using var archive = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "sarif").Bytes);
        using var scanning = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "sarif", "--for", "code-scanning").Bytes);
        SarifTests.AssertValid(scanning.RootElement);
        Assert.Contains(Results(archive), r => r.TryGetProperty("suppressions", out _));
        Assert.DoesNotContain(Results(scanning), r => r.TryGetProperty("suppressions", out _));
        Assert.Equal(Results(archive).Count(r => !r.TryGetProperty("suppressions", out _)), Results(scanning).Count());
        Assert.Equal(2, ToolRun.In(book.Path, "check", "--for", "code-scanning").Status);
    }

    [Fact]
    public void The_log_for_code_scanning_keeps_to_the_limits()
    {
        using var demo = new DemoBook();
        using var log = JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "sarif", "--for", "code-scanning").Bytes);
        SarifTests.AssertValid(log.RootElement);
        Assert.Equal(1, log.RootElement.GetProperty("runs").GetArrayLength());
        Assert.True(Results(log).Count() <= SarifReport.MostResults);
        foreach (var rule in log.RootElement.GetProperty("runs")[0].GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray())
            Assert.True(rule.GetProperty("properties").GetProperty("tags").GetArrayLength() <= 20);
        foreach (var related in Results(log).Where(r => r.TryGetProperty("relatedLocations", out _)).SelectMany(r => r.GetProperty("relatedLocations").EnumerateArray()))
            Assert.True(related.TryGetProperty("physicalLocation", out _));
    }

    [Fact]
    public void Beyond_the_limit_the_lowest_levels_are_left_out_and_said_to_be()
    {
        const int notes = 1_500, others = 24_000;
        var bar = new SourceFile("bar.json", Encoding.UTF8.GetBytes(SmallBook.Bar));
        Rule[] rules = [new Many("HR3971", Level.Note, notes), new Many("HR3972", Level.Error, others)];
        var result = Checker.Check(new BookInput([bar], CalendarDate.Parse(ToolRun.Day)!.Value) { HouseRules = rules });
        using var stream = new MemoryStream();
        SarifReport.Write(stream, ReportContent.Of(result), new SarifReportOptions { Version = "1.0.0", HouseRules = rules, ForCodeScanning = true });
        using var log = JsonDocument.Parse(stream.ToArray());
        var levels = Results(log).Select(r => r.GetProperty("level").GetString()).ToList();
        Assert.Equal(SarifReport.MostResults, levels.Count);
        Assert.Equal(others, levels.Count(l => l == "error"));
        string said = log.RootElement.GetProperty("runs")[0].GetProperty("invocations")[0].GetProperty("toolExecutionNotifications")[0].GetProperty("message").GetProperty("text").GetString()!;
        Assert.StartsWith($"{result.Findings.Count - SarifReport.MostResults} results of the lowest levels are left out", said, StringComparison.Ordinal);
    }

    /// <summary>Finds so many things in the bar's file.</summary>
    private sealed class Many(string id, Level level, int count) : FileRule
    {
        public override RuleInfo Info { get; } = new(id, "many-" + id, "Too many", level);

        public override void Check(FileContext context)
        {
            for (int i = 0; i < count; i++) context.Report(new Finding(Info) { Place = context.File.Head, Subject = context.Id, Key = $"{i}", Message = $"Number {i}." });
        }
    }

    [GeneratedRegex("^::(error|warning|notice) (?<properties>[^:]*)::[^\\r\\n]*$")]
    private static partial Regex Command();

    private static IEnumerable<JsonElement> Results(JsonDocument log) => log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray();
}
