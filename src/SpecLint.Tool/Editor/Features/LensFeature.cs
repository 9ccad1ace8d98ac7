using System.Text.Json;
using SpecLint.Book;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>The commands of a recipe, above its name.</summary>
internal sealed class LensFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/codeLens"];

    public override void WriteCapability(Utf8JsonWriter json, Client client)
    {
        json.WriteStartObject("codeLensProvider");
        json.WriteBoolean("resolveProvider", false);
        json.WriteEndObject();
    }

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartArray("result");
        if (Session.Find(Lsp.AddressIn(parameters)) is (var book, Recipe recipe))
        {
            foreach (var (command, title) in CommandFeature.Commands)
            {
                json.WriteStartObject();
                json.Range("range", recipe.Head);
                json.WriteStartObject("command");
                json.WriteString("title", title);
                json.WriteString("command", command);
                json.WriteStartArray("arguments");
                json.WriteStringValue(Session.AddressOf(book, recipe.Source));
                json.WriteEndArray();
                json.WriteEndObject();
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }
}
