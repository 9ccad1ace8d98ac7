using System.Collections.Concurrent;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Linking;

/// <summary>A cycle of references.</summary>
/// <param name="Path">Ids along the cycle; the first is named once.</param>
/// <param name="Closing">The line that closes it.</param>
/// <param name="In">The recipe that holds the line.</param>
public sealed record ReferenceCycle(IReadOnlyList<string> Path, Line Closing, Recipe In);

/// <summary>The lines of a recipe: ingredients, garnish, rim, one after another.</summary>
public readonly struct RecipeLines
{
    private readonly FixedList<Line> ingredients;
    private readonly FixedList<Line> garnish;
    private readonly FixedList<Line> rim;

    internal RecipeLines(FixedList<Line> ingredients, FixedList<Line> garnish, FixedList<Line> rim)
    {
        this.ingredients = ingredients;
        this.garnish = garnish;
        this.rim = rim;
    }

    /// <summary>How many there are.</summary>
    public int Count => ingredients.Count + garnish.Count + rim.Count;

    /// <summary>Walks the lines.</summary>
    public Enumerator GetEnumerator() => new(this);

    /// <summary>A walk through the lines.</summary>
    public struct Enumerator
    {
        private readonly RecipeLines lines;
        private FixedList<Line> list;
        private int lists;
        private int at;

        internal Enumerator(RecipeLines lines)
        {
            this.lines = lines;
            list = lines.ingredients;
            at = -1;
        }

        /// <summary>The line that the walk has come to.</summary>
        public readonly Line Current => list[at];

        /// <summary>Goes on to the next line; false where there is none.</summary>
        public bool MoveNext()
        {
            at++;
            while (at >= list.Count)
            {
                if (lists == 2) return false;
                list = lists++ == 0 ? lines.garnish : lines.rim;
                at = 0;
            }

            return true;
        }
    }
}

/// <summary>All files of a bar, linked.</summary>
public sealed partial class LinkedBook
{
    /// <summary>Circles that are told of: where everything is made of everything there are as many as lines, each as long as the book.</summary>
    private const int MostCycles = 100;

    private readonly Dictionary<string, Item> items;
    private BookFile[] files;
    // Linking makes these lists; a book in which a file is tried has those of the whole.
    private List<Drink> drinks = null!;
    private List<Prep> preps = null!;
    private List<Ingredient> ingredients = null!;
    private List<Menu> menus = null!;
    private List<Stock> stocks = null!;
    private List<PriceList> priceLists = null!;
    private List<(BookFile First, BookFile Second)> doubles = null!;
    private List<Prep> orderOfUse = null!;
    private List<ReferenceCycle> cycles = null!;
    private HashSet<string> batched = null!;
    private Dictionary<string, Recipe>? recipes;
    private BookNames? names;
    private NameResolver? resolver;
    private readonly Dictionary<string, List<Recipe>> users;
    private readonly Dictionary<string, List<(Stock Stock, Lot Lot)>> lots;

    /// <summary>Links the files of a book.</summary>
    /// <param name="files">Files in any order.</param>
    /// <param name="settings">Settings in force.</param>
    /// <param name="on">Date of the run.</param>
    public LinkedBook(IEnumerable<BookFile> files, Settings settings, CalendarDate on)
    {
        Settings = settings;
        On = on;
        Measures = Measures.For(settings.Bar?.Measures);
        items = new Dictionary<string, Item>(StringComparer.Ordinal);
        users = new Dictionary<string, List<Recipe>>(StringComparer.Ordinal);
        lots = new Dictionary<string, List<(Stock Stock, Lot Lot)>>(StringComparer.Ordinal);
        FingerprintTexts = new ConcurrentDictionary<(Recipe, int), string>();
        this.files = [.. files.OrderBy(f => f.Source.Path, StringComparer.Ordinal)];
        Link();
        HoldReadings(null);
    }

    /// <summary>Takes out the readings that are not of the recipes as they stand.</summary>
    /// <param name="earlier">The book before a change, in which readings that stayed as they were are looked for.</param>
    internal void HoldReadings(LinkedBook? earlier)
    {
        heldAgainst = earlier;
        HoldReadings(Recipes, earlier);
    }

    private LinkedBook? heldAgainst;

    private void HoldReadings(IEnumerable<Recipe> recipes, LinkedBook? earlier)
    {
        foreach (var recipe in recipes)
        {
            if (recipe.AsMeasured is null || recipe.CarriesReadings) continue;
            recipe.StaleBecause = Readings.WhyStale(recipe, this, earlier);
            recipe.Measured = recipe.StaleBecause is null ? recipe.AsMeasured : null;
        }
    }

    /// <summary>Settings in force.</summary>
    public Settings Settings { get; }

    /// <summary>The units of the house.</summary>
    internal Measures Measures { get; }

    /// <summary>Checks of the bar's own schemas, where it has some.</summary>
    public IHouseSchemaCheck? HouseSchemas { get; init; }

