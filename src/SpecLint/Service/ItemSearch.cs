using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Service;

/// <summary>An item that a search found.</summary>
/// <param name="Item">The item.</param>
/// <param name="Name">Its name.</param>
/// <param name="Called">The other name by which it was found; empty where it was its id or name.</param>
/// <param name="Kind">What it is, in a word or two.</param>
/// <param name="MakeUp">What it comes to.</param>
/// <param name="Allergens">Allergens that it contains, of those that count where the bar is.</param>
/// <param name="AllergensKnown">Whether all of its allergens are known.</param>
/// <param name="Differs">What differs from the item that it is compared with; empty for that item itself.</param>
internal sealed record FoundItem(
    Item Item, string Name, string Called, string Kind, MakeUp MakeUp, IReadOnlyList<string> Allergens, bool AllergensKnown,
    IReadOnlyList<string> Differs);

/// <summary>
/// Finds items of a book and of the built-in catalogue by words of their ids, names and synonyms, slips of the hand allowed, or by
/// what they are made of. Pure: the same book and words give the same list.
/// </summary>
internal sealed class ItemSearch
{
    // How well a word fits one of a name: the less the better.
    private const int Understood = -1, Whole = 0, Begins = 1, Within = 2, Slip = 3;

    private readonly ProfileSet profiles;
    private readonly LinkedBook book;

    private ItemSearch(ProfileSet profiles)
    {
        this.profiles = profiles;
        book = profiles.Book;
    }

    /// <summary>Finds items.</summary>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="words">Words that each must fit; none where only the make-up counts.</param>
    /// <param name="like">The item by whose make-up what is found is ranked; <see langword="null"/> ranks by how well the words fit.</param>
    /// <param name="most">The most to give back.</param>
    public static IReadOnlyList<FoundItem> Of(ProfileSet profiles, IReadOnlyList<string> words, Item? like, int most) =>
        new ItemSearch(profiles).Find([.. words.Select(BuiltInCatalogue.Slug).Where(w => w.Length > 0)], like, most);

    private List<FoundItem> Find(IReadOnlyList<string> words, Item? like, int most)
    {
        var hits = words.Count == 0 ? All() : ByWords(words);
        if (like is not null)
        {
            var model = MakeUp.Of(like, profiles);
            return [.. hits
                .Where(h => h.Item.Id != like.Id && h.Item.File.Kind != FileKind.Drink)
                .Select(h => (Hit: h, Steps: MakeUp.Of(h.Item, profiles).StepsTo(model)))
                .OrderBy(h => h.Steps).ThenBy(h => h.Hit.Item.IsBuiltIn).ThenBy(h => h.Hit.Item.Id, StringComparer.Ordinal)
                .Take(most)
                .Select(h => Describe(h.Hit.Item, h.Hit.Called, like))];
        }

        var ranked = hits.OrderBy(h => h.Score)
            .ThenBy(h => h.Item.IsBuiltIn)
            .ThenBy(h => h.Item.Id.Length)
            .ThenBy(h => h.Item.Id, StringComparer.Ordinal)
            .Take(most)
            .ToList();
        return [.. ranked.Select((h, i) => Describe(h.Item, h.Called, i == 0 ? null : ranked[0].Item))];
    }

    private IEnumerable<Hit> All() =>
        book.Ids.Select(id => book.Resolve(id)!)
            .Concat(BuiltInCatalogue.Ids.Where(id => !book.Ids.Contains(id)).Select(id => book.Resolve(id)!))
            .Select(item => new Hit(item, 0, ""));

