using System.Text;
using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.RecipeText;

namespace SpecLint.Bench;

/// <summary>What became of an edit of what is being written.</summary>
/// <param name="Text">The new text; the old one where nothing was changed.</param>
/// <param name="Path">Path of the file that the text is; empty where it is lines.</param>
/// <param name="Why">Why nothing was changed, in words; empty where it was.</param>
public sealed record BenchEdit(string Text, string Path, string Why);

/// <summary>Edits of what is being written: a name that was chosen, a correction that was taken.</summary>
public static class BenchEdits
{
    /// <summary>Writes the item that was chosen for a line into the text.</summary>
    /// <param name="book">The book.</param>
    /// <param name="entry">What is being written.</param>
    /// <param name="number">Number of the line.</param>
    /// <param name="item">Id of the item.</param>
    /// <param name="written">The item as it was written, to tell apart several parts of one line.</param>
    public static BenchEdit Choose(BenchBook book, BenchEntry entry, int number, string item, string written)
    {
        string[] rows = RowsOf(entry.Text);
        if (number < 1 || number > rows.Length || book.Book.Resolve(item) is not { } meant)
            return new BenchEdit(entry.Text, entry.Path, $"{item} is not known.");
        int at = rows[number - 1].LastIndexOf(written, StringComparison.Ordinal);
        if (at < 0 || written.Length == 0) return new BenchEdit(entry.Text, entry.Path, "The line has changed.");
        rows[number - 1] = rows[number - 1].Substring(0, at) + NameFor(book, meant) + rows[number - 1].Substring(at + written.Length);
        return new BenchEdit(string.Join("\n", rows), entry.Path, "");
    }

    /// <summary>
    /// Takes the correction of a finding, by the same way as the command: it stays only where its finding is gone and no other has
    /// come. Lines stay lines where they can say what it changes; else the text becomes the file.
    /// </summary>
    /// <param name="book">The book.</param>
    /// <param name="entry">What is being written.</param>
    /// <param name="fingerprint">Fingerprint of the finding.</param>
    public static BenchEdit Correct(BenchBook book, BenchEntry entry, string fingerprint)
    {
        var reading = book.Read(entry with { Quick = true });
        var finding = reading.Result.Findings.Flat().FirstOrDefault(f => f.Fingerprint == fingerprint);
        if (finding is null || reading.File is not { } file) return new BenchEdit(entry.Text, entry.Path, "The finding is gone already.");
        var choice = new CorrectionChoice { Rules = [finding.Rule.Id], Subjects = [finding.Subject], Includes = p => p == file.Path };
        var made = Corrector.Apply(reading.Input, choice);
        var outcome = made.Outcomes.FirstOrDefault(o => o.Finding.Fingerprint == fingerprint);
        if (outcome is null) return new BenchEdit(entry.Text, entry.Path, "It has no correction that can be made.");
        if (!outcome.IsMade) return new BenchEdit(entry.Text, entry.Path, WhyNot(outcome));
        var after = made.Files.First(f => f.Before.Path == file.Path).After;
        string text = TextOf(after);
        if (entry.IsFile) return new BenchEdit(text, entry.Path, "");
        return AsLines(book, entry, reading, after) is { } lines ? new BenchEdit(lines, "", "") : new BenchEdit(text, file.Path, "");
    }

    private static string WhyNot(CorrectionOutcome outcome) => outcome.State switch
    {
        CorrectionState.BringsHarm => $"It would bring harm: {Together(outcome)}.",
        CorrectionState.BringsNew => $"It would bring other findings: {Together(outcome)}.",
        CorrectionState.NotGone => "The finding would still be there.",
        CorrectionState.RightAlready => "Another correction has put it right.",
        _ => "Its edits cannot be made.",
    };

    private static string Together(CorrectionOutcome outcome) =>
        string.Join("; ", outcome.Brought.Select(f => $"{f.Rule.Id} {f.Message.TrimEnd('.')}").Concat(outcome.Added).Distinct());

    /// <summary>The name of an item in a line: as people say it, where that is read back as the same item; else its id.</summary>
    internal static string NameFor(BenchBook book, Item item)
    {
        if (item.ByProduct is not null) return item.Id;
        var names = new NameResolver(book.Book);
        foreach (string name in new[] { item.File.Name.Or("").ToLowerInvariant(), item.Id.Replace('-', ' ') })
        {
            bool isPlain = name.Length > 0 && name.IndexOfAny([',', ';', ':', '(', '.']) < 0;
            if (isPlain && names.Resolve(name) is { Answer: NameAnswer.Resolved } back && back.Id == item.Id) return name;
        }

        return item.Id;
    }