    /// <summary>The date of the run.</summary>
    public CalendarDate On { get; }

    /// <summary>All files, by path.</summary>
    public IReadOnlyList<BookFile> Files => BookReads.OfAll(files);

    /// <summary>All drinks, by path.</summary>
    public IReadOnlyList<Drink> Drinks => BookReads.OfKind(drinks, FileKind.Drink);

    /// <summary>All preparations, by path.</summary>
    public IReadOnlyList<Prep> Preps => BookReads.OfKind(preps, FileKind.Prep);

    /// <summary>Ingredients of the bar, by path.</summary>
    public IReadOnlyList<Ingredient> Ingredients => BookReads.OfKind(ingredients, FileKind.Ingredient);

    /// <summary>All menus, by path.</summary>
    public IReadOnlyList<Menu> Menus => BookReads.OfKind(menus, FileKind.Menu);

    /// <summary>All price lists, by path.</summary>
    public IReadOnlyList<PriceList> PriceLists => BookReads.OfKind(priceLists, FileKind.Prices);

    /// <summary>All stock files, by path.</summary>
    public IReadOnlyList<Stock> Stocks => BookReads.OfKind(stocks, FileKind.Stock);

    /// <summary>Files that bear one id.</summary>
    public IReadOnlyList<(BookFile First, BookFile Second)> DoubleIds => BookReads.OfAll(doubles);

    /// <summary>Preparations in an order in which each stands behind those it uses; members of cycles come last.</summary>
    public IReadOnlyList<Prep> OrderOfUse => BookReads.OfAll(orderOfUse);

    /// <summary>Cycles of references, each once; the first hundred.</summary>
    public IReadOnlyList<ReferenceCycle> Cycles => BookReads.OfAll(cycles);

    /// <summary>Whether something is made of itself.</summary>
    internal bool HasCycles => cycles.Count > 0;

    /// <summary>All recipes: preparations, then drinks.</summary>
    public IEnumerable<Recipe> Recipes => Preps.Concat<Recipe>(Drinks);

    /// <summary>What an id resolves to: a file of the book, else the catalogue; <see langword="null"/> if nothing.</summary>
    public Item? Resolve(string id)
    {
        BookReads.Note(BookReadKind.Item, id);
        return Find(id);
    }

    /// <summary>The recipes that use an id, by path.</summary>
    public IReadOnlyList<Recipe> UsersOf(string id)
    {
        BookReads.Note(BookReadKind.Users, id);
        return users.TryGetValue(id, out var list) ? list : [];
    }

    /// <summary>Whether a preparation is a batch of the drink with an id.</summary>
    internal bool IsBatched(string id)
    {
        BookReads.Note(BookReads.AllOf(FileKind.Prep));
        return batched.Contains(id);
    }

    /// <summary>The recipe with an id, a preparation before a drink; of a book from before a change, to which nothing happens any more.</summary>
    internal Recipe? RecipeCalled(string id)
    {
        if (Volatile.Read(ref recipes) is not { } known)
        {
            known = new Dictionary<string, Recipe>(preps.Count + drinks.Count, StringComparer.Ordinal);
            foreach (var recipe in preps.Concat<Recipe>(drinks).Reverse()) known[recipe.Id] = recipe;
            Volatile.Write(ref recipes, known);
        }

        return known.TryGetValue(id, out var found) ? found : null;
    }

    /// <summary>The ids that the lines of recipes name, each once.</summary>
    internal IEnumerable<string> UsedIds => BookReads.OfUsed(users.Keys);

    /// <summary>The lots in stock that bear a code, in the order of the stock files.</summary>
    public IReadOnlyList<(Stock Stock, Lot Lot)> LotsCalled(string code)
    {
        BookReads.Note(BookReadKind.Lots, code);
        return lots.TryGetValue(code, out var list) ? list : [];
    }

    /// <summary>Ids of the book (not of the catalogue).</summary>
    public IEnumerable<string> Ids
    {
        get
        {
            BookReads.Note(BookReadKind.Names, "");
            return items.Keys;
        }
    }

    /// <summary>What the fingerprints of recipes say of the preparations in them, by preparation and depth.</summary>
    internal ConcurrentDictionary<(Recipe, int), string> FingerprintTexts { get; }

    /// <summary>Its names, indexed when first asked for.</summary>
    internal BookNames Names
    {
        get
        {
            BookReads.Note(BookReadKind.Names, "");
            return Volatile.Read(ref names) ?? Interlocked.CompareExchange(ref names, new BookNames(this), null) ?? names!;
        }
    }

    /// <summary>Understands names as people write them; made when first asked for, once for all unknown references.</summary>
    internal NameResolver NameResolver
    {
        get
        {
            BookReads.Note(BookReadKind.Names, "");
            return Volatile.Read(ref resolver) ?? Interlocked.CompareExchange(ref resolver, new NameResolver(this), null) ?? resolver!;
        }
    }

