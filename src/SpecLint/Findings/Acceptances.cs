using SpecLint.Book;
using SpecLint.Rules;

namespace SpecLint.Findings;

/// <summary>Applies the acceptances that files hold to the findings about them.</summary>
internal static class Acceptances
{
    /// <summary>
    /// Takes the accepted findings out of the list and returns them. An acceptance covers the findings of its rule in its
    /// file while it has a reason and has not ended; a rule that guards against harm asks for an end date as well.
    /// </summary>
    public static List<Finding> Apply(LinkedBook book, List<Finding> findings, Func<string, RuleInfo?> findRule, out List<AcceptanceUse> uses)
    {
        uses = [];
        var accepted = new List<Finding>();
        foreach (var file in book.Files)
        {
            foreach (var acceptance in file.Accept)
            {
                int covered = 0;
                if (Holds(acceptance, book, findRule))
                {
                    for (int i = 0; i < findings.Count; i++)
                    {
                        var finding = findings[i];
                        if (finding.Suppression is not null || finding.Rule.Id != acceptance.Rule.Value || finding.Place.File != file.Source) continue;
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

        accepted.AddRange(findings.Where(f => f.Suppression is not null));
        findings.RemoveAll(f => f.Suppression is not null);
        return accepted;
    }

    private static bool Holds(Acceptance acceptance, LinkedBook book, Func<string, RuleInfo?> findRule)
    {
        if (!acceptance.Rule.IsGiven || !acceptance.Because.IsGiven || string.IsNullOrWhiteSpace(acceptance.Because.Value)) return false;
        if (acceptance.Until.IsGiven && acceptance.Until.Value < book.On) return false;
        var rule = findRule(acceptance.Rule.Value);
        return rule is null || !rule.Safety || acceptance.Until.IsGiven;
    }
}
