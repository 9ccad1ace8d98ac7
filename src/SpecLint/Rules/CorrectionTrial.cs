using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules;

/// <summary>
/// Tries each correction on the whole file before it is offered: every rule about the file looks at it again. What leaves its finding
/// where it is, or brings an error, a warning or one that guards against harm is not offered; the words of the finding stay. Of what
/// only writes the same thing better, what comes to light was true before; and where an item was not known, only what guards against harm is held against it.
/// </summary>
internal static class CorrectionTrial
{
    /// <summary>Takes out the corrections that do not put their file right.</summary>
    /// <param name="rules">The rules of the run.</param>
    /// <param name="book">The book.</param>
    /// <param name="profiles">Its profiles.</param>
    /// <param name="file">The file.</param>
    /// <param name="findings">All that the rules about the file found in it.</param>
    public static void Keep(RuleSet rules, LinkedBook book, ProfileSet profiles, BookFile file, List<Finding> findings)
    {
        Dictionary<string, Level>? before = null;
        foreach (var finding in findings)
        {
            if (finding.Corrections.Count == 0) continue;
            finding.KeepCorrections(correction =>
            {
                if (!IsOf(correction, file)) return true;
                before ??= LevelsOf(book, findings);
                return Mends(rules, book, profiles, new FileChange(file, null), finding, correction, before);
            });
        }
    }

    /// <summary>Whether it has edits, all of them in one file.</summary>
    private static bool IsOf(Correction correction, BookFile file)
    {
        foreach (var edit in correction.Edits)
        {
            if (edit.Place.File != file.Source) return false;
        }

        return correction.Edits.Count > 0;
    }

    private static bool Mends(RuleSet rules, LinkedBook book, ProfileSet profiles, FileChange change, Finding finding, Correction correction, Dictionary<string, Level> before)
    {
        var file = change.Old!;
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
        foreach (var found in rules.Try(profiles, change with { New = tried }))
        {
            if (found.Fingerprint == finding.Fingerprint) return false;
            if (correction.KeepsTheThing) continue;
            var level = LevelOf(book, found);
            if ((found.Rule.Safety || (level >= Level.Warning && !finding.Rule.LeavesHarmUnknown)) && !(before.TryGetValue(found.Fingerprint, out var known) && known >= level)) return false;
        }

        return true;
    }

    private static Dictionary<string, Level> LevelsOf(LinkedBook book, List<Finding> findings)
    {
        var levels = new Dictionary<string, Level>(findings.Count, StringComparer.Ordinal);
        foreach (var finding in findings)
        {
            var level = LevelOf(book, finding);
            if (!levels.TryGetValue(finding.Fingerprint, out var known) || known < level) levels[finding.Fingerprint] = level;
        }

        return levels;
    }

    /// <summary>The higher of the level that a finding has and of that which the bar gives its rule.</summary>
    private static Level LevelOf(LinkedBook book, Finding finding) =>
        book.Settings.LevelOf(finding.Rule.Id) is { } set && set.Level > finding.LevelBefore ? set.Level : finding.LevelBefore;
}