    /// <summary>Every line of a recipe: ingredients, garnish, rim.</summary>
    public static RecipeLines LinesOf(Recipe recipe) =>
        recipe is Drink drink ? new(drink.Ingredients, drink.Garnish, drink.Rim) : new(recipe.Ingredients, [], []);

    /// <summary>Works out everything that is known of the files together.</summary>
    private void Link()
    {
        items.Clear();
        users.Clear();
        lots.Clear();
        names = null;
        drinks = [];
        preps = [];
        ingredients = [];
        menus = [];
        stocks = [];
        priceLists = [];
        doubles = [];
        foreach (var file in files)
        {
            switch (file)
            {
                case Drink d: drinks.Add(d); Know(d); break;
                case Prep p: preps.Add(p); Know(p); break;
                case Ingredient i: ingredients.Add(i); Know(i); break;
                case Menu m: menus.Add(m); break;
                case Stock s: stocks.Add(s); break;
                case PriceList l: priceLists.Add(l); break;
            }
        }

        foreach (var prep in preps)
        {
            foreach (var left in prep.ByProducts)
            {
                if (left.Id.IsGiven && !items.ContainsKey(left.Id.Value))
                    items.Add(left.Id.Value, new Item(left.Id.Value, prep, left, false));
            }
        }

        foreach (var prep in preps) KnowUser(prep);
        foreach (var drink in drinks) KnowUser(drink);
        KnowBatches();
        KnowLots();
        (orderOfUse, cycles) = Order();
    }

    private void KnowUser(Recipe recipe)
    {
        foreach (var line in LinesOf(recipe))
        {
            if (!line.Item.IsGiven) continue;
            if (!users.TryGetValue(line.Item.Value, out var list)) users.Add(line.Item.Value, list = []);
            if (list.Count == 0 || list[list.Count - 1] != recipe) list.Add(recipe);
        }
    }

    private void KnowBatches() =>
        batched = new HashSet<string>(preps.Where(p => p.BatchOf.IsGiven).Select(p => p.BatchOf.Value), StringComparer.Ordinal);

    private void KnowLots()
    {
        lots.Clear();
        foreach (var stock in stocks)
        {
            foreach (var lot in stock.Lots)
            {
                if (!lot.LotCode.IsGiven) continue;
                if (!lots.TryGetValue(lot.LotCode.Value, out var list)) lots.Add(lot.LotCode.Value, list = []);
                list.Add((stock, lot));
            }
        }
    }

    private void Know(BookFile file)
    {
        if (items.TryGetValue(file.Id, out var known)) doubles.Add((known.File, file));
        else items.Add(file.Id, new Item(file.Id, file, null, false));
    }

    private (List<Prep> InOrder, List<ReferenceCycle> Cycles) Order()
    {
        var done = new List<Prep>(preps.Count);
        var late = new List<Prep>();
        var cycles = new List<ReferenceCycle>();
        var state = new Dictionary<Prep, int>();
        var path = new List<Prep>();
        var places = new Dictionary<Prep, int>();

        // The place on the path of the first preparation that a circle through each one goes back to.
        var backTo = new List<int>();

        // Iterative depth-first walk: a hostile book may nest far deeper than the stack.
        var stack = new Stack<(Prep Prep, int Line)>();
        foreach (var start in preps)
        {
            if (state.ContainsKey(start)) continue;
            state[start] = 1;
            places[start] = path.Count;
            path.Add(start);
            backTo.Add(int.MaxValue);
            stack.Push((start, 0));
            while (stack.Count > 0)
            {
                var (prep, next) = stack.Pop();
                if (next == prep.Ingredients.Count)
                {
                    int at = path.Count - 1, back = backTo[at];
                    path.RemoveAt(at);
                    backTo.RemoveAt(at);
                    if (at > 0) backTo[at - 1] = Math.Min(backTo[at - 1], back);
                    state[prep] = 2;
                    if (back <= at) late.Add(prep); else done.Add(prep);
                    continue;
                }

                stack.Push((prep, next + 1));
                var line = prep.Ingredients[next];
                if (!line.Item.IsGiven || !items.TryGetValue(line.Item.Value, out var item) || item.File is not Prep part) continue;
                if (!state.TryGetValue(part, out int seen))
                {
                    state[part] = 1;
                    places[part] = path.Count;
                    path.Add(part);
                    backTo.Add(int.MaxValue);
                    stack.Push((part, 0));
                }
                else if (seen == 1)
                {
                    int from = places[part];
                    backTo[path.Count - 1] = Math.Min(backTo[path.Count - 1], from);
                    if (cycles.Count < MostCycles)
                        cycles.Add(new ReferenceCycle([.. path.GetRange(from, path.Count - from).Select(m => m.Id)], line, prep));
                }
            }
        }

        done.AddRange(late);
        return (done, cycles);
    }
}
