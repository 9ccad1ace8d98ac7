using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Service;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor;

/// <summary>Words that a value can be, from the tables of the library and the book.</summary>
internal static class Words
{
    /// <summary>Items that are offered at once; more letters find others.</summary>
    private const int MostItems = 60;

    /// <summary>Days from today that an acceptance, or a level with a reason, is proposed to hold.</summary>
    private const int DaysAhead = 90;

    /// <summary>Items by id, name and synonym, each with what it comes to.</summary>
    public static List<Choice> Items(OpenBook book, Cursor cursor)
    {
        string property = cursor.Property!.Name;

        // A name of its own is not chosen from those of others.
        if (property == "id") return [];
        var found = ItemSearch.Of(book.Profiles, cursor.Typed.Split(' ', '-'), null, MostItems * 2);
        return [.. found
            .Where(f => Fits(property, f.Item) && f.Item.Id != cursor.File.Id)
            .Take(MostItems)
            .Select(f => new Choice(
                f.Item.Id, $"\"{f.Item.Id}\"", ChoiceKind.Item,
                Join(f.Kind, ItemWords.MakeUp(f.MakeUp), f.Called.Length > 0 ? $"also {f.Called}" : ""),
                f.Name == f.Item.Id ? "" : Reports.ItemMarkdown.Escape(f.Name)))];
    }

    /// <summary>Words of a value.</summary>
    public static List<Choice> Of(OpenBook book, Cursor cursor, ValueShape value)
    {
        var bar = book.Linked.Settings.Bar;
        switch (cursor.Property?.Name)
        {
            case "do": return [.. Verb.Words.Select(w => Word(w, Verb.Of(w).Id))];
            case "ice": return [.. Ice.All.Select(i => Word(i.Id, i.Id))];
            case "style": return [.. Style.All.Select(s => Word(s.Id, s.Id))];
            case "glass":
                return [
                    .. (bar?.Glasses ?? new Dictionary<string, Glass>()).Select(g => Text(
                        g.Key, Join("glass of the bar", g.Value.Brim.IsGiven ? $"{Say.Number(g.Value.Brim.Value.Base, 0)} mL" : ""))),
                    .. GlassType.All.Where(g => bar is null || !bar.Glasses.ContainsKey(g.Id))
                        .Select(g => Text(g.Id, $"type, {Say.Number(g.BrimLow, 0)}–{Say.Number(g.BrimHigh, 0)} mL"))];
            case "meter": return [.. (bar?.Meters.Keys ?? []).Select(m => Text(m, "meter of the bar"))];
            case "vessel" or "in" or "into" when value.Form == ValueForm.Text:
                return [
                    .. (bar?.Vessels.Keys ?? []).Select(v => Text(v, "vessel of the bar")),
                    .. VesselType.Words.Select(w => Word(w, w))];
            case "madeFrom":
                return [.. book.Linked.Stocks.SelectMany(s => s.Lots)
                    .Where(l => l.LotCode.IsGiven).Select(l => Text(l.LotCode.Value, l.Item.Or("")))];
        }

        return value.Form switch
        {
            ValueForm.Word => [.. value.Words.Select(w => Word(w, w))],
            ValueForm.WordOrObject => [.. value.Item!.Words.Select(w => Word(w, w))],
            ValueForm.Flag => [new Choice("true", "true", ChoiceKind.Value), new Choice("false", "false", ChoiceKind.Value)],
            ValueForm.Date => Dates(book, cursor),
            ValueForm.Pattern when value.Definition == "ruleId" => Rules("\""),
            ValueForm.Quantity => Units(book, cursor, value),
            ValueForm.Sourced => Units(book, cursor, value.Item!),
            _ => [.. (cursor.Property?.Examples ?? []).Where(e => e.StartsWith('"'))
                .Select(e => new Choice(e.Trim('"'), e, ChoiceKind.Value, "example"))],
        };
    }

