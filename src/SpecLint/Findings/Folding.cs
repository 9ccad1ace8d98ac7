namespace SpecLint.Findings;

/// <summary>One cause gives one finding: what follows from it is shown beneath it.</summary>
internal static class Folding
{
    /// <summary>Folds consequences under the first cause of the same subject; order of the input does not matter.</summary>
    public static List<Finding> Fold(List<Finding> findings)
    {
        Dictionary<string, Finding>? causes = null;
        foreach (var finding in findings)
        {
            if (!finding.Rule.IsCause || finding.Level < Level.Warning) continue;
            causes ??= new Dictionary<string, Finding>(StringComparer.Ordinal);
            if (!causes.TryGetValue(finding.Subject, out var known) || FindingOrder.Instance.Compare(finding, known) < 0)
                causes[finding.Subject] = finding;
        }

        if (causes is null) return findings;
        var kept = new List<Finding>(findings.Count);
        var beneath = new Dictionary<Finding, List<Finding>>();
        foreach (var finding in findings)
        {
            if (finding.Rule.IsConsequence && causes.TryGetValue(finding.Subject, out var cause) && cause != finding)
            {
                if (!beneath.TryGetValue(cause, out var list)) beneath.Add(cause, list = []);
                list.Add(finding);
            }
            else
            {
                kept.Add(finding);
            }
        }

        foreach (var pair in beneath)
        {
            pair.Value.Sort(FindingOrder.Instance);
            pair.Key.Folded = pair.Value;
        }

        return kept;
    }
}
