using System.Globalization;
using System.Text;
using Xunit.Abstractions;

namespace SpecLint.Science.Tests;

/// <summary>One comparison: a point of a published table, what it prints and what the model gives.</summary>
/// <param name="Name">What the point is.</param>
/// <param name="Published">The printed figure.</param>
/// <param name="Model">The figure of the model; null when the model says unknown, which fails.</param>
public readonly record struct CheckPoint(string Name, double Published, double? Model);

/// <summary>A line of rules-docs/science.md.</summary>
/// <param name="Quantity">The quantity, as the first column has it ("Density of ethanol and water").</param>
/// <param name="Source">The published source: author, title, year, section.</param>
/// <param name="Unit">Unit of the deviations.</param>
/// <param name="Tolerance">Largest deviation allowed, in the same unit.</param>
/// <param name="Points">The comparisons.</param>
/// <param name="Relative">True: deviations are model over published less one, in per cent.</param>
/// <param name="Note">What the reader ought to know: rows left out and why, tolerance not reached.</param>
public sealed record ScienceLine(
    string Quantity, string Source, string Unit, double Tolerance, IReadOnlyList<CheckPoint> Points, bool Relative = false, string Note = "")
{
    public double Deviation(CheckPoint point) => point.Model switch
    {
        null => double.PositiveInfinity,
        { } model when Relative => (model / point.Published - 1) * 100,
        { } model => model - point.Published,
    };

    public CheckPoint Worst => Points.MaxBy(p => Math.Abs(Deviation(p)));

    public double Largest => Math.Abs(Deviation(Worst));

    public double RootMeanSquare => Math.Sqrt(Points.Average(p => Deviation(p) * Deviation(p)));
}

/// <summary>
/// A test class that compares a model with published tables. The page rules-docs/science.md has a line for each
/// <see cref="ScienceLine"/>. The class needs a constructor that takes an <see cref="ITestOutputHelper"/> and one test that
/// calls <see cref="ScienceReport.Check"/>.
/// </summary>
public interface IScienceTable
{
    IEnumerable<ScienceLine> Lines();
}

/// <summary>Prints, asserts and writes down how far the models are from the published tables.</summary>
public static class ScienceReport
{
    public const string UpdateVariable = "SPECLINT_UPDATE";

    /// <summary>Prints every line with its worst point, then asserts each tolerance.</summary>
    public static void Check(IScienceTable table, ITestOutputHelper output)
    {
        var lines = table.Lines().ToList();
        Assert.NotEmpty(lines);
        foreach (var line in lines)
        {
            Assert.NotEmpty(line.Points);
            output.WriteLine(
                $"{line.Quantity} | {line.Source}: {line.Points.Count} points, largest {Figure(line.Largest)} {line.Unit} at {line.Worst.Name} "
                + $"({Figure(line.Worst.Published)} published, {Figure(line.Worst.Model ?? double.NaN)} model), "
                + $"rms {Figure(line.RootMeanSquare)}, tolerance {Figure(line.Tolerance)}");
        }

        foreach (var line in lines)
        {
            Assert.True(
                line.Largest <= line.Tolerance,
                $"{line.Quantity} | {line.Source}: {line.Worst.Name} is off by {Figure(line.Deviation(line.Worst))} {line.Unit}, allowed {Figure(line.Tolerance)} "
                + $"(published {line.Worst.Published:R}, model {line.Worst.Model:R})");
        }
    }

    /// <summary>The page, from all classes of this assembly that compare with a table.</summary>
    public static string Page()
    {
        var silent = new Silent();
        var lines = typeof(ScienceReport).Assembly.GetTypes()
            .Where(t => !t.IsAbstract && typeof(IScienceTable).IsAssignableFrom(t))
            .SelectMany(t => ((IScienceTable)Activator.CreateInstance(t, silent)!).Lines())
            .OrderBy(l => l.Quantity, StringComparer.Ordinal).ThenBy(l => l.Source, StringComparer.Ordinal).ThenBy(l => l.Note, StringComparer.Ordinal)
            .ToList();
        var page = new StringBuilder();
        page.Append("# How close the science comes to the published tables\n\n");
        page.Append("Written by the tests of SpecLint.Science; do not edit. A deviation is the model less the published figure,\n");
        page.Append("in the unit of the line; *%* is relative. A tolerance is what the test allows.\n\n");
        page.Append("| quantity | source | points | largest | rms | tolerance | unit | remark |\n");
        page.Append("| --- | --- | ---: | ---: | ---: | ---: | --- | --- |\n");
        foreach (var l in lines)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {l.Quantity} | {l.Source} | {l.Points.Count} | {Figure(l.Largest)} | {Figure(l.RootMeanSquare)} ")
                .Append(CultureInfo.InvariantCulture, $"| {Figure(l.Tolerance)} | {l.Unit} | {l.Note} |\n");
        }

        return page.ToString();
    }

    /// <summary>A figure with two significant digits: the page must not change with the last bit of a logarithm.</summary>
    public static string Figure(double value)
    {
        if (value == 0 || !double.IsFinite(value))
            return value.ToString(CultureInfo.InvariantCulture);
        if (Math.Abs(value) < 1e-7)
            return "0.0000001";
        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 9);
        return Math.Round(value, decimals).ToString("0.#########", CultureInfo.InvariantCulture);
    }

    private sealed class Silent : ITestOutputHelper
    {
        public void WriteLine(string message)
        {
        }

        public void WriteLine(string format, params object[] args)
        {
        }
    }
}

public sealed class SciencePageTests
{
    [Fact]
    public void The_page_of_the_science_is_what_the_tests_measure()
    {
        var file = Path.Combine(Root(), "rules-docs", "science.md");
        var page = ScienceReport.Page();
        if (string.Equals(Environment.GetEnvironmentVariable(ScienceReport.UpdateVariable), "1", StringComparison.Ordinal))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, page);
        }

        var kept = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        Assert.True(
            string.Equals(page, kept, StringComparison.Ordinal),
            $"rules-docs/science.md is stale. Run: {ScienceReport.UpdateVariable}=1 dotnet test tests/SpecLint.Science.Tests --filter "
                + $"SciencePageTests\n{FirstDifference(page, kept)}");
    }

    private static string FirstDifference(string page, string kept)
    {
        var (a, b) = (page.Split('\n'), kept.Split('\n'));
        var i = 0;
        while (i < a.Length && i < b.Length && a[i] == b[i])
            i++;
        return $"line {i + 1}\nmeasured: {(i < a.Length ? a[i] : "(end)")}\nkept:     {(i < b.Length ? b[i] : "(end)")}";
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "SpecLint.sln")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("No SpecLint.sln above the tests.");
    }
}
