using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4002: a preparation that misses its target of sugar.</summary>
internal sealed class SugarTargetMissed : TargetRule
{
    private static readonly Limit Off = Limits.Of("target-tolerance");

    private static readonly RuleInfo Rule = new("SL4002", "sugar-target-missed", "A preparation that misses its target of sugar", Level.Warning)
    {
        Needs = [Fact.Sugar, Fact.Density],
        Limits = [Off.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Property => "sugar";

    /// <inheritdoc/>
    protected override string Noun => "sugar";

    /// <inheritdoc/>
    protected override Given<Quantity> TargetOf(Target target) => target.Sugar;

    /// <inheritdoc/>
    protected override Came? Comes(RecipeContext context, Quantity target) =>
        Content(context, target, Fact.Sugar, Solving.SugarByMass, Solving.SugarPerVolume);

    /// <inheritdoc/>
    protected override bool IsMoved(Part part) => part.Material is { Kind.Sweetens: true };

    /// <inheritdoc/>
    protected override (double Off, Limit Limit) Tolerance(double target) => (target * Off.Value / 100, Off);

    /// <inheritdoc/>
    protected override bool IsSaidElsewhere(RecipeContext context, Prep prep, Quantity target, FactValue value) => BrixTakenForWeight.Applies(prep);
}
