using SpecLint.Book;

namespace SpecLint.Rules.Balance;

[Rule("SL3015", "sour-without-sweetener", "A sour with almost nothing to sweeten it", Level.Warning,
    Needs = [Fact.Sugar, Fact.ServedVolume], IsConsequence = true)]
[Limit("sweet-part")]
internal sealed partial class SourWithoutSweetener : MissingSideRule
{
    /// <summary>g of sugar in 1 mL of syrup, one to one by mass (NBS Circular 440, 1942: 50 °Brix).</summary>
    private const double SyrupSugar = 0.615;

    protected override Fact Of => Fact.Sugar;

    protected override string Noun => "sugar";

    protected override string Does => "sweetens";

    protected override string Brings(double grams, Settings settings) => Volume(grams / SyrupSugar, "simple-syrup", settings);
}
