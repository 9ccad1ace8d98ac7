namespace SpecLint.Findings;

/// <summary>Findings without their order of cause and consequence.</summary>
public static class FindingTree
{
    /// <summary>Every finding, those that stand beneath a cause included.</summary>
    public static IEnumerable<Finding> Flat(this IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
        {
            yield return finding;
            foreach (var folded in finding.Folded) yield return folded;
        }
    }
}
