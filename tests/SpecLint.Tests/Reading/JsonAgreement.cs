using System.Text;
using System.Text.Json;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

/// <summary>
/// Compares our reader with System.Text.Json, which reads RFC 8259 and, by its options, the comments and the last comma that our files may
/// have.
/// </summary>
internal static class JsonAgreement
{
    /// <summary>System.Text.Json as it reads what our files may hold.</summary>
    public static readonly JsonDocumentOptions Lenient = new() { MaxDepth = 1 << 20, AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    /// <summary>Whether System.Text.Json reads a text.</summary>
    public static bool Reads(ReadOnlyMemory<byte> bytes, JsonDocumentOptions options)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes, options);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>How the two readers differ over a text; <see langword="null"/> where they agree.</summary>
    public static string? Difference(byte[] bytes)
    {
        var problems = new List<ReadingProblem>();
        var tree = JsonTree.Parse(new SourceFile("a.drink.json", bytes), problems);
        string shown = Encoding.Latin1.GetString(bytes);

        // System.Text.Json does not look at the bytes of a text until somebody asks for it.
        if (!System.Text.Unicode.Utf8.IsValid(bytes)) return problems.Count > 0 ? null : "invalid UTF-8 is read without a word: " + shown;
        bool hasMark = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble);
        var text = bytes.AsMemory(hasMark ? 3 : 0);
        if (!Reads(text, Lenient))
            return problems.Exists(p => p.Kind is ReadingProblemKind.Syntax or ReadingProblemKind.Encoding)
                ? null
                : "we read what is not JSON: " + shown;
        if (problems.Exists(p => p.Kind == ReadingProblemKind.Syntax)) return "we refuse JSON: " + shown;
        if (problems.Exists(p => p.Kind is ReadingProblemKind.Encoding or ReadingProblemKind.TooDeep)) return null;
        using var document = JsonDocument.Parse(text, Lenient);
        return IsSame(document.RootElement, tree.Root, tree) ? null : "we read something else: " + shown;
    }

    private static bool IsSame(JsonElement theirs, JsonNode ours, JsonTree tree)
    {
        switch (theirs.ValueKind)
        {
            case JsonValueKind.Object:
                if (ours.Kind != JsonKind.Object) return false;
                var inner = ours.FirstChild;
                foreach (var property in theirs.EnumerateObject())
                {
                    if (!inner.Exists || inner.Name != property.Name || !IsSame(property.Value, inner, tree)) return false;
                    inner = inner.Next;
                }

                return !inner.Exists;
            case JsonValueKind.Array:
                if (ours.Kind != JsonKind.Array) return false;
                var item = ours.FirstChild;
                foreach (var value in theirs.EnumerateArray())
                {
                    if (!item.Exists || !IsSame(value, item, tree)) return false;
                    item = item.Next;
                }

                return !item.Exists;
            case JsonValueKind.String:
                return ours.Kind == JsonKind.String && ours.GetString() == theirs.GetString();
            case JsonValueKind.Number:
                return ours.Kind == JsonKind.Number && tree.Source.TextOf(ours.Span) == theirs.GetRawText()
                    && (!theirs.TryGetDouble(out double number) || double.IsInfinity(number) || ours.GetDouble().Equals(number));
            default:
                return theirs.GetRawText() == tree.Source.TextOf(ours.Span);
        }
    }
}
