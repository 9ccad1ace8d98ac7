using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Reading;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Properties;

/// <summary>A book as paths and JSON trees, small enough to print when a property fails on it.</summary>
internal sealed record PropertyBook
{
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private SortedDictionary<string, JsonObject> files { get; init; }

    private PropertyBook(string name, SortedDictionary<string, JsonObject> files)
    {
        Name = name;
        this.files = files;
    }

    /// <summary>Where it comes from.</summary>
    public string Name { get; }

    /// <summary>
    /// Harm findings that it must have as it is: by the page that it is from, which tells no level (<see cref="Level.None"/>), or by
    /// what it holds, with the highest level of the rule on it.
    /// </summary>
    public IReadOnlyList<(string Rule, Level Highest)> Expected { get; init; } = [];

    /// <summary>Whether these are all its harm findings, as on the page of a rule.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Each harm finding that its page marks, as <c>SL5005 on cream.prep.json</c>, sorted; <see langword="null"/> where it is from none.</summary>
    public IReadOnlyList<string>? Places { get; init; }

    /// <summary>Its paths, sorted.</summary>
    public IReadOnlyCollection<string> Paths => files.Keys;

    /// <summary>A book of texts; <see langword="null"/> where one of them is not an object of JSON.</summary>
    public static PropertyBook? Of(string name, IEnumerable<(string Path, string Text)> texts)
    {
        var files = new SortedDictionary<string, JsonObject>(StringComparer.Ordinal) { ["bar.json"] = Parse(Books.PlainBar)! };
        foreach (var (path, text) in texts)
        {
            if (Parse(text) is not { } tree) return null;
            files[path] = tree;
        }

        return new PropertyBook(name, files);
    }

    /// <summary>The tree of a file; <see langword="null"/> where there is none.</summary>
    public JsonObject? this[string path] => files.TryGetValue(path, out var tree) ? tree : null;

    /// <summary>A copy that may be changed.</summary>
    public PropertyBook Copy() =>
        this with
        {
            files = new SortedDictionary<string, JsonObject>(
            files.ToDictionary(f => f.Key, f => (JsonObject)f.Value.DeepClone()), StringComparer.Ordinal)
        };

    /// <summary>The same book with a file more, or another in its place.</summary>
    public void Put(string path, JsonObject tree) => files[path] = tree;

    /// <summary>Takes a file out.</summary>
    public void Remove(string path) => files.Remove(path);

    /// <summary>Checks it.</summary>
    public CheckResult Check() => Checker.Check(Input());

    /// <summary>What is checked.</summary>
    public BookInput Input() =>
        new(
            [.. files.Select(f => new SourceFile(
                f.Key, JsonSerializer.SerializeToUtf8Bytes(f.Value, Indented)))], Books.On)
        { Threads = 1 };

    /// <summary>Its files, to be read by people and copied into an example.</summary>
    public override string ToString() => string.Join("\n", files.Select(f => $"// == {f.Key}\n{f.Value.ToJsonString(Indented)}"));

    private static JsonObject? Parse(string text)
    {
        try
        {
            return System.Text.Json.Nodes.JsonNode.Parse(text, null, Lenient) as JsonObject;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
