using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Service;

namespace SpecLint.Changes;

/// <summary>What became of a recipe between two versions of a book.</summary>
public enum ChangeKind
{
    /// <summary>It is in both.</summary>
    Changed,

    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is gone.</summary>
    Removed,
}

/// <summary>A fact that a change moves.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="Before">Before; <see langword="null"/> where the recipe was not there.</param>
/// <param name="After">After; <see langword="null"/> where the recipe is gone.</param>
/// <param name="IsSolid">Whether it is of a solid, given per 100 g.</param>
public sealed record FactChange(Fact Fact, FactValue? Before, FactValue? After, bool IsSolid)
{
    /// <summary>New findings that hold this fact against a limit: limits that the change crosses to the wrong side.</summary>
    public IReadOnlyList<Finding> Crossed { get; init; } = [];

    /// <summary>Findings that are gone and held this fact against a limit: limits that the change comes back from.</summary>
    public IReadOnlyList<Finding> Recrossed { get; init; } = [];

    /// <summary>The currency of its bar, for what it costs.</summary>
    internal string Currency { get; init; } = FactNames.Currency;

    /// <summary>
    /// How large the change is: the difference over the larger of the two values, or over a size below which a fact is as good
    /// as nought; of pH the difference itself, of temperatures a tenth of it. 1 where one of them is open.
    /// </summary>
    public double Size
    {
        get
        {
            bool before = IsKnown(Before), after = IsKnown(After);
            if (!before || !after) return before == after ? 0 : 1;
            double a = Before!.Value.Value, b = After!.Value.Value;
            double scale = Fact switch
            {
                Fact.Ph or Fact.MixPh => 1,
                Fact.Temperature or Fact.FreezingPoint => 10,
                Fact.WaterActivity => 0.1,
                Fact.Density => 0.1,
                Fact.Salt => Math.Max(0.5, Math.Max(Math.Abs(a), Math.Abs(b))),
                _ => Math.Max(1, Math.Max(Math.Abs(a), Math.Abs(b))),
            };
            return Math.Abs(b - a) / scale;
        }
    }

    /// <summary>Whether a fact is there, known and finite.</summary>
    internal static bool IsKnown(FactValue? value) =>
        value is { IsKnown: true } known && !double.IsNaN(known.Value) && !double.IsInfinity(known.Value);
}

/// <summary>What a change does to one recipe.</summary>
public sealed record RecipeChange
{
    /// <summary>Id of the recipe.</summary>
    public required string Id { get; init; }

    /// <summary>What became of it.</summary>
    public required ChangeKind Kind { get; init; }

    /// <summary>The recipe before; <see langword="null"/> where it was not there.</summary>
    public Recipe? Before { get; init; }

    /// <summary>The recipe after; <see langword="null"/> where it is gone.</summary>
    public Recipe? After { get; init; }

    /// <summary>Whether its own file changed.</summary>
    public bool FileChanged { get; init; }

    /// <summary>Ids of its items, or of items in them, whose files changed, sorted.</summary>
    public IReadOnlyList<string> Through { get; init; } = [];

    /// <summary>The facts that moved.</summary>
    public IReadOnlyList<FactChange> Facts { get; init; } = [];

    /// <summary>Allergens that it contains now and did not.</summary>
    public IReadOnlyList<string> AllergensGained { get; init; } = [];

    /// <summary>Allergens that it contained and does not now.</summary>
    public IReadOnlyList<string> AllergensLost { get; init; } = [];

    /// <summary>Allergens that it may contain now and neither contained nor might contain.</summary>
    public IReadOnlyList<string> MayContainGained { get; init; } = [];

    /// <summary>Allergens that it might contain and does not now.</summary>
    public IReadOnlyList<string> MayContainLost { get; init; } = [];

    /// <summary>Keeping that the label claims before, e.g. <c>2 d at 4 °C</c>; empty where it claims none.</summary>
    public string KeepingBefore { get; init; } = "";

    /// <summary>Keeping that the label claims after.</summary>
    public string KeepingAfter { get; init; } = "";

    /// <summary>Findings that the change brought.</summary>
    public IReadOnlyList<Finding> New { get; init; } = [];

    /// <summary>Findings that it put right.</summary>
    public IReadOnlyList<Finding> Gone { get; init; } = [];

