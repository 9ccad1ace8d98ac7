using System.CommandLine;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>guests</c>: the sheet of a menu for guests, with its allergens.</summary>
internal sealed class GuestsVerb : Verb
{
    private readonly Argument<string> menu = new("MENU")
    {
        Description = "The menu: its file, or its id with --book; a folder of a book "
        + "stands for its only menu."
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> format = CommonOptions.Format("html", "csv");
    private readonly Option<string?> output = CommonOptions.Output();

    public override string Name => "guests";

    public override string Description =>
        "Writes a sheet for guests as a page to print: the drinks of a menu with their allergens, in words for guests. What must not be "
            + "served is left out, and named on standard error with exit status 1.";

    public override IReadOnlyList<string> Examples =>
        ["speclint guests evening --book recipes --output guests.html", "speclint guests evening --format csv --output allergens.csv"];

    public override void Define(Command command)
    {
        command.Arguments.Add(menu);
        foreach (var option in new Option[] { book, on, format, output }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var named = NamedBook.Open(host, parsed.GetValue(menu), parsed.GetValue(book));
        var folder = named.Folder;
        var verdicts = Verdicts.Of(Checker.Check(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0)));
        var chosen = named.MenuOf(verdicts.Profiles.Book);
        if (parsed.GetValue(format) == "csv")
        {
            ResultOutput.DeliverText(host, parsed.GetValue(output), writer => CsvFile.Write(writer, Sheets.Allergens(chosen, verdicts)));
            return ExitStatus.Clean;
        }

        IReadOnlyList<string> left = [];
        ResultOutput.DeliverText(host, parsed.GetValue(output), writer => left = GuestPage.Write(writer, verdicts, chosen, Shell.Version));
        foreach (string name in left)
            Shell.Say(host, $"{name} is left out: it must not be served as it stands, or the book does not have it. Run check.");
        return left.Count > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }
}
