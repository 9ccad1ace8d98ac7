using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4003: a preparation that misses its target of °Brix.</summary>
internal sealed class BrixTargetMissed : TargetRule
{
    private static readonly Limit Off = Limits.Of("target-tolerance-brix");

    private static readonly RuleInfo Rule = new("SL4003", "brix-target-missed", "A preparation that misses its target of °Brix", Level.Warning)
    {
        Needs = [Fact.Brix, Fact.Density],
        Limits = [Off.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Property => "brix";

    /// <inheritdoc/>
    protected override string Noun => "°Brix";

    /// <inheritdoc/>
    protected override Given<Quantity> TargetOf(Target target) => target.Brix;

    /// <inheritdoc/>
    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.Brix) is { IsKnown: true } brix ? new Came(brix, Solving.Brix, "°Bx", "%") : null;

    /// <inheritdoc/>
    protected override bool IsMoved(Part part) => part.Material is { Kind.Sweetens: true };

    /// <inheritdoc/>
    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);
}
