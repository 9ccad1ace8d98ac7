using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Operations;
using Microsoft.CodeAnalysis;

namespace SpecLint.RuleAuthoring;

/// <summary>Names of the library's types, and what the analyzers ask of symbols.</summary>
internal static class Names
{
    public const string Rule = "SpecLint.Rules.Rule";
    public const string RuleInfo = "SpecLint.Findings.RuleInfo";
    public const string RuleAttribute = "SpecLint.Rules.RuleAttribute";
    public const string LimitAttribute = "SpecLint.Rules.LimitAttribute";
    public const string LimitsOfAttribute = "SpecLint.Rules.LimitsOfAttribute";
    public const string RuleFamily = "SpecLint.Findings.RuleFamily";
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

    /// <summary>A look at operations, taken only where they stand in a type that a condition picks.</summary>
    public static Action<OperationAnalysisContext> Within(Func<INamedTypeSymbol, bool> picks, Action<OperationAnalysisContext> look) => context =>
    {
        if (context.ContainingSymbol.ContainingType is { } type && picks(type)) look(context);
    };

    /// <summary>The attribute of a class, by the attribute's name; <see langword="null"/> where it has none.</summary>
    public static AttributeData? DeclarationOf(this INamedTypeSymbol type, string attribute)
    {
        foreach (var data in type.GetAttributes())
        {
            if (data.AttributeClass?.ToDisplayString() == attribute) return data;
        }

        return null;
    }

    /// <summary>Where the first argument of an attribute stands; the attribute itself where it has none.</summary>
    public static Location FirstArgument(AttributeData data)
    {
        var written = (AttributeSyntax)data.ApplicationSyntaxReference!.GetSyntax();
        return written.ArgumentList is { Arguments: [var first, ..] } ? first.Expression.GetLocation() : written.GetLocation();
    }

    /// <summary>The first argument, where it is a text known when compiling: the id that a rule's data bears.</summary>
    public static (string Id, IOperation At)? IdOf(IObjectCreationOperation creation)
    {
        foreach (var argument in creation.Arguments)
        {
            if (argument.Parameter is { Ordinal: 0 }
                && argument.Value.ConstantValue is { HasValue: true, Value: string id }) return (id, argument.Value);
        }

        return null;
    }
}
