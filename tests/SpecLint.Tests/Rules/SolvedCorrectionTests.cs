using System.Text;
using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>
/// What the rules of balance, acid and sugar, and service propose puts the finding right: the best correction of every
/// finding in the examples of their pages, applied, leaves no finding of that rule there.
/// </summary>
public sealed class SolvedCorrectionTests
{
    public static TheoryData<string> PageIds => [.. RulePage.All.Select(p => p.Id).Where(i => i[2] is '3' or '4' or '8')];

    [Theory]
    [MemberData(nameof(PageIds))]
    public void The_best_correction_puts_it_right(string id)
    {
        foreach (var example in RulePage.All.Single(p => p.Id == id).Examples)
        {
            var before = Books.Check([.. example.Files]);
            foreach (var finding in Flat(before.Findings).Where(f => f.Rule.Id == id && f.Corrections.Count > 0))
            {
                var files = example.Files.Select(f => (f.Path, Text: Apply(f.Path, f.Text, finding.Corrections[0]))).ToArray();
                Assert.True(files.Zip(example.Files).Any(p => p.First.Text != p.Second.Text), $"{id}: the correction changes nothing");
                var after = Books.Check(files);
                var left = Flat(after.Findings)
                    .Where(f => f.Rule.Id == id && f.Subject == finding.Subject && f.Path == finding.Path && f.Key == finding.Key)
                    .ToArray();
                Assert.True(
                    left.Length == 0,
                    $"{id}, example at line {example.Line}: after \"{finding.Corrections[0].Description}\" it still says: "
                        + $"{string.Join(" / ", left.Select(f => f.Message))}");
                var faults = Flat(after.Findings).Where(f => f.Rule.Id is "SL1001" or "SL1006").ToArray();
                Assert.True(
                    faults.Length == 0,
                    $"{id}, example at line {example.Line}: the corrected file cannot be read: "
                        + $"{string.Join(" / ", faults.Select(f => f.Message))}");
            }
        }
    }

    private static string Apply(string path, string text, Correction correction)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        foreach (var edit in correction.Edits.Where(e => e.Place.File.Path == path).OrderByDescending(e => e.Place.Span.Start))
            bytes = [.. bytes[..edit.Place.Span.Start], .. Encoding.UTF8.GetBytes(edit.NewText), .. bytes[edit.Place.Span.End..]];
        return Encoding.UTF8.GetString(bytes);
    }

    private static IEnumerable<Finding> Flat(IEnumerable<Finding> findings) => findings.SelectMany(f => Flat(f.Folded).Prepend(f));
}
