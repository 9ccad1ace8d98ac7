using System.CommandLine;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>compare</c>: what a change does to the drinks.</summary>
internal sealed class CompareVerb : Verb
{
    private readonly Argument<string> before = new("BASE")
    {
        Description = "The version before: a folder, or a revision of the book's git repository.",
    };
    private readonly Argument<string?> after = new("HEAD")
    {
        Description = "The version after: a folder or a revision; default: the book as it is now.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> format = CommonOptions.Format("text", "json", "markdown");
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> failAt = new("--fail-at")
    {
        Description = "Lowest level at which new findings make the exit status 1.",
        HelpName = "error|warning|note|never",
        DefaultValueFactory = _ => "never",
    };

    private readonly Option<string[]> rules = CommonOptions.HouseRules();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<string> colour = CommonOptions.Colour();

    public CompareVerb() => failAt.TakesOneOf("error", "warning", "note", "never");

    public override string Name => "compare";

    public override string Description =>
        "Prints what a change does to the drinks: facts before and after of each recipe that it reaches, also through a shared "
            + "preparation; allergens, keeping, findings that came and went.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint compare main --book recipes",
        "speclint compare v1.0 HEAD --book recipes --format markdown",
        "speclint compare old-recipes recipes",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(before);
        command.Arguments.Add(after);
        foreach (var option in new Option[] { book, format, units, output, failAt, rules, on, threads, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string from = parsed.GetValue(before)!;
        string? to = parsed.GetValue(after);
        var houseRules = HouseRuleFiles.Load(host, parsed.GetValue(rules) ?? []);
        int threadCount = parsed.GetValue(threads);
        string bookPath = parsed.GetValue(book) ?? ".";
        string head = to is not null && Directory.Exists(host.FullPath(to)) ? to : bookPath;
        var day = CommonOptions.DayOf(parsed.GetValue(on), BookFolder.SetOnOf(BookFolder.RootOf(host, head)), host);
        var old = Input(from);
        var now = to is null ? OfFolder(bookPath) : Input(to);
        if (old.Files.Count == 0 && now.Files.Count == 0) throw new UsageException($"neither {from} nor {to ?? bookPath} holds a file of a book.");
        var comparison = HouseRuleFiles.Run(houseRules, () =>
        {
            var first = Checker.Check(old);
            return Comparison.Of(first, Checker.Check(now with { Earlier = first.Book }));
        });
        string? file = parsed.GetValue(output);
        var shown = CommonOptions.UnitsOf(parsed.GetValue(units));
        switch (parsed.GetValue(format))
        {
            case "json":
                ResultOutput.Deliver(host, file, stream => ComparisonReport.WriteJson(stream, comparison));
                break;
            case "markdown":
                ResultOutput.DeliverText(host, file, writer => ComparisonReport.WriteMarkdown(writer, comparison, shown));
                break;
            default:
                bool inColour = CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host);
                ResultOutput.DeliverText(host, file, writer => ComparisonReport.WriteText(writer, comparison, inColour, shown));
                break;
        }

        return Settings.TryLevel(parsed.GetValue(failAt)!, out var threshold) && comparison.New.Any(f => f.Level >= threshold)
            ? ExitStatus.Findings
            : ExitStatus.Clean;

        BookInput Input(string named) => Directory.Exists(host.FullPath(named)) ? OfFolder(named) : OfRevision(named);

        BookInput OfFolder(string path) => BookFolder.Open(host, [path], threadCount).ToInput(day, threadCount) with { HouseRules = houseRules };

        // A revision is looked at by the rules and schemas of the book as it stands, so that what differs is the recipes.
        BookInput OfRevision(string revision)
        {
            string root = BookFolder.RootOf(host, bookPath);
            return new BookInput(GitBook.Read(root, revision), day)
            {
                Threads = threadCount,
                HouseSchemas = BookFolder.HouseSchemasOf(root),
                HouseRules = houseRules,
            };
        }
    }
}
