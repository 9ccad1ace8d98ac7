using System.CommandLine;
using SpecLint.Book;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>find</c>: items of the book and the catalogue, by words or by what they are made of.</summary>
internal sealed class FindVerb : Verb
{
    private const int MostShown = 500;

    private readonly Argument<string[]> words = new("WORD")
    {
        Description = "Words of an id, a name or a synonym; all must fit, in any order. Typing slips are allowed.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string?> like = new("--like")
    {
        Description = "Rank by strength, sugar and acid, nearest to this item first.",
        HelpName = "ID",
    };
    private readonly Option<int> most = new("--most")
    {
        Description = "Maximum number of results.",
        HelpName = "NUMBER",
        DefaultValueFactory = _ => 10,
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> colour = CommonOptions.Colour();

    public FindVerb() => most.Validators.Add(result =>
    {
        if (result.Tokens.Count == 1 && int.TryParse(result.Tokens[0].Value, out int number) && number is < 1 or > MostShown)
            result.AddError($"--most takes a number from 1 to {MostShown}.");
    });

    public override string Name => "find";

    public override string Description =>
        "Finds items of the book and of the built-in catalogue by name or composition: id, kind, strength, sugar, acid, allergens, what "
            + "differs. Exit status 1 when nothing is found.";

    public override IReadOnlyList<string> Examples =>
        ["speclint find dry vermouth", "speclint find --like lime-juice --book recipes", "speclint find syrup --like honey-syrup-3-1"];

    public override void Define(Command command)
    {
        command.Arguments.Add(words);
        foreach (var option in new Option[] { like, most, book, format, output, colour }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string[] asked = parsed.GetValue(words) ?? [];
        string? model = parsed.GetValue(like), at = parsed.GetValue(book);
        if (asked.Length == 0 && model is null) throw new UsageException("find takes words to look for, --like ID, or both.");
        var folder = BookFolder.Open(host, at is null ? [] : [at]);
        var (linked, profiles) = Checker.Profile(folder.ToInput(folder.SetOn ?? host.Today(), 0));
        Item? item = null;
        if (model is not null)
            item = linked.Resolve(model) ?? throw new UsageException($"{model} is neither in the book nor in the built-in catalogue.");
        var found = ItemSearch.Of(profiles, asked, item, parsed.GetValue(most));
        string? file = parsed.GetValue(output);
        string against = item?.Id ?? (found.Count > 1 ? found[0].Item.Id : "");
        if (parsed.GetValue(format) == "json") ResultOutput.Deliver(host, file, stream => FindReport.WriteJson(stream, found, against));
        else
            ResultOutput.DeliverText(
                host,
                file,
                writer => FindReport.WriteText(writer, found, against, CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host)));
        if (found.Count > 0) return ExitStatus.Clean;
        Shell.Say(host, $"nothing in the book or the catalogue is called {string.Join(" ", asked)}.");
        return ExitStatus.Findings;
    }
}
