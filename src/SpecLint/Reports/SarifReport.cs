using System.Text.Json;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules;

namespace SpecLint.Reports;

/// <summary>How a SARIF log is written.</summary>
public sealed record SarifReportOptions
{
    /// <summary>Version of the product.</summary>
    public required string Version { get; init; }

    /// <summary>The way from the root of the repository to the root of the book, with <c>/</c> at its end; empty where they are one.</summary>
    public string PathPrefix { get; init; } = "";

    /// <summary>Rules of the bar's own, beside the built-in ones.</summary>
    public IReadOnlyList<Rule> HouseRules { get; init; } = [];

    /// <summary>The page of a rule in Markdown, by its id; <see langword="null"/> where pages are not at hand.</summary>
    public Func<string, string?>? PageOf { get; init; }

    /// <summary>The address under which the pages can be read on the web; <see langword="null"/> where they cannot.</summary>
    public Uri? PagesAt { get; init; }

    /// <summary>
    /// Whether the log is meant for GitHub code scanning: what is accepted or stands in the baseline is left out, since it
    /// would come back as an alert, and so is what lies beyond the limits on results, related places and tags; errors first.
    /// </summary>
    public bool ForCodeScanning { get; init; }

    /// <summary>How findings stand to a baseline; <see langword="null"/> where there is none.</summary>
    public BaselineMatch? Baseline { get; init; }
}

/// <summary>
/// Findings as SARIF 2.1.0 (OASIS, 2020): one run; all rules with their levels and pages; results with regions in UTF-16
/// columns and bytes, fixes, suppressions and fingerprints of our own. No time, no absolute path, no host name: the same
/// book gives the same bytes.
/// </summary>
public static class SarifReport
{
    /// <summary>Address of the schema.</summary>
    public const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    /// <summary>The base that addresses are relative to; it is named, never given.</summary>
    internal const string Base = "%SRCROOT%";

    /// <summary>Most results of a run that code scanning takes (GitHub Docs, SARIF support for code scanning: limits).</summary>
    public const int MostResults = 25_000;

    private const int MostTags = 20;

    /// <summary>It takes 1,000 places a result and shows 100.</summary>
    private const int MostRelated = 100;

    /// <summary>Writes the log.</summary>
    public static void Write(Stream to, ReportContent content, SarifReportOptions options)
    {
        var results = Merge(content, options);
        int left = 0;
        if (options.ForCodeScanning && results.Count > MostResults)
        {
            left = results.Count - MostResults;
            results = [.. results.OrderByDescending(f => f.Level).Take(MostResults)];
        }

        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteString("$schema", Schema);
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        var indexById = WriteTool(json, options);
        json.WriteStartObject("automationDetails");
        json.WriteString("id", "speclint/" + JsonOutput.Address(options.PathPrefix));
        json.WriteEndObject();
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", true);
        json.WriteStartArray("toolExecutionNotifications");
        if (left > 0)
            WriteNotification(json, "warning", $"{left} results of the lowest levels are left out: code scanning takes {MostResults} of a run.");
        if (content.Aside.Sentence.Length > 0) WriteNotification(json, "warning", content.Aside.Sentence);
        WriteNotification(json, "note", ReportWords.Closing);
        json.WriteEndArray();

        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteStartObject("originalUriBaseIds");
        json.WriteStartObject(Base);
        WriteMessage(json, "description", "The root of the repository.");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartArray("results");
        foreach (var finding in results)
        {
            WriteResult(json, finding, content, options, indexById);
            json.PassOn();
        }

        if (options is { Baseline: not null, ForCodeScanning: false })
        {
            foreach (var entry in options.Baseline.Absent) WriteAbsent(json, entry, options, indexById);
        }

        json.WriteEndArray();
        json.WriteStartObject("properties");
        json.WriteString("on", content.Result.Book.On.ToString());
        json.WriteNumber("recipes", content.Recipes);
        json.WriteNumber("acceptedSafety", content.AcceptedSafety);
        content.Aside.Write(json, "harmPutAside");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        JsonReport.WriteLineEnd(to);
    }

    /// <summary>What is to be said of the run as a whole.</summary>
    internal static void WriteNotification(Utf8JsonWriter json, string level, string text)
    {
        json.WriteStartObject();
        json.WriteString("level", level);
        WriteMessage(json, "message", text);
        json.WriteEndObject();
    }

    private static List<Finding> Merge(ReportContent content, SarifReportOptions options)
    {
        var all = content.Findings.ToList();
        if (options.ForCodeScanning) return all;
        all.AddRange(content.Accepted);
        all.Sort(FindingOrder.Instance);
        return all;
    }

