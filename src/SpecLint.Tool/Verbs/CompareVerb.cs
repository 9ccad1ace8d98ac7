using System.CommandLine;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>compare</c>: what a change does to the drinks.</summary>
internal sealed class CompareVerb : Verb
{
    private readonly Argument<string> before = new("BASE") { Description = "The version before: a folder, or a revision of the book's git repository." };
    private readonly Argument<string?> after = new("HEAD") { Description = "The version after: a folder or a revision; the book as it stands where none is given.", Arity = ArgumentArity.ZeroOrOne };
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

    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<string> colour = CommonOptions.Colour();

    public CompareVerb() => failAt.AcceptOnlyFromAmong("error", "warning", "note", "never");

    public override string Name => "compare";

    public override string Description =>
        "Prints what a change does to the drinks: facts before and after of each recipe that it reaches, also through a shared preparation; allergens, keeping, findings that came and went.";

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
        foreach (var option in new Option[] { book, format, units, output, failAt, on, threads, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string from = parsed.GetValue(before)!;
        string? to = parsed.GetValue(after);
        var day = parsed.GetValue(on) ?? host.Today();
        int threadCount = parsed.GetValue(threads);
        string bookPath = parsed.GetValue(book) ?? ".";
        var old = Files(host, from, bookPath, threadCount);
        var now = to is null ? BookFolder.Open(host, [bookPath], threadCount).Files : Files(host, to, bookPath, threadCount);
        if (old.Count == 0 && now.Count == 0) throw new UsageException($"neither {from} nor {to ?? bookPath} holds a file of a book.");
        var comparison = Comparison.Of(
            Checker.Check(new BookInput(old, day) { Threads = threadCount }),
            Checker.Check(new BookInput(now, day) { Threads = threadCount }));
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

        return Settings.TryLevel(parsed.GetValue(failAt)!, out var threshold) && comparison.New.Any(f => f.Level >= threshold) ? ExitStatus.Findings : ExitStatus.Clean;
    }

    /// <summary>The files of a folder, or of a revision of the book.</summary>
    private static IReadOnlyList<SourceFile> Files(Host host, string named, string bookPath, int threads) =>
        Directory.Exists(host.FullPath(named)) ? BookFolder.Open(host, [named], threads).Files : GitBook.Read(BookFolder.RootOf(host, bookPath), named);
}
