using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2022: a dry acid or salt far beyond what such a preparation takes.</summary>
internal sealed class TenfoldAcid : TenfoldRule
{
    private static readonly RuleInfo Rule = new("SL2022", "tenfold-acid-or-salt", "A dry acid or salt far beyond what such a preparation takes", Level.Error)
    {
        IsCause = true,
        Limits = [Over.Id, Under.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override string Group => "acid";
}
