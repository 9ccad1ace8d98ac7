using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Operations;

namespace SpecLint.RuleAuthoring;

/// <summary>
/// A measured value held against a number that stands in the code of a rule or of a service: a limit belongs in a table,
/// with its source. Only comparisons of floating point are looked at, and only where they decide what is reported; 0, 1, −1
/// and 100 (nothing, the whole) and tolerances of arithmetic (up to 10⁻⁶) are no limits. A comparison within a conditional
/// expression chooses a value, as in rounding, and passes. A number that stands in a product, a quotient, a sum or a
/// difference on either side (<c>x &lt; 0.6 * y</c>) is a limit too, unless it turns one unit into another.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class BareLimitAnalyzer : DiagnosticAnalyzer
{
    private const double LargestTolerance = 1e-6;

    private static readonly DiagnosticDescriptor BareLimit = new(
        "SLA004",
        "A limit as a bare number",
        "{0} stands in the code as a limit: put it into a table with its source, so that the finding can name both",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true);

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = ImmutableArray.Create(BareLimit);

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(static start =>
        {
            if (start.Compilation.GetTypeByMetadataName(Names.Rule) is not { } rule) return;
            start.RegisterOperationAction(Names.Within(type => Decides(type, rule), OnComparison), OperationKind.Binary);
            start.RegisterOperationAction(Names.Within(type => Decides(type, rule), OnPattern), OperationKind.RelationalPattern);
        });
    }

    /// <summary>Whether a type decides what is said of a book: a rule, and in the library all that helps rules and services.</summary>
    private static bool Decides(INamedTypeSymbol type, INamedTypeSymbol rule) =>
        type.DerivesFrom(rule)
        || (SymbolEqualityComparer.Default.Equals(type.ContainingAssembly, rule.ContainingAssembly)
            && type.ContainingNamespace.ToDisplayString() is "SpecLint.Service");

    private static void OnComparison(OperationAnalysisContext context)
    {
        var comparison = (IBinaryOperation)context.Operation;
        if (comparison.OperatorKind is not (BinaryOperatorKind.LessThan or BinaryOperatorKind.LessThanOrEqual
            or BinaryOperatorKind.GreaterThan or BinaryOperatorKind.GreaterThanOrEqual))
            return;
        if (ChoosesValue(comparison)) return;
        foreach (var (side, other) in new[] { (comparison.LeftOperand, comparison.RightOperand), (comparison.RightOperand, comparison.LeftOperand) })
        {
            if (other.ConstantValue.HasValue) continue;
            if (side.ConstantValue.HasValue) Report(context, side);
            else ReportWithin(context, side);
        }
    }

    /// <summary>Reports the numbers that a side is worked out with.</summary>
    private static void ReportWithin(OperationAnalysisContext context, IOperation side)
    {
        switch (side)
        {
            case IConversionOperation conversion:
                ReportWithin(context, conversion.Operand);
                break;
            case IUnaryOperation unary:
                ReportWithin(context, unary.Operand);
                break;
            case IBinaryOperation
            {
                OperatorKind: BinaryOperatorKind.Multiply or BinaryOperatorKind.Divide or BinaryOperatorKind.Add
                or BinaryOperatorKind.Subtract
            } sum:
                foreach (var operand in new[] { sum.LeftOperand, sum.RightOperand })
                {
                    if (!operand.ConstantValue.HasValue) ReportWithin(context, operand);
                    else if (!TurnsUnits(operand, sum.OperatorKind)) Report(context, operand);
                }

                break;
        }
    }

    /// <summary>Whether a factor turns one unit into another: a named constant, a power of ten, or seconds, minutes, hours, days and weeks.</summary>
    private static bool TurnsUnits(IOperation operand, BinaryOperatorKind kind)
    {
        if (kind is not (BinaryOperatorKind.Multiply or BinaryOperatorKind.Divide)
            || operand.ConstantValue.Value is not IConvertible number) return false;
        if (operand.DescendantsAndSelf().Any(static o => o is IFieldReferenceOperation)) return true;
        double value = number.ToDouble(System.Globalization.CultureInfo.InvariantCulture);
        if (value is 60 or 3600 or 86400 or 1440 or 24 or 7) return true;
        return value is 10 or 100 or 1000 or 10_000 or 1e6;
    }

    private static void OnPattern(OperationAnalysisContext context)
    {
        if (ChoosesValue(context.Operation)) return;
        Report(context, ((IRelationalPatternOperation)context.Operation).Value);
    }

    private static void Report(OperationAnalysisContext context, IOperation number)
    {
        if (number.Type is not { SpecialType: SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal }) return;
        if (number.ConstantValue is not { HasValue: true, Value: { } boxed }) return;
        double value = boxed switch { double d => d, float f => f, decimal m => (double)m, _ => double.NaN };
        if (double.IsNaN(value) || double.IsInfinity(value) || value is 1 or -1 or 100 || Math.Abs(value) <= LargestTolerance) return;
        context.ReportDiagnostic(Diagnostic.Create(BareLimit, number.Syntax.GetLocation(), number.Syntax.ToString()));
    }

    private static bool ChoosesValue(IOperation comparison)
    {
        IOperation inner = comparison;
        for (var outer = comparison.Parent; outer is not null; inner = outer, outer = outer.Parent)
        {
            if (outer is IConditionalOperation { Type: { SpecialType: not SpecialType.System_Boolean } } choice) return choice.Condition == inner;
            if (outer is ISwitchExpressionArmOperation arm) return arm.Value != inner;
            if (outer is IConditionalOperation or IBlockOperation or IAnonymousFunctionOperation) return false;
        }

        return false;
    }
}
