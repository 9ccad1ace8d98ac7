using System.CommandLine;
using System.Globalization;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;

namespace SpecLint.Tool.Verbs;

/// <summary><c>record</c>: writes readings for a recipe or a lot.</summary>
internal sealed class RecordVerb : Verb
{
    private readonly Argument<string> recipeOrLot = new("RECIPE-OR-LOT")
    {
        Description = "Id or file of a drink or preparation, or the code of a lot in stock.",
    };
    private readonly Option<double?> ph = new("--ph") { Description = "pH.", HelpName = "NUMBER" };
    private readonly Option<double?> brix = new("--brix") { Description = "Dissolved solids, °Brix.", HelpName = "NUMBER" };
    private readonly Option<double?> abv = new("--abv") { Description = "Strength, % vol.", HelpName = "NUMBER" };
    private readonly Option<double?> waterActivity = new("--water-activity") { Description = "Water activity, from 0 to 1.", HelpName = "NUMBER" };
    private readonly Option<string?> mass = new("--mass") { Description = "Mass of what was made, e.g. \"475 g\".", HelpName = "MASS" };
    private readonly Option<string?> volume = new("--volume") { Description = "Volume of what was made, e.g. \"430 ml\".", HelpName = "VOLUME" };
    private readonly Option<string?> meter = new("--meter") { Description = "Id of the meter, as in bar.json.", HelpName = "ID" };
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string?> book = CommonOptions.Book();

    public override string Name => "record";

    public override string Description =>
        "Writes readings of a recipe or a lot into its file, stamped so that they count until the amounts or the method change.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint record sour-cucumber --ph 2.4 --brix 9 --book recipes",
        "speclint record SC-1125 --ph 2.4 --meter bench-meter --on 2026-11-25",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(recipeOrLot);
        foreach (var option in new Option[] { ph, brix, abv, waterActivity, mass, volume, meter, on, book }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var values = ValuesOf(parsed);
        string named = parsed.GetValue(recipeOrLot)!;
        var target = NamedBook.Open(host, named, parsed.GetValue(book));
        var folder = target.Folder;
        var day = CommonOptions.DayOf(parsed.GetValue(on), folder, host);
        if (folder.BarIsUnreadable)
            throw new UsageException($"{folder.DisplayPrefix}{BookFiles.BarFile} cannot be read, so the settings of "
                + $"the bar are not known.");
        var (linked, _) = Checker.Profile(folder.ToInput(day, 0));
        if (parsed.GetValue(meter) is { } id)
        {
            if (linked.Settings.Bar is { } bar && !bar.Meters.ContainsKey(id))
                throw new UsageException($"bar.json knows no meter {id}; add it under tools.meters.");
            values.Add(("meter", $"\"{id}\""));
        }

        BookFile file;
        SourceFile? written;
        if (target.RecipeIn(linked) is { } recipe)
        {
            file = recipe;
            written = ReadingRecorder.Record(recipe, linked, values, day);
        }
        else
        {
            var lots = linked.Stocks
                .SelectMany(s => s.Lots.Where(l => l.LotCode.IsGiven && l.LotCode.Value == named).Select(l => (Stock: s, Lot: l)))
                .ToList();
            if (lots.Count == 0)
                throw new UsageException(target.IsFolder
                    ? $"{named} is a folder; name a recipe or lot of it: speclint record RECIPE-OR-LOT --book {named}."
                    : $"{named} is not a drink, preparation or lot code of the book.");
            if (lots.Count > 1) throw new UsageException($"{named} is the code of {lots.Count} lots; give each lot a code of its own.");
            file = lots[0].Stock;
            written = ReadingRecorder.Record(lots[0].Stock, lots[0].Lot, linked, values, day);
        }

        string shown = folder.DisplayPrefix + file.Source.Path;
        if (written is null) throw new UsageException($"{shown} is not whole JSON; put it right first.");
        try
        {
            if (host.Files.Replace(Path.Combine(folder.Root, file.Source.Path), file.Source.Utf8, written.Utf8) != AtomicFiles.Outcome.Written)
            {
                Shell.Say(host, $"{shown} has changed since it was read and is left as it is; run the command again.");
                return ExitStatus.Findings;
            }
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{shown} cannot be written: {IoFault.Reason(e)}.", e);
        }

        Shell.Say(host, $"{shown}: the readings of {day} are written; they count until amounts or method change.");
        return ExitStatus.Clean;
    }

    private List<(string Name, string Json)> ValuesOf(ParseResult parsed)
    {
        var values = new List<(string, string)>();
        Number("ph", ph, 0, 14, "");
        Number("brix", brix, 0, 100, "");
        Number("abv", abv, 0, 100, " % v/v");
        Number("waterActivity", waterActivity, 0, 1, "");
        Text("mass", mass, Dimension.Mass);
        Text("volume", volume, Dimension.Volume);
        return values.Count > 0 ? values : throw new UsageException("there is nothing to record: give a reading, such as --ph 2.4.");

        void Number(string name, Option<double?> option, double least, double most, string unit)
        {
            if (parsed.GetValue(option) is not { } value) return;
            if (!(value >= least && value <= most))
                throw new UsageException($"{option.Name} takes a number from {least.ToString(CultureInfo.InvariantCulture)} to "
                    + $"{most.ToString(CultureInfo.InvariantCulture)}.");
            string number = value.ToString("0.######", CultureInfo.InvariantCulture);
            values.Add((name, unit.Length == 0 ? number : $"\"{number}{unit}\""));
        }

        void Text(string name, Option<string?> option, Dimension dimension)
        {
            if (parsed.GetValue(option) is not { } text) return;
            if (!QuantityReader.TryRead(text, Measures.Default, out var quantity, out _) || quantity.Dimension != dimension || !(quantity.Base > 0))
                throw new UsageException($"{option.Name} takes a {name}; '{text}' is not one.");
            string unit = dimension == Dimension.Mass ? "g" : "ml";
            values.Add((name, $"\"{quantity.Base.ToString("0.######", CultureInfo.InvariantCulture)} {unit}\""));
        }
    }
}
