using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.RecipeText;
using SpecLint.Reports;

namespace SpecLint.Bench;

/// <summary>
/// The book at a bench: files in memory, and the recipe that is being written. It checks by the same way as the command, so that
/// findings and figures are the same. Not thread-safe.
/// </summary>
public sealed class BenchBook
{
    /// <summary>A book of no more files is always checked whole.</summary>
    private const int SmallBook = 12;

    /// <summary>The most characters of a text that are read as lines of recipes.</summary>
    public const int LongestText = 40_000;

    private readonly SortedDictionary<string, SourceFile> files = new(StringComparer.Ordinal);
    private (LinkedBook Book, ProfileSet Profiles)? linked;
    private RecipeTextReader? reader;
    private StepReader? steps;

    /// <summary>A book without files.</summary>
    /// <param name="on">The day of the check.</param>
    public BenchBook(CalendarDate on) => On = on;

    /// <summary>The day of the check.</summary>
    public CalendarDate On { get; private set; }

    /// <summary>Paths of the files, sorted.</summary>
    public IReadOnlyCollection<string> Paths => files.Keys;

    /// <summary>The book, linked, without the recipe that is being written.</summary>
    public LinkedBook Book => Linked.Book;

    /// <summary>What its recipes come to.</summary>
    public ProfileSet Profiles => Linked.Profiles;

    private (LinkedBook Book, ProfileSet Profiles) Linked => linked ??= Checker.Profile(Input(files.Values));

    /// <summary>Sets the day of the check.</summary>
    public void SetDay(CalendarDate day)
    {
        On = day;
        Forget();
    }

    /// <summary>Adds a file, or puts it in the place of the one at its path.</summary>
    /// <param name="path">Path relative to the root of the book.</param>
    /// <param name="utf8">Its bytes.</param>
    public void Put(string path, byte[] utf8)
    {
        files[path] = new SourceFile(path, utf8);
        Forget();
    }

    /// <summary>Takes a file out.</summary>
    public void Drop(string path)
    {
        if (files.Remove(path)) Forget();
    }

    /// <summary>Takes all files out.</summary>
    public void Clear()
    {
        files.Clear();
        Forget();
    }

    /// <summary>The bytes of a file; <see langword="null"/> where there is none.</summary>
    public SourceFile? Find(string path) => files.TryGetValue(path, out var file) ? file : null;

    /// <summary>Checks the whole book as its files stand.</summary>
    public CheckResult Check() => Checker.Check(Input(files.Values));

    /// <summary>Reads, works out and checks what is being written, in the place of the file of its id.</summary>
    /// <param name="entry">What is being written.</param>
    /// <exception cref="ArgumentException">The text is longer than <see cref="LongestText"/>.</exception>
    public BenchReading Read(BenchEntry entry)
    {
        if (entry.Text.Length > LongestText) throw new ArgumentException($"The text is longer than {LongestText} characters.", nameof(entry));
        entry = entry with { Text = JsonOutput.WellFormed(entry.Text) };
        var recipes = entry.IsFile ? [] : Reader.Read(entry.Text);
        var recipe = recipes.Count == 0 ? null : recipes[Math.Min(Math.Max(0, entry.Which), recipes.Count - 1)];
        var draft = recipe is null ? null : RecipeDraft.Of(recipe.Name.Length > 0 ? recipe : recipe with { Name = "Unnamed" }, Steps, On);
        var typed = entry.IsFile ? FileOf(entry) : draft is null ? null : new SourceFile(PathOf(draft.FileName), Encoding.UTF8.GetBytes(draft.Text));
        var beside = typed is null || !entry.Quick ? [.. files.Values] : Needed(typed);
        var input = InputWith(beside, typed);
        return new BenchReading(entry, recipes, recipe, draft, typed, input, Checker.Check(input));
    }

    private BookInput InputWith(IEnumerable<SourceFile> beside, SourceFile? typed) =>
        Input(typed is null ? beside : beside.Where(f => f.Path != typed.Path).Append(typed));

    private BookInput Input(IEnumerable<SourceFile> sources) => new([.. sources], On) { Threads = 1 };

    private RecipeTextReader Reader => reader ??= new RecipeTextReader(Book);

    private StepReader Steps => steps ??= StepReader.For(Book);

    private static SourceFile FileOf(BenchEntry entry)
    {
        string path = entry.Path.Length > 0
            ? entry.Path
            : entry.Text.Contains("\"family\"") || entry.Text.Contains("\"yield\"") ? "unnamed.prep.json" : "unnamed.drink.json";
        return new SourceFile(path, Encoding.UTF8.GetBytes(entry.Text));
    }

    /// <summary>The path of a file of the book that has this name, in whatever folder; else the name.</summary>
    private string PathOf(string name)
    {
        if (files.ContainsKey(name)) return name;
        string end = "/" + name;
        foreach (string path in files.Keys)
        {
            if (path.EndsWith(end, StringComparison.Ordinal)) return path;
        }

        return name;
    }

    /// <summary>The files of the book that a recipe is made of, the bar's own and the price lists.</summary>
    private List<SourceFile> Needed(SourceFile typed)
    {
        if (files.Count <= SmallBook || FileKinds.Of(typed.Path) is not { } kind) return [.. files.Values];
        var needed = new HashSet<string>(StringComparer.Ordinal);
        var waiting = new Stack<BookFile>([BookReader.Read(typed, kind, Measures.For(Book.Settings.Bar?.Measures))]);
        while (waiting.Count > 0)
        {
            var file = waiting.Pop();
            if (file is Ingredient { Like.IsGiven: true } ingredient) Need(ingredient.Like.Value);
            if (file is not Recipe recipe) continue;
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (line.Item.IsGiven) Need(line.Item.Value);
            }

            if (recipe is Prep { BatchOf.IsGiven: true } batch) Need(batch.BatchOf.Value);
        }

        return [.. files.Values.Where(f => needed.Contains(f.Path) || FileKinds.Of(f.Path) is FileKind.Bar or FileKind.Prices)];

        void Need(string id)
        {
            if (Book.Resolve(id) is { IsBuiltIn: false } item && needed.Add(item.File.Source.Path)) waiting.Push(item.File);
        }
    }

    private void Forget()
    {
        linked = null;
        reader = null;
        steps = null;
    }
}
