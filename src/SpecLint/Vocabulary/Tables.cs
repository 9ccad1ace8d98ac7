using System.Text.Json;

namespace SpecLint.Vocabulary;

/// <summary>Access to the embedded tables of data.</summary>
internal static class Tables
{
    private const string Prefix = "table/";

    /// <summary>Names of the tables that start so, sorted.</summary>
    public static IEnumerable<string> NamesStartingWith(string start) =>
        Resources.Names.Where(n => n.StartsWith(Prefix + start, StringComparison.Ordinal))
            .Select(n => n.Substring(Prefix.Length)).OrderBy(n => n, StringComparer.Ordinal);

    /// <summary>Opens a table.</summary>
    public static JsonDocument Open(string name) =>
        JsonDocument.Parse(Resources.Read(Prefix + name), new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });

    /// <summary>The rows: the array at the root, or the first array in the root object.</summary>
    public static IEnumerable<JsonElement> Rows(JsonDocument document)
    {
        var root = document.RootElement;
        if (root.ValueKind == JsonValueKind.Object)
        {
            foreach (var property in root.EnumerateObject())
            {
                if (property.Value.ValueKind == JsonValueKind.Array) return property.Value.EnumerateArray();
            }
        }

        return root.EnumerateArray();
    }

    /// <summary>A text of a row; empty where it has none.</summary>
    public static string Text(this JsonElement row, string name) =>
        row.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";

    /// <summary>A number of a row; <see cref="double.NaN"/> where it has none.</summary>
    public static double Number(this JsonElement row, string name) =>
        row.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : double.NaN;

    /// <summary>A yes or no of a row; no where it has none.</summary>
    public static bool Flag(this JsonElement row, string name) => row.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.True;

    /// <summary>A list of texts of a row; a single text counts as a list of one.</summary>
    public static FixedList<string> Texts(this JsonElement row, string name)
    {
        if (!row.TryGetProperty(name, out var value)) return [];
        if (value.ValueKind == JsonValueKind.String) return [value.GetString()!];
        return value.ValueKind == JsonValueKind.Array ? [.. value.EnumerateArray().Select(v => v.GetString()!)] : [];
    }

    /// <summary>The mark of a row.</summary>
    public static Mark Mark(this JsonElement row) => row.Text("mark") switch
    {
        "read" => Vocabulary.Mark.Read,
        "computed" => Vocabulary.Mark.Computed,
        "common practice" => Vocabulary.Mark.CommonPractice,
        _ => Vocabulary.Mark.Memory,
    };
}
