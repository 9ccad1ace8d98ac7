using System.Text.Json;
using SpecLint.Benchmarks;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Pages;

/// <summary>A fact that needs a Firefox and npm; without them it is skipped and says so.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FirefoxFactAttribute : LongFactAttribute
{
    public FirefoxFactAttribute()
    {
        if (Skip is not null) return;
        if (BenchPage.Firefox is null) Skip = "DID NOT RUN: no Firefox was found. Put firefox-esr or firefox on PATH.";
        else if (Browser.Chromium is null || Browser.OnPath("npm") is null || Browser.OnPath("node") is null) Skip = "DID NOT RUN: it needs Chromium, node and npm.";
    }
}

/// <summary>
/// The bench, published as a release does it, and used in a headless Chromium; the books whose outputs are compared with the command's
/// are the demo book and generated ones.
/// </summary>
public sealed class BenchPage : IDisposable
{
    /// <summary>Generated books, each of another seed.</summary>
    public const int Generated = 200;

    private const int RecipesInBook = 12;
    private const ulong Seed = 20261125;

    private readonly TestFolder folder = new();
    private readonly DemoBook demo = new();
    private JsonDocument? seen;
    private JsonDocument? seenInFirefox;

    /// <summary>A drink that fits its style, for pictures and for what is kept.</summary>
    public const string Picture = "Ebb Tide\n50 ml gin\n25 ml lime juice\n20 ml simple syrup\n2 dashes orange bitters\nShake with cubed ice for 12 s, fine strain into a coupe\nstyle: shaken sour\ngarnish with mint";

    /// <summary>Recipes as published lists print them, amounts and method in their own words.</summary>
    public static readonly string[] Published =
    [
        "Daiquiri\n60 ml white rum\n20 ml fresh lime juice\n2 bar spoons superfine sugar\nShake with ice, fine strain into a chilled coupe",
        "Negroni\n30 ml gin\n30 ml sweet vermouth\n30 ml red bitter aperitif\nBuild in an old fashioned glass over ice\nGarnish with orange slice",
        "Tom Collins\n45 ml gin\n30 ml lemon juice\n15 ml sugar syrup\ntop with soda water\nBuild in a highball over ice",
        "Margarita\n1 3/4 oz tequila\n3/4 oz triple sec\n½ oz freshly squeezed lime juice\nShake with ice and strain into a margarita glass",
        "Manhattan\n50 ml rye whiskey\n20 ml sweet red vermouth\n1 dash aromatic bitters\nStir over ice, strain into a chilled martini glass",
    ];

    private const string Harm = "Garlic oil\n500 g olive oil\n60 g garlic\nSteep for 24 h\nfamily: other\nmakes 500 g\nkeep at 20 °C in a bottle for 30 d";
    private const string Overflow = "Spring Tide\n90 ml gin\n45 ml lime juice\n40 ml simple syrup\nShake with cubed ice for 12 s, fine strain into a coupe\nstyle: shaken sour";
    private const string Label = "Saline 20 %\n20 g salt\n80 g water\nStir until dissolved\nfamily: saline\nmakes 100 g\nkeep at 4 °C in a bottle for 14 d\nallergens: none";
    private const string Unclear = "Ebb Tide\n50 ml gin\n2 dashes orange biters";

    private static readonly string[] Hostile =
    [
        "<script>globalThis.pwned=1</script>\n50 ml <img src=x onerror=\"globalThis.pwned=1\">\n20 ml gin",
        "Name\n50 ml gin\n20 ml \"><svg onload=globalThis.pwned=1>\nstyle: '><script>globalThis.pwned=1</script>",
        "N\u0000a\u001b[2Jm\u202Ee \u2066x\n50 ml g\u0007in\nnote: javascript:globalThis.pwned=1",
        "{ \"name\": \"<iframe src='javascript:globalThis.pwned=1'>\", \"ingredients\": [ { \"item\": \"<b>\", \"amount\": \"5 ml\" } ] }",
        "https://example.org/?a=<a href=https://example.org>x</a>\n50 ml [gin](https://example.org)",
        new string('x', 1 << 20),
        string.Join("\n", Enumerable.Range(0, 1000).Select(i => $"{i} ml <b>thing {i}</b>")),
    ];

