using System.Text.Json;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Reports;

/// <summary>What a change does to the drinks, as text, JSON or a table in Markdown for the talk about a pull request.</summary>
internal static class ComparisonReport
{
    private const int LabelColumns = 30;

    /// <summary>A comment on GitHub holds 65,536 characters; the table stops before.</summary>
    private const int LongestMarkdown = 60_000;

    private const int MostFindingsInMarkdown = 100;

    /// <summary>A change below this size is lost in any pour.</summary>
    private const double Least = 0.005;

    /// <summary>A fact beside the main ones is told from this size on.</summary>
    private const double LeastOfOthers = 0.1;

    /// <summary>Facts that people ask for first; the others follow in the order of the output.</summary>
    private static readonly Fact[] Main =
    [
        Fact.Abv, Fact.Sugar, Fact.Acid, Fact.SugarAcidRatio, Fact.Ph, Fact.Brix, Fact.ServedVolume, Fact.Alcohol, Fact.Energy,
        Fact.Cost, Fact.Life,
    ];

    /// <summary>Facts that no reader needs beside the main ones: twins before dilution, sums, physics.</summary>
    private static readonly HashSet<Fact> Minor =
        [Fact.MixAbv, Fact.MixSugar, Fact.MixAcid, Fact.MixPh, Fact.AcidAnalysed, Fact.Density, Fact.MixVolume];

    /// <summary>Writes text; lines end with LF on every system.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="comparison">What.</param>
    /// <param name="colour">Whether to colour.</param>
    /// <param name="units">Units of volume and temperature; metric where none are given.</param>
    public static void WriteText(TextWriter to, Comparison comparison, bool colour, DisplayUnits? units = null)
    {
        units ??= DisplayUnits.Metric;
        var text = new TextTable(to, colour);
        foreach (var change in comparison.Recipes)
        {
            WriteRecipe(text, change, units);
            text.Line("");
        }

        WriteFindings(text, "Findings of other files that the change brings:", Others(comparison, comparison.New), units);
        WriteFindings(text, "Findings of other files that it puts right:", Others(comparison, comparison.Gone), units);
        text.Wrapped(Summary(comparison), "", "");
    }

    /// <summary>Writes one JSON object.</summary>
    public static void WriteJson(Stream to, Comparison comparison)
    {
        using var json = new Utf8JsonWriter(to, JsonOutput.Options);
        json.WriteStartObject();
        json.WriteStartObject("counts");
        json.WriteNumber("recipes", comparison.Recipes.Count);
        json.WriteNumber("new", comparison.New.Count);
        json.WriteNumber("gone", comparison.Gone.Count);
        json.WriteNumber("newlyAccepted", comparison.NewlyAccepted.Count);
        json.WriteNumber("unchanged", comparison.Unchanged);
        json.WriteEndObject();
        json.WriteStartArray("recipes");
        foreach (var change in comparison.Recipes) WriteRecipe(json, change);
        json.WriteEndArray();
        WriteFindings(json, "new", comparison.New);
        WriteFindings(json, "gone", comparison.Gone);
        WriteFindings(json, "newlyAccepted", comparison.NewlyAccepted);
        json.WriteEndObject();
        json.Flush();
        JsonReport.WriteLineEnd(to);
    }

    /// <summary>
    /// Writes GitHub Flavored Markdown: a table with the largest change first, the limits that it crosses marked, and the
    /// findings beneath. Text of recipes is escaped.
    /// </summary>
    /// <param name="to">Where to.</param>
    /// <param name="comparison">What.</param>
    /// <param name="units">Units of volume and temperature; metric where none are given.</param>
    public static void WriteMarkdown(TextWriter to, Comparison comparison, DisplayUnits? units = null)
    {
        units ??= DisplayUnits.Metric;
        to.Write("### What the change does to the drinks\n\n");
        int written = 0, left = 0;
        if (comparison.Recipes.Count == 0)
        {
            to.Write("No recipe comes to anything else than before.\n");
        }
        else
        {
            to.Write("| recipe | through | what moves | allergens, keeping | findings |\n| --- | --- | --- | --- | --- |\n");
            foreach (var change in comparison.Recipes)
            {
                string row = Row(change, units);
                if (written + row.Length > LongestMarkdown * 2 / 3)
                {
                    left++;
                    continue;
                }

                written += row.Length;
                to.Write(row);
            }

            if (left > 0)
                to.Write($"\n{ReportWords.Count(left, "further recipe is", "further recipes are")} left out; "
                    + "the full list is in the JSON output.\n");
        }

        written += List(to, "New", comparison.New, LongestMarkdown - written, units);
        List(to, "Put right", comparison.Gone, LongestMarkdown - written, units);
        to.Write("\n" + MarkdownText.Escape(Summary(comparison)) + "\n");
    }

