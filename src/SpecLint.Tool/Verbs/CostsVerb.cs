using System.CommandLine;
using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>costs</c>: what drinks and preparations cost to make, by the price lists of the book.</summary>
internal sealed class CostsVerb : Verb
{
    private readonly Argument<string[]> recipes = new("RECIPE")
    {
        Description = "Ids of drinks or preparations; default: all drinks.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string?> menu = new("--menu") { Description = "Only the drinks of a menu.", HelpName = "MENU" };
    private readonly Option<double?> serves = new("--serves") { Description = "Cost of so many drinks.", HelpName = "NUMBER" };
    private readonly Option<string?> to = new("--to")
    {
        Description = "Cost of so much of a preparation, e.g. \"5 l\" or \"800 g\".",
        HelpName = "AMOUNT",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> format = CommonOptions.Format("text", "json", "csv");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "costs";

    public override string Description =>
        "Prints what drinks and preparations cost to make, with ranges, trimmings and each line. Exit status 1 when a cost is open.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint costs low-tide --book recipes",
        "speclint costs low-tide --serves 40",
        "speclint costs hibiscus-cordial --to \"5 l\"",
        "speclint costs --menu evening --format csv --output costs.csv",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(recipes);
        foreach (var option in new Option[] { menu, serves, to, book, format, output, on, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string? at = parsed.GetValue(book);
        var folder = BookFolder.Open(host, at is null ? [] : [at]);
        var (linked, profiles) = Checker.Profile(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0));
        if (linked.PriceLists.Count == 0)
            throw new UsageException("the book has no price list, whose name ends in .prices.json; speclint prices LIST.csv writes one.");
        var chosen = Choose(linked, parsed.GetValue(recipes) ?? [], parsed.GetValue(menu));
        var batch = BatchOf(parsed);
        if (chosen.Select(r => batch.WhyNot(profiles.Of(r))).FirstOrDefault(w => w.Length > 0) is { } not) throw new UsageException($"{not}.");
        string? file = parsed.GetValue(output);
        switch (parsed.GetValue(format))
        {
            case "json": ResultOutput.Deliver(host, file, stream => CostReport.WriteJson(stream, chosen, profiles, batch)); break;
            case "csv": ResultOutput.DeliverText(host, file, writer => CsvFile.Write(writer, Sheets.Costs(chosen, profiles, batch))); break;
            default:
                ResultOutput.DeliverText(host, file, writer =>
                    CostReport.WriteText(writer, chosen, profiles, CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host), batch));
                break;
        }

        return chosen.All(r => profiles.Of(r).Cost.IsKnown) ? ExitStatus.Clean : ExitStatus.Findings;
    }

    private CostBatch BatchOf(ParseResult parsed)
    {
        double? count = parsed.GetValue(serves);
        string? amount = parsed.GetValue(to);
        if (count is not null && amount is not null) throw new UsageException("costs takes one of --serves NUMBER and --to AMOUNT.");
        return amount is not null ? CostBatch.OfAmount(CommonOptions.AmountToMake(amount))
            : count is { } n ? CostBatch.OfServes(CommonOptions.ServesToMake(n))
            : CostBatch.Usual;
    }

    private static List<Recipe> Choose(LinkedBook linked, string[] ids, string? menu)
    {
        if (menu is not null)
        {
            var found = linked.Menus.FirstOrDefault(m => m.Id == menu) ?? throw new UsageException($"{menu} is not a menu of the book.");
            return [.. found.Drinks.Select(e => linked.Resolve(e.Drink.Or(""))?.File).OfType<Drink>()];
        }

        if (ids.Length == 0) return [.. linked.Drinks];
        return [.. ids.Select(id =>
            linked.Resolve(id) is { ByProduct: null, File: Recipe recipe }
                ? recipe
                : throw new UsageException($"{id} is not a drink or preparation of the book."))];
    }
}
