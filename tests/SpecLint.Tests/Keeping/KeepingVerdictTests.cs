using CsCheck;
using SpecLint.Profile;

namespace SpecLint.Tests.Keeping;

/// <summary>The verdict of pH and water activity: US FDA Food Code 2022, 1-201.10, tables A and B.</summary>
public sealed class KeepingVerdictTests
{
    private static readonly FactValue Open = FactValue.Open("not given");

    /// <summary>Edges of the tables, at exact values (Food Code 1-201.10, read).</summary>
    [Theory]
    [InlineData("B", 0.92, 4.6, "NotControlled")]
    [InlineData("B", 0.9201, 4.2, "AssessmentRequired")]
    [InlineData("B", 0.9201, 4.19, "NotControlled")]
    [InlineData("B", 0.88, 5.01, "AssessmentRequired")]
    [InlineData("B", 0.8799, 7, "NotControlled")]
    [InlineData("B", 0.90, 5.0, "NotControlled")]
    [InlineData("B", 0.9001, 4.61, "AssessmentRequired")]
    [InlineData("A", 0.95, 5.6, "NotControlled")]
    [InlineData("A", 0.9501, 4.61, "AssessmentRequired")]
    [InlineData("A", 0.9501, 4.6, "NotControlled")]
    [InlineData("A", 0.92, 7, "NotControlled")]
    public void Tables_decide_at_their_edges(string table, double activity, double ph, string expected) =>
        Assert.Equal(expected, KeepingVerdicts.Of(table, Measured(ph, 0), Measured(activity, 0), false).Verdict.ToString());

    [Fact]
    public void A_reading_across_a_limit_shows_nothing_and_says_so()
    {
        var (verdict, near) = KeepingVerdicts.Of("B", Measured(4.15, 0.1), Open, false);
        Assert.Equal(KeepingVerdict.Unknown, verdict);
        Assert.True(near);
        Assert.Equal((KeepingVerdict.NotControlled, false), KeepingVerdicts.Of("B", Measured(4.15, 0.04), Open, false));
    }

    [Fact]
    public void A_low_reading_clears_at_any_water_activity() =>
        Assert.Equal(KeepingVerdict.NotControlled, KeepingVerdicts.Of("B", Measured(2.4, 0.1), Open, false).Verdict);

    [Fact]
    public void A_dry_solid_needs_no_pH() =>
        Assert.Equal(KeepingVerdict.NotControlled, KeepingVerdicts.Of("B", FactValue.Open("it is a solid"), Measured(0.6, 0.01), false).Verdict);

    [Fact]
    public void Food_that_the_code_names_is_cleared_by_a_reading_only()
    {
        Assert.Equal(KeepingVerdict.ListedAsControlled, KeepingVerdicts.Of("B", Open, Open, true).Verdict);
        Assert.Equal(KeepingVerdict.ListedAsControlled, KeepingVerdicts.Of("B", Computed(2, 1.7, 2.3), Open, true).Verdict);
        Assert.Equal(KeepingVerdict.NotControlled, KeepingVerdicts.Of("B", Measured(3, 0.1), Open, true).Verdict);
    }

    [Fact]
    public void A_computed_pH_may_make_the_verdict_worse() =>
        Assert.Equal(KeepingVerdict.AssessmentRequired, KeepingVerdicts.Of("B", Computed(5.6, 5.3, 5.9), Computed(0.98, 0.97, 0.99), false).Verdict);

    /// <summary>In any combination a pH that is only computed clears nothing.</summary>
    [Fact]
    public void A_computed_pH_never_clears()
    {
        var numbers = Gen.Double[0, 14];
        Gen.Select(numbers, Gen.Double[0, 3], Gen.Double[0, 1], Gen.Double[0, 0.1], Gen.Bool, Gen.Bool, Gen.Bool).Sample(t =>
        {
            var (ph, half, activity, halfActivity, table, listed, activityMeasured) = t;
            var water = activityMeasured ? Measured(activity, halfActivity) : Computed(activity, activity - halfActivity, activity + halfActivity);
            var verdict = KeepingVerdicts.Of(table ? "A" : "B", Computed(ph, ph - half, ph + half), water, listed).Verdict;
            return verdict != KeepingVerdict.NotControlled;
        });
    }

    /// <summary>A wider range never gives a better verdict (guarded acceptance, JCGM 106:2012, 8.3).</summary>
    [Fact]
    public void Less_certainty_never_clears_more()
    {
        Gen.Select(Gen.Double[0, 14], Gen.Double[0, 1], Gen.Double[0, 0.5], Gen.Double[0, 0.5], Gen.Bool).Sample(t =>
        {
            var (ph, activity, half, more, table) = t;
            string id = table ? "A" : "B";
            bool wide = KeepingVerdicts.Of(id, Measured(ph, half + more), Measured(activity, 0.01), false).Verdict == KeepingVerdict.NotControlled;
            bool narrow = KeepingVerdicts.Of(id, Measured(ph, half), Measured(activity, 0.01), false).Verdict == KeepingVerdict.NotControlled;
            return !wide || narrow;
        });
    }

    private static FactValue Measured(double value, double half) => new(value, value - half, value + half, "measured", null);

    private static FactValue Computed(double value, double low, double high) => new(value, low, high, "computed", null);
}
