using System.CommandLine;
using System.Text;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.RecipeText;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>prices</c>: the prices in force, or a supplier's list taken in.</summary>
internal sealed class PricesVerb : Verb
{
    private readonly Argument<string?> list = new("LIST")
    {
        Description = "CSV file with the columns item, price, for, and perhaps yield, on, from; without it, the prices in force are shown.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string?> write = new("--write")
    {
        Description = "Write what is understood as a price list of the book, NAME.prices.json. Never overwrites.",
        HelpName = "NAME",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();

    public override string Name => "prices";

    public override string Description =>
        "Shows the prices in force as CSV, or reads a supplier's list (CSV): each row beside what is understood; --write makes a price "
            + "list of it. Exit status 1 when a row is not understood.";

    public override IReadOnlyList<string> Examples =>
        ["speclint prices --book recipes --output prices.csv", "speclint prices quay-drinks.csv --on 2026-11-01 --write quay-drinks"];

    public override void Define(Command command)
    {
        command.Arguments.Add(list);
        foreach (var option in new Option[] { write, book, output, on }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string? at = parsed.GetValue(book), named = parsed.GetValue(list), name = parsed.GetValue(write);
        var folder = BookFolder.Open(host, at is null ? [] : [at]);
        var day = CommonOptions.DayOf(parsed.GetValue(on), folder, host);
        var (linked, profiles) = Checker.Profile(folder.ToInput(day, 0));
        if (named is null)
        {
            if (name is not null) throw new UsageException("--write takes a LIST to read.");
            ResultOutput.DeliverText(host, parsed.GetValue(output), writer => CsvFile.Write(writer, Sheets.Prices(profiles)));
            return ExitStatus.Clean;
        }

        var rows = CsvFile.Read(InputFile.ReadText(named, host), named);
        if (rows.Count < 2) throw new UsageException($"{named} has no rows below its header.");
        var columns = Columns.Of(rows[0], named);
        var reader = new PriceRowReader(linked);
        var understood = rows.Skip(1).Select(r => reader.Read(columns.RowOf(r), columns.Cell(r, columns.Price))).ToList();
        var sheet = new Sheet("row", "written", "item", "price", "for", "yield", "on", "from", "unclear");
        for (int i = 0; i < understood.Count; i++)
        {
            var row = understood[i];
            sheet.Add(i + 2, row.Written, row.Item, row.Price, row.For, row.Yield, row.On, row.From, row.Unclear);
        }

        ResultOutput.DeliverText(host, parsed.GetValue(output), writer => CsvFile.Write(writer, sheet));
        int unclear = understood.Count(r => !r.IsClear);
        if (name is not null) Write(host, folder, name, understood, day);
        if (unclear > 0) Shell.Say(host, $"{ReportWords.Count(unclear, "row is", "rows are")} not understood and left out.");
        return unclear > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private static void Write(Host host, BookFolder folder, string name, List<WrittenPrice> rows, CalendarDate day)
    {
        string id = BuiltInCatalogue.Slug(name);
        if (id.Length == 0) throw new UsageException($"'{name}' makes no name of a file.");
        string file = id + FileKinds.EndingOf(FileKind.Prices), path = Path.Combine(folder.Root, file);
        if (File.Exists(path)) throw new UsageException($"{folder.DisplayPrefix}{file} is there already and is left as it is.");
        try
        {
            host.Files.Create(path, Encoding.UTF8.GetBytes(PriceRowReader.FileOf(name, day, rows)));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{folder.DisplayPrefix}{file} cannot be written: {IoFault.Reason(e)}.", e);
        }

        Shell.Say(host, $"{folder.DisplayPrefix}{file} is written with {ReportWords.Count(rows.Count(r => r.IsClear), "price", "prices")}.");
    }

    /// <summary>Where each column stands; −1 where there is none.</summary>
    private sealed record Columns(int Item, int Price, int For, int Yield, int On, int From)
    {
        public static Columns Of(string[] header, string file)
        {
            var found = new Columns(
                Find(header, "item", "id", "name", "product", "article", "description"), Find(header, "price", "cost", "paid"),
                Find(header, "for", "size", "unit", "pack", "per"), Find(header, "yield", "usable"), Find(header, "on", "date", "day"),
                Find(header, "from", "supplier"));
            return found.Item >= 0 && found.Price >= 0 && found.For >= 0
                ? found
                : throw new UsageException($"{file} needs a first row with the columns item, price and for; yield, on "
                    + $"and from may follow.");
        }

        /// <summary>The cells of a row by what they are; nothing is understood of them yet.</summary>
        public WrittenPrice RowOf(string[] cells) =>
            new(Cell(cells, Item), "", null, Cell(cells, For), Cell(cells, Yield), Cell(cells, On), Cell(cells, From), "");

        public string Cell(string[] cells, int at) => at >= 0 && at < cells.Length ? cells[at] : "";

        private static int Find(string[] header, params string[] names)
        {
            foreach (string name in names)
            {
                int at = Array.FindIndex(header, h => string.Equals(h, name, StringComparison.OrdinalIgnoreCase));
                if (at >= 0) return at;
            }

            return -1;
        }
    }
}