    /// <summary>Facts that moved so far that it shows in print, or whose range grew or shrank by more than a quarter; the main ones first.</summary>
    internal static IEnumerable<FactChange> Shown(RecipeChange change) => change.Facts
        .Where(f => IsMarked(f) || (Tells(f) && (Array.IndexOf(Main, f.Fact) >= 0 || IsLargeOther(f))))
        .OrderBy(f => Array.IndexOf(Main, f.Fact) is var at && at < 0 ? Main.Length + (int)f.Fact : at);

    private static bool IsMarked(FactChange fact) => fact.Crossed.Count + fact.Recrossed.Count > 0;

    private static bool IsLargeOther(FactChange fact) =>
        !Minor.Contains(fact.Fact) && fact.Size >= LeastOfOthers && FactChange.IsKnown(fact.Before) && FactChange.IsKnown(fact.After);

    private static bool Tells(FactChange fact)
    {
        bool before = FactChange.IsKnown(fact.Before), after = FactChange.IsKnown(fact.After);

        // A fact that is nought where it was not known before is no news.
        if (!before || !after) return before != after && (before ? fact.Before!.Value.High : fact.After!.Value.High) != 0;
        double was = fact.Before!.Value.High - fact.Before.Value.Low, now = fact.After!.Value.High - fact.After.Value.Low;
        if (Math.Abs(was - now) > 0.25 * Math.Max(was, now) && Math.Max(was, now) > 0.02 * Math.Abs(fact.After.Value.Value)) return true;
        return fact.Size >= Least && Say.Number(fact.Before.Value.Value) != Say.Number(fact.After.Value.Value);
    }

    /// <summary>A fact in words: its value and range, or that it is open.</summary>
    internal static string Words(FactChange fact, FactValue? value, bool range, DisplayUnits units)
    {
        if (value is null) return "none";
        if (!FactChange.IsKnown(value)) return "open";
        string unit = fact.Fact == Fact.Cost ? fact.Currency : Say.Unit(fact.Fact, fact.IsSolid);
        return range ? units.Range(value.Value.Value, value.Value.Low, value.Value.High, unit) : units.With(value.Value.Value, unit);
    }

    /// <summary>Writes the facts of a recipe that moved, its allergens, keeping and findings.</summary>
    internal static void WriteRecipe(TextTable text, RecipeChange change, DisplayUnits units)
    {
        string kind = change.Kind switch { ChangeKind.Added => ", new", ChangeKind.Removed => ", gone", _ => "" };
        text.Heading($"{change.Recipe.Name.Or(change.Id)} ({ReportWords.Of(change.Recipe.Kind)} {change.Id}{kind})");
        if (change.Through.Count > 0)
            text.Wrapped(
                $"Reached through {Say.List(change.Through)}{(change.FileChanged ? ", and by a change of its own file" : "")}.",
                "  ", "  ");
        bool any = false;
        foreach (var fact in Shown(change))
        {
            any = true;
            string words = change.Kind switch
            {
                ChangeKind.Added => Words(fact, fact.After, range: true, units),
                ChangeKind.Removed => Words(fact, fact.Before, range: true, units),
                _ => $"{Words(fact, fact.Before, range: true, units)} becomes {Words(fact, fact.After, range: true, units)}",
            };
            foreach (var crossed in fact.Crossed) words += $"; crosses a limit ({crossed.Rule.Id})";
            foreach (var recrossed in fact.Recrossed) words += $"; is back within a limit ({recrossed.Rule.Id})";
            text.Row(ProfileReport.LabelOf(fact.Fact), LabelColumns, words);
        }

        Named("allergens gained", change.AllergensGained);
        Named("allergens lost", change.AllergensLost);
        Named("may contain now", change.MayContainGained);
        Named("may contain no more", change.MayContainLost);
        if (change.KeepingBefore != change.KeepingAfter)
        {
            any = true;
            text.Row(
                "label says it keeps", LabelColumns,
                units.Sentence($"{OrNothing(change.KeepingBefore)} becomes {OrNothing(change.KeepingAfter)}"));
        }

        foreach (var finding in change.New) Finding("new", finding);
        foreach (var finding in change.Gone) Finding("put right", finding);
        if (!any) text.Wrapped("No fact of it moves.", "  ", "  ");

        void Named(string label, IReadOnlyList<string> names)
        {
            if (names.Count == 0) return;
            any = true;
            text.Row(label, LabelColumns, Say.List(names));
        }

        void Finding(string label, Finding finding)
        {
            any = true;
            text.Row(label, LabelColumns, $"{ReportWords.Of(finding.Level)} {finding.Rule.Id}: {units.Sentence(finding.Message)}");
        }
    }

