using System.Text;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

public sealed class BaselineTests
{
    private static readonly CalendarDate Later = CalendarDate.Of(2026, 12, 31)!.Value;

    [Fact]
    public void It_reads_what_it_writes()
    {
        var result = Check(withHazard: true, withOther: true);
        var baseline = new Baseline([]).With(result.Findings.Flat(), "as \"found\" 🍋", Later, Books.On, out var refused);
        Assert.Empty(refused);
        using var stream = new MemoryStream();
        baseline.Write(stream);
        Assert.Equal(baseline.Entries, Baseline.Read(stream.ToArray()).Entries);
        var match = baseline.Match(result);
        Assert.Empty(match.New);
        Assert.Empty(match.Absent);
        Assert.Equal(result.Findings.Flat().Count(), match.Unchanged.Count);
        Assert.Equal(1, match.UnchangedSafety);
    }

    [Fact]
    public void A_finding_that_guards_against_harm_is_not_taken_in_without_an_end()
    {
        var result = Check(withHazard: true, withOther: true);
        var baseline = new Baseline([]).With(result.Findings.Flat(), "as found", null, Books.On, out var refused);
        Assert.Equal("HR9981", Assert.Single(refused).Rule.Id);
        Assert.Equal(["HR9981"], baseline.Match(result).New.Select(f => f.Rule.Id));
    }

    [Fact]
    public void An_entry_that_has_ended_or_lost_its_reason_covers_nothing()
    {
        var result = Check(withHazard: true, withOther: false);
        var whole = new Baseline([]).With(result.Findings.Flat(), "as found", Later, Books.On, out _);
        foreach (var changed in new[]
        {
            whole.Entries[0] with { Until = CalendarDate.Of(2026, 11, 24) },
            whole.Entries[0] with { Until = null },
            whole.Entries[0] with { Because = " " },
        })
        {
            var match = new Baseline([changed]).Match(result);
            Assert.Equal(["HR9981"], match.New.Select(f => f.Rule.Id));
            Assert.Single(match.Ended);
        }
    }

    [Fact]
    public void A_refresh_takes_out_and_never_in()
    {
        var first = Check(withHazard: false, withOther: true);
        var baseline = new Baseline([]).With(first.Findings.Flat(), "as found", null, Books.On, out _);
        var second = Check(withHazard: true, withOther: false);
        var match = baseline.Match(second);
        Assert.Equal(["HR9982"], match.Absent.Select(e => e.Rule));
        Assert.Empty(baseline.WithoutAbsent(match).Entries);
        Assert.Equal(["HR9981"], baseline.WithoutAbsent(match).Match(second).New.Select(f => f.Rule.Id));
    }

    [Theory]
    [InlineData("", "no JSON")]
    [InlineData("[]", "no version")]
    [InlineData("{\"version\":2}", "its version is 2")]
    [InlineData("{\"version\":1,\"fingerprints\":\"other/v1\"}", "fingerprints are not")]
    [InlineData("{\"version\":1,\"fingerprints\":\"specLint/v1\"}", "no list")]
    [InlineData("{\"version\":1,\"fingerprints\":\"specLint/v1\",\"findings\":[{\"rule\":\"SL1001\"}]}", "no fingerprint")]
    [InlineData("{\"version\":1,\"fingerprints\":\"specLint/v1\",\"findings\":[{\"rule\":\"SL1001\",\"fingerprint\":\"a\",\"until\":\"soon\"}]}", "YYYY-MM-DD")]
    public void What_is_no_baseline_is_refused_with_a_reason(string text, string reason) =>
        Assert.Contains(reason, Assert.Throws<FormatException>(() => Baseline.Read(Encoding.UTF8.GetBytes(text))).Message, StringComparison.Ordinal);

    [Fact]
    public void A_consequence_stays_when_its_cause_is_left_out()
    {
        var result = Checker.Check(Books.Input() with { HouseRules = [new Always("HR9983", safety: false, isCause: true), new Always("HR9984", safety: false, isConsequence: true)] });
        var cause = Assert.Single(result.Findings, f => f.Folded.Count > 0);
        var only = result.Only(f => f != cause);
        Assert.All(cause.Folded, f => Assert.Contains(f, only.Findings));
        Assert.DoesNotContain(cause, only.Findings);
        var without = result.Only(f => f != cause.Folded[0]);
        Assert.Equal(result.Findings.Flat().Count() - 1, without.Findings.Flat().Count());
        Assert.DoesNotContain(cause.Folded[0], without.Findings.Flat());
    }

    private static CheckResult Check(bool withHazard, bool withOther)
    {
        var rules = new List<Rule>();
        if (withHazard) rules.Add(new Always("HR9981", safety: true));
        if (withOther) rules.Add(new Always("HR9982", safety: false));
        return Checker.Check(Books.Input() with { HouseRules = rules });
    }

    private sealed class Always(string id, bool safety, bool isCause = false, bool isConsequence = false) : FileRule
    {
        public override RuleInfo Info { get; } = new(id, "always-" + id, "Always there", Level.Error) { Safety = safety, IsCause = isCause, IsConsequence = isConsequence };

        public override void Check(FileContext context) =>
            context.Report(new Finding(Info) { Place = context.File.Head, Subject = context.Id, Message = "It is there." });
    }
}
