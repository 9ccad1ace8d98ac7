using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Benchmarks;

/// <summary>What a measurement gave.</summary>
internal sealed record Row(string Name, int Recipes, double Seconds);

/// <summary>One run in a process of its own: reads every file of a folder, checks, writes a report to nowhere.</summary>
internal static class Child
{
    public static int Check(string folder, int threads)
    {
        string[] paths = Directory.GetFiles(folder, "*.json", SearchOption.AllDirectories);
        var files = new SourceFile[paths.Length];
        Parallel.For(0, paths.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
            files[i] = new SourceFile(Path.GetRelativePath(folder, paths[i]).Replace('\\', '/'), File.ReadAllBytes(paths[i])));
        var result = Checker.Check(new BookInput(files, CalendarDate.Of(2026, 11, 25)!.Value) { Threads = threads });
        JsonReport.Write(Stream.Null, ReportContent.Of(result), "0");
        return 0;
    }
}
