using System.CommandLine;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>linecheck</c>: a menu against what is in the house, before service.</summary>
internal sealed class LineCheckVerb : Verb
{
    private readonly Argument<string> menu = new("MENU")
    {
        Description = "The menu: its file, or its id with --book; a folder of a book "
        + "stands for its only menu."
    };
    private readonly Option<string?> stock = new("--stock")
    {
        Description = "Stock file of the book, by path or id; default: every stock file of the book.",
        HelpName = "FILE",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string> format = CommonOptions.Format("text", "json", "csv", "sarif", "html");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "linecheck";

    public override string Description =>
        "Checks a menu against the stock before service: what can be served, and what to make, measure or discard. Exit status 1 when a "
            + "drink cannot be served as it is written.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint linecheck recipes/evening.menu.json --on 2026-11-25",
        "speclint linecheck evening --book recipes --stock bar-fridge",
        "speclint linecheck evening --format html --output evening.html",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(menu);
        foreach (var option in new Option[] { stock, book, on, units, format, output, threads, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        int threadCount = parsed.GetValue(threads);
        var named = NamedBook.Open(host, parsed.GetValue(menu), parsed.GetValue(book), threadCount);
        var folder = named.Folder;
        var day = CommonOptions.DayOf(parsed.GetValue(on), folder, host);
        var result = Checker.Check(folder.ToInput(day, threadCount));
        var chosen = named.MenuOf(result.Book);
        if (folder.BarIsUnreadable)
            throw new UsageException($"{folder.DisplayPrefix}{BookFiles.BarFile} cannot be read, so the settings of "
                + $"the bar are not known.");
        var stocks = StocksOf(result.Book, folder, host, parsed.GetValue(stock));
        var check = LineCheck.Of(Verdicts.Of(result), chosen, stocks);
        var aside = HarmAside.Of(result.Findings, result.Accepted);
        string? file = parsed.GetValue(output);
        var shown = CommonOptions.UnitsOf(parsed.GetValue(units), result.Book);
        switch (parsed.GetValue(format))
        {
            case "json":
                ResultOutput.Deliver(host, file, stream => LineCheckReport.WriteJson(stream, check, aside));
                break;
            case "sarif":
                string prefix = folder.RepositoryPrefix();
                ResultOutput.Deliver(host, file, stream => LineCheckSarif.Write(stream, check, Shell.Version, prefix));
                break;
            case "csv":
                ResultOutput.DeliverText(host, file, writer => CsvFile.Write(writer, Sheets.Plan(check)));
                break;
            case "html":
                ResultOutput.DeliverText(host, file, writer => LineCheckPage.Write(writer, check, shown, Shell.Version, aside));
                break;
            default:
                ResultOutput.DeliverText(
                    host,
                    file,
                    writer => LineCheckReport.WriteText(
                        writer, check, shown, CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host), aside));
                break;
        }

        return check.AllServed ? ExitStatus.Clean : ExitStatus.Findings;
    }

    /// <summary>The stock files that are meant.</summary>
    internal static IReadOnlyList<Stock> StocksOf(LinkedBook linked, BookFolder folder, Host host, string? named)
    {
        if (named is null) return linked.Stocks;
        string full = host.FullPath(named).Replace('\\', '/');
        var found = linked.Stocks.FirstOrDefault(s => s.Id == named || full == Path.Combine(folder.Root, s.Source.Path).Replace('\\', '/'))
            ?? throw new UsageException($"{named} is not a stock file of the book: its name ends in .stock.json.");
        return [found];
    }
}
