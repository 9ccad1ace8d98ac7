using System.CommandLine;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>costs</c>: what drinks and preparations cost to make, by the price lists of the book.</summary>
internal sealed class CostsVerb : Verb
{
    private readonly Argument<string[]> recipes = new("RECIPE") { Description = "Ids of drinks or preparations; default: all drinks.", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string?> menu = new("--menu") { Description = "Only the drinks of a menu.", HelpName = "MENU" };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> format = CommonOptions.Format("text", "json", "csv");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "costs";

    public override string Description => "Prints what drinks and preparations cost to make, with ranges, trimmings and each line. Exit status 1 when a cost is open.";

    public override IReadOnlyList<string> Examples => ["speclint costs low-tide --book recipes", "speclint costs --menu evening --format csv --output costs.csv"];

    public override void Define(Command command)
    {
        command.Arguments.Add(recipes);
        foreach (var option in new Option[] { menu, book, format, output, on, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string? at = parsed.GetValue(book);
        var folder = BookFolder.Open(host, at is null ? [] : [at]);
        var (linked, profiles) = Checker.Profile(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0));
        if (linked.PriceLists.Count == 0) throw new UsageException("the book has no price list, whose name ends in .prices.json; speclint prices LIST.csv writes one.");
        var chosen = Choose(linked, parsed.GetValue(recipes) ?? [], parsed.GetValue(menu));
        string? file = parsed.GetValue(output);
        switch (parsed.GetValue(format))
        {
            case "json": ResultOutput.Deliver(host, file, stream => CostReport.WriteJson(stream, chosen, profiles)); break;
            case "csv": ResultOutput.DeliverText(host, file, writer => CsvFile.Write(writer, Sheets.Costs(chosen, profiles))); break;
            default: ResultOutput.DeliverText(host, file, writer => CostReport.WriteText(writer, chosen, profiles, CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host))); break;
        }

        return chosen.All(r => profiles.Of(r).Cost.IsKnown) ? ExitStatus.Clean : ExitStatus.Findings;
    }

    private static List<Recipe> Choose(LinkedBook linked, string[] ids, string? menu)
    {
        if (menu is not null)
        {
            var found = linked.Menus.FirstOrDefault(m => m.Id == menu) ?? throw new UsageException($"{menu} is not a menu of the book.");
            return [.. found.Drinks.Select(e => linked.Resolve(e.Drink.Or(""))?.File).OfType<Drink>()];
        }

        if (ids.Length == 0) return [.. linked.Drinks];
        return [.. ids.Select(id => linked.Resolve(id) is { ByProduct: null, File: Recipe recipe } ? recipe : throw new UsageException($"{id} is not a drink or preparation of the book."))];
    }
}
