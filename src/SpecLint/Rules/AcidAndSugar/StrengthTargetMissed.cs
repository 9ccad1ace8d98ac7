using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4004: a preparation that misses its target of strength.</summary>
internal sealed class StrengthTargetMissed : TargetRule
{
    private static readonly Limit Off = Limits.Of("target-tolerance-strength");

    private static readonly RuleInfo Rule = new("SL4004", "strength-target-missed", "A preparation that misses its target of strength", Level.Warning)
    {
        Needs = [Fact.Abv, Fact.Density],
        Limits = [Off.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Property => "abv";

    /// <inheritdoc/>
    protected override string Noun => "strength";

    /// <inheritdoc/>
    protected override Given<Quantity> TargetOf(Target target) => target.Abv;

    /// <inheritdoc/>
    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.Abv) is { IsKnown: true } abv ? new Came(abv, Solving.Strength, "% vol", "%{vol}") : null;

    /// <inheritdoc/>
    protected override bool IsMoved(Part part) => Substances.IsWater(part.Material);

    /// <inheritdoc/>
    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);
}
