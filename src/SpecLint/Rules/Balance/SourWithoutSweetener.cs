using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

/// <summary>SL3015: a sour with next to nothing that sweetens it.</summary>
internal sealed class SourWithoutSweetener : MissingSideRule
{
    /// <summary>g of sugar in 1 mL of syrup, one to one by mass (NBS Circular 440, 1942: 50 °Brix).</summary>
    private const double SyrupSugar = 0.615;

    private static readonly RuleInfo Rule = new("SL3015", "sour-without-sweetener", "A sour with almost nothing to sweeten it", Level.Warning)
    {
        Needs = [Fact.Sugar, Fact.ServedVolume],
        Limits = ["sweet-part"],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Fact Of => Fact.Sugar;

    /// <inheritdoc/>
    protected override string Noun => "sugar";

    /// <inheritdoc/>
    protected override string Does => "sweetens";

    /// <inheritdoc/>
    protected override string Brings(double grams, Settings settings) => Volume(grams / SyrupSugar, "simple-syrup", settings);
}
