using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules;

/// <summary>Rules sorted by what they check, so that a file meets only those meant for it.</summary>
internal sealed class RuleSet
{
    private readonly FileRule[] fileRules;
    private readonly RecipeRule[] recipeRules;
    private readonly DrinkRule[] drinkRules;
    private readonly PrepRule[] prepRules;
    private readonly IngredientRule[] ingredientRules;
    private readonly MenuRule[] menuRules;
    private readonly StockRule[] stockRules;
    private readonly PricesRule[] pricesRules;
    private readonly BookRule[] bookRules;
    private readonly AcceptanceRule[] acceptanceRules;
    private readonly Dictionary<string, RuleInfo> byId;
    private readonly bool triesCorrections;

    /// <summary>The rules of a run.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="triesCorrections">Whether a correction is tried on its file before it is offered.</param>
    public RuleSet(IEnumerable<Rule> rules, bool triesCorrections = true)
    {
        this.triesCorrections = triesCorrections;
        var all = rules.ToArray();
        byId = all.ToDictionary(r => r.Info.Id, r => r.Info, StringComparer.Ordinal);
        fileRules = [.. all.OfType<FileRule>()];
        recipeRules = [.. all.OfType<RecipeRule>()];
        drinkRules = [.. all.OfType<DrinkRule>()];
        prepRules = [.. all.OfType<PrepRule>()];
        ingredientRules = [.. all.OfType<IngredientRule>()];
        menuRules = [.. all.OfType<MenuRule>()];
        stockRules = [.. all.OfType<StockRule>()];
        pricesRules = [.. all.OfType<PricesRule>()];
        bookRules = [.. all.OfType<BookRule>()];
        acceptanceRules = [.. all.OfType<AcceptanceRule>()];
    }

    /// <summary>What a rule of the run is, by its id; <see langword="null"/> where none has it.</summary>
    public RuleInfo? Find(string id) => byId.TryGetValue(id, out var info) ? info : null;

    /// <summary>Runs the rules about one file.</summary>
    /// <param name="book">The book.</param>
    /// <param name="profiles">Its profiles.</param>
    /// <param name="file">The file.</param>
    /// <param name="letsGo">Whether the profile of a drink is let go of afterwards.</param>
    public List<Finding> CheckFile(LinkedBook book, ProfileSet profiles, BookFile file, bool letsGo = false)
    {
        if (!letsGo || file is not Drink drink) return CheckFile(book, profiles, file, file is Recipe recipe ? profiles.Of(recipe) : null);
        var room = ProfileRoom.Take();
        var findings = CheckFile(book, profiles, file, profiles.Passing(drink, room));
        room.GiveBack();
        profiles.Forget(drink);
        return findings;
    }

    /// <summary>Runs the rules about one file on another text of it.</summary>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="change">The file as it is and as it is tried.</param>
    public List<Finding> Try(ProfileSet profiles, FileChange change)
    {
        var room = ProfileRoom.Take();
        var (set, profile) = profiles.With(change, room);
        var findings = Run(set.Book, set, change.New!, profile);
        room.GiveBack();
        return findings;
    }

    private List<Finding> CheckFile(LinkedBook book, ProfileSet profiles, BookFile file, RecipeProfile? profile)
    {
        var findings = Run(book, profiles, file, profile);
        if (triesCorrections) CorrectionTrial.Keep(this, book, profiles, file, findings);
        return findings;
    }

    private List<Finding> Run(LinkedBook book, ProfileSet profiles, BookFile file, RecipeProfile? profile)
    {
        var findings = new List<Finding>();
        var recipe = file as Recipe;
        var context = profile is null
            ? new FileContext(book, profiles, findings, file) { RunRules = byId }
            : new RecipeContext(book, profiles, findings, recipe!, profile) { RunRules = byId };
        foreach (var rule in fileRules) rule.Check(context);
        switch (file)
        {
            case Ingredient ingredient:
                foreach (var rule in ingredientRules) rule.Check(context, ingredient);
                break;
            case Menu menu:
                foreach (var rule in menuRules) rule.Check(context, menu);
                break;
            case Stock stock:
                foreach (var rule in stockRules) rule.Check(context, stock);
                break;
            case PriceList list:
                foreach (var rule in pricesRules) rule.Check(context, list);
                break;
        }

        if (context is not RecipeContext recipeContext) return findings;
        foreach (var rule in recipeRules) rule.Check(recipeContext);
        if (recipe is Drink drink)
        {
            foreach (var rule in drinkRules) rule.Check(recipeContext, drink);
        }
        else if (recipe is Prep prep)
        {
            foreach (var rule in prepRules) rule.Check(recipeContext, prep);
        }

        return findings;
    }

    /// <summary>The rules about the book as a whole.</summary>
    public IReadOnlyList<BookRule> BookRules => bookRules;

    /// <summary>Runs one of the rules about the book as a whole.</summary>
    public void CheckBook(LinkedBook book, ProfileSet profiles, BookRule rule, List<Finding> findings) =>
        rule.Check(new BookContext(book, profiles, findings) { RunRules = byId });

    public void CheckBook(LinkedBook book, ProfileSet profiles, List<Finding> findings)
    {
        var context = new BookContext(book, profiles, findings) { RunRules = byId };
        foreach (var rule in bookRules) rule.Check(context);
    }

    public void CheckAcceptances(LinkedBook book, ProfileSet profiles, List<Finding> findings, List<AcceptanceUse> uses)
    {
        var context = new BookContext(book, profiles, findings) { RunRules = byId };
        foreach (var use in uses)
        {
            foreach (var rule in acceptanceRules) rule.Check(context, use);
        }
    }
}
