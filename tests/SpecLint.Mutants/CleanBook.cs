using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Tests.OfficialDrinks;
using SpecLint.Tests.Published;
using SpecLint.Tests.Support;

namespace SpecLint.Mutants;

/// <summary>A file of a clean book.</summary>
internal sealed record CleanFile(CleanBook Book, string Path, JsonObject Root)
{
    /// <summary>Its id.</summary>
    public string Id => Path[..Path.IndexOf('.', StringComparison.Ordinal)];

    /// <summary>Whether it is a recipe.</summary>
    public bool IsRecipe => Path.EndsWith(".drink.json", StringComparison.Ordinal) || Path.EndsWith(".prep.json", StringComparison.Ordinal);
}

/// <summary>A book without planted mistakes, from which small books are cut.</summary>
internal sealed class CleanBook
{
    private readonly Dictionary<string, CleanFile> byId = new(StringComparer.Ordinal);
    private readonly Dictionary<string, CleanFile> byByProduct = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Finding>> before = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Level> beforeInWhole = new(StringComparer.Ordinal);

    private CleanBook(string name, JsonObject bar, IEnumerable<(string Path, JsonObject Root)> files)
    {
        Name = name;
        Bar = bar;
        Files = [.. files.Select(f => new CleanFile(this, f.Path, f.Root)).OrderBy(f => f.Path, StringComparer.Ordinal)];
        foreach (var file in Files)
        {
            byId.TryAdd(file.Id, file);
            if (file.Root["byProducts"] is not JsonArray left) continue;
            foreach (var one in left.OfType<JsonObject>())
            {
                if ((string?)one["id"] is { } id) byByProduct.TryAdd(id, file);
            }
        }

        Whole = Checker.Check(Input(Bar, Files.Select(f => (f.Path, f.Root))));
        foreach (var finding in Flat(Whole.Findings)) beforeInWhole[finding.Fingerprint] = finding.Level;
        Profiles = Whole.Profiles;
    }

    /// <summary>What it is called in the result.</summary>
    public string Name { get; }

    /// <summary>The file bar.json.</summary>
    public JsonObject Bar { get; }

    /// <summary>All other files, in ordinal order.</summary>
    public IReadOnlyList<CleanFile> Files { get; }

    /// <summary>The check of the whole book.</summary>
    public CheckResult Whole { get; }

    /// <summary>What its recipes come to.</summary>
    public ProfileSet Profiles { get; }

    /// <summary>The demo book, without the files that hold a planted mistake and without what rests on them.</summary>
    public static CleanBook Demo()
    {
        string folder = Repository.At("src", "SpecLint.Tool", "Demo");
        using var list = JsonDocument.Parse(File.ReadAllText(Repository.At("tests", "SpecLint.Tests", "Demo", "expected-mistakes.json")));
        var planted = list.RootElement.GetProperty("expected")
            .EnumerateArray()
            .Select(e => e.GetProperty("file").GetString()!)
            .ToHashSet(StringComparer.Ordinal);
        var all = Directory.EnumerateFiles(folder, "*.json").Select(p => (Path: Path.GetFileName(p), Root: Parse(File.ReadAllText(p)))).ToList();
        var gone = planted.Where(p => !p.EndsWith(".menu.json", StringComparison.Ordinal)).Select(IdOf).ToHashSet(StringComparer.Ordinal);
        var kept = all.Where(f => !planted.Contains(f.Path) && f.Path != "bar.json").ToList();
        while (kept.FirstOrDefault(f => References(f.Root).Any(gone.Contains)) is { Path: not null } resting)
        {
            kept.Remove(resting);
            gone.Add(IdOf(resting.Path));
        }

        return new CleanBook("demo book", all.Single(f => f.Path == "bar.json").Root, kept);
    }

    /// <summary>The official drinks.</summary>
    public static CleanBook Official()
    {
        var files = OfficialBook.Input.Files.Select(f => (f.Path, Root: Parse(Encoding.UTF8.GetString(f.Utf8.Span)))).ToList();
        return new CleanBook("official drinks", files.Single(f => f.Path == "bar.json").Root, files.Where(f => f.Path != "bar.json"));
    }

    /// <summary>The official drinks, their styles left out.</summary>
    public static CleanBook WithoutStyles() => Clean("official drinks, no style", OfficialBook.WithoutStyles);

    /// <summary>The drinks of published lists on which nothing is found, in millilitres, their styles left out.</summary>
    public static IEnumerable<CleanBook> Published()
    {
        foreach (var list in PublishedDrinks.Lists)
        {
            var book = Clean(PublishedDrinks.ListOf(IdOf(list.Files[1].Path)), list);
            foreach (var line in book.Files.SelectMany(f => f.Root["ingredients"]!.AsArray().OfType<JsonObject>())) InMillilitres(line);
            yield return Clean(book.Name, Input(book.Bar, book.Files.Select(f => (f.Path, f.Root))));
        }
    }

    /// <summary>The preparation formulas of the trade.</summary>
    public static CleanBook Preps() => Clean("formulas of the trade", new BookInput([PublishedDrinks.Bar, .. PublishedPreps.Files], Books.On));

    /// <summary>A generated book: amounts drawn around those of the trade.</summary>
    public static CleanBook Generated() =>
        Clean(
            "generated",
            new BookInput(
                [.. new SpecLint.Benchmarks.BookGenerator(400, 20261129)
                    .Files()
                    .Select(f => new Reading.SourceFile(f.Path[(f.Path.LastIndexOf('/') + 1)..], f.Text))],
                Books.On));