    /// <summary>The lines that say what a corrected file says; <see langword="null"/> where lines cannot.</summary>
    internal static string? AsLines(BenchBook book, BenchEntry entry, BenchReading before, SourceFile after)
    {
        if (before.Recipe is not { } old || before.File is not { } file || FileKinds.Of(after.Path) is not { } kind) return null;
        var made = (Recipe)BookReader.Read(after, kind, Measures.For(book.Book.Settings.Bar?.Measures));
        if (made.Ingredients.Count < old.Ingredients.Count) return null;
        var rows = RowsOf(entry.Text).ToList();
        int last = 0;
        for (int i = 0; i < old.Ingredients.Count; i++)
        {
            var (was, now) = (old.Ingredients[i], made.Ingredients[i]);
            var line = before.Written?.Lines.FirstOrDefault(l => l.Kind == WrittenLineKind.Ingredient
                && l.Number == before.LineOf(new Place(file, was.Span))
                && l.Item.Id == was.Item.Or(""));
            if (line is null) return null;
            string row = rows[line.Number - 1];
            if (was.Amount.IsGiven && now.Amount.IsGiven && Written(file, was.Amount.Span) != Written(after, now.Amount.Span))
            {
                if (Replace(row, line, Written(after, now.Amount.Span)) is not { } changed) return null;
                row = changed;
            }

            if (was.Item.Or("") != now.Item.Or("") && now.Item.IsGiven)
            {
                int at = row.LastIndexOf(line.ItemWritten, StringComparison.Ordinal);
                if (at < 0) return null;
                row = row.Substring(0, at) + now.Item.Value + row.Substring(at + line.ItemWritten.Length);
            }

            rows[line.Number - 1] = row;
            last = Math.Max(last, line.Number);
        }

        // What is added comes behind the last line of the recipe.
        var added = made.Ingredients.Skip(old.Ingredients.Count).ToList();
        if (added.Exists(l => !l.Item.IsGiven || !l.Amount.IsGiven || book.Book.Resolve(l.Item.Value) is null)) return null;
        rows.InsertRange(last, added.Select(l => $"{Written(after, l.Amount.Span)} {NameFor(book, book.Book.Resolve(l.Item.Value)!)}"));

        if (made.Declares is { Allergens: { IsGiven: true, Value: var allergens } }
            && !(old.Declares is { Allergens: { IsGiven: true, Value: var known } } && Tokens(known) == Tokens(allergens)))
        {
            string said = "allergens: " + (allergens.Count == 0 ? "none" : Tokens(allergens));
            int there = added.Count > 0 ? 0 : before.Written?.Lines.FirstOrDefault(l => l.Detail is { Kind: DetailKind.Allergens })?.Number ?? 0;
            if (there > 0) rows[there - 1] = said;
            else rows.Add(said);
        }

        string text = string.Join("\n", rows);
        return book.Read(entry with { Text = text, Quick = true }).File is { } again && Canonical(again) == Canonical(after) ? text : null;
    }

    private static string? Replace(string row, WrittenLine line, string amount)
    {
        foreach (string written in new[] { $"{line.NumberWritten} {line.UnitWritten}", line.NumberWritten + line.UnitWritten })
        {
            int at = written.Trim().Length == 0 ? -1 : row.IndexOf(written.Trim(), StringComparison.Ordinal);
            if (at >= 0) return row.Substring(0, at) + amount + row.Substring(at + written.Trim().Length);
        }

        return null;
    }

    private static string Tokens(FixedList<Given<string>> allergens) => string.Join(", ", allergens.Select(a => a.Value));

    private static string Written(SourceFile file, TextSpan span) => file.TextOf(span).Trim('"');

    internal static string TextOf(SourceFile file) =>
        file.TextOf(new TextSpan(file.ByteOrderMarkLength, file.Utf8.Length - file.ByteOrderMarkLength));

    internal static string[] RowsOf(string text) => text.Replace("\r\n", "\n").Replace('\r', '\n').Split('\n');

    /// <summary>A JSON file without its comments and layout, its properties sorted; its own text where it is not one.</summary>
    private static string Canonical(SourceFile file)
    {
        try
        {
            using var document = JsonDocument.Parse(
                file.Utf8.Slice(file.ByteOrderMarkLength),
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            using var text = new MemoryStream();
            using (var json = new Utf8JsonWriter(text)) Sort(document.RootElement, json);
            return Encoding.UTF8.GetString(text.ToArray());
        }
        catch (JsonException)
        {
            return TextOf(file);
        }
    }

    private static void Sort(JsonElement element, Utf8JsonWriter json)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                json.WriteStartObject();
                foreach (var property in element.EnumerateObject().OrderBy(p => p.Name, StringComparer.Ordinal))
                {
                    json.WritePropertyName(property.Name);
                    Sort(property.Value, json);
                }

                json.WriteEndObject();
                break;
            case JsonValueKind.Array:
                json.WriteStartArray();
                foreach (var item in element.EnumerateArray()) Sort(item, json);
                json.WriteEndArray();
                break;
            default:
                element.WriteTo(json);
                break;
        }
    }
}
