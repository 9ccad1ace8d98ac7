using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using SpecLint.Findings;
using SpecLint.Rules;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers;

/// <summary>The rules as the compiler knows them.</summary>
internal static class Descriptors
{
    /// <summary>The build did not say, in a form that can be read, for which day to check.</summary>
    public static readonly DiagnosticDescriptor DateUnreadable = new(
        "SL0001",
        "The day to check for cannot be read",
        "The recipes were not checked: the property SpecLintOn is '{0}', which is not a day written as YYYY-MM-DD (the package's props set "
            + "it to the day of the build)",
        "SpecLint.Build",
        DiagnosticSeverity.Warning,
        isEnabledByDefault: true,
        customTags: WellKnownDiagnosticTags.CompilationEnd);

    /// <summary>Every rule, by id.</summary>
    public static readonly ImmutableArray<DiagnosticDescriptor> All =
        RuleRegistry.All.Select(r => Make(r.Info, "")).Prepend(DateUnreadable).ToImmutableArray();

    private static readonly ConcurrentDictionary<string, ImmutableDictionary<string, DiagnosticDescriptor>> Linked = new(StringComparer.Ordinal);

    /// <summary>The rules with links to their pages.</summary>
    /// <param name="pages">Address of the folder of pages; empty for none.</param>
    public static ImmutableDictionary<string, DiagnosticDescriptor> LinkedTo(string pages) =>
        Linked.GetOrAdd(pages, static p => RuleRegistry.All.ToImmutableDictionary(r => r.Info.Id, r => Make(r.Info, p), StringComparer.Ordinal));

    /// <summary>A level of the library as the compiler names it.</summary>
    public static DiagnosticSeverity SeverityOf(Level level) => level switch
    {
        Level.Error => DiagnosticSeverity.Error,
        Level.Warning => DiagnosticSeverity.Warning,
        Level.Note => DiagnosticSeverity.Info,
        _ => DiagnosticSeverity.Hidden,
    };

    /// <summary>What the build sets, as a level; <see langword="null"/> where it leaves the level alone.</summary>
    public static Level? LevelOf(ReportDiagnostic set) => set switch
    {
        ReportDiagnostic.Error => Level.Error,
        ReportDiagnostic.Warn => Level.Warning,
        ReportDiagnostic.Info => Level.Note,
        ReportDiagnostic.Hidden or ReportDiagnostic.Suppress => Level.None,
        _ => null,
    };

    private static DiagnosticDescriptor Make(RuleInfo rule, string pages) =>
        new DiagnosticDescriptor(
            rule.Id, rule.Title, "{0}", $"SpecLint.{rule.Family}", SeverityOf(rule.Level), isEnabledByDefault: true,
            helpLinkUri: Books.PageOf(rule.Id, pages), customTags: rule.Safety ? NotSilenced : []);

    /// <summary>A build gives no reason and no day: what guards against harm is put aside in bar.json or in the file, with both.</summary>
    private static readonly string[] NotSilenced = [WellKnownDiagnosticTags.NotConfigurable];
}
