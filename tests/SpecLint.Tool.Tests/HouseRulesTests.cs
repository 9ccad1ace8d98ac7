using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Tool.Tests.Support;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Tests;

/// <summary>Rules of a house's own, written in C#: the example project, loaded by path or run as a program.</summary>
public class HouseRulesTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""";

    /// <summary>About half syrup: far sweeter than the house pours.</summary>
    private const string Sweet = """
        {
          "name": "Treacle Tide",
          "ingredients": [
            { "item": "gin", "amount": "30 ml" },
            { "item": "simple-syrup", "amount": "45 ml" },
            { "item": "lime-juice", "amount": "15 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ]
        }
        """;

    [Fact]
    public void The_houses_own_rules_run_where_the_option_names_them()
    {
        using var book = Book();
        Assert.DoesNotContain("HR3001", ToolRun.In(book.Path, "check").Output, StringComparison.Ordinal);
        var run = ToolRun.In(book.Path, "check", "--rules", HouseRulesExample.Path);
        Assert.Empty(run.Error.Replace("speclint:", "", StringComparison.Ordinal).Trim());
        Assert.Contains("HR3001", run.Output, StringComparison.Ordinal);
        Assert.Contains("house book of The Saltmarsh Room", run.Output, StringComparison.Ordinal);
    }

    /// <summary>Preparations, stock and menus too, and corrections that are tried against the house's own rules.</summary>
    [Fact]
    public void They_run_on_a_whole_book_beside_all_others()
    {
        using var book = new TestFolder();
        Assert.Equal(0, ToolRun.In(book.Path, "start", "book").Status);
        var run = ToolRun.In(book.Path, "check", "book", "--on", ToolRun.Day, "--rules", HouseRulesExample.Path);
        Assert.Equal(1, run.Status);
        Assert.DoesNotContain("fault of the tool", run.Error, StringComparison.Ordinal);
        Assert.Contains("book/", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_assembly_in_the_book_is_not_looked_for()
    {
        using var book = Book();
        File.Copy(HouseRulesExample.Path, book["HouseRules.dll"]);
        Assert.DoesNotContain("HR3001", ToolRun.In(book.Path, "check").Output, StringComparison.Ordinal);
        Assert.Contains("HR3001", ToolRun.In(book.Path, "check", "--rules", "HouseRules.dll").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_names_the_rule_and_no_address_for_its_page()
    {
        using var book = Book();
        var run = ToolRun.In(book.Path, "check", "--rules", HouseRulesExample.Path, "--format", "sarif", "--rule-pages", "https://example.org/pages");
        using var log = JsonDocument.Parse(run.Bytes);
        var first = log.RootElement.GetProperty("runs")[0];
        var rule = Assert.Single(
            first.GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray(),
            r => r.GetProperty("id").GetString() == "HR3001");
        Assert.Equal("SweeterThanTheHousePours", rule.GetProperty("name").GetString());
        Assert.False(rule.TryGetProperty("helpUri", out _));
        var result = Assert.Single(first.GetProperty("results").EnumerateArray(), r => r.GetProperty("ruleId").GetString() == "HR3001");
        Assert.Equal(2, result.GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("region").GetProperty("startLine").GetInt32());
    }

    [Fact]
    public void The_bar_sets_the_level_of_its_own_rule()
    {
        using var book = Book("""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { "HR3001": "error" } }""");
        Assert.Equal(1, ToolRun.In(book.Path, "check", "--rules", HouseRulesExample.Path).Status);

        // A run that has not been given the house's rules does not take the id for a mistake.
        var without = ToolRun.In(book.Path, "check");
        Assert.DoesNotContain("HR3001", without.Output, StringComparison.Ordinal);

        // One that has knows which there are.
        book.Write("bar.json", Bar.Replace("[\"IE\"]", "[\"IE\"], \"rules\": { \"HR3002\": \"error\" }", StringComparison.Ordinal));
        Assert.Contains("SL1026", ToolRun.In(book.Path, "check", "--rules", HouseRulesExample.Path).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_finding_of_a_house_can_be_accepted()
    {
        using var book = Book();
        book.Write(
            "treacle.drink.json",
            Sweet.Replace(
                "\"ingredients\"",
                "\"accept\": [ { \"rule\": \"HR3001\", \"because\": \"stands in for dessert\" } ], \"ingredients\"",
                StringComparison.Ordinal));
        string output = ToolRun.In(book.Path, "check", "--rules", HouseRulesExample.Path, "--format", "json").Output;
        using var json = JsonDocument.Parse(output);
        var findings = json.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.DoesNotContain(findings, f => f.ToString().Contains("HR3001", StringComparison.Ordinal));
        Assert.Contains("HR3001", output, StringComparison.Ordinal);

        // Nor is the acceptance a mistake to a run that has not been given the house's rules.
        Assert.DoesNotContain("HR3001", ToolRun.In(book.Path, "check").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_baseline_knows_the_houses_own_findings()
    {
        using var book = Book();
        string[] rules = ["--rules", HouseRulesExample.Path];
        ToolRun.In(book.Path, ["baseline", "--create", "--because", "as found", "--until", "2027-06-30", .. rules]);
        Assert.Contains("HR3001", File.ReadAllText(book["speclint-baseline.json"]), StringComparison.Ordinal);
        string output = ToolRun.In(book.Path, ["check", "--baseline", "speclint-baseline.json", .. rules]).Output;
        Assert.DoesNotContain("HR3001", output, StringComparison.Ordinal);

        // Without them it is a finding that is there no more.
        Assert.Contains("HR3001", ToolRun.In(book.Path, "baseline").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("HR3001", ToolRun.In(book.Path, ["baseline", .. rules]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_comparison_tells_of_the_houses_own_findings()
    {
        using var book = Book();
        using var milder = Book();
        milder.Write("treacle.drink.json", Sweet.Replace("45 ml", "10 ml", StringComparison.Ordinal));
        string[] compare = ["compare", milder.Path, book.Path, "--fail-at", "warning", "--format", "json"];
        Assert.DoesNotContain("HR3001", ToolRun.In(book.Path, compare).Output, StringComparison.Ordinal);
        var run = ToolRun.In(book.Path, [.. compare, "--rules", HouseRulesExample.Path]);
        Assert.Equal(1, run.Status);
        Assert.Contains("HR3001", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Corrections_are_held_against_the_houses_own_rules()
    {
        using var book = Book();
        var unknown = ToolRun.In(book.Path, "correct", "--rule", "HR3001");
        Assert.Equal(2, unknown.Status);
        Assert.Contains("there is no rule HR3001", unknown.Error, StringComparison.Ordinal);
        var known = ToolRun.In(book.Path, "correct", "--rule", "HR3001", "--rules", HouseRulesExample.Path);
        Assert.Equal(0, known.Status);
        Assert.Contains("nothing to correct", known.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_used_makes_2_and_says_why()
    {
        using var book = Book();
        foreach (var (args, words) in new (string[], string)[]
        {
            (["--rules", "none.dll"], "none.dll does not exist"),
            (["--rules", "bar.json"], "bar.json cannot be loaded"),
            (["--rules", typeof(FactAttribute).Assembly.Location], "has no rule"),
            (["--rules", HouseRulesExample.Path, "--rules", HouseRulesExample.Path], "have one id, HR3001"),
        })
        {
            var run = ToolRun.In(book.Path, ["check", .. args]);
            Assert.Equal(2, run.Status);
            Assert.Contains(words, run.Error, StringComparison.Ordinal);
            Assert.Empty(run.Output);
        }
    }

    [Fact]
    public void A_rule_that_falls_over_is_named()
    {
        using var book = Book();
        book.Write("over.drink.json", Sweet.Replace("Treacle Tide", FallsOver.At, StringComparison.Ordinal));
        foreach (string[] verb in new string[][] { ["check"], ["correct"], ["compare", book.Path], ["baseline", "--create", "--because", "as found"] })
        {
            var run = ToolRun.In(book.Path, [.. verb, "--rules", typeof(HouseRulesTests).Assembly.Location]);
            Assert.Equal(3, run.Status);
            Assert.Contains("the house's own rule HR9001", run.Error, StringComparison.Ordinal);
            Assert.DoesNotContain("fault of the tool", run.Error, StringComparison.Ordinal);
            Assert.Empty(run.Output);
        }

        Assert.False(File.Exists(book["speclint-baseline.json"]));
    }

    [Fact]
    public void Ids_and_names_belong_to_one_rule()
    {
        Assert.Null(HouseRules.WhyNot([new Named("HR3001", "one"), new Named("HR3002", "two")]));
        foreach (string id in new[] { "SL3001", "HR0001", "HR301", "hr3001", "HOUSE1", "HR30011" })
            Assert.Contains(id, HouseRules.WhyNot([new Named(id, "one")]), StringComparison.Ordinal);
        Assert.Contains("one id", HouseRules.WhyNot([new Named("HR3001", "one"), new Named("HR3001", "two")]), StringComparison.Ordinal);
        Assert.Contains("HR3001", HouseRules.WhyNot([new Named("HR3001", "one"), new Named("HR3002", "one")]), StringComparison.Ordinal);
        var known = RuleRegistry.All[0].Info;
        Assert.Contains(known.Id, HouseRules.WhyNot([new Named("HR3001", known.Name)]), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Checker.Check(new BookInput([], CalendarDate.Parse(ToolRun.Day)!.Value) { HouseRules = [new Named("SL3001", "one")] }));
    }

    [Fact]
    public void A_house_rule_against_harm_asks_for_an_end_of_its_acceptance()
    {
        string accepted = Sweet.Replace(
            "\"ingredients\"", "\"accept\": [ { \"rule\": \"HR6001\", \"because\": \"we know\" } ], \"ingredients\"",
            StringComparison.Ordinal);
        var input = new BookInput(
            [new SourceFile(
                "treacle.drink.json", System.Text.Encoding.UTF8.GetBytes(accepted))], CalendarDate.Parse(ToolRun.Day)!.Value)
        { HouseRules = [new Named("HR6001", "harm")] };
        var result = Checker.Check(input);
        Assert.Contains(result.Findings, f => f.Rule.Id == "HR6001");
        Assert.Contains(result.Findings, f => f.Rule.Id == "SL1025");
    }

    [Fact]
    public void A_build_that_cannot_load_code_says_so()
    {
        using var book = Book();
        string tool = typeof(Shell).Assembly.Location;
        var config = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.ChangeExtension(tool, ".runtimeconfig.json")))!;
        var options = config["runtimeOptions"]!;
        if (options["configProperties"] is null) options["configProperties"] = new JsonObject();
        options["configProperties"]![HouseRuleFiles.Switch] = false;
        book.Write("native.runtimeconfig.json", config.ToJsonString());
        var run = Run("exec", "--runtimeconfig", book["native.runtimeconfig.json"], tool, "check", book.Path, "--rules", HouseRulesExample.Path);
        Assert.Equal(2, run.Status);
        Assert.Empty(run.Output);
        Assert.Contains("this one is native and cannot load code", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_small_program_finds_the_same()
    {
        using var book = Book();
        var program = Run("exec", HouseRulesExample.Path, book.Path, ToolRun.Day);
        Assert.True(program.Status is 0 or 1, program.Error);
        var check = ToolRun.In(book.Path, "check", "--rules", HouseRulesExample.Path, "--format", "sarif");
        using var log = JsonDocument.Parse(check.Bytes);
        var expected = log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().Select(r =>
        {
            var place = r.GetProperty("locations")[0].GetProperty("physicalLocation");
            return $"{place.GetProperty("artifactLocation").GetProperty("uri").GetString()}:{place.GetProperty("region").GetProperty("startLine")}:{place.GetProperty("region").GetProperty("startColumn")} {r.GetProperty("ruleId").GetString()}";
        }).ToList();
        Assert.Contains(expected, e => e.EndsWith("HR3001", StringComparison.Ordinal));
        Assert.Equal(expected, program.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => string.Join(' ', l.Split(' ').Take(2))));
        Assert.Equal(check.Status, program.Status);
    }

    private static TestFolder Book(string bar = Bar)
    {
        var book = new TestFolder();
        book.Write("bar.json", bar);
        book.Write("treacle.drink.json", Sweet);
        return book;
    }

    private static (int Status, string Output, string Error) Run(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", args)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output.ReplaceLineEndings("\n"), error.Result);
    }

    /// <summary>A rule that reports every drink.</summary>
    private sealed class Named : DrinkRule
    {
        public Named(string id, string name) => Info = new RuleInfo(id, name, "A mistake", Level.Warning) { Safety = name == "harm" };

        public override RuleInfo Info { get; }

        public override void Check(RecipeContext context, Drink drink) =>
            context.Report(new Finding(Info) { Place = drink.Head, Subject = context.Id, Message = "A drink." });
    }
}

/// <summary>A rule with a mistake of its own; the tests' assembly is handed to the command as one of a house's own.</summary>
internal sealed class FallsOver : DrinkRule
{
    public const string At = "Falls over";

    private static readonly RuleInfo Rule = new("HR9001", "falls-over", "A rule with a mistake", Level.Note);

    public override RuleInfo Info => Rule;

    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.Name.Or("") == At) throw new InvalidOperationException("There is no bottom.");
    }
}
