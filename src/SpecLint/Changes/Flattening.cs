using SpecLint.Findings;

namespace SpecLint.Changes;

/// <summary>Results cut down to some of their findings.</summary>
public static class Flattening
{
    /// <summary>
    /// A result with some of its findings in force. A consequence whose cause is left out stands by itself; one that is
    /// left out itself is not shown beneath its cause.
    /// </summary>
    public static CheckResult Only(this CheckResult result, Func<Finding, bool> keeps)
    {
        var kept = new List<Finding>();
        foreach (var finding in result.Findings)
        {
            var folded = finding.Folded.Where(keeps).ToList();
            if (keeps(finding)) kept.Add(folded.Count == finding.Folded.Count ? finding : finding.WithFolded(folded));
            else kept.AddRange(folded);
        }

        kept.Sort(FindingOrder.Instance);
        return result with { Findings = kept };
    }

    /// <summary>The fingerprints of the findings in force.</summary>
    public static HashSet<string> Fingerprints(this CheckResult result) =>
        new(result.Findings.Flat().Select(f => f.Fingerprint), StringComparer.Ordinal);
}
