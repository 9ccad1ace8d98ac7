using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers;

/// <summary>
/// Checks the books among the additional files of a compilation and reports each finding at its place. A book is read and
/// checked whole, once; each file then reports its own part.
/// </summary>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class BookAnalyzer : DiagnosticAnalyzer
{
    private const string DateOption = "build_property.SpecLintOn";
    private const string PagesOption = "build_property.SpecLintRulePages";
    private const string ProjectOption = "build_property.MSBuildProjectDirectory";

    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics => Descriptors.All;

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(Start);
    }

    private static void Start(CompilationStartAnalysisContext context)
    {
        var files = context.Options.AdditionalFiles.Where(f => FileKinds.Of(f.Path) is not null).ToImmutableArray();
        if (files.IsEmpty) return;
        var options = context.Options.AnalyzerConfigOptionsProvider.GlobalOptions;
        string? date = options.TryGetValue(DateOption, out string? given) ? given : null;
        if (date is null || CalendarDate.Parse(date) is not { } on)
        {
            context.RegisterCompilationEndAction(
                end => end.ReportDiagnostic(Diagnostic.Create(Descriptors.DateUnreadable, Location.None, date ?? "")));
            return;
        }

        string pages = options.TryGetValue(PagesOption, out string? address) ? address : "";
        string project = options.TryGetValue(ProjectOption, out string? folder) ? folder : "";
        var levels = LevelsOf(context.Compilation.Options, context.CancellationToken);
        var check = new BookCheck(files, on, project, levels, context.Compilation.Options.ConcurrentBuild);

        // The compiler leaves the level of what cannot be silenced alone, also where the build takes all warnings for errors.
        bool strict = context.Compilation.Options.GeneralDiagnosticOption == ReportDiagnostic.Error;
        bool IsRaised(Reported reported) =>
            strict
                && reported.Level == Level.Warning
                && !levels.ContainsKey(reported.Id)
                && RuleRegistry.Find(reported.Id) is { Safety: true };
        context.RegisterAdditionalFileAction(file =>
        {
            if (FileKinds.Of(file.AdditionalFile.Path) is null) return;
            var descriptors = Descriptors.LinkedTo(pages);
            foreach (var reported in check.FindingsIn(file.AdditionalFile.Path, file.CancellationToken))
                file.ReportDiagnostic(ToDiagnostic(reported, descriptors, IsRaised(reported)));
        });
    }

    private static Diagnostic ToDiagnostic(Reported reported, ImmutableDictionary<string, DiagnosticDescriptor> descriptors, bool raised) =>
        Diagnostic.Create(
            descriptors[reported.Id],
            reported.Where.ToLocation(),
            raised ? DiagnosticSeverity.Error : Descriptors.SeverityOf(reported.Level),
            reported.Further.Select(p => p.ToLocation()),
            ImmutableDictionary<string, string?>.Empty.Add("fingerprint", reported.Fingerprint),
            reported.Message);

    /// <summary>
    /// Levels that the build sets for rules. They are handed to the library, so that they win over bar.json also where that
    /// silences a rule, and so that nothing is folded under a finding that nobody sees.
    /// </summary>
    private static ImmutableSortedDictionary<string, Level> LevelsOf(CompilationOptions options, CancellationToken cancel)
    {
        var levels = ImmutableSortedDictionary.CreateBuilder<string, Level>(StringComparer.Ordinal);
        foreach (var descriptor in Descriptors.All)
        {
            // Options of the command line (NoWarn, WarningsAsErrors) stand over files, as they do in the compiler.
            if (!options.SpecificDiagnosticOptions.TryGetValue(descriptor.Id, out var set)
                && options.SyntaxTreeOptionsProvider?.TryGetGlobalDiagnosticValue(descriptor.Id, cancel, out set) != true) continue;
            if (Descriptors.LevelOf(set) is { } level) levels[descriptor.Id] = level;
        }

        return levels.ToImmutable();
    }
}
