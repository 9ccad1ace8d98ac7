using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>SL4006: a preparation that misses its target of pH.</summary>
internal sealed class PhTargetMissed : TargetRule
{
    private static readonly Limit Off = Limits.Of("target-tolerance-ph");

    private static readonly RuleInfo Rule = new("SL4006", "ph-target-missed", "A preparation that misses its target of pH", Level.Warning)
    {
        Needs = [Fact.Ph, Fact.Density],
        Limits = [Off.Id],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Property => "ph";

    /// <inheritdoc/>
    protected override string Noun => "pH";

    /// <inheritdoc/>
    protected override Given<Quantity> TargetOf(Target target) => target.Ph;

    /// <inheritdoc/>
    protected override Came? Comes(RecipeContext context, Quantity target) =>
        context.Fact(Fact.Ph) is { IsKnown: true } ph ? new Came(ph, null, "", "[pH]") : null;

    /// <inheritdoc/>
    protected override bool IsMoved(Part part) => false;

    /// <inheritdoc/>
    protected override (double Off, Limit Limit) Tolerance(double target) => (Off.Value, Off);

    /// <inheritdoc/>
    protected override string Otherwise(bool over) =>
        over ? "Measure it again; then raise the acid a little, or write the pH that it reaches." : "Measure it again; then lower the acid a little, or write the pH that it reaches.";
}
