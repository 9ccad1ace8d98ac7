using System.Text;
using System.Text.Json;
using SpecLint.Reading;
using SpecLint.Tool.Editor.Protocol;

namespace SpecLint.Tool.Editor;

/// <summary>A document that is open in the editor: its text, saved or not, and its version.</summary>
internal sealed class OpenDocument(string path, int version, string text)
{
    private byte[] utf8 = Encoding.UTF8.GetBytes(text);

    /// <summary>Full path.</summary>
    public string Path { get; } = path;

    /// <summary>The version that the editor gave the text.</summary>
    public int Version { get; private set; } = version;

    /// <summary>The text.</summary>
    public byte[] Utf8 => utf8;

    /// <summary>Applies changes, one after the other: ranges of the text as it then is, or the whole of it.</summary>
    /// <exception cref="InvalidOperationException">A change has no text, or one that is not text.</exception>
    public void Apply(int? to, JsonElement changes)
    {
        foreach (var change in changes.EnumerateArray())
        {
            byte[] added = Encoding.UTF8.GetBytes(Lsp.TextOf(change, "text"));
            if (!change.TryGetProperty("range", out var range) || range.ValueKind != JsonValueKind.Object)
            {
                utf8 = added;
                continue;
            }

            var now = new SourceFile("", utf8);
            int from = now.OffsetOf(Lsp.PositionOf(range.GetProperty("start"))), end = now.OffsetOf(Lsp.PositionOf(range.GetProperty("end")));
            if (end < from) (from, end) = (end, from);
            byte[] changed = new byte[from + added.Length + (utf8.Length - end)];
            utf8.AsSpan(0, from).CopyTo(changed);
            added.CopyTo(changed.AsSpan(from));
            utf8.AsSpan(end).CopyTo(changed.AsSpan(from + added.Length));
            utf8 = changed;
        }

        Version = to ?? Version + 1;
    }
}
