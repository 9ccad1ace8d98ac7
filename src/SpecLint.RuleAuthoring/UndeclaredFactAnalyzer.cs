using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Operations;

namespace SpecLint.RuleAuthoring;

/// <summary>
/// A rule says in <c>Needs</c> of its declaration which facts it reads. Reads are calls that take one fact, named as such, and give its value,
/// in the rule's own class or in one that it derives from; helpers are not followed, nor a list that is put together when
/// the rule runs.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class UndeclaredFactAnalyzer : DiagnosticAnalyzer
{
    private const string Needs = "Needs";

    private static readonly DiagnosticDescriptor Undeclared = new(
        "SLA005",
        "A fact that the rule does not declare",
        "{0} reads the fact {1} and does not name it in Needs",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true,
        customTags: WellKnownDiagnosticTags.CompilationEnd);

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = ImmutableArray.Create(Undeclared);

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(Start);
    }

    private static void Start(CompilationStartAnalysisContext start)
    {
        if (start.Compilation.GetTypeByMetadataName(Names.Rule) is not { } rule
            || start.Compilation.GetTypeByMetadataName(Names.RuleInfo) is not { } info
            || start.Compilation.GetTypeByMetadataName(Names.Fact) is not { } fact) return;
        var reads = new ConcurrentBag<(INamedTypeSymbol Type, string Fact, Location At)>();
        var declared = new ConcurrentDictionary<INamedTypeSymbol, ImmutableHashSet<string>>(SymbolEqualityComparer.Default);
        var unreadable = new ConcurrentDictionary<INamedTypeSymbol, bool>(SymbolEqualityComparer.Default);
        start.RegisterOperationAction(
            context =>
            {
                var call = (IInvocationOperation)context.Operation;
                if (context.ContainingSymbol.ContainingType is not { } type || !type.DerivesFrom(rule)) return;
                if (call.Arguments.Length != 1
                    || call.TargetMethod.Name is not ("Fact" or "Get")
                    || FactOf(call.Arguments[0].Value, fact) is not { } name)
                    return;
                reads.Add((type, name, call.Arguments[0].Syntax.GetLocation()));
            },
            OperationKind.Invocation);
        start.RegisterSymbolAction(
            context =>
            {
                var type = (INamedTypeSymbol)context.Symbol;
                if (type.DeclarationOf(Names.RuleAttribute) is { } attribute) declared[type] = NeedsOf(attribute, fact).ToImmutableHashSet();
            },
            SymbolKind.NamedType);
        start.RegisterOperationAction(
            context =>
            {
                var creation = (IObjectCreationOperation)context.Operation;
                if (!SymbolEqualityComparer.Default.Equals(creation.Type, info)
                    || context.ContainingSymbol.ContainingType is not { } type
                    || !type.DerivesFrom(rule))
                    return;
                var named = ImmutableHashSet<string>.Empty;
                foreach (var set in creation.Initializer?.Initializers.OfType<ISimpleAssignmentOperation>() ?? [])
                {
                    if (set.Target is not IPropertyReferenceOperation { Property.Name: Needs }) continue;
                    named = named.Union(set.Value.DescendantsAndSelf().Select(o => FactOf(o, fact)).OfType<string>());
                    if (IsMore(set.Value, fact)) unreadable[type] = true;
                }

                declared.AddOrUpdate(type, named, (_, before) => before.Union(named));
            },
            OperationKind.ObjectCreation);
        start.RegisterCompilationEndAction(end =>
        {
            foreach (var pair in declared.Where(d => !unreadable.ContainsKey(d.Key)))
            {
                foreach (var read in reads)
                {
                    bool own = SymbolEqualityComparer.Default.Equals(read.Type, pair.Key);
                    if (pair.Value.Contains(read.Fact) || (!own && !pair.Key.DerivesFrom(read.Type))) continue;
                    end.ReportDiagnostic(Diagnostic.Create(Undeclared, own ? read.At : pair.Key.Locations[0], pair.Key.Name, read.Fact));
                }
            }
        });
    }

    /// <summary>The names of the facts that a declaration lists.</summary>
    private static IEnumerable<string> NeedsOf(AttributeData attribute, INamedTypeSymbol fact)
    {
        var names = fact.GetMembers().OfType<IFieldSymbol>().Where(f => f.HasConstantValue).ToLookup(f => f.ConstantValue, f => f.Name);
        var needs = attribute.NamedArguments.FirstOrDefault(a => a.Key == Needs).Value;
        return needs.Kind == TypedConstantKind.Array && !needs.IsNull ? needs.Values.SelectMany(v => names[v.Value]) : [];
    }

    private static string? FactOf(IOperation operation, INamedTypeSymbol fact)
    {
        while (operation is IConversionOperation conversion) operation = conversion.Operand;
        return operation is IFieldReferenceOperation { Field: { IsConst: true } field }
            && SymbolEqualityComparer.Default.Equals(field.ContainingType, fact)
            ? field.Name
            : null;
    }

    /// <summary>Whether a list holds more than facts named as such.</summary>
    private static bool IsMore(IOperation list, INamedTypeSymbol fact) => list.DescendantsAndSelf().Any(o =>
        o is IInvocationOperation or IPropertyReferenceOperation or ILocalReferenceOperation or IParameterReferenceOperation
        || (o is IFieldReferenceOperation && FactOf(o, fact) is null));
}
