using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Linking;

/// <summary>
/// Understands names as people write them: adjectives that change nothing, word order, plurals, spellings, remarks in brackets,
/// "juice of a lemon", "x or y", makers' names. A word is left out only where the table of neutral words has it, so that no name
/// leads to a thing with other allergens, strength or sugar; what is not understood is not known.
/// </summary>
internal sealed class NameResolver
{
    private const string IsMaker = "it is a maker's name";

    private static readonly Lazy<NameBags> CatalogueBags = new(MakeCatalogueBags);

    private readonly LinkedBook? book;
    private readonly NameBags bookBags = new();
    private readonly Dictionary<string, string> bookNames = new(StringComparer.Ordinal);

    /// <summary>A resolver for a book.</summary>
    /// <param name="book">The book, whose files come before the catalogue; <see langword="null"/> for the catalogue alone.</param>
    public NameResolver(LinkedBook? book = null)
    {
        this.book = book;
        if (book is null) return;
        foreach (var file in book.Preps.Concat<BookFile>(book.Ingredients))
        {
            Know(file.Id, file.Id);
            if (file.Name.IsGiven) Know(Slugs.Of(file.Name.Value), file.Id);
            if (file is not Ingredient ingredient) continue;
            foreach (var alias in ingredient.Aliases) Know(Slugs.Of(alias.Value), file.Id);
        }
    }

    /// <summary>What a name means.</summary>
    /// <param name="written">The name, as text or as an id.</param>
    public WrittenName Resolve(string written)
    {
        if (Exact(Slugs.Of(written)) is { } exact) return exact with { IsExact = true };
        string text = WithoutBrackets(written, out string bracketed);
        return Whole(text)
            ?? WithoutTails(text).Select(Whole).FirstOrDefault(n => n is not null)
            ?? (bracketed.Length > 0 ? One(bracketed, 0) : null)
            ?? new WrittenName(NameAnswer.NotKnown);
    }

    private void Know(string slug, string id)
    {
        if (slug.Length == 0) return;
        bookNames[slug] = bookNames.TryGetValue(slug, out string? first) ? first : id;
        bookBags.Add(slug);
    }

    private static string WithoutBrackets(string written, out string bracketed)
    {
        bracketed = "";
        int open = written.IndexOf('('), close = open < 0 ? -1 : written.IndexOf(')', open);
        if (close < 0) return written;
        bracketed = written.Substring(open + 1, close - open - 1);
        return written.Substring(0, open) + " " + written.Substring(close + 1);
    }

    private WrittenName? Whole(string text) => Exact(Slugs.Of(text)) ?? Several(text) ?? One(text, 0);

    /// <summary>A text without a remark at its end; first without the shortest that could be one.</summary>
    private static IEnumerable<string> WithoutTails(string text)
    {
        string[] words = Words(text);
        for (int at = words.Length - 1; at > 0; at--)
        {
            if (!NameWords.Tails.Any(t => StartsAt(words, at, t))) continue;
            int cut = PlaceOf(text, words, at);
            if (cut > 0) yield return text.Substring(0, cut).TrimEnd(' ', ',', '-');
        }
    }

    private static bool StartsAt(string[] words, int at, string phrase)
    {
        string[] parts = phrase.Split(' ');
        if (at + parts.Length > words.Length) return false;
        for (int i = 0; i < parts.Length; i++)
        {
            if (words[at + i] != parts[i]) return false;
        }

        return true;
    }

    /// <summary>Where the word of a number begins in a text; -1 where accents hide it.</summary>
    private static int PlaceOf(string text, string[] words, int number)
    {
        int at = 0;
        for (int i = 0; i <= number; i++)
        {
            int found = text.IndexOf(words[i], at, StringComparison.OrdinalIgnoreCase);
            if (found < 0) return -1;
            if (i == number) return found;
            at = found + words[i].Length;
        }

        return -1;
    }

