using System.Text.Json;
using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>
/// Findings as a code quality report of GitLab: a JSON array in the subset of its issue format that GitLab reads (GitLab Docs, Code
/// Quality, "Code Quality report format").
/// </summary>
internal static class CodeQualityReport
{
    /// <summary>Writes the report.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="content">What.</param>
    /// <param name="pathPrefix">The way from the root of the repository to the root of the book, with <c>/</c> at its end.</param>
    public static void Write(Stream to, ReportContent content, string pathPrefix)
    {
        using (var json = new Utf8JsonWriter(to, JsonOutput.Options))
        {
            json.WriteStartArray();
            foreach (var finding in content.Findings.Flat())
            {
                json.WriteStartObject();
                json.WriteString("description", DisplayText.Escape(finding.Message));
                json.WriteString("check_name", finding.Rule.Id);
                json.WriteString("fingerprint", finding.Fingerprint);
                json.WriteString("severity", Severity(finding));
                json.WriteStartObject("location");
                json.WriteString("path", pathPrefix + finding.Place.File.Path);
                json.WriteStartObject("lines");
                json.WriteNumber("begin", finding.Place.Start.Line);
                json.WriteNumber("end", finding.Place.End.Line);
                json.WriteEndObject();
                json.WriteEndObject();
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        JsonReport.WriteLineEnd(to);
    }

    /// <summary>What can hurt somebody blocks; the other levels keep their order.</summary>
    private static string Severity(Finding finding) => finding.Level switch
    {
        Level.Error => finding.Rule.Safety ? "blocker" : "critical",
        Level.Warning => finding.Rule.Safety ? "major" : "minor",
        _ => "info",
    };
}
