using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4007: a preparation that misses its target of water activity.</summary>
internal sealed class WaterActivityTargetMissed : TargetRule
{
    private static readonly Limit Off = Limits.Of("target-tolerance-water-activity");

    private static readonly RuleInfo Rule = new("SL4007", "water-activity-target-missed", "A preparation that misses its target of water activity", Level.Warning)
    {
        Needs = [Fact.WaterActivity, Fact.Density],
        Limits = [Off.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Property => "waterActivity";

    /// <inheritdoc/>
    protected override string Noun => "water activity";

    /// <inheritdoc/>
    protected override Given<Quantity> TargetOf(Target target) => target.WaterActivity;

    /// <inheritdoc/>
    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.WaterActivity) is { IsKnown: true } aw && aw.Value > target.Base ? new Came(aw, null, "", "1") : null;

    /// <inheritdoc/>
    protected override bool IsMoved(Part part) => false;

    /// <inheritdoc/>
    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);

    /// <inheritdoc/>
    protected override string Otherwise(bool over) =>
        "Sweeten, salt or dry it further and measure it, or write the water activity that it reaches.";
}
