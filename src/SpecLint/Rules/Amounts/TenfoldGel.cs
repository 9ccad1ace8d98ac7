using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2021: a gum, gel or foaming agent far beyond its usual dose.</summary>
internal sealed class TenfoldGel : TenfoldRule
{
    private static readonly RuleInfo Rule = new("SL2021", "tenfold-gum", "A gum, gel or foaming agent far beyond its usual dose", Level.Error)
    {
        IsCause = true,
        Limits = [Over.Id, Under.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Group => "gel";
}
