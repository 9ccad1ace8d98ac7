using SpecLint.Book;

namespace SpecLint.Rules.Balance;

[Rule("SL3016", "sour-without-acid", "A sour with almost no acid", Level.Warning,
    Needs = [Fact.Acid, Fact.ServedVolume], IsConsequence = true)]
[Limit("acid-lime", "Lime")]
[Limit("sour-part")]
internal sealed partial class SourWithoutAcid : MissingSideRule
{
    protected override Fact Of => Fact.Acid;

    protected override string Noun => "acid";

    protected override string Does => "sours";

    protected override string Brings(double grams, Settings settings) =>
        Volume(grams / (Lime.Value / 100), "juice at lime strength", settings);
}
