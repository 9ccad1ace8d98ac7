using System.Text;
using System.Text.Json;
using SpecLint.Binding;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>What can be written at the cursor, by the shapes of the files and the tables of words.</summary>
internal sealed class CompletionFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/completion"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteStartObject("completionProvider");
        json.WriteStartArray("triggerCharacters");
        foreach (string sign in new[] { "\"", ":", " ", "-", "{" }) json.WriteStringValue(sign);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartObject("result");
        if (Session.At(parameters) is not var (book, file, offset))
        {
            json.WriteBoolean("isIncomplete", false);
            json.WriteStartArray("items");
            json.WriteEndArray();
            json.WriteEndObject();
            return;
        }

        var cursor = Cursor.At(file, offset);
        var choices = Choices(book, cursor, out bool isIncomplete);
        json.WriteBoolean("isIncomplete", isIncomplete);
        json.WriteStartArray("items");
        var place = file.At(cursor.Token);
        string typed = cursor.Token.Length == 0 ? "" : Encoding.UTF8.GetString(file.Source.Utf8.Span[cursor.Token.Start..offset]);
        for (int i = 0; i < choices.Count; i++) Write(json, choices[i], place, isIncomplete ? typed : null, i);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private List<Choice> Choices(OpenBook book, Cursor cursor, out bool isIncomplete)
    {
        isIncomplete = false;
        if (cursor.IsInComment) return [];
        bool snippets = Session.Client.TakesSnippets;
        if (cursor.IsEmptyFile && cursor.Token.Length == 0) return [Templates.File(cursor.File.Kind, snippets)];
        if (cursor.IsName) return cursor.Map is { } map ? Words.Keys(book, map, cursor) : Templates.Properties(cursor, snippets);
        if (cursor.Value is not { } value) return [];
        var choices = References.KindOfValue(cursor.Property, value) == NamedKind.Item
            ? Words.Items(book, cursor)
            : Words.Of(book, cursor, value);
        isIncomplete = value.Form == ValueForm.Id && choices.Count > 0;

        // Where a whole object is expected, it can be had with its properties.
        if (!cursor.IsText && Templates.Object(value, snippets) is { } whole) choices.Insert(0, whole);
        return choices;
    }

    private void Write(Utf8JsonWriter json, Choice choice, Place token, string? typed, int number)
    {
        const int Snippet = 2;
        json.WriteStartObject();
        json.WriteString("label", Reports.DisplayText.Escape(choice.Label));
        json.WriteNumber("kind", (int)choice.Kind);
        if (choice.Detail.Length > 0) json.WriteString("detail", Reports.DisplayText.Escape(choice.Detail));
        if (choice.Says.Length > 0) json.Markup("documentation", choice.Says);
        json.WriteString("sortText", number.ToString("00000", System.Globalization.CultureInfo.InvariantCulture));

        // What is already chosen by name or synonym is not to be weeded out by its id.
        json.WriteString("filterText", typed ?? (choice.Text.StartsWith('"') ? choice.Text : choice.Label));
        if (choice.IsSnippet) json.WriteNumber("insertTextFormat", Snippet);
        json.WritePropertyName("textEdit");
        json.Edit(new TextEdit(token, choice.Text));
        json.WriteEndObject();
    }
}
