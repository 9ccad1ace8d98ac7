using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>prices</c>: the prices in force, or a supplier's list taken in.</summary>
internal sealed class PricesVerb : Verb
{
    private readonly Argument<string?> list = new("LIST") { Description = "CSV file with the columns item, price, for, and perhaps yield, on, from; without it, the prices in force are shown.", Arity = ArgumentArity.ZeroOrOne };
    private readonly Option<string?> write = new("--write") { Description = "Write what is understood as a price list of the book, NAME.prices.json. Never overwrites.", HelpName = "NAME" };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();

    public override string Name => "prices";

    public override string Description => "Shows the prices in force as CSV, or reads a supplier's list (CSV): each row beside what is understood; --write makes a price list of it. Exit status 1 when a row is not understood.";

    public override IReadOnlyList<string> Examples => ["speclint prices --book recipes --output prices.csv", "speclint prices quay-drinks.csv --on 2026-11-01 --write quay-drinks"];

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
        var names = new NameResolver(linked);
        var measures = linked.Settings.Bar is { } bar ? Measures.For(bar) : Measures.Default;
        var understood = rows.Skip(1).Select(r => Understand(columns, r, linked, names, measures)).ToList();
        var sheet = new Sheet("row", "written", "item", "price", "for", "yield", "on", "from", "unclear");
        for (int i = 0; i < understood.Count; i++)
        {
            var row = understood[i];
            sheet.Add(i + 2, row.Written, row.Item, row.Price, row.For, row.Yield, row.On, row.From, row.Unclear);
        }

        ResultOutput.DeliverText(host, parsed.GetValue(output), writer => CsvFile.Write(writer, sheet));
        int unclear = understood.Count(r => r.Unclear.Length > 0);
        if (name is not null) Write(host, folder, name, understood, day);
        if (unclear > 0) Shell.Say(host, $"{ReportWords.Count(unclear, "row is", "rows are")} not understood and left out.");
        return unclear > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private static Row Understand(Columns columns, string[] cells, LinkedBook linked, NameResolver names, Measures measures)
    {
        string written = columns.Cell(cells, columns.Item), size = columns.Cell(cells, columns.For), money = columns.Cell(cells, columns.Price), yield = columns.Cell(cells, columns.Yield), on = columns.Cell(cells, columns.On), from = columns.Cell(cells, columns.From);
        var unclear = new List<string>();
        string item = FileKinds.IsId(written) && linked.Resolve(written) is not null ? written : "";
        if (item.Length == 0)
        {
            var meant = names.Resolve(written);
            if (meant is { Answer: NameAnswer.Resolved, Piece.Length: 0 }) item = meant.Id;
            else unclear.Add(meant.Because.Length > 0 ? $"item: {meant.Because}" : "item: neither the book nor the catalogue knows it");
        }

        decimal? price = MoneyOf(money);
        if (price is null) unclear.Add("price: not a plain amount of money such as 24.90");
        if (!QuantityReader.TryRead(size, measures, out var quantity, out _) || quantity.Dimension is not (Dimension.Volume or Dimension.Mass or Dimension.Count) || !(quantity.Base > 0)) unclear.Add("for: not a size such as 700 ml, 1 kg or 60 pieces");
        if (yield.Length > 0 && !(QuantityReader.TryRead(yield, measures, out var share, out _) && share.Dimension is Dimension.PercentByMass or Dimension.PercentByVolume or Dimension.PercentMassInVolume or Dimension.PercentOfUnknownBasis)) unclear.Add("yield: not a percentage such as 60 % w/w");
        if (on.Length > 0 && CalendarDate.Parse(on) is null) unclear.Add("on: not a day written as YYYY-MM-DD");
        return new Row(written, item, price, size, yield, on, from, string.Join("; ", unclear));
    }

    /// <summary>Money as lists write it, with a point or a comma before the last two digits; <see langword="null"/> where that is not certain.</summary>
    private static decimal? MoneyOf(string text)
    {
        string plain = text.Trim().TrimStart('€', '£', '$').TrimEnd('€', '£', '$').Trim();
        int comma = plain.LastIndexOf(','), point = plain.LastIndexOf('.');
        if (comma >= 0 && point < 0 && plain.Length - comma is 2 or 3) plain = plain.Remove(comma, 1).Insert(comma, ".");
        else if (comma >= 0 && point > comma && plain.Length - point == 3) plain = plain.Replace(",", "", StringComparison.Ordinal);
        return decimal.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal money) && money is >= 0 and <= 1_000_000_000 ? money : null;
    }

    private static void Write(Host host, BookFolder folder, string name, List<Row> rows, CalendarDate day)
    {
        string id = BuiltInCatalogue.Slug(name);
        if (id.Length == 0) throw new UsageException($"'{name}' makes no name of a file.");
        string file = id + FileKinds.EndingOf(FileKind.Prices), path = Path.Combine(folder.Root, file);
        if (File.Exists(path)) throw new UsageException($"{folder.DisplayPrefix}{file} is there already and is left as it is.");
        var text = new StringBuilder($"{{\n  \"$schema\": \"./schemas/prices.schema.json\",\n  \"name\": {Quoted(name)},\n  \"on\": \"{day}\",\n  \"prices\": [\n");
        var clear = rows.Where(r => r.Unclear.Length == 0).ToList();
        for (int i = 0; i < clear.Count; i++)
        {
            var row = clear[i];
            text.Append($"    {{ \"item\": {Quoted(row.Item)}, \"price\": {row.Price!.Value.ToString(CultureInfo.InvariantCulture)}, \"for\": {Quoted(row.For)}");
            if (row.Yield.Length > 0) text.Append($", \"yield\": {Quoted(row.Yield)}");
            if (row.On.Length > 0) text.Append($", \"on\": {Quoted(row.On)}");
            if (row.From.Length > 0) text.Append($", \"from\": {Quoted(row.From)}");
            text.Append(i + 1 < clear.Count ? " },\n" : " }\n");
        }

        text.Append("  ]\n}\n");
        try
        {
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
            stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{folder.DisplayPrefix}{file} cannot be written: {IoFault.Reason(e)}.", e);
        }

        Shell.Say(host, $"{folder.DisplayPrefix}{file} is written with {ReportWords.Count(clear.Count, "price", "prices")}.");
    }

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";

    private sealed record Row(string Written, string Item, decimal? Price, string For, string Yield, string On, string From, string Unclear);

    /// <summary>Where each column stands; −1 where there is none.</summary>
    private sealed record Columns(int Item, int Price, int For, int Yield, int On, int From)
    {
        public static Columns Of(string[] header, string file)
        {
            var found = new Columns(Find(header, "item", "id", "name", "product", "article", "description"), Find(header, "price", "cost", "paid"), Find(header, "for", "size", "unit", "pack", "per"), Find(header, "yield", "usable"), Find(header, "on", "date", "day"), Find(header, "from", "supplier"));
            return found.Item >= 0 && found.Price >= 0 && found.For >= 0 ? found : throw new UsageException($"{file} needs a first row with the columns item, price and for; yield, on and from may follow.");
        }

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
