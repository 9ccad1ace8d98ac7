using System.CommandLine;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Verbs;

/// <summary><c>card</c>: cards for those who make a recipe, and the pocket list of a menu.</summary>
internal sealed class CardVerb : Verb
{
    private readonly Argument<string[]> recipes = new("RECIPE") { Description = "Ids of drinks or preparations of the book.", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string?> menu = new("--menu") { Description = "A card for each drink of this menu.", HelpName = "ID" };
    private readonly Option<bool> pocket = new("--pocket") { Description = "With --menu: one list of all its drinks in place of cards." };
    private readonly Option<string> paper = new("--paper") { Description = "Paper to print on.", HelpName = "a4|letter|a6", DefaultValueFactory = _ => "a4" };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string?> output = CommonOptions.Output();

    public CardVerb() => paper.TakesOneOf("a4", "letter", "a6");

    public override string Name => "card";

    public override string Description => "Writes cards for the staff as a page to print: amounts, method, glass, garnish, allergens, batch sizes, keeping. Exit status 1 when one of them must not be served or used.";

    public override IReadOnlyList<string> Examples => ["speclint card low-tide --book recipes --output low-tide.html", "speclint card --menu evening --paper a6 --output cards.html", "speclint card --menu evening --pocket --output pocket.html"];

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
        var folder = BookFolder.Open(host, at is null ? [] : [at]);
        var verdicts = Verdicts.Of(Checker.Check(folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), 0)));
        var linked = verdicts.Profiles.Book;
        var chosen = named is null ? null : MenuOf(linked, named);
        var shown = chosen is null ? [.. ids.Select(id => RecipeOf(linked, id))] : chosen.Drinks.Select(e => e.Drink.IsGiven ? linked.Resolve(e.Drink.Value)?.File as Drink : null).OfType<Recipe>().Distinct().ToList();
        if (shown.Count == 0) throw new UsageException($"{named} names no drink of the book.");
        var kind = parsed.GetValue(paper) switch { "letter" => CardPaper.Letter, "a6" => CardPaper.A6, _ => CardPaper.A4 };
        var view = CommonOptions.UnitsOf(parsed.GetValue(units), linked);
        ResultOutput.DeliverText(host, parsed.GetValue(output), writer =>
        {
            if (list) CardPage.WritePocketList(writer, verdicts, chosen!, kind, view, Shell.Version);
            else CardPage.WriteCards(writer, verdicts, shown, kind, view, Shell.Version);
        });
        var barred = shown.Where(r => verdicts.Of(r).Answer == Readiness.No).ToList();
        foreach (var recipe in barred) Shell.Say(host, $"{recipe.Id}: its card says that it must not be {(recipe is Drink ? "served" : "used")}. {string.Join("; ", verdicts.Of(recipe).Reasons)}.");
        return barred.Count > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private static Recipe RecipeOf(LinkedBook book, string id) =>
        book.Resolve(id) is { ByProduct: null, File: Recipe recipe } ? recipe : throw new UsageException($"{id} is not a drink or preparation of the book.");

    /// <summary>The menu of an id.</summary>
    internal static Menu MenuOf(LinkedBook book, string id) =>
        book.Menus.FirstOrDefault(m => m.Id == id) ?? throw new UsageException($"{id} is not a menu of the book{(book.Menus.Count == 0 ? "" : $"; those are {string.Join(", ", book.Menus.Select(m => m.Id).Order(StringComparer.Ordinal))}")}.");
}