    /// <summary>Writes one recipe as JSON.</summary>
    internal static void WriteRecipe(Utf8JsonWriter json, RecipeChange change)
    {
        json.WriteStartObject();
        json.WriteString("id", JsonOutput.WellFormed(change.Id));
        json.WriteString("kind", ReportWords.KeyOf(change.Recipe.Kind));
        json.WriteString("file", JsonOutput.WellFormed(change.Recipe.Source.Path));
        json.WriteGiven("name", change.Recipe.Name.Or(""));
        json.WriteString("change", change.Kind switch { ChangeKind.Added => "added", ChangeKind.Removed => "removed", _ => "changed" });
        json.WriteBoolean("fileChanged", change.FileChanged);
        WriteTexts(json, "through", change.Through);
        json.WriteFinite("size", change.Size);
        json.WriteStartObject("facts");
        foreach (var fact in change.Facts)
        {
            json.WriteStartObject(FactNames.Name(fact.Fact));
            json.WriteString("unit", fact.Fact == Fact.Cost ? fact.Currency : FactNames.Unit(fact.Fact, fact.IsSolid));
            WriteValue(json, "before", fact.Before);
            WriteValue(json, "after", fact.After);
            if (fact.Crossed.Count > 0) WriteTexts(json, "crosses", [.. fact.Crossed.Select(f => f.Rule.Id).Distinct()]);
            if (fact.Recrossed.Count > 0) WriteTexts(json, "backWithin", [.. fact.Recrossed.Select(f => f.Rule.Id).Distinct()]);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteStartObject("allergens");
        WriteTexts(json, "gained", change.AllergensGained);
        WriteTexts(json, "lost", change.AllergensLost);
        WriteTexts(json, "mayContainGained", change.MayContainGained);
        WriteTexts(json, "mayContainLost", change.MayContainLost);
        json.WriteEndObject();
        if (change.KeepingBefore.Length + change.KeepingAfter.Length > 0)
        {
            json.WriteStartObject("keeping");
            json.WriteGiven("before", change.KeepingBefore);
            json.WriteGiven("after", change.KeepingAfter);
            json.WriteEndObject();
        }

        WriteFindings(json, "new", change.New);
        WriteFindings(json, "gone", change.Gone);
        json.WriteNumber("unchanged", change.Unchanged);
        json.WriteEndObject();
    }

    internal static void WriteValue(Utf8JsonWriter json, string name, FactValue? value)
    {
        if (value is not { } fact) return;
        json.WriteStartObject(name);
        if (FactChange.IsKnown(value))
        {
            json.WriteFinite("value", fact.Value);
            json.WriteFinite("low", fact.Low);
            json.WriteFinite("high", fact.High);
            json.WriteString("from", JsonOutput.WellFormed(fact.From));
        }
        else
        {
            json.WriteString("open", JsonOutput.WellFormed(fact.OpenBecause ?? "it cannot be worked out"));
        }

        json.WriteEndObject();
    }

    private static void WriteFindings(Utf8JsonWriter json, string name, IReadOnlyList<Finding> findings)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings) WriteFinding(json, finding);
        json.WriteEndArray();
    }

    internal static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule.Id);
        json.WriteString("level", ReportWords.Of(finding.Level));
        json.WriteString("subject", JsonOutput.WellFormed(finding.Subject));
        json.WriteString("file", JsonOutput.WellFormed(finding.Place.File.Path));
        json.WriteRegion("region", finding.Place);
        json.WriteString("message", JsonOutput.WellFormed(finding.Message));
        json.WriteString("fingerprint", finding.Fingerprint);
        json.WriteEndObject();
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts) json.WriteStringValue(JsonOutput.WellFormed(text));
        json.WriteEndArray();
    }

    private static void WriteFindings(TextTable text, string heading, List<Finding> findings, DisplayUnits units)
    {
        if (findings.Count == 0) return;
        text.Heading(heading);
        foreach (var finding in findings)
            text.Wrapped(
                $"{finding.Place.File.Path}:{finding.Place.Start.Line} {ReportWords.Of(finding.Level)} {finding.Rule.Id}: "
                    + $"{units.Sentence(finding.Message)}",
                "  ", "    ");
        text.Line("");
    }

    private static List<Finding> Others(Comparison comparison, IReadOnlyList<Finding> findings)
    {
        var told = new HashSet<string>(comparison.Recipes.Select(r => r.Id), StringComparer.Ordinal);
        return [.. findings.Where(f => !told.Contains(f.Subject))];
    }

    private static string Row(RecipeChange change, DisplayUnits units)
    {
        string kind = change.Kind switch { ChangeKind.Added => " (new)", ChangeKind.Removed => " (gone)", _ => "" };
        string name = change.Recipe.Name.Or(change.Id);
        var moves = new List<string>();
        foreach (var fact in Shown(change))
        {
            string label = ProfileReport.LabelOf(fact.Fact);
            string words = change.Kind switch
            {
                ChangeKind.Added => Words(fact, fact.After, range: true, units),
                ChangeKind.Removed => Words(fact, fact.Before, range: true, units),
                _ => $"{Words(fact, fact.Before, range: true, units)} → {Words(fact, fact.After, range: true, units)}",
            };
            string text = MarkdownText.Escape($"{label} {words}");
            if (fact.Crossed.Count > 0) text = $"**{text}** ⚠ crosses a limit ({string.Join(", ", fact.Crossed.Select(f => f.Rule.Id).Distinct())})";
            if (fact.Recrossed.Count > 0) text += $" ✓ back within a limit ({string.Join(", ", fact.Recrossed.Select(f => f.Rule.Id).Distinct())})";
            moves.Add(text);
        }

        var declared = new List<string>();
        foreach (string allergen in change.AllergensGained) declared.Add($"**+ {MarkdownText.Escape(allergen)}**");
        foreach (string allergen in change.AllergensLost) declared.Add($"− {MarkdownText.Escape(allergen)}");
        foreach (string allergen in change.MayContainGained) declared.Add($"+ may contain {MarkdownText.Escape(allergen)}");
        foreach (string allergen in change.MayContainLost) declared.Add($"− may contain {MarkdownText.Escape(allergen)}");
        if (change.KeepingBefore != change.KeepingAfter)
            declared.Add(MarkdownText.Escape(units.Sentence($"keeps {OrNothing(change.KeepingBefore)} → {OrNothing(change.KeepingAfter)}")));
        var findings = new List<string>();
        if (change.New.Count > 0) findings.Add($"new: {Ids(change.New)}");
        if (change.Gone.Count > 0) findings.Add($"put right: {Ids(change.Gone)}");
        if (change.Unchanged > 0) findings.Add($"{change.Unchanged} as before");
        string through = string.Join(", ", change.Through.Select(MarkdownText.Escape));
        if (change.FileChanged) through += change.Through.Count == 0 ? "its own file" : ", its own file";
        return $"| {MarkdownText.Escape(name)}{kind} | {through} | {string.Join("<br>", moves)} | "
            + $"{string.Join("<br>", declared)} | {string.Join("<br>", findings)} |\n";
    }

    private static string Ids(IReadOnlyList<Finding> findings) =>
        string.Join(", ", findings.OrderByDescending(f => f.Level).Select(f => $"{ReportWords.Of(f.Level)} {f.Rule.Id}"));

    private static int List(TextWriter to, string heading, IReadOnlyList<Finding> findings, int room, DisplayUnits units)
    {
        if (findings.Count == 0) return 0;
        int written = 0, shown = 0;
        to.Write($"\n**{heading}**\n\n");
        foreach (var finding in findings.OrderByDescending(f => f.Level))
        {
            string line = $"- {ReportWords.Of(finding.Level)} {finding.Rule.Id}, "
                + $"{MarkdownText.Escape(finding.Place.File.Path)}, line {finding.Place.Start.Line}: "
                + $"{MarkdownText.Escape(units.Sentence(finding.Message))}\n";
            if (shown == MostFindingsInMarkdown || written + line.Length > room) break;
            to.Write(line);
            written += line.Length;
            shown++;
        }

        if (shown < findings.Count) to.Write($"- and {findings.Count - shown} more\n");
        return written;
    }

    private static string OrNothing(string text) => text.Length == 0 ? "nothing" : text;

    internal static string Summary(Comparison comparison)
    {
        string accepted = comparison.NewlyAccepted.Count == 0 ? "" : $", {comparison.NewlyAccepted.Count} newly accepted";
        return $"The change reaches {ReportWords.Count(comparison.Recipes.Count, "recipe", "recipes")}. "
            + $"Findings: {comparison.New.Count} new, {comparison.Gone.Count} put right, {comparison.Unchanged} as before{accepted}.";
    }
}
