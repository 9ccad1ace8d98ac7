using System.Text.Json;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>Diagnostics for editors that ask for them (pull diagnostics).</summary>
internal sealed class DiagnosticsFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/diagnostic", "workspace/diagnostic"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        if (!client.PullsDiagnostics) return;
        json.WriteStartObject("diagnosticProvider");
        json.WriteString("identifier", "speclint");
        json.WriteBoolean("interFileDependencies", true);
        json.WriteBoolean("workspaceDiagnostics", true);
        json.WriteEndObject();
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        if (method == "workspace/diagnostic") Workspace(json, parameters);
        else Document(json, parameters);
    }

    private void Document(Utf8JsonWriter json, JsonElement parameters)
    {
        json.WriteStartObject("result");
        if (Session.Find(Lsp.AddressIn(parameters)) is (var book, var file))
        {
            Session.CheckNow(book, file);
            Report(
                json, book, file.Source.Path,
                parameters.At("previousResultId") is { ValueKind: JsonValueKind.String } given ? given.GetString() : null);
        }
        else
        {
            json.WriteString("kind", "full");
            json.WriteStartArray("items");
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private void Workspace(Utf8JsonWriter json, JsonElement parameters)
    {
        var before = new Dictionary<string, string>(StringComparer.Ordinal);
        if (parameters.At("previousResultIds") is { ValueKind: JsonValueKind.Array } given)
        {
            foreach (var one in given.EnumerateArray()) before[Lsp.TextOf(one, "uri")] = Lsp.TextOf(one, "value");
        }

        json.WriteStartObject("result");
        json.WriteStartArray("items");
        foreach (var book in Session.Books.All)
        {
            if (book.IsOfAnotherDay) Session.Books.Reread(book);
            Session.Publisher.Publish(book, book.Settle());
            foreach (var file in book.Linked.Files)
            {
                string address = Session.AddressOf(book, file.Source);
                bool known = before.TryGetValue(address, out string? mark);
                if (!known && book.Live.FindingsIn(file.Source.Path).Count == 0) continue;
                json.WriteStartObject();
                json.WriteString("uri", address);
                if (Session.Books.DocumentAt(book.FullPath(file.Source.Path)) is { } document) json.WriteNumber("version", document.Version);
                else json.WriteNull("version");
                Report(json, book, file.Source.Path, mark);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private void Report(Utf8JsonWriter json, OpenBook book, string path, string? before)
    {
        byte[] diagnostics = Session.Publisher.Of(book, path);
        string mark = DiagnosticsPublisher.Mark(diagnostics);
        json.WriteString("kind", mark == before ? "unchanged" : "full");
        json.WriteString("resultId", mark);
        if (mark == before) return;
        json.WritePropertyName("items");
        json.WriteRawValue(diagnostics, skipInputValidation: true);
    }
}
