using SpecLint.Findings;

namespace SpecLint.Rules;

/// <summary>Names of the families.</summary>
public static class FamilyNames
{
    /// <summary>The name of a family, in lower case.</summary>
    public static string Of(RuleFamily family) => family switch
    {
        RuleFamily.File => "the file",
        RuleFamily.Amounts => "amounts and units",
        RuleFamily.Balance => "balance",
        RuleFamily.AcidAndSugar => "acid and sugar",
        RuleFamily.Keeping => "keeping",
        RuleFamily.Hazards => "hazards",
        RuleFamily.Labels => "labels and words",
        RuleFamily.Service => "service",
        _ => "the book",
    };
}