    private IEnumerable<Hit> ByWords(IReadOnlyList<string> words)
    {
        var best = new Dictionary<string, Hit>(StringComparer.Ordinal);

        // What a recipe would understand by the words comes first.
        if (book.NameResolver.Resolve(string.Join(" ", words)) is { Answer: NameAnswer.Resolved } meant
            && book.Resolve(meant.Id) is { } named)
            best[named.Id] = new Hit(named, Understood, "");
        foreach (string id in book.Ids)
        {
            var item = book.Resolve(id)!;
            Try(id, id, "");
            if (item.ByProduct is null && item.File.Name.IsGiven) Try(id, BuiltInCatalogue.Slug(item.File.Name.Value), "");
            if (item.File is not Ingredient ingredient) continue;
            foreach (var alias in ingredient.Aliases) Try(id, BuiltInCatalogue.Slug(alias.Value), alias.Value);
        }

        foreach (string id in BuiltInCatalogue.Ids) Try(id, id, "");
        foreach (string synonym in BuiltInCatalogue.Synonyms) Try(synonym, synonym, synonym.Replace('-', ' '));

        // A slip is only looked for where nothing is written as asked.
        return best.Values.Any(h => h.Score < Slip * 100) ? best.Values.Where(h => h.Score < Slip * 100) : best.Values;

        void Try(string id, string slug, string called)
        {
            int score = Score(words, slug);
            if (score < 0 || book.Resolve(id) is not { } item || (best.TryGetValue(item.Id, out var known) && known.Score <= score)) return;
            best[item.Id] = new Hit(item, score, called);
        }
    }

    /// <summary>How well all the words fit a name: the worst of them, then what of the name they leave over; −1 where one does not fit.</summary>
    private static int Score(IReadOnlyList<string> words, string slug)
    {
        string[] tokens = slug.Split('-');
        int worst = 0, letters = 0;
        foreach (string word in words)
        {
            int fits = Fit(word, slug, tokens);
            if (fits < 0) return -1;
            worst = Math.Max(worst, fits);
            letters += word.Length;
        }

        return (worst * 100) + Math.Min(99, Math.Max(0, slug.Length - letters));
    }

    private static int Fit(string word, string slug, string[] tokens)
    {
        if (tokens.Contains(word)
            || slug == word
            || StringComparer.Ordinal.Equals("-" + slug + "-", "-" + word + "-")
            || ("-" + slug + "-").Contains("-" + word + "-"))
            return Whole;
        if (tokens.Any(t => t.StartsWith(word, StringComparison.Ordinal))) return Begins;
        if (word.Length >= 3 && slug.Contains(word)) return Within;
        if (word.Length < 4) return -1;
        int allowed = NearestName.Allowed(word.Length) - 1;
        return allowed > 0
            && tokens.Append(slug).Any(t => t.Length >= 3 && t[0] == word[0] && NearestName.Distance(word, t, allowed) <= allowed)
            ? Slip : -1;
    }

    private FoundItem Describe(Item item, string called, Item? model)
    {
        var makeUp = MakeUp.Of(item, profiles);
        var (allergens, known) = AllergensOf(item);
        string kind = KindOf(item);
        var differs = new List<string>();
        if (model is not null)
        {
            string other = KindOf(model);
            if (kind != other) differs.Add($"{kind}, not {other}");
            differs.AddRange(makeUp.Against(MakeUp.Of(model, profiles)));
            var (its, _) = AllergensOf(model);
            foreach (string token in allergens.Except(its)) differs.Add($"contains {token}");
            foreach (string token in its.Except(allergens)) differs.Add($"{token} is not known to be in it");
        }

        return new FoundItem(item, NameOf(item), called == NameOf(item) ? "" : called, kind, makeUp, allergens, known, differs);
    }

    private (IReadOnlyList<string> Contains, bool Known) AllergensOf(Item item)
    {
        if (item.File is Recipe recipe)
        {
            var profile = profiles.Of(recipe).Allergens;
            return (profile.Contained(book.Settings), profile.Unknown.Count == 0);
        }

        var statement = profiles.MaterialOf(item.Id)?.Ingredient?.Allergens;
        return (
            statement is null ? [] : [.. statement.Contains.Distinct().OrderBy(t => t, StringComparer.Ordinal)],
            statement is { SaysWhatItContains: true });
    }

    private string KindOf(Item item) => item switch
    {
        { ByProduct: not null } => "by-product",
        { File: Drink } => "drink",
        { File: Prep prep } => prep.Family.OrNone().Id is { Length: > 0 } family ? family : "preparation",
        _ => profiles.MaterialOf(item.Id)?.Kind.Id is { Length: > 0 } kind ? kind : "ingredient",
    };

    private static string NameOf(Item item) => item.ByProduct is null ? item.File.Name.Or(item.Id) : item.Id;

    private sealed record Hit(Item Item, int Score, string Called);
}
