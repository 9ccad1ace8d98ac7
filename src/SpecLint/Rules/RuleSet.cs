using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;

namespace SpecLint.Rules;

/// <summary>Rules sorted by what they check, so that a file meets only those meant for it.</summary>
internal sealed class RuleSet
{
    private readonly Dictionary<FileKind, Rule[]> rulesOfKind;
    private readonly BookRule[] bookRules;
    private readonly AcceptanceRule[] acceptanceRules;
    private readonly Dictionary<string, RuleInfo> byId;
    private readonly List<Rule> house;
    private readonly Dictionary<string, Rule> ruleOf;

    [ThreadStatic]
    private static List<Rule>? lookers;
    private readonly bool triesCorrections;

    /// <summary>The rules of a run.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="triesCorrections">Whether a correction is tried on its file before it is offered.</param>
    public RuleSet(IEnumerable<Rule> rules, bool triesCorrections = true)
    {
        this.triesCorrections = triesCorrections;
        var all = rules.ToArray();
        ruleOf = new(all.Length, StringComparer.Ordinal);
        byId = new(all.Length, StringComparer.Ordinal);
        foreach (var rule in all)
        {
            var info = rule.Info;
            byId.Add(info.Id, info);
            ruleOf.Add(info.Id, rule);
        }

        house = [.. all.Where(r => HouseRules.IsHouseId(r.Info.Id))];
        Rule[] ofFiles = Array.FindAll(all, static r => r is FileRule);
        Rule[] ofRecipes = [.. ofFiles, .. Array.FindAll(all, static r => r is RecipeRule)];
        rulesOfKind = new()
        {
            [FileKind.Drink] = [.. ofRecipes, .. Array.FindAll(all, static r => r is DrinkRule)],
            [FileKind.Prep] = [.. ofRecipes, .. Array.FindAll(all, static r => r is PrepRule)],
            [FileKind.Ingredient] = [.. ofFiles, .. Array.FindAll(all, static r => r is IngredientRule)],
            [FileKind.Menu] = [.. ofFiles, .. Array.FindAll(all, static r => r is MenuRule)],
            [FileKind.Stock] = [.. ofFiles, .. Array.FindAll(all, static r => r is StockRule)],
            [FileKind.Prices] = [.. ofFiles, .. Array.FindAll(all, static r => r is PricesRule)],
            [FileKind.Bar] = ofFiles,
        };
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

    /// <summary>
    /// Whether rules about one file find something in another text of it, as <see cref="CorrectionTrial"/> asks; nobody is offered what
    /// would correct it then. The rules behind the first that does are not run.
    /// </summary>
    /// <param name="set">The profiles in which it is tried.</param>
    /// <param name="file">The file as it is tried.</param>
    /// <param name="profile">Its profile, where it is a recipe.</param>
    /// <param name="only">The rules; <see langword="null"/> for all.</param>
    /// <param name="isSuch">Which findings are looked for.</param>
    public bool Finds(ProfileSet set, BookFile file, RecipeProfile? profile, IReadOnlyList<Rule>? only, Predicate<Finding> isSuch)
    {
        var findings = new List<Finding>();
        var context = ContextOf(set, findings, file, profile, offersCorrections: false);
        only ??= rulesOfKind[file.Kind];
        for (int i = 0; i < only.Count; i++)
        {
            only[i].Run(context);
            if (findings.Count == 0) continue;
            if (findings.Exists(isSuch)) return true;
            findings.Clear();
        }

        return false;
    }

    /// <summary>
    /// The rules about a kind of file that can find what one rule finds: itself, and a house's own, which may report under any id.
    /// </summary>
    public IReadOnlyList<Rule> RulesOf(RuleInfo rule, FileKind kind)
    {
        var runs = rulesOfKind[kind];
        var found = new List<Rule>();
        if (ruleOf.TryGetValue(rule.Id, out var its) && !house.Contains(its) && Array.IndexOf(runs, its) >= 0) found.Add(its);
        foreach (var own in house)
        {
            if (Array.IndexOf(runs, own) >= 0) found.Add(own);
        }

        return found;
    }

    private List<Finding> CheckFile(LinkedBook book, ProfileSet profiles, BookFile file, RecipeProfile? profile)
    {
        var findings = new List<Finding>();
        var looked = triesCorrections && profile is not null ? lookers ??= [] : null;
        looked?.Clear();
        DeclarationReads.Take();
        var context = ContextOf(profiles, findings, file, profile, offersCorrections: true);
        foreach (var rule in rulesOfKind[file.Kind])
        {
            rule.Run(context);
            if (looked is not null && DeclarationReads.Take()) looked.Add(rule);
        }

        if (triesCorrections && findings.Exists(static f => f.Corrections.Count > 0))
            new CorrectionTrial(this, profiles, file, profile, looked ?? []).Keep(findings);
        return findings;
    }

    private FileContext ContextOf(
        ProfileSet profiles, List<Finding> findings, BookFile file, RecipeProfile? profile, bool offersCorrections) =>
        profile is null
            ? new FileContext(profiles.Book, profiles, findings, file) { RunRules = byId, OffersCorrections = offersCorrections }
            : new RecipeContext(profiles.Book, profiles, findings, profile.Recipe, profile)
            {
                RunRules = byId,
                OffersCorrections = offersCorrections,
            };

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