    /// <summary>The files of a book on which nothing is found but a label that was not read, and which rest on no others.</summary>
    private static CleanBook Clean(string name, BookInput input)
    {
        var troubled = Flat(Checker.Check(input).Findings)
            .Where(f => f.Level >= Level.Warning && f.Rule.Id != "SL7004")
            .Select(f => f.Subject)
            .ToHashSet(StringComparer.Ordinal);
        var files = input.Files.Select(f => (f.Path, Root: Parse(Encoding.UTF8.GetString(f.Utf8.Span)))).ToList();
        var kept = files.Where(f => f.Path != "bar.json" && !troubled.Contains(IdOf(f.Path))).ToList();
        while (kept.RemoveAll(f => References(f.Root).Any(id => files.Exists(o => IdOf(o.Path) == id) && !kept.Exists(o => IdOf(o.Path) == id))) > 0)
        {
        }

        return new CleanBook(name, files.Single(f => f.Path == "bar.json").Root, kept);
    }

    private static void InMillilitres(JsonObject line)
    {
        if ((string?)line["amount"] is { } text
            && Reading.QuantityReader.TryRead(text, Reading.Measures.Default, out var amount, out _)
            && amount.Unit.Name == "oz")
            line["amount"] = Draft.Say(30 * amount.Value, "ml");
    }

    /// <summary>The material of an item of the book or the catalogue.</summary>
    public Material? MaterialOf(string id) => Profiles.MaterialOf(id);

    /// <summary>The file of an id.</summary>
    public CleanFile? Find(string id) => byId.GetValueOrDefault(id);

    /// <summary>The findings that a change brings: those of the changed small book that the unchanged one has not, or at a lower level.</summary>
    public List<Finding> New(CleanFile file, JsonObject? bar, JsonObject changed, IReadOnlyDictionary<string, JsonObject> added)
    {
        var known = Before(file).ToLookup(f => f.Fingerprint, StringComparer.Ordinal);
        var found = Flat(Checker.Check(Small(file, bar ?? Bar, changed, added)).Findings);
        return [.. found.Where(f => !known[f.Fingerprint].Any(k => k.Level >= f.Level)
            && !(beforeInWhole.TryGetValue(f.Fingerprint, out var level) && level >= f.Level))];
    }

    /// <summary>Whether the clean recipe has a finding of one of some rules already: a mistake of that kind would not be seen in it.</summary>
    public bool Has(CleanFile file, string[] rules) => Before(file).Exists(f => f.Subject == file.Id && f.Level >= Level.Warning && rules.Contains(f.Rule.Id));

    /// <summary>The small book of a file with a mistake.</summary>
    public BookInput Mutated(Draft draft) => Small(draft.File, draft.ChangedBar ?? Bar, draft.Root, draft.Added);

    private List<Finding> Before(CleanFile file)
    {
        if (!before.TryGetValue(file.Path, out var known))
            before.Add(
                file.Path, known = [.. Flat(Checker.Check(Small(file, Bar, file.Root, new Dictionary<string, JsonObject>())).Findings)]);
        return known;
    }

    /// <summary>Findings with those folded beneath them.</summary>
    public static IEnumerable<Finding> Flat(IEnumerable<Finding> findings) => findings.SelectMany(f => Flat(f.Folded).Prepend(f));

    /// <summary>Parses an object.</summary>
    public static JsonObject Parse(string text) => System.Text.Json.Nodes.JsonNode.Parse(text)!.AsObject();

    private static string IdOf(string path) => path[..path.IndexOf('.', StringComparison.Ordinal)];

    /// <summary>bar.json, the file and what it rests on.</summary>
    private BookInput Small(CleanFile file, JsonObject bar, JsonObject changed, IReadOnlyDictionary<string, JsonObject> added)
    {
        var files = new Dictionary<string, JsonObject>(StringComparer.Ordinal) { [file.Path] = changed };
        foreach (var (path, root) in added) files[path] = root;
        var open = new Queue<JsonObject>(files.Values.Append(file.Root));
        while (open.TryDequeue(out var root))
        {
            foreach (string id in References(root))
            {
                if ((byId.TryGetValue(id, out var other) || byByProduct.TryGetValue(id, out other)) && files.TryAdd(other.Path, other.Root))
                    open.Enqueue(other.Root);
            }
        }

        return Input(bar, files.Select(f => (f.Key, f.Value)));
    }

    private static BookInput Input(JsonObject bar, IEnumerable<(string Path, JsonObject Root)> files) =>
        new([.. files.Append(("bar.json", bar)).Select(f => Books.File(f.Item1, f.Item2.ToJsonString(Written)))], Books.On) { Threads = 1 };

    private static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static IEnumerable<string> References(System.Text.Json.Nodes.JsonNode? node)
    {
        switch (node)
        {
            case JsonObject o:
                foreach (var (name, value) in o)
                {
                    if (name is "item" or "drink" or "batchOf" or "standsInFor" or "supersedes" or "like"
                        && value is JsonValue v
                        && v.TryGetValue(out string? id))
                        yield return id;
                    foreach (string below in References(value)) yield return below;
                }

                break;
            case JsonArray a:
                foreach (var one in a)
                {
                    foreach (string below in References(one)) yield return below;
                }

                break;
        }
    }
}
