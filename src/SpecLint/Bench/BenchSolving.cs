using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Changes;
using SpecLint.Linking;
using SpecLint.Reports;

namespace SpecLint.Bench;

/// <summary>Solves what is being written for targets, as the command does, and says what changes.</summary>
public static class BenchSolving
{
    /// <summary>Facts that can be targets; <c>volume</c> stands for the volume in the glass or, of a preparation, as made.</summary>
    private static readonly (string Name, Fact Fact)[] Facts =
    [
        ("abv", Fact.Abv), ("sugar", Fact.Sugar), ("acid", Fact.Acid), ("sugarAcidRatio", Fact.SugarAcidRatio), ("salt", Fact.Salt),
        ("brix", Fact.Brix),
    ];

    /// <summary>Solves, and writes the answer as JSON.</summary>
    /// <param name="book">The book.</param>
    /// <param name="entry">What is being written.</param>
    /// <param name="request">
    /// The request as JSON: <c>targets</c> (objects of <c>fact</c>, <c>low</c>, <c>high</c>), <c>like</c>, <c>glass</c>, and <c>keep</c> and
    /// <c>add</c> as lists of names.
    /// </param>
    public static string Adjust(BenchBook book, BenchEntry entry, string request)
    {
        var reading = book.Read(entry with { Quick = true });
        if (reading.Recipe is not { } recipe) return Refused("there is no recipe yet");
        var asked = RequestOf(book, recipe, request, out string why);
        if (asked is null || Adjuster.Of(reading.Input, reading.Result, recipe, asked, out why) is not { } adjustment) return Refused(why);
        return BenchOutputs.Json(json => Write(json, book, entry, reading, adjustment));
    }

    private static string Refused(string why) => BenchOutputs.Json(json => json.WriteString("why", JsonOutput.WellFormed(why)));

    private static AdjustRequest? RequestOf(BenchBook book, Recipe recipe, string request, out string why)
    {
        using var document = JsonDocument.Parse(request);
        var root = document.RootElement;
        var names = new NameResolver(book.Book);
        why = "";
        var targets = new List<AdjustTarget>();
        foreach (var target in root.GetProperty("targets").EnumerateArray())
        {
            string name = target.GetProperty("fact").GetString()!;
            var fact = name == "volume" ? recipe is Drink ? Fact.ServedVolume : Fact.MixVolume : Array.Find(Facts, f => f.Name == name).Fact;
            double low = target.GetProperty("low").GetDouble(), high = target.GetProperty("high").GetDouble();
            if (!(low >= 0 && low <= high && high > 0)) why = $"the target of {name} is not a number or a range";
            targets.Add(new AdjustTarget(fact, low, high));
        }

        string like = Meant(root.GetProperty("like").GetString()!, ref why);
        var add = root.GetProperty("add").EnumerateArray().Select(e => e.GetString()!).ToList();
        for (int i = 0; i < add.Count; i++) add[i] = Meant(add[i], ref why);
        var keep = root.GetProperty("keep").EnumerateArray().Select(e => e.GetString()!).ToList();
        return why.Length > 0
            ? null
            : new AdjustRequest { Targets = targets, Like = like, Glass = root.GetProperty("glass").GetString()!, Keep = keep, Add = add };

        string Meant(string name, ref string problem)
        {
            if (name.Trim().Length == 0) return "";
            if (names.Resolve(name) is { Answer: NameAnswer.Resolved } meant) return meant.Id;
            problem = $"{name.Trim()} is not known";
            return "";
        }
    }

    private static void Write(Utf8JsonWriter json, BenchBook book, BenchEntry entry, BenchReading reading, Adjustment adjustment)
    {
        var units = entry.Units.Keeping(reading.Result.Book);
        string file = BenchEdits.TextOf(adjustment.File);
        string? lines = entry.IsFile ? null : BenchEdits.AsLines(book, entry, reading, adjustment.File);
        json.WriteString("why", "");
        json.WriteString("text", JsonOutput.WellFormed(lines ?? file));
        json.WriteString("path", lines is null ? JsonOutput.WellFormed(adjustment.File.Path) : "");
        json.WriteBoolean("reached", adjustment.IsReached);
        json.WriteBoolean("changed", adjustment.IsChanged);
        json.WriteStartArray("figures");
        foreach (var figure in adjustment.Figures)
        {
            json.WriteStartObject();
            json.WriteString("name", figure.Name);
            json.WriteString(
                "before",
                figure.Before.IsKnown
                    ? units.Range(figure.Before.Value, figure.Before.Low, figure.Before.High, figure.Unit)
                    : figure.Before.OpenBecause);
            json.WriteString(
                "after",
                figure.After.IsKnown
                    ? units.Range(figure.After.Value, figure.After.Low, figure.After.High, figure.Unit)
                    : figure.After.OpenBecause);
            json.WriteBoolean("reached", figure.IsReached);
            json.WriteGiven("inTheWay", units.Sentence(figure.InTheWay));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (adjustment.Like is { } like)
        {
            json.WriteString("like", JsonOutput.WellFormed(StandInWords.Of(like)));
            json.WriteGiven("likeInTheWay", adjustment.LikeInTheWay);
        }

        json.WriteStartArray("lines");
        foreach (var line in adjustment.Lines)
        {
            json.WriteStartObject();
            json.WriteString("item", JsonOutput.WellFormed(line.Item));
            json.WriteString(
                "name",
                JsonOutput.WellFormed(book.Book.Resolve(line.Item) is { ByProduct: null } item ? item.File.Name.Or(line.Item) : line.Item));
            json.WriteString("before", JsonOutput.WellFormed(line.Before));
            json.WriteString("after", JsonOutput.WellFormed(line.After));
            json.WriteBoolean("changed", line.IsChanged);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        BenchOutputs.WriteTexts(json, "remarks", adjustment.Remarks);
        BenchOutputs.WriteTexts(json, "harm", adjustment.Harm.Select(units.Sentence));
    }
}
