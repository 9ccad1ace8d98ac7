using System.Globalization;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Service;

namespace SpecLint.Tests.Properties;

/// <summary>
/// What every seed comes to, written down in <c>record.txt</c>: each finding of a rule that guards against harm with its level and
/// place, the verdict on each recipe and each lot. What a seed is there for says less; the record tells of every change, so that
/// somebody looks at it before it is taken in.
/// </summary>
internal static class SeedRecord
{
    /// <summary>Set to 0 to leave the record out, for what the properties find without it.</summary>
    public const string Switch = "SPECLINT_RECORD";

    /// <summary>The file.</summary>
    public static string Path { get; } = Repository.At("tests", "SpecLint.Tests", "Properties", "record.txt");

    private static readonly Lazy<Dictionary<string, string>> Written = new(() =>
    {
        string[] blocks = File.ReadAllText(Path).ReplaceLineEndings("\n").Split("\n\n", StringSplitOptions.RemoveEmptyEntries);
        return blocks.ToDictionary(b => b.Split('\n')[0], b => b.TrimEnd('\n'), StringComparer.Ordinal);
    });

    /// <summary>How a seed differs from its record, in words; <see langword="null"/> where it does not.</summary>
    public static string? Difference(PropertyBook seed, CheckResult result)
    {
        if (Environment.GetEnvironmentVariable(Switch) == "0") return null;
        string now = Of(seed, result);
        if (!Written.Value.TryGetValue(seed.Name, out string? was)) return $"the record knows no seed {seed.Name}";
        if (now == was) return null;
        string[] before = was.Split('\n'), after = now.Split('\n');
        return $"the record of the seed says{Words(before.Except(after))}, and now it is{Words(after.Except(before))}";

        static string Words(IEnumerable<string> lines) => string.Join(';', lines.DefaultIfEmpty(" nothing").Select(l => " " + l.Trim()));
    }

    /// <summary>What a seed comes to: its name, then a line each.</summary>
    public static string Of(PropertyBook seed, CheckResult result)
    {
        var lines = new List<string>();
        foreach (var finding in result.Findings.Flat().Where(f => f.Rule.Safety))
        {
            string of = $"{finding.Subject} {finding.Path}{(finding.Key.Length > 0 ? $" ({finding.Key})" : "")}";
            string level = finding.Answer == Answer.NotShown ? $"{finding.Level}, not shown," : $"{finding.Level}";
            lines.Add(Line($"{finding.Rule.Id} {level} {of}"));
        }

        lines.Sort(StringComparer.Ordinal);
        var verdicts = Verdicts.Of(result);
        foreach (var recipe in result.Book.Recipes)
        {
            var verdict = verdicts.Of(recipe);
            string kept = recipe is Prep ? $" {Day(verdict.Days)} d by {verdict.DaysFrom}, at {Day(verdict.StorageCelsius)} °C{Life(verdict.Life)}" : "";
            lines.Add(Line($"{recipe.Id}: {verdict.Answer}{kept}"));
        }

        foreach (var stock in result.Book.Stocks)
        {
            foreach (var label in LotLabel.Of(verdicts, stock, bought: true).Where(l => l.Contains.Count > 0))
                lines.Add(Line($"label of {label.Lot.Id}: contains {string.Join(", ", label.Contains)}"));
            foreach (var lot in stock.Lots)
            {
                var of = LotCheck.Of(lot, stock, verdicts);
                lines.Add(Line($"lot of {of.Id}: {of.Readiness} until {of.UseBy}{(of.ThrowAway ? ", throw away" : "")}"));
            }
        }

        return string.Join('\n', lines.Prepend(seed.Name));
    }

    private static string Life(FactValue life) => life.IsKnown ? $", by the rules {Day(life.Value)} d ({life.From})" : "";

    private static string Line(string text) => "  " + text;

    private static string Day(double value) => double.IsFinite(value) ? Math.Round(value, 2).ToString(CultureInfo.InvariantCulture) : "no";
}
