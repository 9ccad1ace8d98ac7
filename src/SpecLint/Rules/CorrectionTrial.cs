using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules;

/// <summary>
/// Tries each correction on the whole file before it is offered: every rule about the file looks at it again. What leaves its finding
/// where it is, or brings an error, a warning or one that guards against harm is not offered; the words of the finding stay. Of what
/// only writes the same thing better, what comes to light was true before; and where an item was not known, only what guards against harm
/// is held against it.
/// </summary>
/// <remarks>
/// Rules that would find the same again are not run: of what only writes the same thing better all but the finding's own, and where a
/// recipe changes in what it declares alone, those that did not look at that.
/// </remarks>
/// <param name="rules">The rules of the run.</param>
/// <param name="profiles">The profiles of the book.</param>
/// <param name="file">The file.</param>
/// <param name="profile">Its profile, where it is a recipe.</param>
/// <param name="lookers">The rules that looked at what it declares.</param>
internal sealed class CorrectionTrial(RuleSet rules, ProfileSet profiles, BookFile file, RecipeProfile? profile, List<Rule> lookers)
{
    private readonly LinkedBook book = profiles.Book;
    private Dictionary<(string Rule, string Subject, string Path, string Key), Level>? before;

    /// <summary>Takes out the corrections that do not put the file right.</summary>
    /// <param name="findings">All that the rules about the file found in it.</param>
    public void Keep(List<Finding> findings)
    {
        foreach (var finding in findings)
        {
            if (finding.Corrections.Count == 0) continue;
            finding.KeepCorrections(correction => !IsOf(correction) || Holds(finding, correction, findings));
        }
    }

    /// <summary>Whether it has edits, all of them in the file.</summary>
    private bool IsOf(Correction correction)
    {
        foreach (var edit in correction.Edits)
        {
            if (edit.Place.File != file.Source) return false;
        }

        return correction.Edits.Count > 0;
    }

    private bool Holds(Finding finding, Correction correction, List<Finding> findings)
    {
        SourceFile text;
        try
        {
            text = new SourceFile(file.Source.Path, TextEdits.Apply(file.Source, correction.Edits));
        }
        catch (ArgumentException)
        {
            return false;
        }

        return !IsSpokenAgainst(finding, correction, text, found =>
        {
            if (IdentityOf(found) == IdentityOf(finding)) return true;
            if (correction.KeepsTheThing) return false;
            var level = LevelOf(found);
            if (!found.Rule.Safety && (level < Level.Warning || finding.Rule.LeavesHarmUnknown)) return false;
            before ??= LevelsOf(findings);
            return !(before.TryGetValue(IdentityOf(found), out var known) && known >= level);
        });
    }

    /// <summary>Whether the rules find anything in the corrected text that speaks against the correction.</summary>
    private bool IsSpokenAgainst(Finding finding, Correction correction, SourceFile text, Predicate<Finding> speaksAgainst)
    {
        if (profile is not null && BookReader.ReadDeclaring(profile.Recipe, text, book.Measures) is { } declaring)
        {
            // What did not look at the declaration finds the same again, this finding too.
            if (!lookers.Exists(r => r.Info.Id == finding.Rule.Id || HouseRules.IsHouseId(r.Info.Id))) return true;
            var (same, its) = profiles.With(profile, declaring);
            var lookAgain = correction.KeepsTheThing ? rules.RulesOf(finding.Rule, file.Kind) : lookers;
            return rules.Finds(same, declaring, its, lookAgain, speaksAgainst);
        }

        var tried = BookReader.Read(text, file.Kind, book.Measures);
        var room = ProfileRoom.Take();
        var (set, other) = profiles.With(new FileChange(file, tried), room);
        var asked = correction.KeepsTheThing ? rules.RulesOf(finding.Rule, file.Kind) : null;
        bool finds = rules.Finds(set, tried, other, asked, speaksAgainst);
        room.GiveBack();
        return finds;
    }

    private Dictionary<(string Rule, string Subject, string Path, string Key), Level> LevelsOf(List<Finding> findings)
    {
        var levels = new Dictionary<(string, string, string, string), Level>(findings.Count);
        foreach (var finding in findings)
        {
            var level = LevelOf(finding);
            if (!levels.TryGetValue(IdentityOf(finding), out var known) || known < level) levels[IdentityOf(finding)] = level;
        }

        return levels;
    }

    /// <summary>What a fingerprint is computed from.</summary>
    private static (string Rule, string Subject, string Path, string Key) IdentityOf(Finding finding) =>
        (finding.Rule.Id, finding.Subject, finding.Path, finding.Key);

    /// <summary>The higher of the level that a finding has and of that which the bar gives its rule.</summary>
    private Level LevelOf(Finding finding) =>
        book.Settings.LevelOf(finding.Rule.Id) is { } set && set.Level > finding.LevelBefore ? set.Level : finding.LevelBefore;
}
