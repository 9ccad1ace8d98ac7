using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;
using SpecLint.Rules;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers.Tests;

/// <summary>The plug-in in a compilation of this process: the same findings at the same places as the library.</summary>
public class BookAnalyzerTests
{
    private const string Root = "/books/shore/";

    private static readonly Lazy<DiagnosticAnalyzer> Plugin =
        new(static () => (DiagnosticAnalyzer)Activator.CreateInstance(OwnFolder.Load("SpecLint.Analyzers", "SpecLint.Analyzers.BookAnalyzer"))!);

    [Fact]
    public async Task Findings_and_places_are_those_of_the_library()
    {
        var expected = SmallBook.Expected(SmallBook.Files);
        Assert.Contains(expected, f => f.Id == "SL3016");
        Assert.True(expected.Count >= 3);
        Assert.Equal(expected, Seen(await Run(SmallBook.Files)));
    }

    [Fact]
    public async Task The_marked_text_is_the_one_that_is_meant_behind_accents_and_emoji()
    {
        var diagnostics = await Run(SmallBook.Files);
        var unknown = Assert.Single(diagnostics, d => d.Id == "SL1007" || d.GetMessage().Contains("colour", StringComparison.Ordinal));
        string text = SmallBook.Drink.Substring(unknown.Location.SourceSpan.Start, unknown.Location.SourceSpan.Length);
        Assert.StartsWith("\"colour\"", text, StringComparison.Ordinal);
        var line = SourceText.From(SmallBook.Drink).Lines.GetLinePositionSpan(unknown.Location.SourceSpan);
        Assert.Equal(line, unknown.Location.GetLineSpan().Span);
    }

    [Theory]
    [InlineData("\r\n", false)]
    [InlineData("\r", false)]
    [InlineData("\n", true)]
    public async Task Line_ends_and_a_byte_order_mark_change_no_place(string end, bool mark)
    {
        (string, byte[])[] files = [.. SmallBook.Files.Select(f => (f.Path, new UTF8Encoding(mark).GetPreamble().Concat(Encoding.UTF8.GetBytes(f.Text.Replace("\n", end, StringComparison.Ordinal))).ToArray()))];
        Assert.Equal(SmallBook.Expected(files), Seen(await Run(files)));
    }

    [Fact]
    public async Task A_file_that_is_no_UTF8_is_reported_as_by_the_library()
    {
        (string, byte[])[] files = [("bar.json", Encoding.UTF8.GetBytes(SmallBook.Bar)), ("a.drink.json", Encoding.Latin1.GetBytes(SmallBook.Drink.Replace("🍹", "", StringComparison.Ordinal)))];
        var expected = SmallBook.Expected(files);
        Assert.NotEmpty(expected);
        Assert.Equal(expected, Seen(await Run(files)));
    }

    [Fact]
    public async Task A_separator_of_lines_within_a_string_starts_no_line()
    {
        var files = SmallBook.Files.Select(f => (f.Path, f.Text.Replace("Brûlé", "Brûlé\u2028", StringComparison.Ordinal))).ToArray();
        Assert.Equal(SmallBook.Expected(files), Seen(await Run(files)));
    }

    [Fact]
    public async Task Levels_of_the_bar_hold()
    {
        (string, string)[] files = [("bar.json", SmallBook.Bar.Replace("\"name\"", "\"rules\": { \"SL3016\": \"error\" }, \"name\"", StringComparison.Ordinal)), SmallBook.Files[1], SmallBook.Files[2]];
        Assert.Equal(DiagnosticSeverity.Error, Assert.Single(await Run(files), d => d.Id == "SL3016").Severity);
        Assert.Equal(SmallBook.Expected(files), Seen(await Run(files)));
    }

    [Fact]
    public async Task Levels_of_the_build_stand_over_those_of_the_bar()
    {
        (string, string)[] files = [("bar.json", SmallBook.Bar.Replace("\"name\"", "\"rules\": { \"SL3016\": \"none\" }, \"name\"", StringComparison.Ordinal)), SmallBook.Files[1], SmallBook.Files[2]];
        Assert.DoesNotContain(await Run(files), d => d.Id == "SL3016");
        var raised = await Run(files, levels: new() { ["SL3016"] = ReportDiagnostic.Error });
        Assert.Equal(DiagnosticSeverity.Error, Assert.Single(raised, d => d.Id == "SL3016").Severity);
    }

