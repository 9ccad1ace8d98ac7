using System.CommandLine;
using System.Globalization;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>event</c>: a plan for an event, backwards from its day.</summary>
internal sealed class EventVerb : Verb
{
    private const int MostGuests = 100_000;

    private readonly Argument<string?> menu = new("MENU")
    {
        Description = "Id or file of a menu, or a folder of a book with one menu.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<int?> guests = new("--guests") { Description = "Number of guests.", HelpName = "NUMBER" };
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<double> each = new("--each")
    {
        Description = "Drinks that a guest has.",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => EventPlan.UsualDrinksEach,
    };
    private readonly Option<string?> at = new("--at") { Description = "Time of the first serve.", HelpName = "HH:MM" };
    private readonly Option<string[]> share = new("--share")
    {
        Description = "Share of a drink in all serves, such as low-tide=30; "
            + "the others share the rest by the covers of the menu. May be given several times.",
        HelpName = "DRINK=PERCENT",
    };
    private readonly Option<string?> stock = new("--stock")
    {
        Description = "Stock file that may be used up; without it, everything is made and bought.",
        HelpName = "STOCK",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string> format = CommonOptions.Format("text", "json", "csv", "html");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "event";

    public override string Description =>
        "Plans an event backwards from its day: serves, what to begin when and at which station, what to buy in bottles and cases, ice. "
        + "Exit status 1 when something cannot be served or kept.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint event evening --guests 120 --on 2026-12-12 --book recipes",
        "speclint event evening --guests 80 --on 2026-12-12 --share low-tide=30",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(menu);
        foreach (var option in new Option[] { guests, on, each, at, share, stock, book, units, format, output, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        if (parsed.GetValue(guests) is not { } count || count is < 1 or > MostGuests)
            throw new UsageException($"event takes --guests NUMBER, from 1 to {MostGuests}.");
        if (parsed.GetValue(on) is not { } day) throw new UsageException("event takes --on YYYY-MM-DD, its day.");
        double drinks = parsed.GetValue(each);
        if (!(drinks > 0) || drinks > 100) throw new UsageException("--each takes a number over 0, 100 at most.");
        var named = NamedBook.Open(host, parsed.GetValue(menu), parsed.GetValue(book));
        var folder = named.Folder;

        // What may be kept is judged as the book stands today; an example book on its own day.
        var today = folder.SetOn ?? host.Today();
        var verdicts = Verdicts.Of(Checker.Check(folder.ToInput(today, 0)));
        var linked = verdicts.Profiles.Book;
        var stocks = parsed.GetValue(stock) is { } id ? LineCheckVerb.StocksOf(linked, folder, host, id) : [];
        var request = new EventRequest(count, day)
        {
            DrinksEach = drinks,
            Hour = HourOf(parsed.GetValue(at)),
            Shares = SharesOf(parsed.GetValue(share) ?? []),
        };
        var plan = EventPlan.Of(verdicts, named.MenuOf(linked), request, stocks, out string why)
            ?? throw new UsageException($"the event cannot be planned: {why}.");
        string? file = parsed.GetValue(output);
        var shown = CommonOptions.UnitsOf(parsed.GetValue(units), linked);
        switch (parsed.GetValue(format))
        {
            case "json": ResultOutput.Deliver(host, file, stream => EventReport.WriteJson(stream, plan)); break;
            case "csv": ResultOutput.DeliverText(host, file, writer => CsvFile.Write(writer, EventReport.ToSheet(plan))); break;
            case "html": ResultOutput.DeliverText(host, file, writer => EventReport.WritePage(writer, plan, shown, Shell.Version)); break;
            default:
                ResultOutput.DeliverText(host, file, writer =>
                    EventReport.WriteText(writer, plan, shown, CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host)));
                break;
        }

        return plan.CannotServe.Count > 0 || plan.Tasks.Any(t => t.Warning.Length > 0) ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private static double HourOf(string? text)
    {
        if (text is null) return new EventRequest(1, default).Hour;
        string[] parts = text.Split(':');
        return parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int hour)
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int minute)
            && hour < 24 && minute < 60
            ? hour + (minute / 60.0)
            : throw new UsageException($"--at takes a time written as HH:MM; '{text}' is not one.");
    }

    private static Dictionary<string, double> SharesOf(string[] texts)
    {
        var shares = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (string text in texts)
        {
            string[] parts = text.Split('=');
            if (parts.Length != 2
                || !double.TryParse(parts[1].TrimEnd('%', ' '), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double percent)
                || percent is < 0 or > 100
                || !shares.TryAdd(parts[0], percent))
            {
                throw new UsageException($"--share takes DRINK=PERCENT, each drink once; '{text}' is not that.");
            }
        }

        return shares;
    }
}
