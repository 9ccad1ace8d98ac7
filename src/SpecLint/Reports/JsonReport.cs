using System.Text.Json;
using SpecLint.Findings;

namespace SpecLint.Reports;

/// <summary>Everything that a check found, as one JSON object (schema <c>findings</c>).</summary>
public static class JsonReport
{
    /// <summary>Writes the report.</summary>
    /// <param name="to">Where to; paths are relative to the root of the book.</param>
    /// <param name="content">What.</param>
    /// <param name="version">Version of the product.</param>
    public static void Write(Stream to, ReportContent content, string version)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteStartObject("tool");
        json.WriteString("name", "SpecLint");
        json.WriteString("version", version);
        json.WriteEndObject();
        json.WriteString("on", content.Result.Book.On.ToString());
        json.WriteNumber("files", content.Files);
        json.WriteNumber("recipes", content.Recipes);
        json.WriteStartObject("counts");
        json.WriteNumber("error", content.Errors);
        json.WriteNumber("warning", content.Warnings);
        json.WriteNumber("note", content.Notes);
        json.WriteNumber("accepted", content.Accepted.Count);
        json.WriteNumber("acceptedSafety", content.AcceptedSafety);
        json.WriteEndObject();
        WriteFindings(json, "findings", content.Findings);
        WriteFindings(json, "accepted", content.Accepted);
        json.WriteEndObject();
        json.Flush();
        WriteLineEnd(to);
    }

    internal static void WriteLineEnd(Stream to) => to.WriteByte((byte)'\n');

    /// <summary>Writes a number or text that a finding rests on.</summary>
    internal static void WriteEvidence(Utf8JsonWriter json, IReadOnlyList<Evidence> evidence)
    {
        if (evidence.Count == 0) return;
        json.WriteStartArray("evidence");
        foreach (var item in evidence)
        {
            json.WriteStartObject();
            json.WriteString("name", JsonOutput.WellFormed(item.Name));
            json.WriteFinite("value", item.Value);
            json.WriteFinite("low", item.Low);
            json.WriteFinite("high", item.High);
            json.WriteGiven("unit", item.Unit);
            json.WriteGiven("text", item.Text);
            json.WriteGiven("source", item.Source);
            if (item.Place is { } place)
            {
                json.WriteString("file", JsonOutput.WellFormed(place.File.Path));
                json.WriteRegion("region", place);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteFindings(Utf8JsonWriter json, string name, IReadOnlyList<Finding> findings)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings) WriteFinding(json, finding);
        json.WriteEndArray();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule.Id);
        json.WriteString("name", finding.Rule.Name);
        json.WriteString("family", ReportWords.Of(finding.Rule.Family));
        json.WriteString("level", ReportWords.Of(finding.Level));
        json.WriteString("answer", ReportWords.Of(finding.Answer));
        json.WriteString("subject", JsonOutput.WellFormed(finding.Subject));
        json.WriteString("file", JsonOutput.WellFormed(finding.Place.File.Path));
        json.WriteRegion("region", finding.Place);
        json.WriteGiven("path", finding.Path);
        json.WriteString("message", JsonOutput.WellFormed(finding.Message));
        json.WriteGiven("advice", finding.Advice);
        json.WriteGiven("caution", finding.Caution);
        WriteEvidence(json, finding.Evidence);
        if (finding.Related.Count > 0)
        {
            json.WriteStartArray("related");
            foreach (var related in finding.Related)
            {
                json.WriteStartObject();
                json.WriteString("file", JsonOutput.WellFormed(related.Place.File.Path));
                json.WriteRegion("region", related.Place);
                json.WriteString("message", JsonOutput.WellFormed(related.Message));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        if (finding.Corrections.Count > 0) WriteCorrections(json, finding);
        if (finding.Suppression is { } suppression)
        {
            json.WriteStartObject("accepted");
            json.WriteString("because", JsonOutput.WellFormed(suppression.Justification));
            if (suppression.Until is { } until) json.WriteString("until", until.ToString());
            json.WriteRegion("region", suppression.Place);
            json.WriteEndObject();
        }

        json.WriteString("fingerprint", finding.Fingerprint);
        if (finding.Folded.Count > 0) WriteFindings(json, "follows", finding.Folded);
        json.WriteEndObject();
    }

    private static void WriteCorrections(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartArray("corrections");
        foreach (var correction in finding.Corrections)
        {
            json.WriteStartObject();
            json.WriteString("grade", ReportWords.Of(correction.Grade));
            json.WriteString("description", JsonOutput.WellFormed(correction.Description));
            json.WriteStartArray("edits");
            foreach (var edit in correction.Edits)
            {
                json.WriteStartObject();
                json.WriteString("file", JsonOutput.WellFormed(edit.Place.File.Path));
                json.WriteRegion("region", edit.Place);
                json.WriteString("newText", JsonOutput.WellFormed(edit.NewText));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