    /// <summary>Packages of which the page brings a file along: what it is called there, and in the package.</summary>
    public static readonly (string Package, string Theirs, string Ours)[] VendoredFiles =
    [
        ("marked@18.2.1", "marked/lib/marked.esm.js", "marked.js"), ("marked@18.2.1", "marked/LICENSE", "marked.LICENSE.txt"),
        ("uqr@0.1.3", "uqr/dist/index.mjs", "uqr.js"), ("uqr@0.1.3", "uqr/LICENSE", "uqr.LICENSE.txt"),
    ];

    private static IEnumerable<string> Vendored => VendoredFiles.Select(f => f.Package).Distinct();

    /// <summary>What was seen in Chromium.</summary>
    public JsonElement Seen => (seen ??= Look()).RootElement;

    /// <summary>What was seen in Firefox.</summary>
    public JsonElement SeenInFirefox => (seenInFirefox ??= LookInFirefox()).RootElement;

    /// <summary>Path of Firefox; <see langword="null"/> where there is none.</summary>
    public static string? Firefox { get; } = Browser.OnPath("firefox-esr") ?? Browser.OnPath("firefox");

    /// <summary>The books, by name: the folder of each and the day of its check.</summary>
    public IReadOnlyList<(string Name, string Folder, string On)> Books { get; private set; } = [];

    /// <summary>What the browser wrote in the place of an output of the command.</summary>
    public byte[] Output(string book, string verb) => File.ReadAllBytes(folder[$"outputs/{book}.{verb}.json"]);

    /// <summary>A file of a package that was installed for the run.</summary>
    public string Installed(string path) => folder["node_modules/" + path];

    /// <summary>The page as published.</summary>
    public string Page => folder["page/wwwroot"];

    public void Dispose()
    {
        seen?.Dispose();
        seenInFirefox?.Dispose();
        demo.Dispose();
        folder.Dispose();
    }

    private JsonDocument Look()
    {
        Run("dotnet", ["publish", Repository.At("src", "SpecLint.Page"), "-c", "Release", "-v", "q", "--nologo", "-o", folder["page"]]);
        Run("npm", ["install", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", folder.Path, .. Browser.Packages, "jsqr@1.4.0", "pngjs@7.0.0", .. Vendored]);
        Directory.CreateDirectory(Browser.Pictures);
        Directory.CreateDirectory(folder["outputs"]);
        var books = new List<(string, string, string)> { ("demo", demo.Path, ToolRun.Day) };
        for (int i = 0; i < Generated; i++)
        {
            string at = folder[$"books/{i}"];
            new BookGenerator(RecipesInBook, Seed + (ulong)i).WriteTo(at);
            books.Add(($"book-{i}", at, ToolRun.Day));
        }

        Books = books;
        folder.Write("task.json", JsonSerializer.Serialize(new
        {
            chromium = Browser.Chromium,
            firefox = Firefox,
            modules = folder.Path,
            page = Page,
            pictures = Browser.Pictures,
            outputs = folder["outputs"],
            folder = demo.Path,
            texts = new { picture = Picture, published = Published, harm = Harm, overflow = Overflow, label = Label, unclear = Unclear, hostile = Hostile },
            books = books.Select(b => new { name = b.Item1, on = b.Item3, files = FilesOf(b.Item2) }),
        }));
        return JsonDocument.Parse(Run("node", [Path.Combine(AppContext.BaseDirectory, "Pages", "bench.mjs"), folder["task.json"]]));
    }

    private JsonDocument LookInFirefox()
    {
        _ = Seen;
        Run("npm", ["install", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", folder.Path, "puppeteer-core@24.43.1"]);
        return JsonDocument.Parse(Run("node", [Path.Combine(AppContext.BaseDirectory, "Pages", "bench-firefox.mjs"), folder["task.json"]]));
    }

    /// <summary>The files of a book as the command reads them.</summary>
    private static IEnumerable<object> FilesOf(string root) =>
        Directory.EnumerateFiles(root, "*.json", SearchOption.AllDirectories)
            .Select(f => (Path: Path.GetRelativePath(root, f).Replace('\\', '/'), Full: f))
            .Where(f => SpecLint.Book.FileKinds.Of(f.Path) is not null)
            .Select(f => (object)new { path = f.Path, base64 = Convert.ToBase64String(File.ReadAllBytes(f.Full)) });

    private static string Run(string file, string[] args)
    {
        var run = Programs.Run(Environment.CurrentDirectory, file, args);
        return run.Status == 0 ? run.Output : throw new InvalidOperationException($"{file} ended with {run.Status}: {run.Text}");
    }
}
