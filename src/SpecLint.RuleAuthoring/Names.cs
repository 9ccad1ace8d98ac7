using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace SpecLint.RuleAuthoring;

/// <summary>Names of the library's types, and what the analyzers ask of symbols.</summary>
internal static class Names
{
    public const string Rule = "SpecLint.Rules.Rule";
    public const string RuleInfo = "SpecLint.Rules.RuleInfo";
    public const string RuleFamily = "SpecLint.Rules.RuleFamily";
    public const string Fact = "SpecLint.Vocabulary.Fact";
    public const string Category = "SpecLint.RuleAuthoring";

    /// <summary>Whether a type is another or derives from it.</summary>
    public static bool DerivesFrom(this ITypeSymbol? type, INamedTypeSymbol ancestor)
    {
        for (; type is not null; type = type.BaseType)
        {
            if (SymbolEqualityComparer.Default.Equals(type, ancestor)) return true;
        }

        return false;
    }

    /// <summary>The first argument, where it is a text known when compiling: the id that a rule's data bears.</summary>
    public static (string Id, IOperation At)? IdOf(IObjectCreationOperation creation)
    {
        foreach (var argument in creation.Arguments)
        {
            if (argument.Parameter is { Ordinal: 0 } && argument.Value.ConstantValue is { HasValue: true, Value: string id }) return (id, argument.Value);
        }

        return null;
    }
}