    /// <summary>Two things in one name, or one of two.</summary>
    private WrittenName? Several(string text)
    {
        string lower = " " + text.ToLowerInvariant().Replace("-or-", " or ").Replace("-and-", " and ") + " ";
        string[] either = Split(lower, " or ", "/");
        if (either.Length > 1) return Choice(either, "it names one or the other");
        string[] both = Split(lower, ",", " and ", " & ", " + ", ";");
        if (both.Length < 2) return null;

        // "mint leaves, fresh" is one thing, and "rum, light" too.
        if (both.Length == 2
            && Words(both[1]).All(w => NameWords.IsNeutral(w) || NameWords.IsMovable(w))
            && One(both[1] + " " + both[0], 0) is { Answer: NameAnswer.Resolved } one)
            return one;
        return Choice(both, "it names several things");
    }

    private static string[] Split(string text, params string[] separators) =>
        [.. text.Split(separators, StringSplitOptions.RemoveEmptyEntries).Select(t => t.Trim()).Where(t => t.Length > 0)];

    private WrittenName? Choice(string[] parts, string because)
    {
        var ids = new List<string>();
        bool makers = true;
        for (int at = 0; at < parts.Length; at++)
        {
            var own = Exact(Slugs.Of(parts[at])) ?? One(parts[at], 0);

            // "lemon or lime juice", "white or dark creme de cacao": the last words belong to both.
            if (own is null or { Answer: NameAnswer.NotKnown } || KindOf(own.Id).IsBotanical) own = Sharing(parts, at) ?? own;
            if (own is null or { Answer: NameAnswer.NotKnown }) return null;
            makers &= own.Answer == NameAnswer.Maker;
            if (own.Id.Length > 0) Add(ids, own.Id);
            foreach (string choice in own.Choices) Add(ids, choice);
        }

        return ids.Count switch
        {
            0 => null,
            1 when makers => new WrittenName(NameAnswer.Maker) { Id = ids[0], Because = IsMaker },
            1 => new WrittenName(NameAnswer.Resolved) { Id = ids[0] },
            _ => new WrittenName(NameAnswer.Unclear) { Choices = FixedList.Of(ids), Because = because },
        };
    }

    /// <summary>A part with the last words of one that follows.</summary>
    private WrittenName? Sharing(string[] parts, int at)
    {
        for (int next = at + 1; next < parts.Length; next++)
        {
            string[] words = Words(parts[next]);
            for (int shared = Math.Min(3, words.Length - 1); shared > 0; shared--)
            {
                if (One(parts[at] + " " + string.Join(" ", words.Skip(words.Length - shared)), 1)
                    is { Answer: NameAnswer.Resolved } both) return both;
            }
        }

        return null;
    }

    private static void Add(List<string> ids, string id)
    {
        if (!ids.Contains(id)) ids.Add(id);
    }

    /// <summary>One thing, its words folded.</summary>
    private WrittenName? One(string text, int depth)
    {
        var words = new List<string>(Words(text));
        if (words.Count == 0 || depth > 3) return null;
        if (OfWords(words, depth) is { } found) return found;
        int all = words.Count;
        DropAmount(words);
        return words.Count == all ? null : OfWords(words, depth);
    }

    private WrittenName? OfWords(List<string> words, int depth) =>
        Look(words)
            ?? JuiceOf(words, depth)
            ?? WithoutNeutral(words)
            ?? OfAnother(words, depth)
            ?? Maker(words, depth)
            ?? Flavoured(words, depth)
            ?? PieceOf(words, depth);

