using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>
/// One line a finding, <c>PATH:LINE:COLUMN: LEVEL RULE: MESSAGE</c>: the form that compilers print (GNU Coding Standards, Formatting
/// Error Messages), which editors and problem matchers read.
/// </summary>
internal static class LineReport
{
    /// <summary>Writes the report; nothing where nothing was found.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="content">What.</param>
    /// <param name="pathPrefix">What stands before each path.</param>
    /// <param name="units">Units in which sentences show volumes and temperatures.</param>
    public static void Write(TextWriter to, ReportContent content, string pathPrefix, DisplayUnits units)
    {
        foreach (var finding in content.Findings.Flat())
        {
            var start = finding.Place.Start;
            to.Write(DisplayText.Escape($"{pathPrefix}{finding.Place.File.Path}:{start.Line}:{start.Column}: "
                + $"{ReportWords.Of(finding.Level)} {finding.Rule.Id}: {units.Sentence(finding.Message)}"));
            to.Write('\n');
        }
    }
}
