using System.CommandLine;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>scale</c>: a recipe at another size.</summary>
internal sealed class ScaleVerb : Verb
{
    private readonly Argument<string> recipe = new("RECIPE") { Description = "Id of a drink or preparation of the book, or its file." };
    private readonly Option<string?> to = new("--to")
    {
        Description = "Amount to make, e.g. \"3 l\" or \"800 g\"; for a drink, the volume of the batch.",
        HelpName = "AMOUNT",
    };
    private readonly Option<double?> serves = new("--serves")
    {
        Description = "Number of drinks, or of portions of a preparation with a portion count.",
        HelpName = "NUMBER",
    };
    private readonly Option<bool> poured = new("--poured")
    {
        Description = "Pour the batch of a drink as it is: adds the water that ice would have added.",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "scale";

    public override string Description =>
        "Scales a recipe: amounts rounded to the tools of the bar, what the rounding changes, the vessel and how long it keeps.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint scale low-tide --serves 40 --book recipes",
        "speclint scale harbour-light --to \"3 l\" --poured",
        "speclint scale sour-cucumber --to \"2.5 l\" --format json",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(recipe);
        foreach (var option in new Option[] { to, serves, poured, book, units, format, output, on, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var request = RequestOf(parsed);
        var named = NamedBook.Open(host, parsed.GetValue(recipe), parsed.GetValue(book));
        var folder = named.Folder;
        var result = Checker.Check(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0));
        var linked = result.Book;
        var chosen = named.RecipeOf(linked, Name);
        var plan = ScalePlan.Of(Verdicts.Of(result), chosen, request, out string why)
            ?? throw new UsageException($"{chosen.Id} cannot be scaled: {why}.");
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json") ResultOutput.Deliver(host, file, stream => ScaleReport.WriteJson(stream, plan));
        else
            ResultOutput.DeliverText(
                host,
                file,
                writer => ScaleReport.WriteText(
                    writer, plan, CommonOptions.UnitsOf(parsed.GetValue(units), linked),
                    CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host)));
        if (HarmAside.Of(result.Findings, result.Accepted).Sentence is { Length: > 0 } aside) host.Error.WriteLine($"speclint: {aside}");
        return ExitStatus.Clean;
    }

    private ScaleRequest RequestOf(ParseResult parsed)
    {
        string? amount = parsed.GetValue(to);
        double? count = parsed.GetValue(serves);
        bool pour = parsed.GetValue(poured);
        if ((amount is null) == (count is null)) throw new UsageException("scale takes one of --to AMOUNT and --serves NUMBER.");
        if (count is { } n)
        {
            return new ScaleRequest { Serves = CommonOptions.ServesToMake(n), Poured = pour };
        }

        var quantity = CommonOptions.AmountToMake(amount!);
        return quantity.Dimension == Dimension.Volume
            ? new ScaleRequest { Millilitres = quantity.Base, Poured = pour }
            : new ScaleRequest { Grams = quantity.Base, Poured = pour };
    }
}