    private static Dictionary<string, int> WriteTool(Utf8JsonWriter json, SarifReportOptions options)
    {
        var indexById = new Dictionary<string, int>(StringComparer.Ordinal);
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "SpecLint");
        json.WriteString("semanticVersion", options.Version);
        json.WriteString("language", "en");
        json.WriteStartArray("rules");
        foreach (var rule in RuleRegistry.All.Concat(options.HouseRules))
        {
            var info = rule.Info;
            if (indexById.ContainsKey(info.Id)) continue;
            indexById.Add(info.Id, indexById.Count);
            WriteRule(json, info, options);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        return indexById;
    }

    private static void WriteRule(Utf8JsonWriter json, RuleInfo info, SarifReportOptions options)
    {
        string? page = options.PageOf?.Invoke(info.Id);
        json.WriteStartObject();
        json.WriteString("id", info.Id);
        json.WriteString("name", PascalCase(info.Name));
        WriteMessage(json, "shortDescription", Sentence(info.Title));
        WriteMessage(json, "fullDescription", (page is null ? null : RulePage.WhatItChecks(page)) ?? Sentence(info.Title));
        if (options.PagesAt is { } at && RuleRegistry.Find(info.Id) is not null)
            json.WriteString("helpUri", new Uri(at, info.Page.Substring(info.Page.IndexOf('/') + 1)).AbsoluteUri);
        if (page is not null)
        {
            json.WriteStartObject("help");
            json.WriteString("text", page);
            json.WriteString("markdown", page);
            json.WriteEndObject();
        }

        json.WriteStartObject("defaultConfiguration");
        if (info.Level == Level.None) json.WriteBoolean("enabled", false);
        else json.WriteString("level", ReportWords.Of(info.Level));
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteStartArray("tags");
        foreach (string tag in Tags(info).Take(MostTags)) json.WriteStringValue(tag);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static IEnumerable<string> Tags(RuleInfo info)
    {
        yield return ReportWords.Of(info.Family);
        if (info.Safety) yield return "guards against harm";
    }

    /// <summary>A finding of the baseline that is there no more.</summary>
    private static void WriteAbsent(Utf8JsonWriter json, BaselineEntry entry, SarifReportOptions options, Dictionary<string, int> indexById)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", JsonOutput.WellFormed(entry.Rule));
        if (indexById.TryGetValue(entry.Rule, out int index)) json.WriteNumber("ruleIndex", index);
        json.WriteString("kind", "fail");
        json.WriteString("level", ReportWords.Of(entry.Level));
        json.WriteString("baselineState", "absent");
        WriteMessage(json, "message", entry.Message);
        json.WriteStartArray("locations");
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", JsonOutput.Address(options.PathPrefix + entry.File));
        json.WriteString("uriBaseId", Base);
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteStartObject("partialFingerprints");
        json.WriteString(Fingerprints.Name, JsonOutput.WellFormed(entry.Fingerprint));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteResult(
        Utf8JsonWriter json, Finding finding, ReportContent content, SarifReportOptions options, Dictionary<string, int> indexById)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Rule.Id);
        if (indexById.TryGetValue(finding.Rule.Id, out int index)) json.WriteNumber("ruleIndex", index);