    private static string[] Words(string text) => Slugs.Of(text).Split(['-'], StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Takes numbers with a unit off both ends: <c>egg yolk 1 oz</c>.</summary>
    private static void DropAmount(List<string> words)
    {
        while (words.Count > 2 && IsNumber(words[words.Count - 2]) && Reading.Measures.Default.TryFind(words[words.Count - 1].AsSpan(), out _))
        {
            words.RemoveAt(words.Count - 1);
            while (words.Count > 1 && IsNumber(words[words.Count - 1])) words.RemoveAt(words.Count - 1);
        }
    }

    private static bool IsNumber(string word) => word.All(char.IsDigit);

    private WrittenName? Look(List<string> words) => Exact(string.Join("-", words)) ?? Bag(words);

    /// <summary>A name as it stands: of the book, the catalogue, the trade, or one that says too little.</summary>
    private WrittenName? Exact(string slug)
    {
        if (slug.Length == 0) return null;
        if (book?.Resolve(slug) is { File: not Drink } item) return Of(item.Id);
        if (bookNames.TryGetValue(slug, out string? own)) return Of(own);
        if (UnclearNames.Find(slug) is { } unclear) return new WrittenName(NameAnswer.Unclear) { Choices = unclear.Could, Because = unclear.Because };
        if (BuiltInCatalogue.FindItem(slug) is { } built) return Of(built.Id);
        return NameWords.Trade.TryGetValue(slug, out string? trade) ? Of(trade) : null;
    }

    private static WrittenName Of(string id) => new(NameAnswer.Resolved) { Id = id };

    /// <summary>A name of the same words in the singular and in one spelling; in another order only where an adjective moved.</summary>
    private WrittenName? Bag(List<string> words)
    {
        foreach (var bags in new[] { bookBags, CatalogueBags.Value })
        {
            WrittenName? found = null;
            foreach (string slug in bags.Of(words))
            {
                string last = NameWords.Canonical(LastOf(slug)), ours = NameWords.Canonical(words[words.Count - 1]);
                if (last != ours && !NameWords.IsMovable(last) && !NameWords.IsMovable(ours)) continue;
                var its = Exact(slug);
                if (its is null) continue;
                if (found is not null && (found.Answer != its.Answer || found.Id != its.Id)) return null;
                found = its;
            }

            if (found is not null) return found;
        }

        return null;
    }

    private static string LastOf(string slug) => slug.Substring(slug.LastIndexOf('-') + 1);

    private static NameBags MakeCatalogueBags()
    {
        var bags = new NameBags(8192);
        foreach (string slug in BuiltInCatalogue.Ids.Concat(BuiltInCatalogue.Synonyms).Concat(NameWords.Trade.Keys).Concat(UnclearNames.All))
            bags.Add(slug);
        return bags;
    }

    /// <summary><c>juice of a lemon</c>, <c>juice of 1/2 lime</c>.</summary>
    private WrittenName? JuiceOf(List<string> words, int depth)
    {
        if (words.Count < 2
            || words[0] is not ("juice" or "juiced" or "squeeze" or "squeezed")
            || (words[0][0] == 'j' && words[1] != "of" && !IsNumber(words[1])))
            return null;
        var rest = words.Skip(1)
            .Where(w => !IsNumber(w) && w is not ("of" or "a" or "an" or "one" or "half" or "the" or "two" or "three" or "quarter"))
            .ToList();
        if (rest.Count == 0 || One(string.Join(" ", rest), depth + 1) is not { Answer: NameAnswer.Resolved } fruit) return null;
        return Exact(fruit.Id + "-juice") is { Answer: NameAnswer.Resolved } juice ? juice with { Piece = "juice of" } : null;
    }

    /// <summary><c>peel of lemon</c> as <c>lemon peel</c>.</summary>
    private WrittenName? OfAnother(List<string> words, int depth)
    {
        int of = words.IndexOf("of");
        if (of < 1 || of == words.Count - 1) return null;
        var turned = words.Skip(of + 1).Concat(words.Take(of)).ToList();
        return Look(turned) ?? WithoutNeutral(turned) ?? (depth < 3 ? PieceOf(turned, depth + 1) : null);
    }

    /// <summary>The name without words that change nothing beside a thing of its kind.</summary>
    private WrittenName? WithoutNeutral(List<string> words)
    {
        var neutral = words.Where(NameWords.IsNeutral).ToList();
        if (neutral.Count == 0 || neutral.Count == words.Count) return null;

        // First those that never matter, so that a word that belongs to the name is kept where it can be: "cream of coconut" is not
        // coconut cream.
        return WithoutFirst(words)
            ?? Without(words, w => w != "of" && NameWords.IsNeutralFor(w, ItemKind.None))
            ?? Without(words, w => w != "of" && NameWords.IsNeutral(w))
            ?? (words[0] == "of" || !words.Contains("of") ? Without(words, NameWords.IsNeutral) : null);
    }

    /// <summary>Without as few as possible of the words at the front: "fresh crushed ice" is crushed ice.</summary>
    private WrittenName? WithoutFirst(List<string> words)
    {
        for (int drop = 1; drop < words.Count && NameWords.IsNeutral(words[drop - 1]); drop++)
        {
            if (Fitting(words.GetRange(drop, words.Count - drop), words.GetRange(0, drop)) is { } found) return found;
        }

        return null;
    }

    private WrittenName? Without(List<string> words, Func<string, bool> drops)
    {
        var left = words.Where(w => !drops(w)).ToList();
        return left.Count == words.Count || left.Count == 0 ? null : Fitting(left, [.. words.Where(drops)]);
    }

    /// <summary>What the words that are left mean, where those that were dropped change nothing of it.</summary>
    private WrittenName? Fitting(List<string> left, List<string> dropped)
    {
        if (Look(left) is not { } found) return null;
        bool fits = found.Answer switch
        {
            NameAnswer.Resolved => dropped.All(w => NameWords.IsNeutralFor(w, KindOf(found.Id))),
            _ => found.Choices.All(c => dropped.All(w => NameWords.IsNeutralFor(w, KindOf(c)))),
        };
        return fits ? found : null;
    }

    private ItemKind KindOf(string id) =>
        (book?.Resolve(id) ?? BuiltInCatalogue.FindItem(id))?.File is Ingredient ingredient
            ? ingredient.IngredientKind.OrNone()
            : ItemKind.None;

    /// <summary><c>apricot flavored brandy</c> as <c>apricot brandy</c>.</summary>
    private WrittenName? Flavoured(List<string> words, int depth)
    {
        int at = words.FindIndex(w => NameWords.Canonical(w) == "flavoured");
        if (at < 1) return null;
        var rest = words.Where((_, i) => i != at).ToList();
        return One(string.Join(" ", rest), depth + 1);
    }

    /// <summary>A maker's name, alone or before what it is.</summary>
    private WrittenName? Maker(List<string> words, int depth)
    {
        string slug = "-" + string.Join("-", words) + "-";
        foreach (var maker in NameWords.Makers)
        {
            int at = slug.IndexOf("-" + maker.Words + "-", StringComparison.Ordinal);
            if (at < 0) continue;
            string rest = (slug.Substring(0, at) + " " + slug.Substring(at + maker.Words.Length + 1)).Replace('-', ' ').Trim();
            var kind = new WrittenName(NameAnswer.Maker) { Id = maker.Kind, Choices = maker.Choices, Because = IsMaker };
            if (Words(rest).All(w => NameWords.IsNeutral(w) || NameWords.IsCategory(w))) return kind;
            if (maker.IsProduct) return kind with { Id = "", Choices = [] };
            return One(rest, depth + 1) switch
            {
                { Answer: NameAnswer.Resolved } generic => kind with { Id = generic.Id, Choices = [] },
                { Answer: NameAnswer.Unclear } some when maker.Kind.Length == 0 && maker.Choices.Count == 0 =>
                    kind with { Id = "", Choices = some.Choices },
                { Answer: NameAnswer.Unclear } => kind,
                { Answer: NameAnswer.Maker } other => other,

                // What else stands beside the name may make it another bottle.
                _ => kind with { Id = "", Choices = [] },
            };
        }

        return null;
    }

    /// <summary><c>mango slice</c> as a slice of mango.</summary>
    private WrittenName? PieceOf(List<string> words, int depth)
    {
        string piece = NameWords.Canonical(words[words.Count - 1]);
        if (words.Count < 2 || !NameWords.IsPiece(piece)) return null;
        var whole = One(string.Join(" ", words.Take(words.Count - 1)), depth + 1);
        return whole is { Answer: NameAnswer.Resolved, Piece: "" } && KindOf(whole.Id).IsBotanical ? whole with { Piece = piece } : null;
    }
}
