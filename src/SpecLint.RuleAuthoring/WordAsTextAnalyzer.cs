using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Operations;

namespace SpecLint.RuleAuthoring;

/// <summary>
/// A word of the trade (a verb, an ice, a vessel, a glass, a kind, a family, a style) held against text: a list of words in the code is blind to
/// every word that comes after it. A trait in the table of the word's class says it once for all rules. Looked at is the
/// library, but for the namespaces that read the tables, and of a house its rules. What is written in a file may be shown,
/// looked up in a table and held against what is written elsewhere; only a text that stands in the code may not.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class WordAsTextAnalyzer : DiagnosticAnalyzer
{
    private const string Word = "SpecLint.Vocabulary.Word";
    private const string Step = "SpecLint.Book.Step";
    private const string Drink = "SpecLint.Book.Drink";

    private static readonly DiagnosticDescriptor WordAsText = new(
        "SLA008",
        "A word of the trade held against text",
        "{0} is held against text: ask the word for a trait, and give it one in the table of its class",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true);

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = ImmutableArray.Create(WordAsText);

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(static start =>
        {
            if (start.Compilation.GetTypeByMetadataName(Word) is not { } word) return;
            var rule = start.Compilation.GetTypeByMetadataName(Names.Rule);
            bool own = SymbolEqualityComparer.Default.Equals(word.ContainingAssembly, start.Compilation.Assembly);
            start.RegisterOperationAction(Names.Within(Picks, static c => OnEquality(c, (IBinaryOperation)c.Operation)), OperationKind.Binary);
            start.RegisterOperationAction(
                Names.Within(Picks, static c => OnPattern(c, c.Operation)),
                OperationKind.ConstantPattern, OperationKind.CaseClause);
            start.RegisterOperationAction(Names.Within(Picks, static c => OnCall(c, (IInvocationOperation)c.Operation)), OperationKind.Invocation);

            bool Picks(INamedTypeSymbol type) => own ? !ReadsTables(type.ContainingNamespace) : rule is not null && type.DerivesFrom(rule);
        });
    }

    private static bool ReadsTables(INamespaceSymbol space) =>
        space.ToDisplayString() is "SpecLint.Vocabulary" or "SpecLint.Reading" or "SpecLint.Binding" or "SpecLint.Catalogue";

    private static void OnEquality(OperationAnalysisContext context, IBinaryOperation binary)
    {
        if (binary.OperatorKind is not (BinaryOperatorKind.Equals or BinaryOperatorKind.NotEquals)) return;
        foreach (var (side, other) in new[] { (binary.LeftOperand, binary.RightOperand), (binary.RightOperand, binary.LeftOperand) })
        {
            if (IsText(other) && WordOf(side) is { } word) Report(context, word);
            else if (IsWordOfText(other)) Report(context, side);
        }
    }

    private static void OnPattern(OperationAnalysisContext context, IOperation pattern)
    {
        var value = pattern switch
        {
            IConstantPatternOperation constant => constant.Value,
            ISingleValueCaseClauseOperation clause => clause.Value,
            _ => null,
        };
        if (value is null || !IsText(value)) return;
        var outer = pattern.Parent;
        while (outer is IBinaryPatternOperation or INegatedPatternOperation
            or IPatternCaseClauseOperation or ISwitchCaseOperation) outer = outer.Parent;
        var input = outer switch
        {
            IIsPatternOperation test => test.Value,
            ISwitchExpressionArmOperation { Parent: ISwitchExpressionOperation choice } => choice.Value,
            ISwitchOperation choice => choice.Value,
            IPropertySubpatternOperation property => property.Member,
            _ => null,
        };
        if (input is not null && WordOf(input) is { } word) Report(context, word);
    }

    private static void OnCall(OperationAnalysisContext context, IInvocationOperation call)
    {
        // A phrase of the code that is looked for in a word is a text too.
        if (call.TargetMethod is { IsStatic: true, Name: "Has" or "HasAny" or "Affirms" or "Holds" }
            && call.Arguments.Length > 1
            && WordOf(call.Arguments[0].Value) is { } searched)
        {
            Report(context, searched);
            return;
        }

        if (call.TargetMethod.Name is not ("Equals" or "StartsWith" or "EndsWith" or "IndexOf"
            or "Contains" or "Compare" or "CompareOrdinal")) return;
        var arguments = call.Arguments.Select(a => a.Value).ToList();
        if (call.TargetMethod.ContainingType.SpecialType == SpecialType.System_String)
        {
            if (call.Instance is not null) arguments.Add(call.Instance);
            if (arguments.Any(IsText) && arguments.Select(WordOf).FirstOrDefault(w => w is not null) is { } word) Report(context, word);
        }
        else if (call.TargetMethod.Name == "Contains" && arguments.Select(WordOf).FirstOrDefault(w => w is not null) is { } listed)
        {
            Report(context, listed);
        }
    }

    /// <summary>The operation by which a value is the text of a word; <see langword="null"/> where it is none.</summary>
    private static IOperation? WordOf(IOperation value)
    {
        value = Bare(value);
        switch (value)
        {
            case IPropertyReferenceOperation { Property: { Type.SpecialType: SpecialType.System_String } property }:
                string type = property.ContainingType.ToDisplayString();
                return (type == Word && property.Name == "Id")
                    || (type == Step && property.Name is "Written" or "IceWritten")
                    || (type == Drink && property.Name == "GlassWritten")
                    ? value
                    : null;
            case IInvocationOperation { TargetMethod: { Name: "ToString", Parameters.IsEmpty: true }, Instance.Type: { } of } when IsWord(of):
                return value;
            case ILocalReferenceOperation { Local.DeclaringSyntaxReferences: [var declared] }
                when declared.GetSyntax() is VariableDeclaratorSyntax { Initializer.Value: { } start }:
                return value.SemanticModel?.GetOperation(start) is { } first
                    && Bare(first) is not ILocalReferenceOperation
                    && WordOf(first) is not null
                    ? value
                    : null;
            default:
                return null;
        }
    }

    private static IOperation Bare(IOperation value)
    {
        while (true)
        {
            switch (value)
            {
                case IConversionOperation conversion: value = conversion.Operand; break;
                case IParenthesizedOperation inner: value = inner.Operand; break;
                case IConditionalAccessOperation access: value = access.WhenNotNull; break;
                case ICoalesceOperation coalesce: value = coalesce.Value; break;
                default: return value;
            }
        }
    }

    private static bool IsText(IOperation value) =>
        value.Type?.SpecialType == SpecialType.System_String && value.ConstantValue is { HasValue: true, Value: string { Length: > 0 } };

    /// <summary>Whether a value is a word that is looked up by a text of the code on the spot.</summary>
    private static bool IsWordOfText(IOperation value) =>
        Bare(value) is IInvocationOperation { TargetMethod: { Name: "Of", IsStatic: true }, Arguments: [var only], Type: { } type }
            && IsWord(type)
            && IsText(only.Value);

    private static bool IsWord(ITypeSymbol? type)
    {
        for (; type is not null; type = type.BaseType)
        {
            if (type.ToDisplayString() == Word) return true;
        }

        return false;
    }

    private static void Report(OperationAnalysisContext context, IOperation word) =>
        context.ReportDiagnostic(Diagnostic.Create(WordAsText, word.Syntax.GetLocation(), word.Syntax.ToString()));
}
