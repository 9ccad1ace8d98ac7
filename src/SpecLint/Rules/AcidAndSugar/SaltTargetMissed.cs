using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4005: a preparation that misses its target of salt.</summary>
internal sealed class SaltTargetMissed : TargetRule
{
    private static readonly Limit Off = Limits.Of("target-tolerance");

    private static readonly RuleInfo Rule = new("SL4005", "salt-target-missed", "A preparation that misses its target of salt", Level.Warning)
    {
        Needs = [Fact.Salt, Fact.Density],
        Limits = [Off.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Property => "salt";

    /// <inheritdoc/>
    protected override string Noun => "salt";

    /// <inheritdoc/>
    protected override Given<Quantity> TargetOf(Target target) => target.Salt;

    /// <inheritdoc/>
    protected override Came? Comes(RecipeContext context, Quantity target) =>
        Content(context, target, Fact.Salt, Solving.SaltByMass, Solving.SaltPerVolume);

    /// <inheritdoc/>
    protected override bool IsMoved(Part part) => part.Material is { Kind.IsDrySalt: true };

    /// <inheritdoc/>
    protected override (double Off, Limit Limit) Tolerance(double target) => (target * Off.Value / 100, Off);
}
