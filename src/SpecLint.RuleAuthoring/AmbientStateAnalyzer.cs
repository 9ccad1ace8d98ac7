using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Operations;

namespace SpecLint.RuleAuthoring;

/// <summary>
/// The library gives the same findings on every day, machine and in every country. It runs in processes that it does not
/// set up (a compiler, an editor), so that the invariant mode of the command does not protect it: numbers with a decimal
/// point name the invariant culture wherever they become text. Of a house's own code only the rules are looked at: a
/// program around them may do as it likes.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class AmbientStateAnalyzer : DiagnosticAnalyzer
{
    private static readonly DiagnosticDescriptor Ambient = new(
        "SLA006",
        "A call that hangs on clock, chance, files or surroundings",
        "{0} hangs on the surroundings of the process: {1}",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true);

    private static readonly DiagnosticDescriptor Culture = new(
        "SLA007",
        "Text that hangs on the culture",
        "{0} hangs on the culture of the process: {1}",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true);

    private static readonly ImmutableDictionary<string, string> AmbientMembers = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["System.DateTime.Now"] = TakeTheDay,
        ["System.DateTime.UtcNow"] = TakeTheDay,
        ["System.DateTime.Today"] = TakeTheDay,
        ["System.DateTimeOffset.Now"] = TakeTheDay,
        ["System.DateTimeOffset.UtcNow"] = TakeTheDay,
        ["System.TimeProvider.System"] = TakeTheDay,
        ["System.Environment.TickCount"] = TakeTheDay,
        ["System.Environment.TickCount64"] = TakeTheDay,
        ["System.Environment.CurrentDirectory"] = HandOver,
        ["System.Environment.MachineName"] = HandOver,
        ["System.Environment.UserName"] = HandOver,
        ["System.Environment.NewLine"] = "write \\n",
        ["System.Environment.GetEnvironmentVariable"] = HandOver,
        ["System.Guid.NewGuid"] = "the same book must give the same findings",
        ["System.Random.Shared"] = "the same book must give the same findings",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private static readonly ImmutableHashSet<string> AmbientTypes = ImmutableHashSet.Create(
        StringComparer.Ordinal,
        "System.Console", "System.Random", "System.IO.File", "System.IO.Directory", "System.IO.FileInfo", "System.IO.DirectoryInfo",
        "System.IO.FileStream",
        "System.Diagnostics.Process", "System.Diagnostics.Stopwatch", "System.Net.Http.HttpClient");

    private const string TakeTheDay = "take the day of the run from the context";
    private const string HandOver = "let the host hand it over";
    private const string Invariant = "name CultureInfo.InvariantCulture";

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = ImmutableArray.Create(Ambient, Culture);

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(static start =>
        {
            var rule = start.Compilation.GetTypeByMetadataName(Names.Rule);
            bool everywhere = rule is null || SymbolEqualityComparer.Default.Equals(rule.ContainingAssembly, start.Compilation.Assembly);
            Register(
                static c => OnMember(c, ((IMemberReferenceOperation)c.Operation).Member),
                OperationKind.PropertyReference, OperationKind.FieldReference);
            Register(static c => OnCall(c, (IInvocationOperation)c.Operation), OperationKind.Invocation);
            Register(static c => OnCreation(c, (IObjectCreationOperation)c.Operation), OperationKind.ObjectCreation);
            Register(static c => OnHole(c, (IInterpolationOperation)c.Operation), OperationKind.Interpolation);
            Register(static c => OnConcatenation(c, (IBinaryOperation)c.Operation), OperationKind.Binary);

            void Register(Action<OperationAnalysisContext> look, params OperationKind[] kinds) =>
                start.RegisterOperationAction(everywhere ? look : Names.Within(type => type.DerivesFrom(rule!), look), kinds);
        });
    }

    private static void OnMember(OperationAnalysisContext context, ISymbol member)
    {
        string type = member.ContainingType.ToDisplayString(), name = $"{type}.{member.Name}";
        if (AmbientMembers.TryGetValue(name, out string? instead)) Report(context, Ambient, name, instead);
        else if (AmbientTypes.Contains(type) && member.IsStatic) Report(context, Ambient, name, HandOver);
        else if (name is "System.Globalization.CultureInfo.CurrentCulture" or "System.Globalization.CultureInfo.CurrentUICulture")
            Report(context, Culture, name, Invariant);
        else if (type is ("System.StringComparison" or "System.StringComparer")
            && member.Name.StartsWith("CurrentCulture", StringComparison.Ordinal))
            Report(context, Culture, name, "compare ordinally");
    }

    private static void OnCall(OperationAnalysisContext context, IInvocationOperation call)
    {
        var method = call.TargetMethod;
        string type = method.ContainingType.ToDisplayString(), name = $"{type}.{method.Name}";
        if (AmbientMembers.TryGetValue(name, out string? instead))
        {
            Report(context, Ambient, name, instead);
            return;
        }

        if (AmbientTypes.Contains(type) && method.IsStatic)
        {
            Report(context, Ambient, name, HandOver);
            return;
        }

        bool provider = method.Parameters.Any(p => p.Type.Name is "IFormatProvider" or "CultureInfo");
        if (!provider && IsFraction(method.ContainingType) && method.Name is ("ToString" or "Parse" or "TryParse"))
            Report(context, Culture, name, Invariant);
        else if (method.ContainingType.SpecialType == SpecialType.System_String
            && method.Parameters.IsEmpty
            && method.Name is ("ToLower" or "ToUpper"))
            Report(context, Culture, name, "take the invariant one");
        else if (name == "string.Compare" && !method.Parameters.Any(p => p.Type.Name == "StringComparison"))
            Report(context, Culture, name, "compare ordinally");
        else if (name == "System.Text.StringBuilder.Append" && method.Parameters.Length == 1 && IsFraction(method.Parameters[0].Type))
            Report(context, Culture, name, Invariant);
    }

    private static void OnCreation(OperationAnalysisContext context, IObjectCreationOperation creation)
    {
        if (creation.Type?.ToDisplayString() is { } type && AmbientTypes.Contains(type)) Report(context, Ambient, type, HandOver);
    }

    private static void OnHole(OperationAnalysisContext context, IInterpolationOperation hole)
    {
        if (!IsFraction(hole.Expression.Type) || hole.Expression.ConstantValue.HasValue) return;

        // FormattableString.Invariant and string.Create name their culture.
        for (var outer = hole.Parent; outer is not null; outer = outer.Parent)
        {
            if (outer is IInvocationOperation call
                && (call.TargetMethod.Name == "Invariant" || call.TargetMethod.Parameters.Any(p => p.Type.Name == "IFormatProvider")))
                return;
            if (outer is IBlockOperation) break;
        }

        Report(context, Culture, ((InterpolationSyntax)hole.Syntax).Expression.ToString(), Invariant);
    }

    private static void OnConcatenation(OperationAnalysisContext context, IBinaryOperation binary)
    {
        if (binary.Type?.SpecialType != SpecialType.System_String || binary.OperatorKind != BinaryOperatorKind.Add) return;
        foreach (var side in new[] { binary.LeftOperand, binary.RightOperand })
        {
            var value = side is IConversionOperation conversion ? conversion.Operand : side;
            if (IsFraction(value.Type)) Report(context, Culture, value.Syntax.ToString(), Invariant);
        }
    }

    private static bool IsFraction(ITypeSymbol? type)
    {
        if (type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } nullable) type = nullable.TypeArguments[0];
        return type?.SpecialType is SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal;
    }

    private static void Report(OperationAnalysisContext context, DiagnosticDescriptor descriptor, string name, string instead) =>
        context.ReportDiagnostic(Diagnostic.Create(descriptor, context.Operation.Syntax.GetLocation(), name, instead));
}
