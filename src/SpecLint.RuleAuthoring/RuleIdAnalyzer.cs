using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Operations;

namespace SpecLint.RuleAuthoring;

/// <summary>
/// Ids of rules: each has a page, none is used twice, and those of the library stand in the range of the family in whose
/// folder the rule lies. A house's own rules bear two capital letters other than SL.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class RuleIdAnalyzer : DiagnosticAnalyzer
{
    private static readonly DiagnosticDescriptor WithoutPage = new(
        "SLA001",
        "A rule without a page",
        "{0} has no page: write {0}.md (what it checks, why, its source, how to put it right) and hand it to the compiler as an additional file",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true,
        customTags: WellKnownDiagnosticTags.CompilationEnd);

    private static readonly DiagnosticDescriptor OutOfRange = new(
        "SLA002",
        "An id outside its range",
        "{0} is not an id for this rule: {1}",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true);

    private static readonly DiagnosticDescriptor UsedTwice = new(
        "SLA003",
        "An id used twice",
        "{0} is already the id of the rule in {1}: an id belongs to one rule for ever",
        Names.Category,
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true,
        customTags: WellKnownDiagnosticTags.CompilationEnd);

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = ImmutableArray.Create(WithoutPage, OutOfRange, UsedTwice);

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(Start);
    }

    private static void Start(CompilationStartAnalysisContext start)
    {
        if (start.Compilation.GetTypeByMetadataName(Names.RuleInfo) is not { } info
            || start.Compilation.GetTypeByMetadataName(Names.Rule) is not { } rule)
            return;
        var family = start.Compilation.GetTypeByMetadataName(Names.RuleFamily);
        bool home = SymbolEqualityComparer.Default.Equals(info.ContainingAssembly, start.Compilation.Assembly);
        var pages = new HashSet<string>(start.Options.AdditionalFiles.Select(f => Path.GetFileNameWithoutExtension(f.Path)), StringComparer.Ordinal);
        var seen = new ConcurrentBag<(string Id, Location At)>();
        start.RegisterSymbolAction(
            context =>
            {
                var type = (INamedTypeSymbol)context.Symbol;
                if (type.DeclarationOf(Names.RuleAttribute) is not { } declared
                    || declared.ConstructorArguments is not [{ Value: string id }, ..]) return;
                Look(id, Names.FirstArgument(declared), type, context.ReportDiagnostic);
            },
            SymbolKind.NamedType);
        start.RegisterOperationAction(
            context =>
            {
                var creation = (IObjectCreationOperation)context.Operation;
                if (!SymbolEqualityComparer.Default.Equals(creation.Type, info) || !context.ContainingSymbol.ContainingType.DerivesFrom(rule)) return;
                if (Names.IdOf(creation) is { } given)
                    Look(given.Id, given.At.Syntax.GetLocation(), context.ContainingSymbol.ContainingType, context.ReportDiagnostic);
            },
            OperationKind.ObjectCreation);

        void Look(string id, Location at, INamedTypeSymbol type, Action<Diagnostic> report)
        {
            seen.Add((id, at));
            if (WhyNot(id, home, family, type.ContainingNamespace) is { } reason) report(Diagnostic.Create(OutOfRange, at, id, reason));
        }

        start.RegisterCompilationEndAction(end =>
        {
            foreach (var same in seen.GroupBy(s => s.Id, StringComparer.Ordinal))
            {
                var places = same.Select(s => s.At)
                    .OrderBy(a => a.SourceTree!.FilePath, StringComparer.Ordinal)
                    .ThenBy(a => a.SourceSpan.Start).ToArray();
                foreach (var later in places.Skip(1))
                    end.ReportDiagnostic(Diagnostic.Create(
                        UsedTwice, later, ImmutableArray.Create(places[0]), same.Key, Path.GetFileName(places[0].SourceTree!.FilePath)));
                if (!pages.Contains(same.Key)) end.ReportDiagnostic(Diagnostic.Create(WithoutPage, places[0], same.Key));
            }
        });
    }

    private static string? WhyNot(string id, bool home, INamedTypeSymbol? family, INamespaceSymbol space)
    {
        bool formed = id.Length == 6 && id[0] is >= 'A' and <= 'Z' && id[1] is >= 'A' and <= 'Z' && id.Skip(2).All(c => c is >= '0' and <= '9');
        if (!home)
        {
            return !formed ? "a house's own rules bear two capital letters and four digits, as HR3001"
                : id.StartsWith("SL", StringComparison.Ordinal) ? "ids in SL belong to the library; take two letters of your own"
                : id[2] == '0' ? "its first digit is the family, 1 to 9" : null;
        }

        if (!formed || !id.StartsWith("SL", StringComparison.Ordinal)) return "the library's ids are SL and four digits";
        var member = family?.GetMembers(space.Name).OfType<IFieldSymbol>().FirstOrDefault();
        return member?.ConstantValue is int digit && id[2] != '0' + digit
            ? $"rules in {space.Name} have ids from SL{digit}000 to SL{digit}999"
            : null;
    }
}
