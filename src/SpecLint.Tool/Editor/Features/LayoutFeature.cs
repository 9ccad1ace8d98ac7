using System.Text;
using System.Text.Json;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor.Features;

/// <summary>Lays a document out anew.</summary>
internal sealed class LayoutFeature(Session session) : Feature(session)
{
    public override IReadOnlyList<string> Methods => ["textDocument/formatting"];

    public override void WriteCapability(Utf8JsonWriter json, Client client) => json.WriteBoolean("documentFormattingProvider", true);

    public override void Answer(Utf8JsonWriter json, string method, JsonElement parameters)
    {
        json.WriteStartArray("result");
        if (Session.Find(Lsp.AddressIn(parameters)) is (_, var file) && JsonLayout.Of(file.Source) is { } laid) Write(json, file.Source, laid);
        json.WriteEndArray();
    }

    /// <summary>One edit of what differs, so that the cursor elsewhere stays where it is.</summary>
    private static void Write(Utf8JsonWriter json, SourceFile source, byte[] laid)
    {
        var old = source.Utf8.Span;
        int same = old.CommonPrefixLength(laid), most = Math.Min(old.Length, laid.Length) - same, tail = 0;
        if (same == old.Length && same == laid.Length) return;
        while (tail < most && old[^(tail + 1)] == laid[^(tail + 1)]) tail++;

        // No edit parts the bytes of a character, or a line's two end signs.
        while (same > 0 && !IsBoundary(laid, same) | !IsBoundary(old, same)) same--;
        while (tail > 0 && (!IsBoundary(old, old.Length - tail) || !IsBoundary(laid, laid.Length - tail))) tail--;
        json.Edit(new TextEdit(
            new Place(source, new TextSpan(same, old.Length - tail - same)),
            Encoding.UTF8.GetString(laid.AsSpan(same, laid.Length - tail - same))));
    }

    private static bool IsBoundary(ReadOnlySpan<byte> text, int at) =>
        at == text.Length || ((text[at] & 0xC0) != 0x80 && !(text[at] == (byte)'\n' && at > 0 && text[at - 1] == (byte)'\r'));
}
