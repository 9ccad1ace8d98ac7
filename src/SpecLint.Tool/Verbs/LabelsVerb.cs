using System.CommandLine;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>labels</c>: labels to print for the lots of a stock file or for what was just made.</summary>
internal sealed class LabelsVerb : Verb
{
    private const int MostCopies = 500;

    private readonly Argument<string?> stock = new("STOCK")
    {
        Description = "Stock file of the book, by path or id, or a folder of a book; default: every stock file of the book.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string> sheet = new("--sheet")
    {
        Description = $"Blank labels to print on, by their size in mm or inches: {string.Join(", ", LabelStock.All.Select(s => s.Id))}; "
            + "a4, letter and roll are the first of each.",
        HelpName = "STOCK",
        DefaultValueFactory = _ => "a4",
    };
    private readonly Option<int> startAt = new("--start-at")
    {
        Description = "Place of the first label on the first sheet, counted line by line: those before it are used already.",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => 1,
    };
    private readonly Option<bool> test = new("--test-page") { Description = "Write only the outlines of the blank labels, to compare with a sheet." };
    private readonly Option<string[]> items = new("--item")
    {
        Description = "Label lots of this item only; may be given more than once.",
        HelpName = "ID",
        AllowMultipleArgumentsPerToken = true,
    };
    private readonly Option<string[]> made = new("--made")
    {
        Description = "Label this preparation, made on that day (default: today), without a stock file; may be given more than once.",
        HelpName = "PREP[=DATE]",
    };
    private readonly Option<string?> by = new("--by") { Description = "With --made: initials of who made it.", HelpName = "INITIALS" };
    private readonly Option<int> copies = new("--copies")
    {
        Description = "Number of labels of each.",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => 1,
    };
    private readonly Option<bool> prepacked = new("--prepacked")
    {
        Description = "The layout for food prepacked for direct sale: ingredients in descending order with the allergens emphasised, "
            + "only where the recipe knows enough. The local law decides.",
    };
    private readonly Option<bool> bought = new("--bought") { Description = "Also label opened bought ingredients." };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string> format = CommonOptions.Format("html", "json");
    private readonly Option<string?> output = CommonOptions.Output();

    public LabelsVerb()
    {
        sheet.TakesOneOf(["a4", "letter", "roll", .. LabelStock.All.Select(s => s.Id)]);
        copies.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && int.TryParse(result.Tokens[0].Value, out int number) && number is < 1 or > MostCopies)
                result.AddError($"--copies takes a number from 1 to {MostCopies}.");
        });
    }

    public override string Name => "labels";

    public override string Description =>
        "Writes labels for the lots of a stock file, or for a fresh batch, as a page to print: "
        + "dates, storage, allergens, strength, advisory texts.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint labels recipes/bar-fridge.stock.json --output labels.html",
        "speclint labels --sheet roll --item sour-cucumber",
        "speclint labels --sheet letter-4x2 --start-at 4 --output labels.html",
        "speclint labels --sheet a4-64x38 --test-page --output test.html",
        "speclint labels --made sour-cucumber=2026-11-25 --by NK --book recipes",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(stock);
        Option[] options =
        [
            made, by, copies, sheet, startAt, test, items, prepacked, bought, book, on, units, format, output,
        ];
        foreach (var option in options) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string? named = parsed.GetValue(stock), at = parsed.GetValue(book), file = parsed.GetValue(output);
        var blank = LabelStock.Find(parsed.GetValue(sheet)!)!;
        int first = parsed.GetValue(startAt);
        if (first < 1 || first > blank.PerPage)
            throw new UsageException($"--start-at takes a number from 1 to {blank.PerPage}, the labels of {blank.Id}.");
        if (parsed.GetValue(test))
        {
            ResultOutput.DeliverText(host, file, writer => LabelPage.WriteTest(writer, blank));
            return ExitStatus.Clean;
        }

        var target = NamedBook.Open(host, named, at);
        var folder = target.Folder;
        if (target.IsFolder) named = null;
        var day = CommonOptions.DayOf(parsed.GetValue(on), folder, host);
        var result = Checker.Check(folder.ToInput(day, 0));
        var linked = result.Book;
        var verdicts = Verdicts.Of(result);
        var wanted = parsed.GetValue(items) ?? [];
        string[] justMade = parsed.GetValue(made) ?? [];
        if (justMade.Length > 0 && (named is not null || wanted.Length > 0 || parsed.GetValue(bought)))
            throw new UsageException("--made labels what it names; STOCK, --item and --bought are about a stock file.");
        if (justMade.Length == 0 && parsed.GetValue(by) is not null) throw new UsageException("--by goes with --made.");
        IReadOnlyList<LotLabel> labels;
        if (justMade.Length > 0)
        {
            labels = LotLabel.OfMade(verdicts, [.. justMade.Select(m => MadeOf(linked, m, day))], parsed.GetValue(by));
        }
        else
        {
            var stocks = LineCheckVerb.StocksOf(linked, folder, host, named);
            if (stocks.Count == 0)
                throw new UsageException("the book has no stock file, whose name ends in .stock.json; "
                    + "--made labels a preparation without one.");
            labels = [
                .. stocks.SelectMany(s => LotLabel.Of(verdicts, s, parsed.GetValue(bought) || wanted.Length > 0))
                    .Where(l => wanted.Length == 0 || wanted.Contains(l.Lot.Id))];
        }

        if (labels.Count == 0) throw new UsageException("there is no lot to label in what is named.");
        var open = labels.Where(l => l.HasOpenFinding).ToList();
        int each = parsed.GetValue(copies);
        if (each > 1) labels = [.. labels.SelectMany(l => Enumerable.Repeat(l, each))];
        if (parsed.GetValue(format) == "json")
        {
            ResultOutput.Deliver(host, file, stream => LabelPage.WriteJson(stream, labels));
            return Tell(host, open, result);
        }

        var view = CommonOptions.UnitsOf(parsed.GetValue(units), linked);
        if (parsed.GetValue(prepacked))
        {
            WritePacked(labels, verdicts, blank, view, first, file, host);
            return Tell(host, open, result);
        }

        if (LabelPage.Misfits(labels, blank, view) is { Count: > 0 } misfits)
            throw new UsageException($"the label of {string.Join(", ", misfits.Select(m => m.Lot.Id).Distinct())} does not fit on {blank.Id} "
                + "in letters that can be read; nothing was written. "
                + "Take larger labels with --sheet, or leave it out.");
        ResultOutput.DeliverText(host, file, writer => LabelPage.Write(writer, labels, blank, view, first));
        return Tell(host, open, result);
    }

    private static void WritePacked(
        IReadOnlyList<LotLabel> labels, Verdicts verdicts, LabelStock blank, DisplayUnits view, int first, string? file, Host host)
    {
        var packed = new List<(LotLabel, PackedLabel)>();
        foreach (var label in labels)
            packed.Add((label, PackedLabel.Of(label, verdicts.Profiles, out string why)
                ?? throw new UsageException($"{label.Lot.Id} gets no label for direct sale: {why}; nothing was written.")));
        string bar = verdicts.Profiles.Book.Settings.Bar?.Name.Or("") ?? "";
        if (LabelPage.PackedMisfits(packed, bar, blank, view) is { Count: > 0 } misfits)
            throw new UsageException($"the label of {string.Join(", ", misfits.Select(m => m.Lot.Id).Distinct())} does not fit on {blank.Id} "
                + "in letters that can be read; nothing was written. "
                + "Take larger labels with --sheet.");
        ResultOutput.DeliverText(host, file, writer => LabelPage.WritePacked(writer, packed, bar, blank, view, first));
        Shell.Say(host, PackedLabel.Defers);
    }

    /// <summary>Says on standard error which labels forbid or shorten the use of their lot, and why.</summary>
    private static int Tell(Host host, List<LotLabel> open, CheckResult result)
    {
        if (HarmAside.Of(result.Findings, result.Accepted).Sentence is { Length: > 0 } aside) host.Error.WriteLine($"speclint: {aside}");
        foreach (var label in open)
        {
            var lot = label.Lot;
            IEnumerable<string> why = lot.Readiness == Readiness.No ? lot.Reasons : lot.Verdict!.Reasons;
            host.Error.WriteLine($"speclint: {lot.Id}: "
                + $"{(lot.Readiness == Readiness.No ? "do not use it" : $"use it by {lot.UseBy} at the latest")}. "
                + $"{string.Join("; ", why)}.");
        }

        return open.Count > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }

    /// <summary>A preparation and the day on which it was made, from <c>PREP=DATE</c> or <c>PREP</c>.</summary>
    private static (Prep Prep, CalendarDate On) MadeOf(LinkedBook linked, string text, CalendarDate today)
    {
        int at = text.IndexOf('=', StringComparison.Ordinal);
        string id = at < 0 ? text : text[..at];
        if (linked.Resolve(id) is not { ByProduct: null, File: Prep prep })
            throw new UsageException($"{id} is not a preparation of the book; bought things are labelled from a stock file, with --bought.");
        if (at < 0) return (prep, today);
        return (prep, CalendarDate.Parse(text[(at + 1)..]) ?? throw new UsageException($"'{text[(at + 1)..]}' is not a day written as YYYY-MM-DD."));
    }
}
