using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tests.Outside;

/// <summary>
/// Whole books with one mistake a file, and files that are right, thought of before it was known which are named (common practice, no
/// source): <c>audited.json</c>, in three draws of three books and two of two. Of the first 108 mistakes 88 were found when the books were
/// first checked, of the 96 of the second draw 78, after the first had been worked on, of the 90 of the third 76, of the 76 of the fourth 52
/// (menus, prices and stock in three languages among them), of the 77 of the fifth 63 (<c>foundAtFirst</c>). What was missed has been worked
/// on since, so the share here says nothing of the next book. A mistake without a rule is one that is still missed.
/// </summary>
public sealed class AuditedTests(ITestOutputHelper output)
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>Warnings about files that are right: what the writers left open on purpose, or did not know of.</summary>
    private static readonly HashSet<string> Answered = new(StringComparer.Ordinal)
    {
        // Calibrated on another day; a bottle whose label nobody has read.
        "SL5011", "SL7004",

        // 9.2 % vol in a style that starts at 10.5; a reading 3 °Brix from the amounts; a name that two drinks have.
        "SL3001", "SL5004", "SL9004",

        // A juice of three days after thawing; eggs counted in their shells.
        "SL5008",

        // Citrus that is kept a day longer than is usual, a milk punch and a slush of which no pH was read, a ferment under an airlock that the
        // vessel's words do not tell; honey weighed in a drink, and salt that was dried for two hours.
        "SL5002", "SL5007", "SL5020", "SL5022", "SL5027", "SL2008",

        // The dose of the syrup with too much bark, seen from the drink; a claim about sugar that no drink of that strength may bear.
        "SL6006", "SL7017",

        // A sour with egg white that is filed under the sours without; one on bitters, with orgeat, sweeter than the listed.
        "SL3010", "SL3002",

        // An eggnog with pasteurised egg that is kept for three weeks: the date mark knows no eggnog.
        "SL5001",

        // A batch by weight beside the same by volume.
        "SL9003",
    };

    private static readonly Lazy<List<Audited>> All = new(() => [.. Read()]);

    [Fact]
    public void A_mistake_that_was_found_is_found_by_its_rule()
    {
        var missed = new List<string>();
        int found = 0, open = 0;
        foreach (var book in All.Value)
        {
            foreach (var (file, rules) in book.Mistakes)
            {
                if (rules.Count == 0) open++;
                else if (book.Findings.Exists(f => f.Place.File.Path == file && rules.Contains(f.Rule.Id))) found++;
                else missed.Add($"{book.Name}: {file} ({string.Join(", ", rules)})");
            }
        }

        output.WriteLine($"{found} of {found + open + missed.Count} found");
        Assert.Empty(missed);
        Assert.Equal(447, found + open);
        Assert.InRange(open, 0, 20);
    }

    [Fact]
    public void Files_that_are_right_have_no_error_and_only_the_warnings_that_are_answered()
    {
        foreach (var book in All.Value)
        {
            var wrong = book.Findings.FindAll(f => book.Clean.Contains(f.Place.File.Path)
                && f.Level >= Level.Warning
                && (f.Level == Level.Error ? !IsOpenError(f) : !Answered.Contains(f.Rule.Id)));
            Assert.True(wrong.Count == 0, string.Join("\n", wrong.Select(f => $"{f.Place.File.Path}: {f.Rule.Id} {f.Message}")));
        }
    }

    /// <summary>
    /// Two drinks of one name, and what asks for a reading that the writers left out on purpose: a pickle and a coffee liqueur kept for weeks, of which no pH was read.
    /// </summary>
    private static bool IsOpenError(Finding finding) => finding.Rule.Id == "SL9004" || (finding.Rule.Id == "SL5002" && finding.Answer == Answer.NotShown);

    private static IEnumerable<Audited> Read()
    {
        foreach (var one in System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Repository.At("tests", "SpecLint.Tests", "Outside", "audited.json")))!.AsArray().OfType<JsonObject>())
        {
            var files = one["files"]!.AsObject().Select(f => Books.File(f.Key, f.Value!.ToJsonString(Indented)));
            var result = Checker.Check(new BookInput([.. files], CalendarDate.Parse((string)one["on"]!)!.Value));
            yield return new Audited(
                (string)one["book"]!,
                [.. one["mistakes"]!.AsArray().Select(m => ((string)m!["file"]!, m["rules"]!.AsArray().Select(r => (string)r!).ToHashSet()))],
                [.. one["clean"]!.AsArray().Select(c => (string)c!)],
                [.. result.Findings.Flat()]);
        }
    }

    private sealed record Audited(string Name, List<(string File, HashSet<string> Rules)> Mistakes, HashSet<string> Clean, List<Finding> Findings);
}
