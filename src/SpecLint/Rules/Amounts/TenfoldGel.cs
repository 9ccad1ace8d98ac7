namespace SpecLint.Rules.Amounts;

[Rule("SL2021", "tenfold-gum", "A gum, gel or foaming agent far beyond its usual dose", Level.Error, IsCause = true)]
internal sealed partial class TenfoldGel : TenfoldRule
{
    protected override string Group => "gel";
}