    /// <summary>Number of findings that stand as before.</summary>
    public int Unchanged { get; init; }

    /// <summary>The recipe after, or before where it is gone.</summary>
    public Recipe Recipe => After ?? Before!;

    /// <summary>
    /// How large the change is: the largest of its facts' sizes, and one more for an allergen that came or went and for an
    /// error that came.
    /// </summary>
    public double Size
    {
        get
        {
            double size = 0;
            foreach (var fact in Facts) size = Math.Max(size, fact.Size);
            if (AllergensGained.Count + AllergensLost.Count > 0) size++;
            if (New.Any(f => f.Level == Level.Error)) size++;
            return size;
        }
    }
}

/// <summary>What lies between two versions of a book.</summary>
public sealed class Comparison
{
    private Comparison(
        IReadOnlyList<RecipeChange> recipes, IReadOnlyList<Finding> added, IReadOnlyList<Finding> gone, IReadOnlyList<Finding> accepted,
        int unchanged)
    {
        Recipes = recipes;
        New = added;
        Gone = gone;
        NewlyAccepted = accepted;
        Unchanged = unchanged;
    }

    /// <summary>Recipes that the change reaches, also through what they are made of; the largest change first.</summary>
    public IReadOnlyList<RecipeChange> Recipes { get; }

    /// <summary>Findings in force after and not before, in total order.</summary>
    public IReadOnlyList<Finding> New { get; }

    /// <summary>Findings in force before and neither in force nor accepted after, in total order.</summary>
    public IReadOnlyList<Finding> Gone { get; }

    /// <summary>Findings in force before and accepted after, in total order.</summary>
    public IReadOnlyList<Finding> NewlyAccepted { get; }

    /// <summary>Number of findings in force in both.</summary>
    public int Unchanged { get; }

