using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

/// <summary>SL3016: a sour with next to nothing that sours it.</summary>
internal sealed class SourWithoutAcid : MissingSideRule
{
    private static readonly Catalogue.Limit Lime = Catalogue.Limits.Of("acid-lime");

    private static readonly RuleInfo Rule = new("SL3016", "sour-without-acid", "A sour with almost no acid", Level.Warning)
    {
        Needs = [Fact.Acid, Fact.ServedVolume],
        Limits = [Lime.Id, "sour-part"],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Fact Of => Fact.Acid;

    /// <inheritdoc/>
    protected override string Noun => "acid";

    /// <inheritdoc/>
    protected override string Does => "sours";

    /// <inheritdoc/>
    protected override string Brings(double grams, Settings settings) => Volume(grams / (Lime.Value / 100), "juice at lime strength", settings);
}
