using System.Text.Json;
using SpecLint.Changes;

namespace SpecLint.Reports;

/// <summary>What corrections come to: each with its grade and what became of it, facts before and after, and the difference of the files.</summary>
internal static class CorrectionReport
{
    /// <summary>Writes text; the difference at its end can be handed to <c>patch -p1</c> in the root of the book.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="result">What the corrections come to.</param>
    /// <param name="pathPrefix">The way from where one is to the root of the book, with <c>/</c> at its end.</param>
    /// <param name="colour">Whether to colour.</param>
    /// <param name="units">Units of volume and temperature; metric where none are given. The difference stays in those of the file.</param>
    public static void WriteText(TextWriter to, CorrectionResult result, string pathPrefix, bool colour, DisplayUnits? units = null)
    {
        units ??= DisplayUnits.Metric;
        var text = new TextTable(to, colour);
        foreach (var outcome in result.Outcomes)
        {
            var place = outcome.Finding.Place;
            text.Wrapped(
                $"{pathPrefix}{place.File.Path}:{place.Start.Line}:{place.Start.Column}: {outcome.Finding.Rule.Id}, "
                    + $"{ReportWords.Of(outcome.Correction.Grade)}: {units.Sentence(outcome.Correction.Description)}",
                "",
                "  ");
            if (Sentence(outcome) is { } sentence) text.Wrapped(units.Sentence(sentence), "  ", "  ");
        }

        if (result.Outcomes.Count > 0) text.Line("");
        if (result.Files.Count > 0)
        {
            foreach (var change in result.Comparison.Recipes)
            {
                ComparisonReport.WriteRecipe(text, change, units);
                text.Line("");
            }

            foreach (var file in result.Files) UnifiedDiff.Write(to, file.Before.Path, file.Before, file.After);
        }
    }

    /// <summary>Writes one JSON object.</summary>
    public static void WriteJson(Stream to, CorrectionResult result)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteStartArray("corrections");
        foreach (var outcome in result.Outcomes)
        {
            json.WriteStartObject();
            json.WriteString("rule", outcome.Finding.Rule.Id);
            json.WriteString("subject", JsonOutput.WellFormed(outcome.Finding.Subject));
            json.WriteString("file", JsonOutput.WellFormed(outcome.Finding.Place.File.Path));
            json.WriteRegion("region", outcome.Finding.Place);
            json.WriteString("fingerprint", outcome.Finding.Fingerprint);
            json.WriteString("grade", ReportWords.Of(outcome.Correction.Grade));
            json.WriteString("description", JsonOutput.WellFormed(outcome.Correction.Description));
            json.WriteString("state", StateName(outcome.State));
            json.WriteStartArray("brings");
            foreach (var brought in outcome.Brought) ComparisonReport.WriteFinding(json, brought);
            json.WriteEndArray();
            json.WriteStartArray("adds");
            foreach (string added in outcome.Added) json.WriteStringValue(JsonOutput.WellFormed(added));
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("files");
        foreach (var file in result.Files)
        {
            using var diff = new StringWriter { NewLine = "\n" };
            UnifiedDiff.Write(diff, file.Before.Path, file.Before, file.After);
            json.WriteStartObject();
            json.WriteString("file", JsonOutput.WellFormed(file.Before.Path));
            json.WriteString("diff", JsonOutput.WellFormed(diff.ToString()));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("recipes");
        foreach (var change in result.Comparison.Recipes) ComparisonReport.WriteRecipe(json, change);
        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        JsonReport.WriteLineEnd(to);
    }

    private static string StateName(CorrectionState state) => state switch
    {
        CorrectionState.Applied => "made",
        CorrectionState.RightAlready => "rightAlready",
        CorrectionState.NotGone => "findingStays",
        CorrectionState.BringsNew => "bringsNew",
        CorrectionState.BringsHarm => "bringsHarm",
        _ => "cannotBeMade",
    };

    private static string? Sentence(CorrectionOutcome outcome)
    {
        string brought = Say.List([
            .. outcome.Added.Take(3),
            .. outcome.Brought.Take(3).Select(f => $"{f.Rule.Id} in {f.Place.File.Path} ({f.Message})")])
            + (outcome.Brought.Count > 3 ? $" and {outcome.Brought.Count - 3} more" : "");
        return outcome.State switch
        {
            CorrectionState.RightAlready => "Another correction puts it right.",
            CorrectionState.NotGone => "Rolled back: the finding would still be there.",
            CorrectionState.BringsNew => $"Rolled back: it would bring {brought}.",
            CorrectionState.BringsHarm => $"Rolled back: it would bring {brought}, which can hurt someone.",
            CorrectionState.Unfit => "Rolled back: its edits cannot be made beside the others.",
            _ when outcome.Added.Count > 0 || outcome.Brought.Any(f => f.Rule.Safety) => $"It brings to light what was true before: {brought}.",
            _ => outcome.Brought.Count > 0 ? $"With it comes {brought}." : null,
        };
    }
}
