using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

/// <summary>A rule that guards against harm is never off in silence.</summary>
public sealed class HarmAsideTests
{
    private const string Garlic = """
        {
          "name": "Garlic oil",
          "family": "infusion",
          "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "50 g" } ],
          "method": [ { "do": "steep", "for": "24 h" }, { "do": "strain" } ],
          "yield": "480 g",
          "keep": { "at": "4 °C", "in": "bottle", "for": "30 d" }ACCEPT
        }
        """;

    public static TheoryData<string, string> NotEnough => new()
    {
        { "\"none\"", "gives no reason" },
        { "\"note\"", "gives no reason" },
        { """{ "level": "none" }""", "gives no reason" },
        { """{ "level": "none", "because": " " }""", "gives no reason" },
        { """{ "level": "none", "because": "assayed" }""", "names no last day" },
        { """{ "level": "warning", "because": "assayed" }""", "names no last day" },
        { """{ "level": "none", "because": "assayed", "until": "2026-11-24" }""", "ended on 2026-11-24" },
        { """{ "level": "none", "because": "assayed", "until": "2027-11-26" }""", "more than a year ahead" },
        { """{ "level": "none", "because": "assayed", "until": "2099-12-31" }""", "more than a year ahead" },
    };

    [Theory]
    [MemberData(nameof(NotEnough))]
    public void A_harm_rule_is_not_lowered_without_a_reason_and_a_day_within_a_year(string level, string says)
    {
        var plain = Check("");
        var harm = plain.Findings.First(f => f.Rule.Safety && f.Level == Level.Error);
        var changed = Check("", $"\"{harm.Rule.Id}\": {level}");
        Assert.Equal(Harm(plain), Harm(changed));
        Assert.Contains(says, changed.Findings.Single(f => f.Rule.Id == "SL1029").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_harm_rule_that_is_off_with_reason_and_day_is_counted()
    {
        var harm = Check("").Findings.First(f => f.Rule.Safety && f.Level == Level.Error);
        var off = Check("", $$"""
            "{{harm.Rule.Id}}": { "level": "none", "because": "assayed", "until": "2027-11-25" }
            """);
        Assert.DoesNotContain(off.Findings, f => f.Rule.Id == harm.Rule.Id || f.Rule.Id == "SL1029");
        var aside = off.Accepted.First(f => f.Rule.Id == harm.Rule.Id);
        Assert.Equal(Level.Error, aside.Level);
        Assert.Equal("bar.json", aside.Suppression!.Place.File.Path);
        var counted = HarmAside.Of(off.Findings, off.Accepted);
        Assert.Equal(off.Accepted.Count(f => f.Rule.Id == harm.Rule.Id), counted.SwitchedOff);
        Assert.Contains("switched off in bar.json), until 2027-11-25", counted.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_harm_rule_that_is_lowered_with_reason_and_day_is_shown_and_counted()
    {
        var harm = Check("").Findings.First(f => f.Rule.Safety && f.Level == Level.Error);
        var lowered = Check("", $$"""
            "{{harm.Rule.Id}}": { "level": "note", "because": "assayed", "until": "2027-01-31" }
            """);
        Assert.All(lowered.Findings.Where(f => f.Rule.Id == harm.Rule.Id), f => Assert.Equal(Level.Note, f.Level));
        Assert.True(HarmAside.Of(lowered.Findings, lowered.Accepted).Lowered > 0);
    }

    [Fact]
    public void A_host_raises_a_harm_rule_and_never_lowers_it()
    {
        var input = Books.Input(("garlic-oil.prep.json", Garlic.Replace("ACCEPT", "")));
        var plain = Checker.Check(input);
        var harm = plain.Findings.First(f => f.Rule.Safety && f.Level == Level.Error);
        var off = Checker.Check(input with { Levels = new Dictionary<string, Level> { [harm.Rule.Id] = Level.None } });
        Assert.Equal(Harm(plain), Harm(off));
    }

    [Theory]
    [InlineData("2027-11-25", true)]
    [InlineData("2027-11-26", false)]
    [InlineData("2099-12-31", false)]
    public void An_acceptance_of_a_harm_rule_runs_at_most_a_year(string until, bool covers)
    {
        var harm = Check("").Findings.First(f => f.Rule.Safety && f.Level == Level.Error);
        var result = Check($$""", "accept": [ { "rule": "{{harm.Rule.Id}}", "because": "assayed", "until": "{{until}}" } ]""");
        Assert.Equal(covers, result.Accepted.Any(f => f.Rule.Id == harm.Rule.Id));
        Assert.Equal(!covers, result.Findings.Any(f => f.Rule.Id == "SL1025"));
    }

    [Fact]
    public void An_entry_of_a_baseline_for_a_harm_rule_runs_at_most_a_year()
    {
        var result = Check("");
        new Baseline([]).With(result.Findings.Flat(), "as found", CalendarDate.Of(2027, 11, 26), Books.On, out var refused);
        Assert.Equal(result.Findings.Flat().Count(f => f.Rule.Safety), refused.Count);
        var within = new Baseline([]).With(result.Findings.Flat(), "as found", CalendarDate.Of(2027, 11, 25), Books.On, out refused);
        Assert.Empty(refused);
        var far = new Baseline(within.Entries.Select(e => e with { Until = CalendarDate.Of(2099, 12, 31) }));
        Assert.All(result.Findings.Flat().Where(f => f.Rule.Safety), f => Assert.True(far.Match(result).IsNew(f)));
    }

    [Theory]
    [InlineData("SL1019", "\"none\"")]
    [InlineData("HARM", """{ "level": "none", "because": "assayed", "until": "2027-01-31" }""")]
    public void An_acceptance_of_a_rule_that_is_off_is_not_told_that_all_is_put_right(string rule, string level)
    {
        string id = rule == "HARM" ? Check("").Findings.First(f => f.Rule.Safety && f.Level == Level.Error).Rule.Id : rule;
        string text = Garlic.Replace("ACCEPT", $$""", "accept": [ { "rule": "{{id}}", "because": "known", "until": "2027-01-31" } ]""")
            .Replace("""{ "item": "garlic", "amount": "50 g" }""", """{ "item": "garlic", "amount": "25 g" }, { "item": "garlic", "amount": "25 g" }""");
        var result = Books.Check(
            ("garlic-oil.prep.json", text),
            ("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { "{{id}}": {{level}} } }"""));
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id == "SL1024");
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id == id);
    }

    [Fact]
    public void Nothing_found_is_never_said_while_a_harm_finding_is_put_aside()
    {
        var found = Check("").Findings.Flat().Select(f => f.Rule.Id).Distinct().ToList();
        string levels = string.Join(", ", found.Select(id => $$"""
            "{{id}}": { "level": "none", "because": "assayed", "until": "2027-01-31" }
            """));
        var result = Check("", levels);
        Assert.Empty(result.Findings);
        Assert.NotEmpty(result.Accepted);
        Assert.Equal("no other finding", ReportContent.Of(result).NothingFound);
        var baseline = new Baseline([]).With(Check("").Findings.Flat(), "as found", CalendarDate.Of(2027, 1, 31), Books.On, out _);
        var match = baseline.Match(Check(""));
        var content = ReportContent.Of(Check("").Only(match.IsNew), baseline: match);
        Assert.Empty(content.Findings);
        Assert.Equal("nothing new found", content.NothingFound);
        Assert.Contains("in the baseline), until 2027-01-31", content.Aside.Sentence, StringComparison.Ordinal);
    }

    private static List<string> Harm(CheckResult result) =>
        [.. result.Findings.Flat().Where(f => f.Rule.Safety).Select(f => $"{f.Level} {f.Fingerprint}").Order(StringComparer.Ordinal)];

    private static CheckResult Check(string accept, string rules = "") => Books.Check(
        ("garlic-oil.prep.json", Garlic.Replace("ACCEPT", accept)),
        ("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "rules": { {{rules}} } }"""));
}
