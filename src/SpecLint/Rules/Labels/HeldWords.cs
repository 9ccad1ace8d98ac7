using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>Every word under which something in a drink is known: ids, names, synonyms, what it is like, its allergens.</summary>
internal sealed class HeldWords
{
    // Spirits that go by each other's names on menus.
    private static readonly string[][] Kin =
    [
        ["whisky", "whiskey", "bourbon", "scotch", "rye", "poitin"],
        ["brandy", "cognac", "armagnac", "calvados", "pisco", "eau de vie"],
        ["rum", "rhum", "ron", "cachaca", "arrack"],
        ["gin", "genever", "jenever"],
        ["agave", "tequila", "mezcal", "sotol", "raicilla"],
    ];

    private readonly List<(string Text, int Part)> texts = [];
    private readonly List<(string Text, int Part)> kindred = [];
    private readonly List<string> ids = [];
    private readonly List<string> own = [];

    private HeldWords()
    {
    }

    /// <summary>Whether an item of the drink resolves to nothing, so that it may hold anything.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>Whether a part tastes of many things that no file lists.</summary>
    public bool IsManifold { get; private set; }

    /// <summary>Names of the lines' items.</summary>
    public List<string> Names { get; } = [];

    /// <summary>The parts of the recipe.</summary>
    public FixedList<Part> Parts { get; private set; } = [];

    /// <summary>The words of a recipe.</summary>
    public static HeldWords Of(BookContext context, Recipe recipe) => Of(context, context.Profiles.Of(recipe));

    /// <summary>The words of a recipe whose profile is at hand.</summary>
    public static HeldWords Of(BookContext context, RecipeProfile profile)
    {
        var held = new HeldWords();
        held.Parts = profile.Parts;
        for (int p = 0; p < profile.Parts.Count; p++)
        {
            var item = profile.Parts[p].Item;
            if (item is null)
            {
                held.IsOpen = true;
                continue;
            }

            held.Names.Add(item.File.Name.Or(item.Id).ToLowerInvariant());
            held.Add(context, item, p);
        }

        return held;
    }

    /// <summary>Whether any of some words names something in the drink.</summary>
    public bool Has(string words) => PartOf(words) >= 0;

    /// <summary>The first line that some words may name; -1 where there is none.</summary>
    public int PartOf(string words)
    {
        foreach (string word in Split(words))
        {
            foreach (var (text, part) in texts)
            {
                if (StartsAWord(text, word)) return part;
            }

            foreach (var (text, part) in kindred)
            {
                if (StartsAWord(text, word)) return part;
            }
        }

        return -1;
    }

    /// <summary>All lines that some words may name.</summary>
    public List<Part> PartsOf(string words)
    {
        var found = new List<Part>();
        foreach (string word in Split(words))
        {
            foreach (var (text, part) in texts)
            {
                if (StartsAWord(text, word) && !found.Contains(Parts[part])) found.Add(Parts[part]);
            }
        }

        return found;
    }

    /// <summary>The lines that some words name as a whole: of "soda water" the soda water, and not all that holds water.</summary>
    public List<Part> PartsNamed(string words)
    {
        var found = new List<Part>();
        string plain = Plain(words);
        foreach (var (text, part) in texts)
        {
            if (StartsAWord(text, plain) && !found.Contains(Parts[part])) found.Add(Parts[part]);
        }

        return found;
    }

    /// <summary>Whether a thing of the drink bears this very name: kinship of spirits does not count, nor an ending.</summary>
    public bool HasName(string name)
    {
        string plain = Plain(name);
        foreach (string text in own)
        {
            if (StartsAWord(text, plain)) return true;
        }

        // A synonym may name several things at once: it has to be this name and no more.
        foreach (var (text, _) in texts)
        {
            if (text == plain) return true;
        }

        return false;
    }

    /// <summary>The words of all things in it, plain and in small letters.</summary>
    public IEnumerable<string> Texts => texts.Concat(kindred).Select(static t => t.Text);

    /// <summary>Whether an id is in the tree, or something is like it.</summary>
    public bool HasId(string id) => ids.Contains(id);

