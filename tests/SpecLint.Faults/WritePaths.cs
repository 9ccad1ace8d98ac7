using SpecLint.Tool.Tests.Support;

namespace SpecLint.Faults;

/// <summary>A verb that writes, and the folder it writes in.</summary>
/// <param name="Name">What it is called in the report.</param>
/// <param name="Files">The files before the run, by path.</param>
/// <param name="Args">The command.</param>
/// <param name="Input">Standard input.</param>
/// <param name="Repeats">Whether a second run leaves what the first one has written.</param>
/// <param name="Dies">Whether the process is ended at each call too, which takes a process each.</param>
internal sealed record WritePath(
    string Name, IReadOnlyDictionary<string, string> Files, string[] Args, string Input = "", bool Repeats = true, bool Dies = false);

/// <summary>Every way in which the command writes a file.</summary>
internal static class WritePaths
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "glasses": { "coupe": { "brim": "190 ml" } } }""";

    private const string Comma = """
        { "name": "Groundswell", "ingredients": [ { "item": "gin", "amount": "45,0 ml" }, { "item": "lime-juice", "amount": "22,5 ml" }, { "item": "bay-syrup", "amount": "15 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "glass": "coupe", "declares": { "allergens": [] } }
        """;

    private const string Syrup = """
        { "name": "Bay syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "1 kg", "keep": { "at": "4 °C", "in": "bottle", "for": "5 d" }, "declares": { "allergens": [] } }
        """;

    private const string Stock = """{ "on": "2026-11-25", "lots": [ { "item": "bay-syrup", "lot": "B1", "made": "2026-11-24", "amount": "1 l", "at": "4 °C" } ] }""";

    private static readonly Dictionary<string, string> Book = new(StringComparer.Ordinal)
    {
        ["bar.json"] = Bar,
        ["groundswell.drink.json"] = Comma,
        ["swell.drink.json"] = Comma.Replace("Groundswell", "Swell", StringComparison.Ordinal),
        ["bay-syrup.prep.json"] = Syrup,
        ["fridge.stock.json"] = Stock,
    };

    /// <summary>The reports of the two parts of a book without recipes.</summary>
    private static readonly Dictionary<string, string> Parts = new(StringComparer.Ordinal)
    {
        ["1.json"] = PartReport(1),
        ["2.json"] = PartReport(2),
        ["whole.json"] = "the old report",
    };

    private static readonly Dictionary<string, string> Right = new(Book, StringComparer.Ordinal)
    {
        ["groundswell.drink.json"] = Comma.Replace(",0 ml", ".0 ml", StringComparison.Ordinal).Replace(",5 ml", ".5 ml", StringComparison.Ordinal),
        ["swell.drink.json"] = Comma.Replace("Groundswell", "Swell", StringComparison.Ordinal)
            .Replace(",0 ml", ".0 ml", StringComparison.Ordinal)
            .Replace(",5 ml", ".5 ml", StringComparison.Ordinal),
    };

    /// <summary>All of them; each verb of the command that writes is one or more.</summary>
    public static IReadOnlyList<WritePath> All { get; } =
    [
        new("check --output, new file", Book, ["check", "--output", "report.txt"]),
        new("check --output, over a file", With(Book, "report.txt", "the old report"), ["check", "--format", "json", "--output", "report.txt"], Dies: true),
        new("check --format sarif --output", With(Book, "out/report.sarif", "the old log"), ["check", "--format", "sarif", "--output", "out/report.sarif"]),
        new("combine --output", Parts, ["combine", "1.json", "2.json", "--output", "whole.json"], Dies: true),
        new("correct --apply", Book, ["correct", "--apply", "SL2001", "--admit-new"], Dies: true),
        new("adjust --write", Right, ["adjust", "groundswell", "--abv", "18", "--write", "--admit-new"], Repeats: false),
        new("record, a recipe", Right, ["record", "bay-syrup", "--brix", "50"]),
        new("record, a lot", Right, ["record", "B1", "--brix", "50"]),
        new("neaten", Book, ["neaten"]),
        new("baseline --create", Book, ["baseline", "--create", "--because", "The book starts with them.", "--until", "2027-03-01"]),
        new(
            "baseline --refresh",
            With(
                Right,
                "speclint-baseline.json",
                """{ "version": 1, "fingerprints": "specLint/v1", "findings": [ { "fingerprint": "gone", "rule": "SL2001", "level": "note", "because": "It was there." } ] }"""),
            ["baseline", "--refresh"]),
        new("labels --output", Right, ["labels", "--made", "bay-syrup=2026-11-25", "--output", "labels.html"]),
        new("card --output", Right, ["card", "groundswell", "--output", "card.html"]),
        new("profile --output", With(Right, "figures.csv", "old"), ["profile", "--format", "csv", "--output", "figures.csv"]),
        new("new drink", Right, ["new", "drink", "Half Tide", "50 ml gin", "25 ml lemon juice"], Dies: true),
        new("new ingredient", Right, ["new", "ingredient", "Fogbank Dry Gin", "gin"]),
        new("new menu", Right, ["new", "menu", "Friday", "30 groundswell"]),
        new(
            "write-up --write",
            Right,
            ["write-up", "-", "--write"],
            "# Half Tide\n50 ml gin\n25 ml lemon juice\nShake and strain.\n\n# Neap Tide\n50 ml rum\n25 ml lime "
                + "juice\nShake and strain.\n"),
        new("prices --write", With(Right, "list.csv", "item,price,for\ngin,22.50,700 ml\nlime juice,4,1 l\n"), ["prices", "list.csv", "--write", "Autumn"]),
        new("start --empty", new Dictionary<string, string>(StringComparer.Ordinal), ["start", "book", "--empty"], Dies: true),
        new("start in a book", Right, ["start", "."]),
        new("start", new Dictionary<string, string>(StringComparer.Ordinal), ["start", "a/new/book"]),
        new("bench", With(With([], "page/index.html", "<p>bench"), "page/parts/a.js", "// a"), ["bench", "out"]),
    ];

    /// <summary>The verbs that only read, or write to standard output and <c>--output</c> in the way of those above.</summary>
    public static IReadOnlySet<string> Others { get; } = new HashSet<string>(StringComparer.Ordinal)
    {
        "compare", "completion", "costs", "editor", "event", "find", "guests", "hook", "linecheck", "manual", "rules", "scale", "settings", "trace",
    };

    /// <summary>The verbs of the command that are in neither list: a new one has to be put into one of them.</summary>
    public static IReadOnlyList<string> Forgotten =>
        [.. SpecLint.Tool.Shell.Verbs.Select(v => v.Name).Where(n => !Others.Contains(n) && !All.Any(p => p.Args[0] == n))];

    /// <summary>Runs the command of a path in a folder.</summary>
    public static ToolRun Run(this WritePath path, string folder) =>
        ToolRun.With(folder, new RunOptions { Input = path.Input, PageFolder = Path.Combine(folder, "page") }, path.Args);

    private static string PartReport(int number) => $$"""
        {
          "tool": { "name": "SpecLint", "version": "0.1.0" },
          "on": "2026-11-25",
          "part": { "number": {{number}}, "of": 2, "book": "8377c32af847d20caed944ed7f299723" },
          "files": 1,
          "recipes": 0,
          "counts": { "error": 0, "warning": 0, "note": 0, "accepted": 0, "acceptedSafety": 0 },
          "harmPutAside": { "count": 0, "accepted": 0, "switchedOff": 0, "inBaseline": 0, "lowered": 0 },
          "findings": [],
          "accepted": [],
          "closing": ""
        }
        """;

    private static Dictionary<string, string> With(
        Dictionary<string, string> files, string path, string text) => new(files, StringComparer.Ordinal) { [path] = text };
}