    /// <summary>Compares two results.</summary>
    public static Comparison Of(CheckResult before, CheckResult after)
    {
        var oldFindings = ByFingerprint(before.Findings.Flat());
        var newFindings = ByFingerprint(after.Findings.Flat());
        var nowAccepted = ByFingerprint(after.Accepted);
        var added = Sorted(newFindings.Where(f => !oldFindings.ContainsKey(f.Key)));
        var lost = Sorted(oldFindings.Where(f => !newFindings.ContainsKey(f.Key) && !nowAccepted.ContainsKey(f.Key)));
        var accepted = Sorted(nowAccepted.Where(f => oldFindings.ContainsKey(f.Key)));
        int unchanged = newFindings.Count - added.Count;

        var newBySubject = added.GroupBy(f => f.Subject, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var goneBySubject = lost.GroupBy(f => f.Subject, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var unchangedBySubject = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var finding in newFindings)
        {
            if (!oldFindings.ContainsKey(finding.Key)) continue;
            unchangedBySubject.TryGetValue(finding.Value.Subject, out int count);
            unchangedBySubject[finding.Value.Subject] = count + 1;
        }

        Verdicts verdictsBefore = Verdicts.Of(before), verdictsAfter = Verdicts.Of(after);
        var changedIds = ChangedIds(before.Book, after.Book, out bool barChanged);
        var reachedBefore = new Reach(before.Book, changedIds);
        var reachedAfter = new Reach(after.Book, changedIds);
        var oldRecipes = ById(before.Book);
        var newRecipes = ById(after.Book);
        var changes = new List<RecipeChange>();
        foreach (string id in oldRecipes.Keys.Concat(newRecipes.Keys.Where(k => !oldRecipes.ContainsKey(k))))
        {
            oldRecipes.TryGetValue(id, out var was);
            newRecipes.TryGetValue(id, out var now);
            var through = (was is null ? [] : reachedBefore.Through(was))
                .Union(now is null ? [] : reachedAfter.Through(now), StringComparer.Ordinal)
                .OrderBy(i => i, StringComparer.Ordinal)
                .ToList();
            bool own = changedIds.Contains(id);
            newBySubject.TryGetValue(id, out var brought);
            goneBySubject.TryGetValue(id, out var right);
            if (!own && through.Count == 0 && !barChanged && brought is null && right is null) continue;
            unchangedBySubject.TryGetValue(id, out int still);
            var change = Compare(
                new Two(id, was, now), verdictsBefore, verdictsAfter, brought
                    ?? [], right ?? []) with
            { FileChanged = own, Through = through, Unchanged = still };
            if (own || through.Count > 0 || HasContent(change)) changes.Add(change);
        }

        changes.Sort(static (a, b) =>
        {
            int c = b.Size.CompareTo(a.Size);
            return c != 0 ? c : string.CompareOrdinal(a.Id, b.Id);
        });
        return new Comparison(changes, added, lost, accepted, unchanged);
    }

    private static bool HasContent(RecipeChange change) =>
        change.Facts.Count + change.AllergensGained.Count + change.AllergensLost.Count + change.MayContainGained.Count + change.MayContainLost.Count
            + change.New.Count + change.Gone.Count > 0 || change.KeepingBefore != change.KeepingAfter;

    private static RecipeChange Compare(Two recipe, Verdicts before, Verdicts after, List<Finding> brought, List<Finding> right)
    {
        var (id, was, now) = recipe;
        var old = was is null ? null : before.Profiles.Of(was);
        var made = now is null ? null : after.Profiles.Of(now);
        var facts = new List<FactChange>();
        for (int i = 0; i < FactNames.Count; i++)
        {
            var fact = (Fact)i;
            FactValue? a = ValueOf(fact, old, before), b = ValueOf(fact, made, after);
            if (Same(a, b)) continue;
            string name = FactNames.Name(fact);
            facts.Add(new FactChange(fact, a, b, (made ?? old)!.IsSolid)
            {
                Currency = FactUnits.CurrencyOf((made ?? old)!.Set.Book.Settings),
                Crossed = [.. brought.Where(f => Holds(f, name))],
                Recrossed = [.. right.Where(f => Holds(f, name))],
            });
        }

        IReadOnlyList<string> had = old?.Allergens.Contained(before.Profiles.Book.Settings)
            ?? [], has = made?.Allergens.Contained(after.Profiles.Book.Settings) ?? [];
        IReadOnlyList<string> might = old?.Allergens.Possible(before.Profiles.Book.Settings)
            ?? [], may = made?.Allergens.Possible(after.Profiles.Book.Settings) ?? [];
        return new RecipeChange
        {
            Id = id,
            Kind = was is null ? ChangeKind.Added : now is null ? ChangeKind.Removed : ChangeKind.Changed,
            Before = was,
            After = now,
            Facts = facts,
            AllergensGained = [.. has.Except(had)],
            AllergensLost = [.. had.Except(has)],
            MayContainGained = [.. may.Except(might).Except(had)],
            MayContainLost = [.. might.Except(may).Except(has)],
            KeepingBefore = KeepingOf(was),
            KeepingAfter = KeepingOf(now),
            New = brought,
            Gone = right,
        };
    }

    /// <summary>A recipe in two versions of a book; <see langword="null"/> where a version lacks it.</summary>
    private readonly record struct Two(string Id, Recipe? Was, Recipe? Now);

    /// <summary>A fact of a recipe; of its life the verdict has the last word.</summary>
    private static FactValue? ValueOf(Fact fact, RecipeProfile? profile, Verdicts verdicts) =>
        profile is null ? null : fact == Fact.Life ? verdicts.Of(profile.Recipe).Life : profile.Get(fact);

    /// <summary>Whether a finding rests on a fact.</summary>
    private static bool Holds(Finding finding, string fact)
    {
        foreach (var evidence in finding.Evidence)
        {
            if (evidence.Name == fact) return true;
        }

        return false;
    }

    /// <summary>Whether two values print alike at six digits; what is open in both is alike, whatever the reason.</summary>
    private static bool Same(FactValue? a, FactValue? b)
    {
        bool before = FactChange.IsKnown(a), after = FactChange.IsKnown(b);
        if (!before || !after) return before == after;
        return Alike(a!.Value.Value, b!.Value.Value) && Alike(a.Value.Low, b.Value.Low) && Alike(a.Value.High, b.Value.High);

        static bool Alike(double x, double y) => Math.Abs(x - y) <= 5e-6 * Math.Max(Math.Abs(x), Math.Abs(y)) || Math.Abs(x - y) < 1e-9;
    }

    private static string KeepingOf(Recipe? recipe)
    {
        if (recipe is not Prep { Keep: { For.IsGiven: true } keep } prep) return "";
        string text = prep.Source.TextOf(keep.For.Span).Trim('"');
        return keep.At.IsGiven ? $"{text} at {prep.Source.TextOf(keep.At.Span).Trim('"')}" : text;
    }

    /// <summary>The findings by fingerprint; of two with one fingerprint, the first.</summary>
    internal static Dictionary<string, Finding> ByFingerprint(IEnumerable<Finding> findings)
        => findings.GroupBy(f => f.Fingerprint, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    private static List<Finding> Sorted(IEnumerable<KeyValuePair<string, Finding>> findings)
    {
        var list = findings.Select(f => f.Value).ToList();
        list.Sort(FindingOrder.Instance);
        return list;
    }

    private static Dictionary<string, Recipe> ById(LinkedBook book)
        => book.Recipes.GroupBy(r => r.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    /// <summary>Ids of the recipes and ingredients whose files differ; carriage returns do not count, since a checkout may add them.</summary>
    private static HashSet<string> ChangedIds(LinkedBook before, LinkedBook after, out bool barChanged)
    {
        var changed = new HashSet<string>(StringComparer.Ordinal);
        barChanged = false;
        var old = before.Files.ToDictionary(f => f.Source.Path, StringComparer.Ordinal);
        foreach (var file in after.Files)
        {
            if (old.TryGetValue(file.Source.Path, out var was))
            {
                old.Remove(file.Source.Path);
                if (SameText(was.Source.Utf8.Span, file.Source.Utf8.Span)) continue;
            }

            Note(file, ref barChanged);
        }

        foreach (var left in old.Values) Note(left, ref barChanged);
        return changed;

        void Note(BookFile file, ref bool bar)
        {
            if (file is Bar) bar = true;
            else if (file is Recipe or Ingredient) changed.Add(file.Id);
        }
    }

    private static bool SameText(ReadOnlySpan<byte> a, ReadOnlySpan<byte> b)
    {
        if (a.SequenceEqual(b)) return true;
        int i = 0, j = 0;
        while (true)
        {
            while (i < a.Length && a[i] == (byte)'\r') i++;
            while (j < b.Length && b[j] == (byte)'\r') j++;
            if (i == a.Length || j == b.Length) return i == a.Length && j == b.Length;
            if (a[i++] != b[j++]) return false;
        }
    }

    /// <summary>Which changed files a recipe is made of, through any number of preparations.</summary>
    private sealed class Reach
    {
        private static readonly string[] Nothing = [];

        private readonly LinkedBook book;
        private readonly HashSet<string> changed;
        private readonly Dictionary<string, IReadOnlyCollection<string>> known = new(StringComparer.Ordinal);

        public Reach(LinkedBook book, HashSet<string> changed)
        {
            this.book = book;
            this.changed = changed;
            foreach (var prep in book.OrderOfUse) known[prep.Id] = Through(prep);
        }

        public IReadOnlyCollection<string> Through(Recipe recipe)
        {
            HashSet<string>? through = null;
            foreach (var line in LinkedBook.LinesOf(recipe))
            {
                if (!line.Item.IsGiven) continue;
                string id = line.Item.Value;
                var item = book.Resolve(id);

                // What is left of a preparation changes with it; an id that was removed resolves to nothing, or to the catalogue.
                string owner = item is { ByProduct: not null } ? item.File.Id : id;
                if (changed.Contains(owner) && owner != recipe.Id) (through ??= new(StringComparer.Ordinal)).Add(owner);
                if (item?.File is Prep && known.TryGetValue(item.File.Id, out var deeper) && deeper.Count > 0)
                    (through ??= new(StringComparer.Ordinal)).UnionWith(deeper);
                if (item is { IsBuiltIn: false, File: Ingredient own }) Inherited(own, ref through);
            }

            return through is null ? Nothing : through;
        }

        /// <summary>An ingredient changes with the one that it is like.</summary>
        private void Inherited(Ingredient ingredient, ref HashSet<string>? through)
        {
            for (int depth = 0; depth < 16 && ingredient.Like.IsGiven; depth++)
            {
                string id = ingredient.Like.Value;
                if (changed.Contains(id)) (through ??= new(StringComparer.Ordinal)).Add(id);
                if (book.Resolve(id) is not { IsBuiltIn: false, File: Ingredient next }) return;
                ingredient = next;
            }
        }
    }
}
