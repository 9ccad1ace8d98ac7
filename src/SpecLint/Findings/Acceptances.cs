using SpecLint.Book;
using SpecLint.Linking;

namespace SpecLint.Findings;

/// <summary>An acceptance of a file, and what became of it.</summary>
/// <param name="File">The file that holds it.</param>
/// <param name="Acceptance">The acceptance.</param>
/// <param name="Covered">Number of findings that it covers.</param>
public sealed record AcceptanceUse(BookFile File, Acceptance Acceptance, int Covered);

/// <summary>Applies the acceptances that files hold to the findings about them.</summary>
internal static class Acceptances
{
    /// <summary>
    /// Takes the accepted findings out of the list and returns them. An acceptance covers the findings of its rule in its
    /// file while it has a reason and has not ended; a rule that guards against harm asks for an end date within a year as well.
    /// </summary>
    public static List<Finding> Apply(
        LinkedBook book, IReadOnlyList<BookFile> files, List<Finding> findings, Func<string, RuleInfo?> findRule,
        out List<AcceptanceUse> uses)
    {
        uses = [];
        var accepted = new List<Finding>();
        Dictionary<Reading.SourceFile, List<Finding>>? byFile = null;
        foreach (var file in files)
        {
            foreach (var acceptance in file.Accept)
            {
                int covered = 0;
                if (Holds(acceptance, book, findRule))
                {
                    byFile ??= ByFile(findings);
                    foreach (var finding in byFile.TryGetValue(file.Source, out var ofFile) ? ofFile : [])
                    {
                        if (finding.Suppression is not null || finding.Rule.Id != acceptance.Rule.Value) continue;
                        finding.Suppression = new Suppression(
                            acceptance.Because.Value,
                            acceptance.Until.IsGiven ? acceptance.Until.Value : null,
                            file.At(acceptance.Span));
                        covered++;
                    }
                }

                uses.Add(new AcceptanceUse(file, acceptance, covered));
            }
        }

        if (byFile is null) return accepted;
        accepted.AddRange(findings.Where(f => f.Suppression is not null));
        findings.RemoveAll(f => f.Suppression is not null);
        return accepted;
    }

    /// <summary>
    /// Takes out what is switched off. What <c>bar.json</c> switches off of rules that guard against harm is returned, as if each
    /// file accepted it, so that every report counts it; of others nothing is kept.
    /// </summary>
    public static List<Finding> SwitchOff(Bar? bar, List<Finding> findings)
    {
        var aside = new List<Finding>();
        foreach (var finding in findings)
        {
            if (finding.LoweredBy is not { Level: Level.None } set || bar is null) continue;
            finding.Suppression = new Suppression(set.Because.Value, set.Until.Value, bar.At(bar.Rules[finding.Rule.Id].Span));
            aside.Add(finding);
        }

        findings.RemoveAll(f => f.Level == Level.None || f.Suppression is not null);
        return aside;
    }

    private static Dictionary<Reading.SourceFile, List<Finding>> ByFile(List<Finding> findings)
    {
        var byFile = new Dictionary<Reading.SourceFile, List<Finding>>();
        foreach (var finding in findings)
        {
            if (!byFile.TryGetValue(finding.Place.File, out var list)) byFile.Add(finding.Place.File, list = []);
            list.Add(finding);
        }

        return byFile;
    }

    private static bool Holds(Acceptance acceptance, LinkedBook book, Func<string, RuleInfo?> findRule)
    {
        if (!acceptance.Rule.IsGiven || !acceptance.Because.IsGiven || string.IsNullOrWhiteSpace(acceptance.Because.Value)) return false;
        if (acceptance.Until.IsGiven && acceptance.Until.Value < book.On) return false;
        var rule = findRule(acceptance.Rule.Value);
        return rule is null || !rule.Safety || SettingAside.Missing(acceptance.Until.IsGiven ? acceptance.Until.Value : null, book.On) is null;
    }
}
