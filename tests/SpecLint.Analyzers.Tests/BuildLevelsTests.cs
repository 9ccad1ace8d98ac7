extern alias Task;

using CsCheck;
using Microsoft.CodeAnalysis;
using SpecLint.Vocabulary;
using BuildLevels = Task::SpecLint.Build.BuildLevels;

namespace SpecLint.Analyzers.Tests;

/// <summary>Levels as the task reads them, against the compiler's own reading of the same files.</summary>
public class BuildLevelsTests
{
    private static readonly Gen<string> Line = Gen.OneOf(
        Gen.Select(
            Of("SL3016", "SL1006", "sl9001"),
            Of("error", "warning", "suggestion", "silent", "none", "default", "Error", "loud", ""),
            Of(" = ", "=", ": "),
            Of("", " # why", " ; why"),
            (id, severity, sign, remark) => $"dotnet_diagnostic.{id}.severity{sign}{severity}{remark}"),
        Of(
            "is_global = true", "is_global = false", "IS_GLOBAL=True", "global_level = 5", "global_level = 100", "global_level = high", "",
            "# words", "[*.cs]", "dotnet_diagnostic.SL3016 = error"));

    private static readonly Gen<(string Name, string Text)[]> Files =
        Gen.Select(Of(".globalconfig", "a.config", ".editorconfig"), Line.Array[0, 6], (name, lines) => (name, string.Join('\n', lines))).Array[1, 4];

    [Fact]
    public void Files_are_read_as_the_compiler_reads_them() => Files.Sample(
        files =>
        {
            string folder = OperatingSystem.IsWindows() ? "C:/books/" : "/books/";
            var configs = files.Select((f, i) => AnalyzerConfig.Parse(f.Text, $"{folder}{i}/{f.Name}")).ToList();
            var expected = new SortedDictionary<string, Level>(StringComparer.OrdinalIgnoreCase);
            foreach (var option in AnalyzerConfigSet.Create(configs, out _).GlobalConfigOptions.TreeOptions)
            {
                if (LevelOf(option.Value) is { } level) expected[option.Key] = level;
            }

            var levels = new BuildLevels();
            for (int i = 0; i < files.Length; i++) levels.Add($"{folder}{i}/{files[i].Name}", files[i].Text);
            Assert.Equal(Shown(expected), Shown(levels.ToDictionary()));
        },
        iter: 5_000);

    [Fact]
    public void Two_files_at_odds_are_named()
    {
        var levels = new BuildLevels();
        Assert.Empty(levels.Add("/a/.globalconfig", "dotnet_diagnostic.SL3016.severity = error"));
        Assert.Equal([("SL3016", "/a/.globalconfig", "/a/b/.globalconfig")], levels.Add("/a/b/.globalconfig", "dotnet_diagnostic.SL3016.severity = none"));
        Assert.Empty(levels.ToDictionary());
    }

    [Fact]
    public void Properties_stand_over_files_and_silence_stands_over_errors()
    {
        var levels = new BuildLevels();
        levels.Add("/a/.globalconfig", "dotnet_diagnostic.SL3016.severity = none\ndotnet_diagnostic.SL1006.severity = warning");
        levels.Add("SL3016; SL1006,SL9001", Level.Error);
        levels.Add("1701;SL9001", Level.None);
        var all = levels.ToDictionary();
        Assert.Equal(Level.Error, all["SL3016"]);
        Assert.Equal(Level.Error, all["SL1006"]);
        Assert.Equal(Level.None, all["SL9001"]);
    }

    private static Gen<string> Of(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static Level? LevelOf(ReportDiagnostic set) => set switch
    {
        ReportDiagnostic.Error => Level.Error,
        ReportDiagnostic.Warn => Level.Warning,
        ReportDiagnostic.Info => Level.Note,
        ReportDiagnostic.Hidden or ReportDiagnostic.Suppress => Level.None,
        _ => null,
    };

    private static string Shown(IEnumerable<KeyValuePair<string, Level>> levels) =>
        string.Join(", ", levels.Select(l => $"{l.Key.ToUpperInvariant()}={l.Value}").Order(StringComparer.Ordinal));
}