    /// <summary>Adds the words of an item and of all that it is made of, each item once a line.</summary>
    private void Add(BookContext context, Item whole, int part)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { whole.Id };
        var open = new Stack<Item>();
        open.Push(whole);
        while (open.Count > 0)
        {
            var item = open.Pop();
            Put(item.Id.Replace('-', ' '), part);
            ids.Add(item.Id);
            if (item.File.Name.IsGiven) Put(item.File.Name.Value, part);
            if (item.ByProduct is not null) Put(item.ByProduct.Id.Value.Replace('-', ' '), part);
            if (item.File is Ingredient ingredient) AddIngredient(context, ingredient, part);
            if (item.File is not Recipe recipe) continue;
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (!line.Item.IsGiven) continue;
                if (context.Book.Resolve(line.Item.Value) is not { } below) IsOpen = true;
                else if (seen.Add(below.Id)) open.Push(below);
            }
        }
    }

    private void AddIngredient(BookContext context, Ingredient ingredient, int part)
    {
        var flat = context.Profiles.MaterialOf(ingredient.Id)?.Ingredient ?? ingredient;
        var kind = flat.IngredientKind.OrNone();
        IsManifold |= kind.IsManifold;
        Put(kind.Id, part);
        foreach (string token in flat.Allergens?.Contains ?? []) Put(token, part);
        foreach (string token in flat.Allergens?.MayContain ?? []) Put(token, part);
        var next = ingredient;
        for (int i = 0; i < 16; i++)
        {
            foreach (var alias in next.Aliases) Put(alias.Value, part, isName: false);
            if (!next.Like.IsGiven || context.Book.Resolve(next.Like.Value) is not { File: Ingredient parent }) break;
            ids.Add(parent.Id);
            Put(parent.Id.Replace('-', ' '), part);
            if (parent.Name.IsGiven) Put(parent.Name.Value, part);
            next = parent;
        }
    }

    private void Put(string text, int part, bool isName = true)
    {
        if (text.Length == 0) return;
        string plain = Plain(text);
        texts.Add((plain, part));
        if (isName) own.Add(plain);
        foreach (string[] kin in Kin)
        {
            foreach (string one in kin)
            {
                if (!StartsAWord(plain, one)) continue;
                foreach (string other in kin) kindred.Add((other, part));
                break;
            }
        }
    }

    private static IEnumerable<string> Split(string words)
    {
        foreach (string word in Plain(words).Split(' '))
        {
            if (word.Length <= 2) continue;
            yield return word.EndsWith("ies", StringComparison.Ordinal) ? word.Substring(0, word.Length - 3) : word.TrimEnd('s');
        }
    }

    private static string Plain(string text) => BuiltInCatalogue.Slug(text).Replace('-', ' ');

    /// <summary>Whether a word stands in a text, an ending of the plural aside.</summary>
    private static bool StartsAWord(string text, string word)
    {
        for (int from = 0; from <= text.Length - word.Length;)
        {
            int at = text.IndexOf(word, from, StringComparison.Ordinal);
            if (at < 0) return false;
            int end = at + word.Length;
            int tail = 0;
            while (end + tail < text.Length && text[end + tail] != ' ') tail++;
            if ((at == 0 || text[at - 1] == ' ')
                && (tail == 0 || (tail <= 3 && text.Substring(end, tail) is "s" or "es" or "ies" or "y" or "ry")))
                return true;
            from = at + 1;
        }

        return false;
    }
}

/// <summary>Parts the words of a menu into what they name.</summary>
internal static class MenuPieces
{
    private static readonly char[] Partings = [',', ';', '/', '+', '&', '·', '|', '•', '–', '—', '\n'];

    /// <summary>The pieces of a menu's words about its drinks, each with the recipe of the drink.</summary>
    public static IEnumerable<(MenuEntry Entry, Recipe Recipe, string Piece)> In(BookContext context, Menu menu)
    {
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Words.IsGiven || !entry.Drink.IsGiven) continue;
            if (context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
            foreach (string piece in Of(entry.Words.Value)) yield return (entry, recipe, piece);
        }
    }

    /// <summary>The texts by which a menu names its drinks, each with its place and path: names, and the pieces of its words.</summary>
    public static IEnumerable<(MenuEntry Entry, Given<string> At, string Path, string Text)> Texts(Menu menu)
    {
        foreach (var entry in menu.Drinks)
        {
            string path = $"drinks[{entry.Drink.Or("")}]";
            if (entry.Name.IsGiven) yield return (entry, entry.Name, path + ".name", entry.Name.Value);
            if (!entry.Words.IsGiven) continue;
            foreach (string piece in Of(entry.Words.Value)) yield return (entry, entry.Words, path + ".words", piece);
        }
    }

    /// <summary>The pieces, trimmed.</summary>
    public static IEnumerable<string> Of(string words)
    {
        foreach (string piece in words.Split(Partings, StringSplitOptions.RemoveEmptyEntries))
        {
            foreach (string named in piece.Split(MenuWords.Joints, StringSplitOptions.RemoveEmptyEntries))
            {
                string one = named.Trim().TrimEnd('.');
                if (one.Length > 2) yield return one;
            }
        }
    }
}
