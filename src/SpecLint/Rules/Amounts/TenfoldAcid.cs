namespace SpecLint.Rules.Amounts;

[Rule("SL2022", "tenfold-acid-or-salt", "A dry acid or salt far beyond what such a preparation takes", Level.Error, IsCause = true)]
internal sealed partial class TenfoldAcid : TenfoldRule
{
    protected override string Group => "acid";
}
