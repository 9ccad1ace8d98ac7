using System.CommandLine;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>card</c>: cards for those who make a recipe, and the pocket list of a menu.</summary>
internal sealed class CardVerb : Verb
{
    private readonly Argument<string[]> recipes = new("RECIPE")
    {
        Description = "Drinks or preparations of the book, by id or file.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string?> menu = new("--menu") { Description = "A card for each drink of this menu.", HelpName = "ID" };
    private readonly Option<bool> pocket = new("--pocket") { Description = "With --menu: one list of all its drinks in place of cards." };
    private readonly Option<string> paper = new("--paper")
    {
        Description = "Paper to print on.",
        HelpName = "a4|letter|a6",
        DefaultValueFactory = _ => "a4",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string?> output = CommonOptions.Output();

    public CardVerb() => paper.TakesOneOf("a4", "letter", "a6");

    public override string Name => "card";

    public override string Description =>
        "Writes cards for the staff as a page to print: amounts, method, glass, garnish, allergens, batch sizes, keeping. "
        + "Exit status 1 when one of them must not be served or used.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint card low-tide --book recipes --output low-tide.html",
        "speclint card --menu evening --paper a6 --output cards.html",
        "speclint card --menu evening --pocket --output pocket.html",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(recipes);
        foreach (var option in new Option[] { menu, pocket, paper, book, on, units, output }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string[] ids = parsed.GetValue(recipes) ?? [];
        string? named = parsed.GetValue(menu), at = parsed.GetValue(book);
        bool list = parsed.GetValue(pocket);
        if ((ids.Length == 0) == (named is null)) throw new UsageException("card takes recipes, or --menu ID.");
        if (list && named is null) throw new UsageException("--pocket goes with --menu.");
        var target = NamedBook.Open(host, ids.Length > 0 ? ids[0] : named, at);
        var folder = target.Folder;
        var verdicts = Verdicts.Of(Checker.Check(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0)));
        var linked = verdicts.Profiles.Book;
        var chosen = named is null ? null : target.MenuOf(linked);
        var shown = chosen is null
            ? [.. ids.Select(id => NamedBook.In(folder, host, id, at).RecipeOf(linked, Name))]
            : chosen.Drinks.Select(e => e.Drink.IsGiven ? linked.Resolve(e.Drink.Value)?.File as Drink : null)
                .OfType<Recipe>().Distinct().ToList();
        if (shown.Count == 0) throw new UsageException($"{named} names no drink of the book.");
        var kind = parsed.GetValue(paper) switch { "letter" => CardPaper.Letter, "a6" => CardPaper.A6, _ => CardPaper.A4 };
        var view = CommonOptions.UnitsOf(parsed.GetValue(units), linked);
        ResultOutput.DeliverText(host, parsed.GetValue(output), writer =>
        {
            if (list) CardPage.WritePocketList(writer, verdicts, chosen!, kind, view, Shell.Version);
            else CardPage.WriteCards(writer, verdicts, shown, kind, view, Shell.Version);
        });
        var barred = shown.Where(r => verdicts.Of(r).Answer == Readiness.No).ToList();
        foreach (var recipe in barred)
            Shell.Say(host, $"{recipe.Id}: its card says that it must not be {(recipe is Drink ? "served" : "used")}. "
                + $"{string.Join("; ", verdicts.Of(recipe).Reasons)}.");
        return barred.Count > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }
}
