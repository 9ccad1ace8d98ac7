using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Mutants;

/// <summary>
/// Every correction that is offered on recipes with a mistake in them: applied, its finding is gone, and no error or warning has
/// come. What only words that are corrected bring to light (an item that is known now) was true before.
/// </summary>
internal static class CorrectionTrials
{
    private static readonly Lazy<List<CleanFile>> Files = new(() => [.. new[] { CleanBook.Demo(), CleanBook.Official(), CleanBook.WithoutStyles(), CleanBook.Preps() }
        .Concat(CleanBook.Published())
        .SelectMany(b => b.Files)]);

    /// <summary>Makes mutants and tries their corrections.</summary>
    /// <param name="cases">How many mutants.</param>
    /// <param name="seed">Seed of the random places.</param>
    /// <param name="wrong">Called for each correction that is wrong, with what is wrong with it; the rule's id comes first.</param>
    /// <returns>How many corrections were tried.</returns>
    public static int Run(int cases, ulong seed, Action<string> wrong)
    {
        var lottery = new Lottery(seed);
        int tried = 0;
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
            foreach (var (finding, correction, fault) in Of(input))
            {
                tried++;
                if (fault is not null)
                    wrong($"{finding.Rule.Id} {fault} [{kind.Number} {kind.Name}, {draft.File.Path}] {finding.Message} → "
                        + $"{correction.Description}");
            }
        }

        return tried;
    }

    /// <summary>The corrections of a book, each with what is wrong with it; <see langword="null"/> where nothing is.</summary>
    public static IEnumerable<(Finding Finding, Correction Correction, string? Fault)> Of(BookInput input)
    {
        var before = Checker.Check(input).Findings.Flat().ToList();
        var had = before.Select(f => f.Fingerprint).ToHashSet(StringComparer.Ordinal);
        foreach (var finding in before)
        {
            foreach (var correction in finding.Corrections.Where(c => c.Edits.Count > 0))
                yield return (finding, correction, Fault(input, finding, correction, had));
        }
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
