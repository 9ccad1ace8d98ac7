using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>What can be folded: objects, lists and comments of several lines.</summary>
internal sealed class FoldingFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/foldingRange"];

    public override void WriteCapability(Utf8JsonWriter json, Client client) => json.WriteBoolean("foldingRangeProvider", true);

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartArray("result");
        if (Session.Find(Lsp.AddressIn(parameters)) is (_, var file) && file.Tree is { } tree)
        {
            for (int i = 0; i < tree.Count; i++)
            {
                if (tree[i].Kind is JsonKind.Object or JsonKind.Array) Fold(json, file.At(tree[i].Span), endsShort: 1, "region");
            }

            foreach (var comment in tree.Comments) Fold(json, file.At(comment), endsShort: 0, "comment");
        }

        json.WriteEndArray();
    }

    /// <summary>The line of the closing sign stays in sight.</summary>
    private static void Fold(Utf8JsonWriter json, Place place, int endsShort, string kind)
    {
        int start = place.Start.Line - 1, end = place.End.Line - 1 - endsShort;
        if (end <= start) return;
        json.WriteStartObject();
        json.WriteNumber("startLine", start);
        json.WriteNumber("endLine", end);
        json.WriteString("kind", kind);
        json.WriteEndObject();
    }
}
