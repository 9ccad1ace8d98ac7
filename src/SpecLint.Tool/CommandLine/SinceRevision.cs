using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reports;

namespace SpecLint.Tool;

/// <summary>What is new in a book since another state of it.</summary>
internal static class SinceRevision
{
    /// <summary>The findings that the earlier state does not have, and a sentence that counts the others; empty where there are none.</summary>
    /// <param name="result">The check of the book as it is.</param>
    /// <param name="known">Fingerprints of what was found in the earlier state, by the same rules and schemas.</param>
    /// <param name="when">When that was, as in "there WHEN already".</param>
    public static (CheckResult Result, string Remark) Only(CheckResult result, HashSet<string> known, string when)
    {
        var old = result.Findings.Flat().Where(f => known.Contains(f.Fingerprint)).ToList();
        if (old.Count == 0) return (result, "");
        int harm = old.Count(f => f.Rule.Safety);
        string ofHarm = harm > 0 ? $", {harm} of them of rules that guard against harm" : "";
        return (result.Only(f => !known.Contains(f.Fingerprint)), $"{ReportWords.Count(old.Count, "finding was", "findings were")} "
            + $"there {when} already{ofHarm}.");
    }
}
