using System.CommandLine;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>labels</c>: labels to print for the lots of a stock file.</summary>
internal sealed class LabelsVerb : Verb
{
    private readonly Argument<string?> stock = new("STOCK") { Description = "Stock file of the book, by path or id; the only one of the book where none is given.", Arity = ArgumentArity.ZeroOrOne };
    private readonly Option<string> sheet = new("--sheet") { Description = "Sheet to print on: a4 (2 by 7), letter (2 by 5), or a roll of 62 mm.", HelpName = "a4|letter|roll", DefaultValueFactory = _ => "a4" };
    private readonly Option<string[]> items = new("--item") { Description = "Label lots of this item only; may be given more than once.", HelpName = "ID", AllowMultipleArgumentsPerToken = true };
    private readonly Option<bool> bought = new("--bought") { Description = "Label bought things that were opened too." };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string?> output = CommonOptions.Output();

    public LabelsVerb() => sheet.AcceptOnlyFromAmong("a4", "letter", "roll");

    public override string Name => "labels";

    public override string Description => "Writes labels for the lots of a stock file as a page to print: dates, storage, allergens, strength, advisory texts.";

    public override IReadOnlyList<string> Examples => ["speclint labels recipes/bar-fridge.stock.json --output labels.html", "speclint labels --sheet roll --item sour-cucumber"];

    public override void Define(Command command)
    {
        command.Arguments.Add(stock);
        foreach (var option in new Option[] { sheet, items, bought, book, on, units, output }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string? named = parsed.GetValue(stock), at = parsed.GetValue(book);
        bool isPath = named is not null && File.Exists(host.FullPath(named));
        var folder = BookFolder.Open(host, isPath ? [named!] : at is null ? [] : [at]);
        var day = parsed.GetValue(on) ?? host.Today();
        var (linked, profiles) = Checker.Profile(folder.ToInput(day, 0));
        var stocks = LineCheckVerb.StocksOf(linked, folder, host, named);
        if (stocks.Count == 0) throw new UsageException("the book has no stock file: its name ends in .stock.json.");
        var wanted = parsed.GetValue(items) ?? [];
        var labels = stocks.SelectMany(s => LotLabel.Of(profiles, s, day, parsed.GetValue(bought) || wanted.Length > 0)).Where(l => wanted.Length == 0 || wanted.Contains(l.Lot.Id)).ToList();
        if (labels.Count == 0) throw new UsageException("there is no lot to label in what is named.");
        var kind = parsed.GetValue(sheet) switch { "letter" => LabelSheet.Letter, "roll" => LabelSheet.Roll, _ => LabelSheet.A4 };
        ResultOutput.DeliverText(host, parsed.GetValue(output), writer => LabelPage.Write(writer, labels, kind, CommonOptions.UnitsOf(parsed.GetValue(units))));
        return ExitStatus.Clean;
    }
}
