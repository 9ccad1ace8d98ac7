using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

/// <summary>What saves the trial of a correction work takes nothing away from it.</summary>
public sealed class CorrectionTrialTests
{
    private static readonly RuleSet Untried = new(RuleRegistry.All, triesCorrections: false);
    private static readonly RuleSet Tried = new(RuleRegistry.All);

    /// <summary>The long way reads the corrected text whole, works its profile out anew and runs every rule with all it says.</summary>
    [Fact]
    public void The_short_way_keeps_the_corrections_that_the_long_way_keeps()
    {
        int kept = 0, dropped = 0;
        foreach (var input in Inputs())
        {
            var (book, profiles) = Checker.Profile(input);
            foreach (var file in book.Files)
            {
                var all = Untried.CheckFile(book, profiles, file);
                var offered = Tried.CheckFile(book, profiles, file);
                Assert.Equal(all.Select(f => f.Fingerprint), offered.Select(f => f.Fingerprint));
                var levels = all.GroupBy(f => f.Fingerprint, StringComparer.Ordinal)
                    .ToDictionary(g => g.Key, g => g.Max(f => LevelOf(book, f)), StringComparer.Ordinal);
                for (int i = 0; i < all.Count; i++)
                {
                    string[] expected = [.. all[i].Corrections.Where(c => Mends(book, profiles, file, all[i], c, levels)).Select(c => c.Description)];
                    Assert.Equal(expected, offered[i].Corrections.Select(c => c.Description));
                    kept += expected.Length;
                    dropped += all[i].Corrections.Count - expected.Length;
                }
            }
        }

        Assert.InRange(kept, 100, int.MaxValue);
        Assert.InRange(dropped, 1, int.MaxValue);
    }

    /// <summary>A trial of what only rewrites the same thing runs the finding's own rule alone, which it knows by the id.</summary>
    [Fact]
    public void A_rule_reports_under_its_own_id()
    {
        foreach (var input in Inputs())
        {
            var (book, profiles) = Checker.Profile(input);
            foreach (var rule in RuleRegistry.All)
            {
                var alone = new RuleSet([rule], triesCorrections: false);
                foreach (var file in book.Files) Assert.All(alone.CheckFile(book, profiles, file), f => Assert.Equal(rule.Info.Id, f.Rule.Id));
            }
        }
    }

    /// <summary>A profile holds for every declaration only as long as nothing in it is read off one.</summary>
    [Fact]
    public void No_profile_rests_on_what_is_declared()
    {
        foreach (string file in Directory.EnumerateFiles(Repository.At("src", "SpecLint", "Profile"), "*.cs"))
            Assert.DoesNotContain(".Declares", File.ReadAllText(file), StringComparison.Ordinal);
    }

    private static BookInput[] Inputs() =>
    [
        new BookInput(
            [.. Directory.EnumerateFiles(Repository.At("src", "SpecLint.Tool", "Demo"), "*.json")
                .Select(f => new SourceFile(Path.GetFileName(f), File.ReadAllBytes(f)))],
            Books.On),
        new BookInput([.. new Benchmarks.BookGenerator(300, 20261129) { WritesNotes = true }.Files().Select(f => new SourceFile(f.Path, f.Text))], Books.On),
    ];

    private static bool Mends(LinkedBook book, ProfileSet profiles, BookFile file, Finding finding, Correction correction, Dictionary<string, Level> before)
    {
        if (correction.Edits.Count == 0 || correction.Edits.Any(e => e.Place.File != file.Source)) return true;
        byte[] text;
        try
        {
            text = TextEdits.Apply(file.Source, correction.Edits);
        }
        catch (ArgumentException)
        {
            return false;
        }

        var tried = BookReader.Read(new SourceFile(file.Source.Path, text), file.Kind, book.Measures);
        var (set, _) = profiles.With(new FileChange(file, tried), ProfileRoom.Take());
        return Untried.CheckFile(set.Book, set, tried).TrueForAll(found => found.Fingerprint != finding.Fingerprint
            && (correction.KeepsTheThing
                || !(found.Rule.Safety || (LevelOf(book, found) >= Level.Warning && !finding.Rule.LeavesHarmUnknown))
                || (before.TryGetValue(found.Fingerprint, out var known) && known >= LevelOf(book, found))));
    }

    private static Level LevelOf(LinkedBook book, Finding finding) =>
        book.Settings.LevelOf(finding.Rule.Id) is { } set && set.Level > finding.LevelBefore ? set.Level : finding.LevelBefore;
}
