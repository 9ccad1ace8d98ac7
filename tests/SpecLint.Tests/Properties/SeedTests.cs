using SpecLint.Findings;
using SpecLint.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Properties;

/// <summary>The books that the properties start from hold what they are there for.</summary>
public sealed class SeedTests
{
    /// <summary>Every rule that guards against harm speaks on at least one seed as it is.</summary>
    [Fact]
    public void Every_rule_that_guards_against_harm_speaks_on_a_seed()
    {
        var spoken = PropertySeeds.All.AsParallel()
            .SelectMany(b => b.Check().Findings.Flat().Select(f => f.Rule.Id).Distinct())
            .Distinct()
            .ToHashSet(StringComparer.Ordinal);
        Assert.Equal([], RuleRegistry.All.Where(r => r.Info.Safety && !spoken.Contains(r.Info.Id)).Select(r => r.Info.Id));
    }

    /// <summary>Every seed has the harm findings that its page, or what it holds, asks for.</summary>
    [Fact]
    public void Every_seed_has_the_findings_that_it_is_there_for() =>
        Assert.All(PropertySeeds.All, seed => Assert.Null(new PropertyCase(seed, null) { IsSeed = true }.Unlike(seed.Check())));

    /// <summary>What every seed comes to is written down, so that no change of it goes by unseen.</summary>
    [Fact]
    public void Every_seed_comes_to_what_is_written_down() =>
        Golden.Check(
            SeedRecord.Path,
            string.Join("\n\n", PropertySeeds.All.AsParallel().AsOrdered().Select(s => SeedRecord.Of(s, s.Check()))) + "\n");

    /// <summary>Many rules, and every hazardous preparation, have a seed of their own.</summary>
    [Fact]
    public void Seeds_expect_most_rules_that_guard_against_harm()
    {
        var expected = PropertySeeds.All.SelectMany(s => s.Expected).Select(e => e.Rule).ToHashSet(StringComparer.Ordinal);
        Assert.Equal([], RuleRegistry.All.Where(r => r.Info.Safety && !expected.Contains(r.Info.Id)).Select(r => r.Info.Id));
        Assert.All(HazardousPreps.Books(), b => Assert.NotEmpty(b.Expected));
    }
}
