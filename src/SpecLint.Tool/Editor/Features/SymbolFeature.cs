using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>The parts of a document, and the files of all open books by name.</summary>
internal sealed class SymbolFeature(Session session) : Feature(session)
{
    private const int KindFile = 1, KindClass = 5, KindProperty = 7, KindField = 8, KindArray = 18, KindObject = 19;

    /// <summary>Symbols of a search, at most.</summary>
    private const int Most = 200;

    /// <summary>Properties by which an object of a list is named, the first that is there.</summary>
    private static readonly string[] NamedBy = ["item", "drink", "do", "id", "rule", "name", "from"];

    /// <summary>Properties that say more of it.</summary>
    private static readonly string[] ToldBy = ["amount", "for", "made", "opened", "ice", "because"];

    public override IReadOnlyList<string> Methods => ["textDocument/documentSymbol", "workspace/symbol"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteBoolean("documentSymbolProvider", true);
        json.WriteBoolean("workspaceSymbolProvider", true);
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartArray("result");
        if (method == "workspace/symbol")
        {
            Search(json, BuiltInCatalogue.Slug(Lsp.TextOf(parameters, "query")));
        }
        else if (Session.Find(Lsp.AddressIn(parameters)) is (_, var file) && file.Tree is { Root.Kind: JsonKind.Object } tree)
        {
            json.WriteStartObject();
            Symbol(
                json, file, file.Name.Or(file.Id), "", KindClass, tree.Root.Span,
                file.Name.IsGiven ? file.Name.Span : new TextSpan(tree.Root.Span.Start, 1));
            json.WriteStartArray("children");
            foreach (var property in tree.Root.Properties) Part(json, file, property);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Part(Utf8JsonWriter json, BookFile file, JsonNode node)
    {
        if (node.Name is "$schema" || !node.HasName && node.Kind != JsonKind.Object) return;
        string name = node.HasName ? node.Name : ValueOf(node, NamedBy), detail = node.HasName ? "" : ValueOf(node, ToldBy);
        if (name.Length == 0) name = "…";
        var whole = node.HasName ? new TextSpan(node.NameSpan.Start, node.Span.End - node.NameSpan.Start) : node.Span;
        json.WriteStartObject();
        Symbol(
            json,
            file,
            name,
            node.Kind is JsonKind.Object or JsonKind.Array ? detail : node.GetString(),
            node.Kind switch { JsonKind.Array => KindArray, JsonKind.Object => node.HasName ? KindObject : KindField, _ => KindProperty },
            whole,
            node.HasName ? node.NameSpan : whole);
        if (node.Kind is JsonKind.Array or JsonKind.Object && (node.HasName || node.Kind == JsonKind.Array))
        {
            json.WriteStartArray("children");
            foreach (var child in node.Items) Part(json, file, child);
            foreach (var child in node.Properties) Part(json, file, child);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static string ValueOf(JsonNode node, string[] names)
    {
        foreach (string name in names)
        {
            foreach (var property in node.Properties)
            {
                if (property.Name == name && property.Kind is JsonKind.String or JsonKind.Number) return property.GetString();
            }
        }

        return "";
    }

    private static void Symbol(Utf8JsonWriter json, BookFile file, string name, string detail, int kind, TextSpan whole, TextSpan head)
    {
        json.WriteString("name", Reports.DisplayText.Escape(name.Length == 0 ? "…" : name));
        if (detail.Length > 0) json.WriteString("detail", Reports.DisplayText.Escape(detail));
        json.WriteNumber("kind", kind);
        json.Range("range", file.At(whole));
        json.Range("selectionRange", file.At(head));
    }

    private void Search(Utf8JsonWriter json, string words)
    {
        int found = 0;
        foreach (var book in Session.Books.All)
        {
            foreach (var file in book.Linked.Files)
            {
                if (!file.Id.Contains(words, StringComparison.Ordinal)
                    && !(file.Name.IsGiven && BuiltInCatalogue.Slug(file.Name.Value).Contains(words, StringComparison.Ordinal)))
                    continue;
                if (++found > Most) return;
                json.WriteStartObject();
                json.WriteString("name", Reports.DisplayText.Escape(file.Name.Or(file.Id)));
                json.WriteString("containerName", file.Source.Path);
                json.WriteNumber("kind", KindFile);
                json.WritePropertyName("location");
                json.Location(Session.AddressOf(book, file.Source), file.Head);
                json.WriteEndObject();
            }
        }
    }
}