        // Section 3.27.10 ties any other kind to the level "none"; what is not shown must not pass as holding.
        json.WriteString("kind", "fail");
        json.WriteString("level", ReportWords.Of(finding.Level));
        if (options.Baseline is { } baseline) json.WriteString("baselineState", baseline.IsNew(finding) ? "new" : "unchanged");
        WriteMessage(json, "message", MessageOf(finding));
        json.WriteStartArray("locations");
        json.WriteStartObject();
        WritePhysical(json, finding.Place, options.PathPrefix);
        json.WriteStartArray("logicalLocations");
        json.WriteStartObject();
        json.WriteString("name", JsonOutput.WellFormed(finding.Subject));
        json.WriteString(
            "fullyQualifiedName",
            JsonOutput.WellFormed(finding.Path.Length == 0 ? finding.Subject : $"{finding.Subject}/{finding.Path}"));
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
        WriteRelated(json, finding, content, options);
        json.WriteStartObject("partialFingerprints");
        json.WriteString(Fingerprints.Name, finding.Fingerprint);
        json.WriteEndObject();
        WriteFixes(json, finding, options);
        if (finding.Suppression is { } suppression)
        {
            json.WriteStartArray("suppressions");
            json.WriteStartObject();
            json.WriteString("kind", "inSource");
            json.WriteString("status", "accepted");
            json.WriteString("justification", JsonOutput.WellFormed(suppression.Justification));
            json.WriteStartObject("location");
            WritePhysical(json, suppression.Place, options.PathPrefix);
            json.WriteEndObject();
            if (suppression.Until is { } until)
            {
                json.WriteStartObject("properties");
                json.WriteString("until", until.ToString());
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteStartObject("properties");
        json.WriteString("answer", ReportWords.Of(finding.Answer));
        json.WriteGiven("advice", finding.Advice);
        json.WriteGiven("caution", finding.Caution);
        JsonReport.WriteEvidence(json, finding.Evidence);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static string MessageOf(Finding finding)
    {
        string text = finding.Message;
        if (finding.Advice.Length > 0) text += " " + finding.Advice;
        if (finding.Caution is not null) text += " Caution: " + finding.Caution;
        return text;
    }

    private static void WriteRelated(Utf8JsonWriter json, Finding finding, ReportContent content, SarifReportOptions options)
    {
        if (finding.Related.Count == 0 && finding.Folded.Count == 0) return;
        int id = 0;
        if (options.ForCodeScanning && !finding.Folded.Any(f => content.IsInBook(f.Place))
            && !finding.Related.Any(r => content.IsInBook(r.Place))) return;
        json.WriteStartArray("relatedLocations");
        foreach (var related in finding.Related) Write(related.Place, related.Message);
        foreach (var folded in finding.Folded)
            Write(folded.Place, $"From this follows {folded.Rule.Id} ({ReportWords.Of(folded.Level)}): {folded.Message}");
        json.WriteEndArray();

        void Write(Place place, string message)
        {
            // Code scanning asks for a physical place.
            if (options.ForCodeScanning && (id >= MostRelated || !content.IsInBook(place))) return;
            json.WriteStartObject();
            json.WriteNumber("id", id++);

            // The catalogue's own files are not in the repository.
            if (content.IsInBook(place)) WritePhysical(json, place, options.PathPrefix);
            WriteMessage(json, "message", content.IsInBook(place) ? message : $"In the built-in catalogue ({place.File.Path}): {message}");
            json.WriteEndObject();
        }
    }

    private static void WriteFixes(Utf8JsonWriter json, Finding finding, SarifReportOptions options)
    {
        var withEdits = finding.Corrections.Where(c => c.Edits.Count > 0).ToList();
        if (withEdits.Count == 0) return;
        json.WriteStartArray("fixes");
        foreach (var correction in withEdits)
        {
            json.WriteStartObject();
            WriteMessage(json, "description", correction.Description);
            json.WriteStartArray("artifactChanges");
            foreach (var file in correction.Edits.GroupBy(e => e.Place.File).OrderBy(g => g.Key.Path, StringComparer.Ordinal))
            {
                json.WriteStartObject();
                WriteArtifact(json, file.Key, options.PathPrefix);
                json.WriteStartArray("replacements");
                foreach (var edit in file.OrderBy(e => e.Place.Span.Start))
                {
                    json.WriteStartObject();
                    json.WriteRegion("deletedRegion", edit.Place);
                    json.WriteStartObject("insertedContent");
                    json.WriteString("text", JsonOutput.WellFormed(edit.NewText));
                    json.WriteEndObject();
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartObject("properties");
            json.WriteString("grade", ReportWords.Of(correction.Grade));
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static void WritePhysical(Utf8JsonWriter json, Place place, string pathPrefix)
    {
        json.WriteStartObject("physicalLocation");
        WriteArtifact(json, place.File, pathPrefix);
        json.WriteRegion("region", place);
        json.WriteEndObject();
    }

    private static void WriteArtifact(Utf8JsonWriter json, SourceFile file, string pathPrefix)
    {
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", JsonOutput.Address(pathPrefix + file.Path));
        json.WriteString("uriBaseId", Base);
        json.WriteEndObject();
    }

    internal static void WriteMessage(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", JsonOutput.WellFormed(WithoutLinks(text)));
        json.WriteEndObject();
    }

    /// <summary>
    /// Text of a recipe is no link: a plain message may hold <c>[text](address)</c>, which viewers turn into one, and a bracket
    /// that is none is written with a backslash (SARIF 2.1.0, 3.11.6).
    /// </summary>
    private static string WithoutLinks(string text) =>
        text.IndexOf("](", StringComparison.Ordinal) < 0 ? text : text.Replace("\\", "\\\\").Replace("[", "\\[").Replace("]", "\\]");

    private static string Sentence(string text) => text.Length > 0 && text[text.Length - 1] is '.' or '!' or '?' ? text : text + ".";

    private static string PascalCase(string name) =>
        string.Concat(name.Split('-').Where(w => w.Length > 0).Select(w => char.ToUpperInvariant(w[0]) + w.Substring(1)));
}
