using System.CommandLine;
using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>profile</c>: what recipes come to, and what ingredients are made of.</summary>
internal sealed class ProfileVerb : Verb
{
    private readonly Argument<string[]> items = new("ITEM")
    {
        Description = "Ids of the book or the built-in catalogue, files, or a folder; default: every recipe of the book. A name that "
            + "exists as a path is read as a path.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> format = CommonOptions.Format("text", "json", "csv");
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "profile";

    public override string Description =>
        "Prints the computed figures of recipes: volume, strength, sugar, acid, pH, life, allergens, each with its range.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint profile low-tide --book recipes",
        "speclint profile recipes/low-tide.drink.json --format json",
        "speclint profile lime-juice",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(items);
        foreach (var option in new Option[] { book, format, units, output, on, threads, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var paths = new List<string>();
        var ids = new List<string>();
        foreach (string item in parsed.GetValue(items) ?? [])
        {
            string full = host.FullPath(item);
            (File.Exists(full) || Directory.Exists(full) ? paths : ids).Add(item);
        }

        string? bookPath = parsed.GetValue(book);
        int threadCount = parsed.GetValue(threads);
        var folder = BookFolder.Open(host, bookPath is not null && paths.Count == 0 ? [bookPath] : paths, threadCount);
        if (ids.Count == 0 && !folder.HasFilesToCheck)
            throw new UsageException($"no recipe was found in {(paths.Count > 0 ? string.Join(", ", paths) : bookPath ?? "the current folder")}.");
        var result = Checker.Check(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), threadCount));
        var verdicts = Verdicts.Of(result);
        var chosen = Choose(result.Book, folder, paths, ids);
        bool single = chosen.Count == 1 && paths.Count + ids.Count == 1 && !(paths.Count == 1 && Directory.Exists(host.FullPath(paths[0])));
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json")
        {
            ResultOutput.Deliver(host, file, stream => ProfileReport.WriteJson(stream, chosen, verdicts, single));
        }
        else if (parsed.GetValue(format) == "csv")
        {
            ResultOutput.DeliverText(host, file, writer => CsvFile.Write(writer, Sheets.Profile(chosen, verdicts)));
        }
        else
        {
            bool inColour = CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host);
            var shown = CommonOptions.UnitsOf(parsed.GetValue(units), result.Book);
            ResultOutput.DeliverText(host, file, writer => ProfileReport.WriteText(writer, chosen, verdicts, shown, inColour));
        }

        return ExitStatus.Clean;
    }

    private static List<Item> Choose(LinkedBook linked, BookFolder folder, List<string> paths, List<string> ids)
    {
        var chosen = new List<Item>();
        if (paths.Count > 0 || ids.Count == 0)
        {
            foreach (var file in linked.Files)
            {
                bool isItem = file is Recipe || (file is Ingredient && folder.Includes is not null);
                if (isItem && (folder.Includes is null || folder.Includes(file.Source.Path))) chosen.Add(new Item(file.Id, file, null, false));
            }

            if (chosen.Count == 0) throw new UsageException("there is no recipe or ingredient in what is named.");
        }

        foreach (string id in ids)
        {
            var item = linked.Resolve(id) ?? throw new UsageException($"{id} is neither in the book nor in the built-in catalogue.");
            if (item.ByProduct is not null)
                throw new UsageException($"{id} is what is left of {item.File.Id}; a profile is made of recipes and ingredients.");
            chosen.Add(item);
        }

        return chosen;
    }
}