    /// <summary>Names of an object whose names are free.</summary>
    public static List<Choice> Keys(OpenBook book, ValueShape map, Cursor cursor)
    {
        string tail = cursor.ValueFollows ? "" : ": ";
        IEnumerable<Choice> all = map.Keys switch
        {
            KeyForm.RuleId => Rules("\"").Select(r => r with { Text = r.Text + tail }),
            KeyForm.FileKind => FileShapes.KindNames.Select(k => new Choice(k, $"\"{k}\"{tail}", ChoiceKind.Property)),
            KeyForm.UnitWord => Measures.Default.Words
                .Where(w => !Measures.IsFixed(w.Unit))
                .GroupBy(w => w.Unit.Name, StringComparer.Ordinal)
                .Select(w => new Choice(w.Key, $"\"{w.Key}\"{tail}", ChoiceKind.Unit)),
            KeyForm.PropertyPath => Limits.All
                .Where(l => l.Jurisdictions.Count == 0)
                .GroupBy(l => l.Id, StringComparer.Ordinal)
                .Select(l => new Choice(l.Key, $"\"{l.Key}\"{tail}", ChoiceKind.Property, Say.With(l.First().Value, l.First().Unit))),
            _ => [],
        };
        return [.. all.Where(c => !cursor.Names.Contains(c.Label))];
    }

    private static bool Fits(string property, Item item) => property switch
    {
        "drink" or "supersedes" => item.File is Recipe && item.ByProduct is null,
        "batchOf" => item.File is Drink,
        "like" => item.File is Ingredient,
        _ => item.File is not Drink,
    };

    private static List<Choice> Dates(OpenBook book, Cursor cursor)
    {
        bool ends = cursor.Property?.Name is "until" or "useBy";
        var dates = new List<Choice>();
        if (ends) Add(book.Day.AddDays(DaysAhead), $"in {DaysAhead} days");
        Add(book.Day, "today");
        Add(book.Day.AddDays(ends ? 7 : -1), ends ? "in a week" : "yesterday");
        return dates;

        void Add(CalendarDate day, string what) => dates.Add(new Choice(day.ToString(), $"\"{day}\"", ChoiceKind.Value, what));
    }

    private static List<Choice> Rules(string quote) =>
        [.. RuleRegistry.All.Select(r => new Choice(
            r.Info.Id, $"{quote}{r.Info.Id}{quote}", ChoiceKind.Value,
            r.Info.Level.ToString().ToLowerInvariant(),
            Reports.ItemMarkdown.Escape(r.Info.Title)))];

    /// <summary>Units behind the number that is typed; without one, examples.</summary>
    private static List<Choice> Units(OpenBook book, Cursor cursor, ValueShape value)
    {
        string typed = cursor.Typed.TrimEnd();
        int digits = typed.Length;
        while (digits > 0 && !char.IsDigit(typed[digits - 1]) && typed[digits - 1] is not ('½' or '¼' or '¾' or '⅓' or '⅔')) digits--;
        if (digits == 0) return [.. (cursor.Property?.Examples ?? []).Select(e => new Choice(e.Trim('"'), e, ChoiceKind.Value, "example"))];
        string number = typed[..digits];
        var units = Measures.For(book.Linked.Settings.Bar?.Measures).Words.Select(w => w.Unit)
            .Where(u => value.Dimensions.Contains(u.Dimension)).DistinctBy(u => u.Name);
        return [.. units.Select(u => new Choice($"{number} {u.Name}", $"\"{number} {u.Name}\"", ChoiceKind.Unit))];
    }

    private static Choice Word(string word, string id) => new(word, $"\"{word}\"", ChoiceKind.Word, word == id ? "" : $"the same as {id}");

    private static Choice Text(string text, string detail) =>
        new(text, System.Text.Json.JsonSerializer.Serialize(text, TextJson.Default.String), ChoiceKind.Value, detail);

    private static string Join(params ReadOnlySpan<string> parts)
    {
        var kept = new List<string>();
        foreach (string part in parts)
        {
            if (part.Length > 0) kept.Add(part);
        }

        return string.Join(" · ", kept);
    }
}
