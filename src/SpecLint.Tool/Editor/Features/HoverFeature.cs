using System.Globalization;
using System.Text;
using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Rules;
using SpecLint.Tool.Editor.Protocol;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Editor.Features;

/// <summary>What is known of the word under the cursor, in Markdown.</summary>
internal sealed class HoverFeature(Session session) : Feature(session)
{
    /// <summary>Files that are checked for a hover's sake before it says that the book is still being checked.</summary>
    private const int FilesForOneHover = 64;

    public override IReadOnlyList<string> Methods => ["textDocument/hover"];

    public override void WriteCapability(Utf8JsonWriter json, Client client) => json.WriteBoolean("hoverProvider", true);

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        if (Session.At(parameters) is not var (book, file, offset) || Explain(book, file, offset) is not var (text, span))
        {
            json.WriteNull("result");
            return;
        }

        json.WriteStartObject("result");
        json.Markup("contents", text);
        json.Range("range", file.At(span));
        json.WriteEndObject();
    }

    private (string Text, TextSpan Span)? Explain(OpenBook book, BookFile file, int offset)
    {
        Session.CheckNow(book, file);
        if (!book.Live.IsSettled) Session.Publisher.Publish(book, book.CheckSome(FilesForOneHover));
        var cursor = Cursor.At(file, offset);
        if (cursor.IsInComment || cursor.Token.Length == 0) return null;
        string? text = cursor.IsName ? Name(book, file, cursor)
            : file is Recipe recipe && cursor.Property?.Name == "name" && recipe.Name.IsGiven && recipe.Name.Span == cursor.Token
                ? Profile(book, recipe.Id)
            : References.KindOfValue(cursor.Property, cursor.Value) is { } kind
                && Thing(book, file, new Named(kind, cursor.Word), offset) is { } thing
                ? thing
            : file is Recipe its && Amount(book, its, offset) is { } amount ? amount
            : Word(cursor);
        return text is null ? null : (text, cursor.Token);
    }

    /// <summary>A name of a property, or of a thing in an object whose names are free.</summary>
    private string? Name(OpenBook book, BookFile file, Cursor cursor)
    {
        if (cursor.Map is { } map)
        {
            return map.Keys switch
            {
                KeyForm.RuleId => Rule(cursor.Word),
                KeyForm.PropertyPath => Limit(book, cursor.Word),
                KeyForm.UnitWord => Measure(book, cursor.Word),
                _ => null,
            };
        }

        if (cursor.Property is not { } property) return null;
        var text = new StringBuilder($"**{property.Name}**{(property.Required ? " (required)" : "")}: "
            + $"{ItemMarkdown.Escape(property.Description)}\n\n");
        text.Append(CultureInfo.InvariantCulture, $"It is {ItemMarkdown.Escape(property.Value.Noun)}.\n");
        if (property.Value.Words.Count > 0) text.Append($"\n{string.Join(", ", property.Value.Words.Select(w => $"`{w}`"))}\n");
        foreach (string example in property.Examples) text.Append($"```json\n\"{property.Name}\": {example}\n```\n");
        return text.ToString();
    }

    private static string? Word(Cursor cursor)
    {
        if (cursor.Property is not { } property) return null;
        string name = property.Name;
        string? of = name switch
        {
            "do" when Verb.Of(cursor.Word) is { IsKnown: true } verb =>
                verb.Id == cursor.Word ? "a step that the rules know" : $"the same as `{verb.Id}`",
            "ice" when Ice.Of(cursor.Word) is { IsKnown: true } ice =>
                ice.Id == cursor.Word ? "a kind of ice that the rules know" : $"the same as `{ice.Id}`",
            "style" when Style.Of(cursor.Word) is { IsKnown: true } style =>
                style.Id == cursor.Word ? "a style that the rules of balance know" : $"the same as `{style.Id}`",
            "do" or "ice" or "style" => "a word that the rules do not know",
            _ => null,
        };
        return $"{(of is null ? "" : $"`{cursor.Word}`: {of}\n\n")}{ItemMarkdown.Escape(property.Description)}\n";
    }

    private string? Thing(OpenBook book, BookFile file, Named thing, int offset) => thing.Kind switch
    {
        NamedKind.Item when file is Stock stock
            && stock.Lots.FirstOrDefault(l => l.Span.Start <= offset && offset <= l.Span.End) is { } lot =>
            ItemMarkdown.Lot(lot, book.Profiles) + (Profile(book, thing.Id) ?? ""),
        NamedKind.Item => Profile(book, thing.Id),
        NamedKind.Glass => Glass(book, thing.Id),
        NamedKind.Rule => Rule(thing.Id),
        NamedKind.Lot => LotCalled(book, thing.Id),
        _ => null,
    };

    private static string? Profile(OpenBook book, string id) =>
        book.Linked.Resolve(id) is { } item
            ? ItemMarkdown.Of(item, book.Profiles, book.Live.IsSettled ? book.Verdicts : null, DisplayUnits.Metric) : null;

    private static string? LotCalled(OpenBook book, string code)
    {
        var lots = book.Linked.LotsCalled(code);
        return lots.Count == 0 ? null : string.Concat(lots.Select(l => ItemMarkdown.Lot(l.Lot, book.Profiles)));
    }

    private static string? Glass(OpenBook book, string id)
    {
        if (book.Linked.Settings.Bar is { } bar && bar.Glasses.TryGetValue(id, out var own))
            return $"**{ItemMarkdown.Escape(id)}**, a glass of the bar: "
                + $"{(own.Brim.IsGiven ? $"{Say.Number(own.Brim.Value.Base, 0)} mL to the brim" : "its size is not given")}"
                + $"{(own.WashLine.IsGiven ? $", {Say.Number(own.WashLine.Value.Base, 0)} mL to the wash line" : "")}.\n";
        return GlassType.Of(id) is { IsKnown: true } type
            ? $"**{ItemMarkdown.Escape(type.Name)}**, a type of glass: {Say.Number(type.BrimLow, 0)}–{Say.Number(type.BrimHigh, 0)} mL "
                + $"to the brim ({ItemMarkdown.Escape(type.Source)}). The bar's own size goes into bar.json.\n"
            : null;
    }

    private string? Rule(string id)
    {
        if (RuleRegistry.Find(id) is not { } rule) return null;
        string page = Session.Pages.Of(id) is { } address ? $"[{id}]({address})" : id;
        return $"**{page}** ({rule.Level.ToString().ToLowerInvariant()}{(rule.Safety ? ", guards against harm" : "")}): "
            + $"{ItemMarkdown.Escape(rule.Title)}.\n";
    }

    private static string? Limit(OpenBook book, string name)
    {
        var known = Limits.All.Where(l => l.Id == name).ToList();
        string own = book.Linked.Settings.Bar is { } bar && bar.Limits.TryGetValue(name, out var set) && set.IsGiven
            ? $"The house sets {Say.With(set.Value.Value, set.Value.Unit.Name)}.\n\n"
            : "";
        if (known.Count == 0) return own.Length == 0 ? null : own;
        return own + string.Concat(known.Select(l =>
            $"Built in: {Say.With(l.Value, l.Unit)}{(l.Condition.Length > 0 ? $" ({ItemMarkdown.Escape(l.Condition)})" : "")}"
            + $", {ItemMarkdown.Escape(l.Source)}.\n\n"));
    }

    private static string? Measure(OpenBook book, string word) =>
        Measures.For(book.Linked.Settings.Bar?.Measures).TryFind(word, out var unit)
            ? $"`{word}` is {Say.Number(unit.Unit.Factor)} "
                + $"{(unit.Unit.Dimension == Dimension.Mass ? "g" : unit.Unit.Dimension == Dimension.Volume ? "mL" : "of a piece")} in this house.\n"
            : null;

    /// <summary>An amount of a line: in other units, and what it is made of.</summary>
    private static string? Amount(OpenBook book, Recipe recipe, int offset)
    {
        foreach (var part in book.Profiles.Of(recipe).Parts)
        {
            var amount = part.Line.Amount;
            if (!amount.IsGiven || offset < amount.Span.Start || offset > amount.Span.End) continue;
            return ItemMarkdown.Amount(part);
        }

        return null;
    }
}
