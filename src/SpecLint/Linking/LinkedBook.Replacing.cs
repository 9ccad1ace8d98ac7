using SpecLint.Book;
namespace SpecLint.Linking;

/// <summary>A file that changes: as it was, as it is; <see langword="null"/> where it was not there, or is there no longer.</summary>
/// <param name="Old">Before.</param>
/// <param name="New">After; of the same kind and path.</param>
internal readonly record struct FileChange(BookFile? Old, BookFile? New)
{
    /// <summary>The ids that references resolve to the file by: its own, those of what is left of making it.</summary>
    public static IEnumerable<string> IdsOf(BookFile? file)
    {
        if (file is not (Recipe or Ingredient)) yield break;
        yield return file.Id;
        if (file is not Prep prep) yield break;
        foreach (var left in prep.ByProducts)
        {
            if (left.Id.IsGiven) yield return left.Id.Value;
        }
    }

    /// <summary>Whether ids, names and synonyms are as they were.</summary>
    public bool KeepsNames => Old is not null && New is not null && NamesOf(Old).SequenceEqual(NamesOf(New), StringComparer.Ordinal);

    /// <summary>Whether it can take the place of the old file, its references apart.</summary>
    internal bool IsInPlace =>
        Old is not null
            && New is not null
            && Old.GetType() == New.GetType()
            && IdsOf(Old).SequenceEqual(IdsOf(New), StringComparer.Ordinal);

    private static IEnumerable<string> NamesOf(BookFile file)
    {
        foreach (string id in IdsOf(file)) yield return id;
        yield return file.Name.Or("");
        if (file is not Ingredient ingredient) yield break;
        foreach (var alias in ingredient.Aliases) yield return alias.Or("");
    }
}

/// <summary>A book whose files change while it is open (<see cref="Live.LiveBook"/>).</summary>
public sealed partial class LinkedBook
{
    private static readonly IComparer<BookFile> ByPath = Comparer<BookFile>.Create((a, b) => string.CompareOrdinal(a.Source.Path, b.Source.Path));

    /// <summary>
    /// Takes changed files: afterwards the book is as if it had been linked from the files as they are now. Nothing may read it
    /// meanwhile, and its readings are to be held anew (<see cref="HoldReadingsOf"/>).
    /// </summary>
    internal void Replace(IReadOnlyCollection<FileChange> changes)
    {
        FingerprintTexts.Clear();
        recipes = null;
        if (changes.All(c => c.IsInPlace && !IsDouble(c.Old!)))
        {
            foreach (var change in changes) Swap(change.Old!, change.New!);
        }
        else
        {
            var gone = new HashSet<BookFile>(changes.Where(c => c.Old is not null).Select(c => c.Old!));
            files = [.. files.Where(f => !gone.Contains(f)).Concat(changes.Where(c => c.New is not null).Select(c => c.New!))];
            Array.Sort(files, ByPath);
            Link();
        }

        if (changes.All(c => c.KeepsNames)) return;
        names = null;
        resolver = null;
    }

    /// <summary>Takes out the readings that are not of some recipes as they stand, and puts back those that are.</summary>
    internal void HoldReadingsOf(IEnumerable<Recipe> recipes) => HoldReadings(recipes, heldAgainst);

    private bool IsDouble(BookFile file)
    {
        foreach (var (first, second) in doubles)
        {
            if (first == file || second == file) return true;
        }

        return false;
    }

    private void Swap(BookFile old, BookFile file)
    {
        files[Array.BinarySearch(files, old, ByPath)] = file;
        foreach (string id in FileChange.IdsOf(file))
        {
            if (items[id].File == old) items[id] = new Item(id, file, LeftOf(file, id), false);
        }

        switch (file)
        {
            case Drink drink: drinks[drinks.BinarySearch((Drink)old, ByPath)] = drink; break;
            case Prep prep:
                preps[preps.BinarySearch((Prep)old, ByPath)] = prep;
                if (((Prep)old).BatchOf.IsGiven || prep.BatchOf.IsGiven) KnowBatches();
                if (cycles.Count > 0 || !Named(old).SequenceEqual(Named(prep), StringComparer.Ordinal)) (orderOfUse, cycles) = Order();
                else orderOfUse[orderOfUse.IndexOf((Prep)old)] = prep;
                break;
            case Ingredient ingredient: ingredients[ingredients.BinarySearch((Ingredient)old, ByPath)] = ingredient; break;
            case Menu menu: menus[menus.BinarySearch((Menu)old, ByPath)] = menu; break;
            case PriceList list:
                priceLists[priceLists.BinarySearch((PriceList)old, ByPath)] = list;
                break;
            case Stock stock:
                stocks[stocks.BinarySearch((Stock)old, ByPath)] = stock;
                KnowLots();
                break;
        }

        if (old is not Recipe before) return;
        foreach (string id in ItemsOf(before)) Forget(id, before);
        foreach (string id in ItemsOf((Recipe)file)) Insert(id, (Recipe)file);
    }

    /// <summary>The by-product of an id; <see langword="null"/> where the id is the file's own.</summary>
    private static ByProduct? LeftOf(BookFile file, string id)
    {
        if (file is not Prep prep || prep.Id == id) return null;
        foreach (var left in prep.ByProducts)
        {
            if (left.Id.IsGiven && left.Id.Value == id) return left;
        }

        return null;
    }

    private static IEnumerable<string> Named(BookFile prep) => ((Prep)prep).Ingredients.Where(l => l.Item.IsGiven).Select(l => l.Item.Value);

    private static HashSet<string> ItemsOf(Recipe recipe)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in LinesOf(recipe))
        {
            if (line.Item.IsGiven) ids.Add(line.Item.Value);
        }

        return ids;
    }

    private void Forget(string id, Recipe user)
    {
        var list = users[id];
        list.RemoveAt(list.BinarySearch(user, UserOrder.Instance));
        if (list.Count == 0) users.Remove(id);
    }

    private void Insert(string id, Recipe user)
    {
        if (!users.TryGetValue(id, out var list)) users.Add(id, list = []);
        list.Insert(~list.BinarySearch(user, UserOrder.Instance), user);
    }

    /// <summary>The order of users: preparations, then drinks, each by path.</summary>
    private sealed class UserOrder : IComparer<Recipe>
    {
        public static readonly UserOrder Instance = new();

        public int Compare(Recipe? x, Recipe? y)
        {
            int kind = (x is Drink).CompareTo(y is Drink);
            return kind != 0 ? kind : string.CompareOrdinal(x!.Source.Path, y!.Source.Path);
        }
    }
}
