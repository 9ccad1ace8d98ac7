using System.CommandLine;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Verbs;

/// <summary><c>trace</c>: what a lot went into.</summary>
internal sealed class TraceVerb : Verb
{
    private readonly Argument<string> lot = new("LOT")
    {
        Description = "Code of the lot, or the id of its item if the stock has only one lot of it.",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "trace";

    public override string Description =>
        "Follows a lot that turned out bad: which lots were made from it or may hold it, which preparations and drinks it "
            + "reaches, and since when.";

    public override IReadOnlyList<string> Examples => ["speclint trace SC-1125 --book recipes", "speclint trace sea-foam --format json"];

    public override void Define(Command command)
    {
        command.Arguments.Add(lot);
        foreach (var option in new Option[] { book, on, format, output, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string named = parsed.GetValue(lot)!;
        var target = NamedBook.Open(host, named, parsed.GetValue(book));
        var folder = target.Folder;
        if (target.IsFolder) throw new UsageException($"{named} is a folder; name a lot of its stock: speclint trace LOT --book {named}.");
        var (linked, _) = Checker.Profile(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0));
        var found = linked.LotsCalled(named);
        if (found.Count == 0)
            found = [.. linked.Stocks.SelectMany(s => s.Lots.Where(l => l.Item.IsGiven
                && (l.Item.Value == named || linked.Resolve(l.Item.Value)?.Id == named))
                .Select(l => (s, l)))];
        if (found.Count == 0) throw new UsageException($"no stock file of the book lists a lot {named}.");
        if (found.Count > 1)
            throw new UsageException($"{Say.Count(found.Count, "lot")} answer to {named}: give each a code of its own under "
                + $"\"lot\", and name that.");
        var trace = LotTrace.Of(linked, found[0].Stock, found[0].Lot);
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json") ResultOutput.Deliver(host, file, stream => TraceReport.WriteJson(stream, trace));
        else
            ResultOutput.DeliverText(
                host,
                file,
                writer => TraceReport.WriteText(writer, trace, CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host)));
        return ExitStatus.Clean;
    }
}