    /// <summary>A build gives neither a reason nor a day, so its NoWarn puts no harm aside; it may still raise it.</summary>
    [Fact]
    public async Task The_build_silences_no_rule_that_guards_against_harm()
    {
        (string, string)[] files = [("bar.json", SmallBook.Bar), ("garlic-oil.prep.json", """{ "name": "Garlic oil", "family": "infusion", "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "50 g" } ], "method": [ { "do": "steep", "for": "24 h" } ], "keep": { "at": "20 °C", "in": "bottle", "for": "30 d" } }""")];
        static string[] Harm(ImmutableArray<Diagnostic> of) => [.. of.Where(d => RuleRegistry.Find(d.Id) is { Safety: true }).Select(d => $"{d.Id} {d.Severity}").Order(StringComparer.Ordinal)];
        string[] plain = Harm(await Run(files));
        Assert.NotEmpty(plain);
        Assert.Equal(plain, Harm(await Run(files, levels: RuleRegistry.All.ToDictionary(r => r.Info.Id, _ => ReportDiagnostic.Suppress))));
        Assert.Equal(plain, Harm(await Run(files, levels: RuleRegistry.All.ToDictionary(r => r.Info.Id, _ => ReportDiagnostic.Info))));
        Assert.All(Harm(await Run(files, levels: RuleRegistry.All.ToDictionary(r => r.Info.Id, _ => ReportDiagnostic.Error))), h => Assert.EndsWith("Error", h, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_the_bar_leaves_out_is_left_out()
    {
        string bar = SmallBook.Bar.Replace("\"name\"", "\"leaveOut\": [ \"drinks/\", \"pre*\" ], \"name\"", StringComparison.Ordinal);
        Assert.DoesNotContain(await Run([("bar.json", bar), SmallBook.Files[1], SmallBook.Files[2]]), d => !d.Location.GetLineSpan().Path.EndsWith("bar.json", StringComparison.Ordinal));
        string only = SmallBook.Bar.Replace("\"name\"", "\"files\": [ \"**/*.drink.json\" ], \"name\"", StringComparison.Ordinal);
        var found = await Run([("bar.json", only), SmallBook.Files[1], SmallBook.Files[2]]);
        Assert.Contains(found, d => d.Location.GetLineSpan().Path.EndsWith(".drink.json", StringComparison.Ordinal));
        Assert.DoesNotContain(found, d => d.Location.GetLineSpan().Path.EndsWith(".prep.json", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Each_folder_with_a_bar_is_a_book_of_its_own()
    {
        string syrup = SmallBook.Prep.Replace("dune-berries", "sugar", StringComparison.Ordinal);
        (string, string)[] user = [("bar.json", SmallBook.Bar), ("a.drink.json", SmallBook.BetterDrink.Replace("simple-syrup", "dune-syrup", StringComparison.Ordinal))];
        (string, string)[] one = [.. user, ("dune-syrup.prep.json", syrup)];
        (string, string)[] two = [.. user, ("other/bar.json", SmallBook.Bar), ("other/dune-syrup.prep.json", syrup)];
        Assert.DoesNotContain(await Run(one), d => d.Id == "SL9001");
        Assert.Contains(await Run(two), d => d.Id == "SL9001");
    }

    [Fact]
    public async Task A_day_that_cannot_be_read_is_said()
    {
        foreach (string? day in new[] { null, "25.11.2026" })
            Assert.Equal("SL0001", Assert.Single(await Run(SmallBook.Files, day: day)).Id);
    }

    [Fact]
    public async Task A_book_that_changes_is_checked_anew()
    {
        Assert.Contains(await Run(SmallBook.Files), d => d.Id == "SL3016");
        (string, string)[] better = [SmallBook.Files[0], (SmallBook.Files[1].Path, SmallBook.BetterDrink), SmallBook.Files[2]];
        Assert.DoesNotContain(await Run(better), d => d.Id == "SL3016");
        Assert.Contains(await Run(SmallBook.Files), d => d.Id == "SL3016");
    }

    [Fact]
    public async Task Related_places_and_pages_come_along()
    {
        (string, string)[] twice = [.. SmallBook.Files, ("drinks/again.drink.json", SmallBook.Drink)];
        var diagnostics = await Run(twice);
        Assert.Contains(diagnostics, d => d.AdditionalLocations.Any(l => l.GetLineSpan().Path.EndsWith(".drink.json", StringComparison.Ordinal)));
        Assert.All(diagnostics, d => Assert.Equal($"https://example.org/pages/{d.Id}.md", d.Descriptor.HelpLinkUri));
    }

    [Fact]
    public void Every_rule_is_known_to_the_compiler()
    {
        var known = Plugin.Value.SupportedDiagnostics;
        Assert.Equal(RuleRegistry.All.Select(r => r.Info.Id).Prepend("SL0001"), known.Select(d => d.Id));
        Assert.All(known, d => Assert.True(d.IsEnabledByDefault));
        Assert.All(RuleRegistry.All, r => Assert.Equal(SeverityOf(r.Info.Level), known.Single(d => d.Id == r.Info.Id).DefaultSeverity));
    }

    private static DiagnosticSeverity SeverityOf(Level level) => level switch { Level.Error => DiagnosticSeverity.Error, Level.Warning => DiagnosticSeverity.Warning, Level.Note => DiagnosticSeverity.Info, _ => DiagnosticSeverity.Hidden };

    private static List<(string Id, string Path, int Line, int Column, Level Level)> Seen(ImmutableArray<Diagnostic> diagnostics) =>
        [.. diagnostics.Select(d =>
        {
            var place = d.Location.GetLineSpan();
            var level = d.Severity switch { DiagnosticSeverity.Error => Level.Error, DiagnosticSeverity.Warning => Level.Warning, _ => Level.Note };
            return (d.Id, place.Path[Root.Length..], place.StartLinePosition.Line + 1, place.StartLinePosition.Character + 1, level);
        }).OrderBy(f => f.ToString(), StringComparer.Ordinal)];

    private static Task<ImmutableArray<Diagnostic>> Run((string Path, string Text)[] files, string? day = SmallBook.Day, Dictionary<string, ReportDiagnostic>? levels = null) =>
        Run([.. files.Select(f => (f.Path, Encoding.UTF8.GetBytes(f.Text)))], day, levels);

    private static async Task<ImmutableArray<Diagnostic>> Run((string Path, byte[] Bytes)[] files, string? day = SmallBook.Day, Dictionary<string, ReportDiagnostic>? levels = null)
    {
        var options = new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary).WithSpecificDiagnosticOptions(levels ?? []);
        var compilation = CSharpCompilation.Create("bare", [], [MetadataReference.CreateFromFile(typeof(object).Assembly.Location)], options);
        var properties = new Dictionary<string, string> { ["build_property.SpecLintRulePages"] = "https://example.org/pages/", ["build_property.MSBuildProjectDirectory"] = Root };
        if (day is not null) properties["build_property.SpecLintOn"] = day;
        var texts = files.Select(f => (AdditionalText)new BytesText(Root + f.Path, f.Bytes)).ToImmutableArray();
        Exception? fault = null;
        var with = compilation.WithAnalyzers([Plugin.Value], new CompilationWithAnalyzersOptions(
            new AnalyzerOptions(texts, new PropertyOptions(properties)), (e, _, _) => fault = e, concurrentAnalysis: true, logAnalyzerExecutionTime: false));
        var diagnostics = await with.GetAnalyzerDiagnosticsAsync();
        Assert.Null(fault);
        return diagnostics;
    }

    private sealed class BytesText(string path, byte[] bytes) : AdditionalText
    {
        public override string Path => path;

        // No encoding is given, as the compiler gives none: it looks for a mark, then tries UTF-8, then what the system has.
        public override SourceText? GetText(CancellationToken cancellationToken = default)
        {
            try
            {
                return SourceText.From(new MemoryStream(bytes), new UTF8Encoding(false, throwOnInvalidBytes: true), canBeEmbedded: false);
            }
            catch (DecoderFallbackException)
            {
                return SourceText.From(new MemoryStream(bytes), Encoding.Latin1);
            }
        }
    }

    private sealed class PropertyOptions(Dictionary<string, string> properties) : AnalyzerConfigOptionsProvider
    {
        public override AnalyzerConfigOptions GlobalOptions { get; } = new Options(properties);

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => GlobalOptions;

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) => GlobalOptions;

        private sealed class Options(Dictionary<string, string> values) : AnalyzerConfigOptions
        {
            public override bool TryGetValue(string key, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out string? value) => values.TryGetValue(key, out value);
        }
    }
}
