using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>What a command line owes its user: a near word for a wrong one, a choice of rules, text as wide as the terminal.</summary>
public class MannersTests
{
    [Theory]
    [InlineData("there is no verb chek. Did you mean check?", "chek")]
    [InlineData("check has no option --fail-on. Did you mean --fail-at?", "check", "--fail-on", "error")]
    [InlineData("--format takes text, line, json, sarif, html, github, gitlab, junit, teamcity or checkstyle, not 'jsn'. Did you mean json?", "check", "--format", "jsn")]
    [InlineData("an argument is empty; is a variable of the shell not set?", "compare", "")]
    [InlineData("SL5099 is neither a rule nor a family of rules.", "check", "--rule", "SL5099")]
    [InlineData("there is no rule SL50O1", "rules", "SL50O1")]
    public void A_wrong_word_gets_a_sentence_and_a_near_one(string sentence, params string[] args)
    {
        using var book = SmallBook.WithBroken();
        var run = ToolRun.In(book.Path, args);
        Assert.Equal(2, run.Status);
        Assert.Contains(sentence, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("\\n", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void A_watched_book_is_checked_again_when_a_file_changes_comes_or_goes()
    {
        using var demo = new DemoBook();
        string drink = Path.Combine(demo.Path, "low-tide.drink.json"), extra = Path.Combine(demo.Path, "new.drink.json");
        string text = File.ReadAllText(drink);
        var steps = new Queue<Action>([() => File.WriteAllText(drink, text.Replace("sour-cucumber", "no-such-thing", StringComparison.Ordinal)), () => { }, () => File.WriteAllText(extra, "{ \"name\": "), () => File.Delete(extra), () => File.WriteAllText(drink, text)]);
        var fresh = new List<string>();
        void Note() => fresh.Add(ToolRun.In(demo.Path, "check", "--format", "line").Output);
        Note();
        var run = ToolRun.With(demo.Path, new RunOptions
        {
            WaitForChange = _ =>
            {
                if (!steps.TryDequeue(out var step)) return false;
                step();
                if (steps.Count != 3) Note();
                return true;
            },
        }, "check", "--format", "line", "--watch");
        Assert.Equal(string.Concat(fresh), run.Output);
        Assert.NotEqual(fresh[0], fresh[1]);
        Assert.Equal(fresh[0], fresh[^1]);
        Assert.Contains("low-tide.drink.json changed", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, ToolRun.In(demo.Path, "check", "--watch", "--format", "sarif").Status);
    }

    [Fact]
    public async Task A_change_on_disk_ends_the_wait()
    {
        using var book = SmallBook.WithBroken();
        var wait = Task.Run(() => Watch.ForChange(book.Path));
        for (int i = 0; !wait.IsCompleted && i < 200; i++)
        {
            File.WriteAllText(Path.Combine(book.Path, "mudflat.drink.json"), SmallBook.Broken + new string(' ', i % 2));
            await Task.WhenAny(wait, Task.Delay(150));
        }

        Assert.True(await wait);
    }

    [Fact]
    public void Progress_covers_reading_and_checking_with_the_time_left_on_a_terminal_alone()
    {
        using var error = new StringWriter { NewLine = "\n" };
        var host = new Host { Output = Stream.Null, Error = error, CurrentDirectory = Path.GetTempPath(), Today = () => default, ErrorIsTerminal = true };
        var clock = TimeSpan.Zero;
        using (var progress = new ProgressLine(host, wanted: true, total: 1000, () => clock))
        {
            foreach (var (second, done) in new[] { (0.1, 10), (1.0, 500), (2.0, 1000), (2.5, 1010), (4.0, 1200), (11.9, 1990) })
            {
                clock = TimeSpan.FromSeconds(second);
                progress.Report!(done);
            }
        }

        Assert.Equal(["read 500 of 1000 files", "read 1000 of 1000 files", "checked 10 of 1000 files", "checked 200 of 1000 files, 8 seconds left", "checked 990 of 1000 files, a second left", ""], error.ToString().Split('\r', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Replace("\u001b[K", "", StringComparison.Ordinal)));
        Assert.Null(new ProgressLine(new Host { Output = Stream.Null, Error = error, CurrentDirectory = Path.GetTempPath(), Today = () => default }, wanted: true, total: 1000).Report);
    }

    [Fact]
    public void The_man_page_has_every_verb_and_option()
    {
        string page = ToolRun.In(Path.GetTempPath(), "manual").Output;
        foreach (var verb in Shell.Verbs)
        {
            Assert.Contains($"\n.SS speclint {verb.Name.Replace("-", "\\-", StringComparison.Ordinal)}", page, StringComparison.Ordinal);
            var command = new System.CommandLine.Command(verb.Name);
            verb.Define(command);
            foreach (var option in command.Options) Assert.Contains($"\n.B {option.Name.Replace("-", "\\-", StringComparison.Ordinal)}", page, StringComparison.Ordinal);
        }

        // Each line that is a command is one of man(7).
        Assert.All(page.Split('\n').Where(l => l.StartsWith('.')), l => Assert.Matches(@"^\.(TH|SH|SS|TP|PP|B|I|nf|fi)( |$)", l));
    }

    [Fact]
    public void A_folder_of_the_book_will_do_for_every_verb()
    {
        using var demo = new DemoBook();
        const string Book = "house/the book";
        string Said(params string[] args) => ToolRun.In(demo.Repository, [.. args]) is var run && run.Status == 2 ? run.Error : run.Output;
        foreach (string verb in new[] { "check", "profile", "correct", "settings" }) Assert.NotEqual(2, ToolRun.In(demo.Repository, verb, Book).Status);
        Assert.Equal(Said("labels", "--book", Book), Said("labels", Book));
        Assert.Contains("a folder with several menus", Said("linecheck", Book), StringComparison.Ordinal);
        foreach (string menu in Directory.GetFiles(demo.Path, "*.menu.json").Where(f => !f.EndsWith("evening.menu.json", StringComparison.Ordinal))) File.Delete(menu);
        Assert.Equal(Said("linecheck", "evening", "--book", Book), Said("linecheck", Book));
        Assert.Equal(Said("guests", "evening", "--book", Book), Said("guests", Book));
        Assert.Equal(Said("card", "low-tide", "--book", Book), Said("card", Book + "/low-tide.drink.json"));
        Assert.Equal(Said("card", "low-tide", "harbour-light", "--book", Book), Said("card", Book + "/low-tide.drink.json", Book + "/harbour-light.drink.json"));
        foreach (string verb in new[] { "scale", "card", "record", "trace" })
            Assert.Contains($"{Book} is a folder; name a", Said([verb, Book, .. verb == "scale" ? new[] { "--serves", "4" } : verb == "record" ? ["--ph", "2.4"] : []]), StringComparison.Ordinal);
        Assert.Contains("Did you mean low-tide?", Said("scale", "low-tid", "--serves", "4", "--book", Book), StringComparison.Ordinal);
    }

    [Fact]
    public void Help_keeps_to_a_screen()
    {
        foreach (var verb in Shell.Verbs)
        {
            string help = ToolRun.In(Path.GetTempPath(), verb.Name, "--help").Output;
            Assert.DoesNotContain("SL1001", help, StringComparison.Ordinal);
            Assert.InRange(help.Split('\n').Length, 5, 85);
        }
    }

    [Fact]
    public void Findings_of_some_rules_are_shown_and_the_others_are_counted()
    {
        using var demo = new DemoBook();
        var all = Rules(ToolRun.In(demo.Path, "check", "--format", "json"));
        var keeping = Rules(ToolRun.In(demo.Path, "check", "--format", "json", "--rule", "keeping"));
        Assert.All(keeping, r => Assert.StartsWith("SL5", r, StringComparison.Ordinal));
        Assert.Equal(all.Where(r => r.StartsWith("SL5", StringComparison.Ordinal)).Order(StringComparer.Ordinal), keeping.Order(StringComparer.Ordinal));
        var others = Rules(ToolRun.In(demo.Path, "check", "--format", "json", "--not-rule", "5"));
        Assert.Equal(all.Count, keeping.Count + others.Count);
        string text = ToolRun.In(demo.Path, "check", "--rule", "SL8001").Output.ReplaceLineEndings(" ");
        Assert.Contains("of other rules are not shown", text, StringComparison.Ordinal);
        Assert.Contains("of rules that guard against harm", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Statistics_count_what_the_json_holds()
    {
        using var demo = new DemoBook();
        var all = Rules(ToolRun.In(demo.Path, "check", "--format", "json"));
        string text = ToolRun.In(demo.Path, "check", "--statistics").Output;
        foreach (var rule in all.GroupBy(r => r)) Assert.Matches($@"(?m)^ *{rule.Count()}  {rule.Key}  ", text);
        Assert.Contains($"{all.Count} findings of {all.Distinct().Count()} rules", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_find_rule_pages_by_symptom()
    {
        string list = ToolRun.In(Path.GetTempPath(), "rules", "garlic", "oil").Output;
        Assert.Contains("SL5016", list, StringComparison.Ordinal);
        Assert.DoesNotContain("SL8001", list, StringComparison.Ordinal);
        Assert.StartsWith("# ", ToolRun.In(Path.GetTempPath(), "rules", "SL5016").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(200, 120)]
    [InlineData(100, 100)]
    [InlineData(20, 60)]
    public void Text_is_as_wide_as_the_terminal(int terminal, int columns)
    {
        using var demo = new DemoBook();
        var lines = ToolRun.With(demo.Path, new RunOptions { Terminal = true, Columns = terminal }, "check", "--colour", "never", "--quiet").Output.Split('\n');
        Assert.All(lines, l => Assert.True(DisplayText.Width(l) <= columns || !l.Contains(' ', StringComparison.Ordinal) || l.EndsWith(':'), l));
        Assert.Contains(lines, l => DisplayText.Width(l) > columns - 12);
    }

    [Fact]
    public void A_file_that_is_not_saved_is_read_from_standard_input()
    {
        using var book = SmallBook.WithBroken();
        var saved = ToolRun.In(book.Path, "check", "mudflat.drink.json", "--format", "json");
        var piped = ToolRun.With(book.Path, new RunOptions { Input = SmallBook.Broken.Replace("no-such-thing", "no-such-thing-either", StringComparison.Ordinal) }, "check", "-", "--as", "mudflat.drink.json", "--format", "json");
        Assert.Equal(1, piped.Status);
        Assert.Contains("no-such-thing-either", piped.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("no-such-thing-either", saved.Output, StringComparison.Ordinal);
        Assert.Equal(2, ToolRun.With(book.Path, new RunOptions { Input = "{}" }, "check", "-").Status);
        Assert.Equal(2, ToolRun.With(book.Path, new RunOptions { Input = "{}" }, "check", "-", "--as", "x.txt").Status);
    }

    [Fact]
    public void A_line_is_path_line_column_level_rule_message()
    {
        using var demo = new DemoBook();
        string[] lines = ToolRun.In(demo.Path, "check", "--format", "line").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(Rules(ToolRun.In(demo.Path, "check", "--format", "json")).Count, lines.Length);
        Assert.All(lines, l => Assert.Matches(@"^[^:]+\.json:[0-9]+:[0-9]+: (error|warning|note) SL[0-9]{4}: \S", l));
    }

    // GitLab Docs, Code Quality, "Code Quality report format": description, check_name, fingerprint (unique), location.path, location.lines.begin, severity.
    [Fact]
    public void A_code_quality_report_holds_what_GitLab_reads()
    {
        using var demo = new DemoBook();
        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "gitlab").Bytes);
        var issues = json.RootElement.EnumerateArray().ToList();
        Assert.Equal(Rules(ToolRun.In(demo.Path, "check", "--format", "json")).Count, issues.Count);
        foreach (var issue in issues)
        {
            Assert.Equal(["description", "check_name", "fingerprint", "severity", "location"], issue.EnumerateObject().Select(p => p.Name));
            Assert.Contains(issue.GetProperty("severity").GetString(), new[] { "info", "minor", "major", "critical", "blocker" });
            Assert.False(issue.GetProperty("location").GetProperty("path").GetString()!.StartsWith("./", StringComparison.Ordinal));
            Assert.True(issue.GetProperty("location").GetProperty("lines").GetProperty("begin").GetInt32() > 0);
        }

        Assert.Equal(issues.Count, issues.Select(i => i.GetProperty("fingerprint").GetString()).Distinct().Count());
    }

    // What the server takes: the schema of GitLab itself (gitlab-org/gitlab, app/validators/json_schemas/codeclimate.json, MIT), in
    // our words, and the words for a severity that its report knows (lib/gitlab/ci/reports/codequality_reports.rb); an entry that does
    // not fit is left out together with all that follow.
    [Fact]
    public void A_code_quality_report_passes_the_schema_of_the_server()
    {
        var schema = Json.Schema.JsonSchema.FromText("""
            { "type": "array", "items": {
                "type": "object",
                "required": [ "description", "fingerprint", "severity", "location" ],
                "properties": {
                  "description": { "type": "string" }, "fingerprint": { "type": "string" },
                  "severity": { "enum": [ "blocker", "critical", "major", "minor", "info" ] },
                  "location": { "type": "object", "required": [ "path", "lines" ], "properties": {
                    "path": { "type": "string" },
                    "lines": { "type": "object", "required": [ "begin" ], "properties": { "begin": { "type": "integer" } } } } } } } }
            """);
        using var demo = new DemoBook();
        using var json = JsonDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "gitlab").Bytes);
        Assert.True(json.RootElement.GetArrayLength() > 20);
        Assert.True(schema.Evaluate(json.RootElement).IsValid);
        using var wrong = JsonDocument.Parse("""[ { "description": "x", "fingerprint": "y", "severity": "fatal", "location": { "path": "a", "lines": { "begin": 1 } } } ]""");
        Assert.False(schema.Evaluate(wrong.RootElement).IsValid);
    }

    // TeamCity Docs, Service Messages, "Reporting Inspections": id, name, category and typeId have at most 255 characters, description,
    // message and file at most 4000; SEVERITY is INFO, ERROR, WARNING or WEAK WARNING.
    [Fact]
    public void Service_messages_keep_to_the_lengths_that_TeamCity_takes()
    {
        using var book = SmallBook.WithBroken();
        book.Write("bar.json", SmallBook.Bar);
        book.Write("long.drink.json", SmallBook.Broken.Replace("no-such-thing", new string('y', 9_000) + "'|[]\\u0007", StringComparison.Ordinal));
        string[] lines = ToolRun.In(book.Path, "check", "--format", "teamcity").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(lines, l => l.Contains("yyyy", StringComparison.Ordinal));
        foreach (string line in lines)
        {
            foreach (Match attribute in Regex.Matches(line, @" (\w+)='((?:[^'|\[\]]|\|['|\[\]nr]|\|0x[0-9A-F]{4})*)'"))
            {
                int length = Regex.Replace(attribute.Groups[2].Value, @"\|(0x[0-9A-F]{4}|.)", "x").Length;
                string name = attribute.Groups[1].Value;
                Assert.True(length <= (name is "id" or "name" or "category" or "typeId" ? 255 : 4000), $"{name} has {length} characters");
                if (name == "SEVERITY") Assert.Contains(attribute.Groups[2].Value, new[] { "INFO", "WARNING", "ERROR" });
            }
        }
    }

    // Checkstyle publishes no schema; its own writer (com.puppycrawl.tools.checkstyle.XMLLogger) is the description: a file has a name
    // and holds errors, each with line, severity, message and source, and a column from 1; SeverityLevel knows info, warning and error.
    [Fact]
    public void Checkstyle_xml_is_what_its_own_writer_writes()
    {
        using var demo = new DemoBook();
        var root = XDocument.Parse(ToolRun.In(demo.Path, "check", "--format", "checkstyle").Output).Root!;
        Assert.Equal("checkstyle", root.Name.ToString());
        Assert.Equal(["version"], root.Attributes().Select(a => a.Name.LocalName));
        Assert.NotEmpty(root.Elements());
        foreach (var file in root.Elements())
        {
            Assert.Equal("file", file.Name.ToString());
            Assert.Equal(["name"], file.Attributes().Select(a => a.Name.LocalName));
            foreach (var error in file.Elements())
            {
                Assert.Equal("error", error.Name.ToString());
                Assert.Equal(["line", "column", "severity", "message", "source"], error.Attributes().Select(a => a.Name.LocalName));
                Assert.True((int)error.Attribute("line")! >= 1 && (int)error.Attribute("column")! >= 1);
            }
        }
    }

    // TeamCity Docs, Service Messages: | escapes ' \n \r | [ ] and characters beyond ASCII as |0xNNNN; inspectionType before inspection.
    [Fact]
    public void Service_messages_are_escaped_as_TeamCity_reads_them()
    {
        Assert.Equal("|'||x|[|] |0x00B0C", TeamCityReport.Value("'|x[] °C"));
        using var demo = new DemoBook();
        string[] lines = ToolRun.In(demo.Path, "check", "--format", "teamcity").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(lines, l =>
        {
            Assert.StartsWith("##teamcity[inspection", l, StringComparison.Ordinal);
            Assert.Matches(@"^##teamcity\[\w+( \w+='([^'|\[\]\n]|\|['|\[\]nr]|\|0x[0-9A-F]{4})*')+\]$", l);
            Assert.All(l, c => Assert.InRange(c, ' ', '~'));
        });
        var types = lines.Where(l => l.StartsWith("##teamcity[inspectionType", StringComparison.Ordinal)).Select(l => l.Split('\'')[1]).ToHashSet();
        Assert.All(lines.Skip(types.Count), l => Assert.Contains(l.Split('\'')[1], types));
    }

    [Fact]
    public void Checkstyle_xml_holds_each_finding_once()
    {
        using var demo = new DemoBook();
        var xml = XDocument.Parse(Encoding.UTF8.GetString(ToolRun.In(demo.Path, "check", "--format", "checkstyle").Bytes));
        Assert.Equal("checkstyle", xml.Root!.Name.LocalName);
        var errors = xml.Root.Elements("file").Elements("error").ToList();
        Assert.Equal(Rules(ToolRun.In(demo.Path, "check", "--format", "json")).Count, errors.Count);
        Assert.All(errors, e => Assert.Contains(e.Attribute("severity")!.Value, new[] { "info", "warning", "error" }));
        Assert.All(errors, e => Assert.Matches("^speclint[.]SL[0-9]{4}$", e.Attribute("source")!.Value));
    }

    /// <summary>The rule of every finding of a JSON report, those beneath a cause included.</summary>
    private static List<string> Rules(ToolRun run)
    {
        using var json = JsonDocument.Parse(run.Bytes);
        var rules = new List<string>();
        foreach (var finding in json.RootElement.GetProperty("findings").EnumerateArray())
        {
            rules.Add(finding.GetProperty("rule").GetString()!);
            if (finding.TryGetProperty("follows", out var folded)) rules.AddRange(folded.EnumerateArray().Select(f => f.GetProperty("rule").GetString()!));
        }

        return rules;
    }
}
