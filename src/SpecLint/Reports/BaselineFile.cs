using System.Text.Json;
using SpecLint.Changes;

namespace SpecLint.Reports;

/// <summary>The file of a baseline.</summary>
public static class BaselineFile
{
    /// <summary>Writes a baseline as JSON.</summary>
    /// <param name="baseline">The baseline.</param>
    /// <param name="to">Where to.</param>
    public static void Write(this Baseline baseline, Stream to)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteNumber("version", Baseline.Version);
        json.WriteString("fingerprints", Findings.Fingerprints.Name);
        json.WriteStartArray("findings");
        foreach (var entry in baseline.Entries)
        {
            json.WriteStartObject();
            json.WriteString("rule", JsonOutput.WellFormed(entry.Rule));
            json.WriteString("level", ReportWords.Of(entry.Level));
            json.WriteString("subject", JsonOutput.WellFormed(entry.Subject));
            json.WriteString("file", JsonOutput.WellFormed(entry.File));
            json.WriteString("message", JsonOutput.WellFormed(entry.Message));
            json.WriteString("because", JsonOutput.WellFormed(entry.Because));
            if (entry.Until is { } until) json.WriteString("until", until.ToString());
            json.WriteString("fingerprint", JsonOutput.WellFormed(entry.Fingerprint));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        JsonReport.WriteLineEnd(to);
    }
}
