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
    /// <param name="part">Which part of a book it is; <see langword="null"/> for the whole.</param>
    public static void Write(Stream to, ReportContent content, string version, ReportPart? part = null)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartObject();
        WriteHead(json, new ReportHead
        {
            Version = version,
            On = content.Result.Book.On.ToString(),
            Part = part,
            Files = content.Files,
            Recipes = content.Recipes,
            Errors = content.Errors,
            Warnings = content.Warnings,
            Notes = content.Notes,
            Accepted = content.Accepted.Count,
            AcceptedSafety = content.AcceptedSafety,
            Aside = content.Aside,
        });
        WriteFindings(json, "findings", content.Findings);
        WriteFindings(json, "accepted", content.Accepted);
        json.WriteString("closing", ReportWords.Closing);
        json.WriteEndObject();
        json.Flush();
        WriteLineEnd(to);
    }

    /// <summary>Writes what stands before the findings.</summary>
    internal static void WriteHead(Utf8JsonWriter json, ReportHead head)
    {
        json.WriteStartObject("tool");
        json.WriteString("name", "SpecLint");
        json.WriteString("version", head.Version);
        json.WriteEndObject();
        json.WriteString("on", head.On);
        if (head.Part is { } part)
        {
            json.WriteStartObject("part");
            json.WriteNumber("number", part.Part.Number);
            json.WriteNumber("of", part.Part.Count);
            json.WriteString("book", part.Book);
            json.WriteEndObject();
        }

        json.WriteNumber("files", head.Files);
        json.WriteNumber("recipes", head.Recipes);
        json.WriteStartObject("counts");
        json.WriteNumber("error", head.Errors);
        json.WriteNumber("warning", head.Warnings);
        json.WriteNumber("note", head.Notes);
        json.WriteNumber("accepted", head.Accepted);
        json.WriteNumber("acceptedSafety", head.AcceptedSafety);
        json.WriteEndObject();
        head.Aside.Write(json, "harmPutAside");
    }

    internal static void WriteLineEnd(Stream to) => to.WriteByte((byte)'\n');

    /// <summary>Writes a number or text that a finding rests on.</summary>
    internal static void WriteEvidence(Utf8JsonWriter json, IReadOnlyList<Evidence> evidence)
    {
        if (evidence.Count == 0) return;
        json.WriteStartArray(Names.Evidence);
        foreach (var item in evidence)
        {
            json.WriteStartObject();
            json.WriteString(Names.Name, JsonOutput.WellFormed(item.Name));
            json.WriteFinite(Names.Value, item.Value);
            json.WriteFinite(Names.Low, item.Low);
            json.WriteFinite(Names.High, item.High);
            json.WriteGiven(Names.Unit, item.Unit);
            json.WriteGiven(Names.Text, item.Text);
            json.WriteGiven(Names.Source, item.Source);
            if (item.Place is { } place)
            {
                json.WriteString(Names.File, JsonOutput.WellFormed(place.File.Path));
                json.WriteRegion(Names.Region, place);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteFindings(Utf8JsonWriter json, string name, IReadOnlyList<Finding> findings)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings)
        {
            WriteFinding(json, finding);
            json.PassOn();
        }

        json.WriteEndArray();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString(Names.Rule, finding.Rule.Id);
        json.WriteString(Names.Name, finding.Rule.Name);
        json.WriteString(Names.Family, ReportWords.Of(finding.Rule.Family));
        json.WriteString(Names.Level, ReportWords.Of(finding.Level));
        json.WriteString(Names.Answer, ReportWords.Of(finding.Answer));
        json.WriteString(Names.Subject, JsonOutput.WellFormed(finding.Subject));
        json.WriteString(Names.File, JsonOutput.WellFormed(finding.Place.File.Path));
        json.WriteRegion(Names.Region, finding.Place);
        json.WriteGiven(Names.Path, finding.Path);
        json.WriteString(Names.Message, JsonOutput.WellFormed(finding.Message));
        json.WriteGiven(Names.Advice, finding.Advice);
        json.WriteGiven(Names.Caution, finding.Caution);
        WriteEvidence(json, finding.Evidence);
        if (finding.Related.Count > 0)
        {
            json.WriteStartArray(Names.Related);
            foreach (var related in finding.Related)
            {
                json.WriteStartObject();
                json.WriteString(Names.File, JsonOutput.WellFormed(related.Place.File.Path));
                json.WriteRegion(Names.Region, related.Place);
                json.WriteString(Names.Message, JsonOutput.WellFormed(related.Message));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        if (finding.Corrections.Count > 0) WriteCorrections(json, finding);
        if (finding.Suppression is { } suppression)
        {
            json.WriteStartObject(Names.Accepted);
            json.WriteString(Names.Because, JsonOutput.WellFormed(suppression.Justification));
            if (suppression.Until is { } until) json.WriteString(Names.Until, until.ToString());
            json.WriteString(Names.File, JsonOutput.WellFormed(suppression.Place.File.Path));
            json.WriteRegion(Names.Region, suppression.Place);
            json.WriteEndObject();
        }

        json.WriteString(Names.Fingerprint, finding.Fingerprint);
        if (finding.Folded.Count > 0) WriteFindings(json, "follows", finding.Folded);
        json.WriteEndObject();
    }

    private static void WriteCorrections(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartArray(Names.Corrections);
        foreach (var correction in finding.Corrections)
        {
            json.WriteStartObject();
            json.WriteString(Names.Grade, ReportWords.Of(correction.Grade));
            json.WriteString(Names.Description, JsonOutput.WellFormed(correction.Description));
            json.WriteStartArray(Names.Edits);
            foreach (var edit in correction.Edits)
            {
                json.WriteStartObject();
                json.WriteString(Names.File, JsonOutput.WellFormed(edit.Place.File.Path));
                json.WriteRegion(Names.Region, edit.Place);
                json.WriteString(Names.NewText, JsonOutput.WellFormed(edit.NewText));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Names of properties, encoded once: a book has thousands of findings.</summary>
    private static class Names
    {
        public static readonly JsonEncodedText Accepted = JsonEncodedText.Encode("accepted");
        public static readonly JsonEncodedText Advice = JsonEncodedText.Encode("advice");
        public static readonly JsonEncodedText Answer = JsonEncodedText.Encode("answer");
        public static readonly JsonEncodedText Because = JsonEncodedText.Encode("because");
        public static readonly JsonEncodedText Caution = JsonEncodedText.Encode("caution");
        public static readonly JsonEncodedText Corrections = JsonEncodedText.Encode("corrections");
        public static readonly JsonEncodedText Description = JsonEncodedText.Encode("description");
        public static readonly JsonEncodedText Edits = JsonEncodedText.Encode("edits");
        public static readonly JsonEncodedText Evidence = JsonEncodedText.Encode("evidence");
        public static readonly JsonEncodedText Family = JsonEncodedText.Encode("family");
        public static readonly JsonEncodedText File = JsonEncodedText.Encode("file");
        public static readonly JsonEncodedText Fingerprint = JsonEncodedText.Encode("fingerprint");
        public static readonly JsonEncodedText Grade = JsonEncodedText.Encode("grade");
        public static readonly JsonEncodedText High = JsonEncodedText.Encode("high");
        public static readonly JsonEncodedText Level = JsonEncodedText.Encode("level");
        public static readonly JsonEncodedText Low = JsonEncodedText.Encode("low");
        public static readonly JsonEncodedText Message = JsonEncodedText.Encode("message");
        public static readonly JsonEncodedText Name = JsonEncodedText.Encode("name");
        public static readonly JsonEncodedText NewText = JsonEncodedText.Encode("newText");
        public static readonly JsonEncodedText Path = JsonEncodedText.Encode("path");
        public static readonly JsonEncodedText Region = JsonEncodedText.Encode("region");
        public static readonly JsonEncodedText Related = JsonEncodedText.Encode("related");
        public static readonly JsonEncodedText Rule = JsonEncodedText.Encode("rule");
        public static readonly JsonEncodedText Source = JsonEncodedText.Encode("source");
        public static readonly JsonEncodedText Subject = JsonEncodedText.Encode("subject");
        public static readonly JsonEncodedText Text = JsonEncodedText.Encode("text");
        public static readonly JsonEncodedText Unit = JsonEncodedText.Encode("unit");
        public static readonly JsonEncodedText Until = JsonEncodedText.Encode("until");
        public static readonly JsonEncodedText Value = JsonEncodedText.Encode("value");
    }
}
