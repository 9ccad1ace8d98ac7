using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Benchmarks;

/// <summary>What a measurement gave.</summary>
internal sealed record Row(string Name, int Recipes, double Seconds);

/// <summary>One run in a process of its own: reads every file of a folder, and does a part of the work or all of it.</summary>
internal static class Child
{
    /// <summary>How far a run goes, each as far as the one before and further.</summary>
    public static readonly string[] Parts = ["read files", "and link", "and check"];

    public static int Run(string folder, int threads, string part)
    {
        string[] paths = Directory.GetFiles(folder, "*.json", SearchOption.AllDirectories);
        var files = new SourceFile[paths.Length];
        Parallel.For(0, paths.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
            files[i] = new SourceFile(Path.GetRelativePath(folder, paths[i]).Replace('\\', '/'), File.ReadAllBytes(paths[i])));
        if (part == Parts[0]) return 0;
        var input = new BookInput(files, CalendarDate.Of(2026, 11, 25)!.Value) { Threads = threads };
        if (part == Parts[1])
        {
            // Profiles of preparations are made; those of drinks, and all facts, only when a rule asks.
            Checker.Profile(input);
            return 0;
        }

        JsonReport.Write(Stream.Null, ReportContent.Of(Checker.Check(input)), "0");
        return 0;
    }
}
