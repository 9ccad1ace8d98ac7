using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Mutants;
using SpecLint.Reading;
using Xunit.Abstractions;

namespace SpecLint.Tests.Changes;

/// <summary>
/// Every correction that is offered on a recipe with a mistake in it: applied, its finding is gone, and no error or warning has
/// come. What only words that are corrected bring to light (an item that is known now) was true before.
/// </summary>
public sealed class MutantCorrectionTests(ITestOutputHelper output)
{
    private static readonly Lazy<List<CleanFile>> Files = new(() => [.. new[] { CleanBook.Demo(), CleanBook.Official(), CleanBook.WithoutStyles(), CleanBook.Preps() }.Concat(CleanBook.Published()).SelectMany(b => b.Files)]);

    [Fact]
    public void Corrections_put_mutants_right() => Holds(LongRun.Cases(220, 10_000));

    private void Holds(int cases)
    {
        var lottery = new Lottery(20261129);
        int tried = 0;
        var wrong = new List<string>();
        for (int n = 0; n < cases; n++)
        {
            var kind = Defects.All[n % Defects.All.Count];
            Draft? draft = null;
            for (int attempt = 0; attempt < 400 && draft is null; attempt++)
            {
                var one = new Draft(lottery.Pick(Files.Value)!, lottery);
                if (kind.Apply(one)) draft = one;
            }

            if (draft is null) continue;
            var input = draft.File.Book.Mutated(draft);
            var before = Checker.Check(input).Findings.Flat().ToList();
            var had = before.Select(f => f.Fingerprint).ToHashSet(StringComparer.Ordinal);
            foreach (var finding in before)
            {
                foreach (var correction in finding.Corrections.Where(c => c.Edits.Count > 0))
                {
                    tried++;
                    if (Fault(input, finding, correction, had) is { } fault) wrong.Add($"{finding.Rule.Id} {fault} [{kind.Number} {kind.Name}, {draft.File.Path}] {finding.Message} → {correction.Description}");
                }
            }
        }

        foreach (var group in wrong.GroupBy(w => w[..6]).OrderByDescending(g => g.Count())) output.WriteLine($"{group.Key} {group.Count()}");
        output.WriteLine($"{tried} corrections of {cases} mutants, {wrong.Count} wrong");
        foreach (string one in wrong) output.WriteLine(one);
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {tried} corrections:\n{string.Join("\n", wrong.Take(30))}");
    }

    private static string? Fault(BookInput input, Finding finding, Correction correction, HashSet<string> had)
    {
        var files = new List<SourceFile>();
        foreach (var file in input.Files)
        {
            var edits = correction.Edits.Where(e => e.Place.File.Path == file.Path).ToList();
            files.Add(edits.Count == 0 ? file : new SourceFile(file.Path, TextEdits.Apply(file, edits)));
        }

        var after = Checker.Check(input with { Files = files }).Findings.Flat().ToList();
        if (after.Exists(f => f.Fingerprint == finding.Fingerprint)) return "stays";
        if (correction.KeepsTheThing) return null;
        var brought = after.FindAll(f => f.Level >= Level.Warning && !had.Contains(f.Fingerprint));
        return brought.Count == 0 ? null : "brings " + string.Join(", ", brought.Select(f => $"{f.Rule.Id} ({f.Message})"));
    }
}
