using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7022", "protected-name-misused", "A protected name is used for something else", Level.Warning)]
internal sealed partial class ProtectedName : FileRule
{
    private static readonly FixedList<LegalName> Names = [.. NameTable.All.Where(n => n.Kind == "protected")];

    /// <summary>With what the names begin: hardly a recipe is called so, and there are many.</summary>
    private static readonly WordFilter Beginnings = WordFilter.OfFirstWords(Names.SelectMany(n => n.Terms));

    /// <summary>Whether some words end in a protected name.</summary>
    public static bool IsOne(string words)
    {
        foreach (var name in Names)
        {
            if (TermOf(words, name) is not null) return true;
        }

        return false;
    }

    public override void Check(FileContext context)
    {
        switch (context.File)
        {
            case Menu menu:
                foreach (var entry in menu.Drinks)
                {
                    if (!entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
                    string at = $"drinks[{entry.Drink.Value}]";
                    if (entry.Name.IsGiven) Look(context, recipe, entry.Name.Value, context.At(entry.Name.Span, at + ".name"), isName: true);
                    if (!entry.Words.IsGiven) continue;
                    foreach (string words in MenuPieces.Of(entry.Words.Value))
                        Look(context, recipe, MenuWords.Bare(words), context.At(entry.Words.Span, at + ".words"));
                }

                break;
            case Recipe { Name.IsGiven: true } recipe:
                Look(context, recipe, recipe.Name.Value, context.At(recipe.Name.Span, "name"));
                break;
            case Ingredient { Name.IsGiven: true, Like.IsGiven: true } own
                when context.Profiles.MaterialOf(own.Id)?.Ingredient?.LikeInTheEnd is { } end:
                LookAtBottle(context, own, end);
                break;
        }
    }

    /// <summary>A bottle of the bar's own that is called by a protected name, and is like something that does not bear it.</summary>
    private static void LookAtBottle(FileContext context, Ingredient own, Ingredient end)
    {
        string words = own.Name.Value;
        if (!Beginnings.MayHold(words)) return;
        foreach (var name in Names)
        {
            if (TermIn(words, name) is not { } term || !name.AppliesIn(context.Settings) || IsOfAPlace(words, term)) continue;
            var aliases = end.Aliases.Where(static a => a.IsGiven).Select(static a => a.Value);
            string called = $"{end.Id.Replace('-', ' ')} | {end.Name.Or("")} | {string.Join(" | ", aliases)}";
            if (name.Terms.Any(t => WordSearch.First(called, [t]) is not null)) continue;
            context.Report(new(Rule)
            {
                AskedLevel = name.LevelCap is { } cap && cap < Level.Warning ? cap : Level.Warning,
                At = context.At(own.Name.Span, "name"),
                Key = term,
                Message = $"The bottle is called \"{words}\", a protected name, but its file says that it is like `{end.Id}` "
                    + $"({name.Source}).",
                Advice = "Give it the name on its label, or the `like` of what it is named after.",
                Evidence = [Proof.Of("words", words, context.At(own.Name.Span)), Proof.Of("like", end.Id)],
            });
            return;
        }
    }

    /// <summary>Words before the name of a place that only tell where something lies ("breeze of the harbour").</summary>
    private static readonly string[] Before = ["di", "de", "do", "du", "da", "del", "della", "from", "of", "zu", "van", "von", "aan", "au"];

    /// <summary>Whether a term stands behind a word that makes a place of it.</summary>
    private static bool IsOfAPlace(string words, string term)
    {
        int at = WordSearch.Find(words, term);
        string before = at > 0 ? words.Substring(0, at).TrimEnd() : "";
        int last = before.LastIndexOf(' ');
        return Array.IndexOf(Before, before.Substring(last + 1).ToLowerInvariant()) >= 0;
    }

    private static void Look(FileContext context, Recipe recipe, string words, Spot at, bool isName = false)
    {
        // The filter takes an apostrophe for a part of a word, and here it ends one.
        if (!Beginnings.MayHold(words) && words.IndexOf('\'') < 0) return;
        bool isOwn = recipe == context.File;
        HeldWords? held = null;
        string? told = null;
        foreach (var name in Names)
        {
            // "Champagne vinegar" names a vinegar: only the last words say what a thing is. Of several names the longest is told.
            var found = isName || (isOwn && recipe is Drink) ? TermIn(words, name) : TermOf(words, name);
            if (found is not { } term
                || !name.AppliesIn(context.Settings)
                || (told is not null && told.EndsWith(term, StringComparison.OrdinalIgnoreCase)))
                continue;
            held ??= HeldWords.Of(context, recipe);
            if (held.IsOpen || name.Terms.Any(held.HasName)) return;
            told = term;
            context.Report(new(Rule)
            {
                // A drink "of Porto" may be called after the town.
                AskedLevel = (isOwn || isName) && (recipe is Prep prep ? !isName && !Sold.IsSold(context, prep) : IsOfAPlace(words, term))
                    ? Level.Note
                    : name.LevelCap,
                At = at,
                Key = term,
                Message = $"{(isOwn ? "It is named" : "Guests read")} \"{words}\", a protected name, but "
                    + $"{recipe.Name.Or(recipe.Id)} is made from {Say.List(held.Names)} ({name.Source}).",
                Advice = isOwn
                    ? "Name the kind, or make it from what it is named after."
                    : "Name the kind that is poured, or pour what the menu names.",
                Evidence = [Proof.Of("words", words, at.Place)],
                Related = isOwn ? [] : [new RelatedPlace(recipe.Head, "the recipe")],
            });
        }
    }

    /// <summary>A drink's name holds what is in it anywhere ("Scotch sour"); a short word is that of a place or a person too.</summary>
    private static string? TermIn(string words, LegalName name)
    {
        foreach (string term in name.Terms)
        {
            if (term.Length > LongestShared && WordSearch.Has(words, term)) return term;
        }

        return null;
    }

    /// <summary>Letters up to which a protected name is often something else too: port, cava.</summary>
    private const int LongestShared = 4;

    private static string? TermOf(string words, LegalName name)
    {
        foreach (string term in name.Terms)
        {
            if (term.Length > 0 && WordSearch.EndsWith(words, term)) return term;
        }

        return null;
    }
}
