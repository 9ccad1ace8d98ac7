using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Service;

namespace SpecLint.Changes;

/// <summary>Where a substitute is to be had.</summary>
internal enum Availability
{
    /// <summary>A lot of it is in stock.</summary>
    InStock,

    /// <summary>The book has it; no stock file does.</summary>
    InBook,

    /// <summary>Only the built-in catalogue has it: it has to be bought.</summary>
    InCatalogue,
}

/// <summary>What could take the place of an item in a recipe.</summary>
/// <param name="Item">The item.</param>
/// <param name="Name">Its name.</param>
/// <param name="Availability">Where it is to be had.</param>
/// <param name="Differs">What differs from the item that ran out.</param>
/// <param name="Adjustment">The recipe with it, the amounts solved again.</param>
internal sealed record Substitute(Item Item, string Name, Availability Availability, IReadOnlyList<string> Differs, Adjustment Adjustment);

/// <summary>
/// Finds what could take the place of an item that ran out: near to it by strength, sugar and acid, of its kind rather than of another,
/// in stock rather than to be bought. For each the amounts are solved again.
/// </summary>
internal static class Substitutes
{
    // In steps of the make-up; common practice, no source. They only rank.
    private const double OtherSort = 0.5, OtherKind = 1.5, NotInStock = 0.5, ToBeBought = 1, Furthest = 3;

    /// <summary>The best substitutes, those that bring no harm and reach the figures first.</summary>
    /// <param name="input">The book.</param>
    /// <param name="before">What its check comes to.</param>
    /// <param name="recipe">The recipe.</param>
    /// <param name="request">What is asked; <see cref="AdjustRequest.Without"/> names the item that ran out.</param>
    /// <param name="most">How many to try, 1 or more.</param>
    public static IReadOnlyList<Substitute> Of(BookInput input, CheckResult before, Recipe recipe, AdjustRequest request, int most)
    {
        var book = before.Book;
        if (book.Resolve(request.Without) is not { } gone || before.Profiles.MaterialOf(gone.Id) is not { } model) return [];
        var makeUp = MakeUp.Of(gone, before.Profiles);
        var inStock = new HashSet<string>(
            book.Stocks.SelectMany(s => s.Lots)
                .Where(l => l.Item.IsGiven && !(l.Amount.IsGiven && l.Amount.Value.Base <= 0))
                .Select(l => l.Item.Value),
            StringComparer.Ordinal);
        var taken = new HashSet<string>(StringComparer.Ordinal) { gone.Id };
        foreach (var line in LinkedBook.LinesOf(recipe)) taken.Add(line.Item.Or(""));
        var ranked = new List<(Item Item, Availability Where, double Score)>();
        foreach (string id in book.Ids.Concat(BuiltInCatalogue.Ids.Where(i => !book.Ids.Contains(i))))
        {
            if (book.Resolve(id) is not { ByProduct: null } item || item.File is Drink
                || taken.Contains(item.Id) || Uses(book, item, recipe, 0)) continue;
            if (before.Profiles.MaterialOf(item.Id) is not { } material
                || (material.Unknown & Unknowns.Composition) != 0
                || material.State != model.State
                || !IsOfAKind(material, model))
                continue;
            double steps = MakeUp.Of(item, before.Profiles).StepsTo(makeUp);
            bool same = material.Kind == model.Kind;
            if (!(steps <= Furthest) || (!same && IsPlain(makeUp))) continue;
            var where = inStock.Contains(item.Id) ? Availability.InStock : item.IsBuiltIn ? Availability.InCatalogue : Availability.InBook;
            ranked.Add((item, where, steps + (!same
                ? OtherKind
                : IsOfASort(book, item, gone) ? 0 : OtherSort) + (where == Availability.InStock
                ? 0
                : where == Availability.InBook ? NotInStock : ToBeBought)));
        }

        var found = new List<Substitute>();
        foreach (var (item, where, _) in ranked.OrderBy(r => r.Score).ThenBy(r => r.Item.Id, StringComparer.Ordinal).Take(most))
        {
            if (Adjuster.Of(input, before, recipe, request with { Use = item.Id }, out _) is not { } adjusted) continue;
            found.Add(new Substitute(item, item.File.Name.Or(item.Id), where, [.. MakeUp.Of(item, before.Profiles).Against(makeUp)], adjusted));
        }

        // OrderBy keeps the order of the rank among equals.
        return [.. found.OrderBy(f => f.Adjustment.Harm.Count > 0).ThenBy(f => !f.Adjustment.IsReached)];
    }

    /// <summary>Whether two do the same work beside their make-up.</summary>
    private static bool IsOfAKind(Material a, Material b) =>
        a.Kind == b.Kind
        || (a.Kind.IsBitters == b.Kind.IsBitters && a.Kind.IsSparkling == b.Kind.IsSparkling
            && a.Kind.IsEgg == b.Kind.IsEgg && a.Kind.IsDairy == b.Kind.IsDairy
            && a.Kind.IsBotanical == b.Kind.IsBotanical && (a.Kind.IsSpirit == b.Kind.IsSpirit || !(a.Kind.IsSpirit || b.Kind.IsSpirit)));

    /// <summary>Whether two go back to one entry of the catalogue, or are called by one word: two gins, two honey syrups.</summary>
    private static bool IsOfASort(LinkedBook book, Item a, Item b) => RootOf(book, a) == RootOf(book, b) || LastWord(a.Id) == LastWord(b.Id);

    private static string RootOf(LinkedBook book, Item item)
    {
        string id = item.Id;
        for (int i = 0; i < 10 && book.Resolve(id)?.File is Ingredient { Like: { IsGiven: true } like }; i++) id = like.Value;
        return id;
    }

    private static string LastWord(string id) => id.Substring(id.LastIndexOf('-') + 1);

    /// <summary>Whether strength, sugar and acid say nothing of it.</summary>
    private static bool IsPlain(MakeUp of) => !(of.Strength > 0.5) && !(of.Sugar > 0.5) && !(of.Acid > 0.1);

    /// <summary>Whether an item is made of a recipe, so that it cannot go into it.</summary>
    private static bool Uses(LinkedBook book, Item item, Recipe recipe, int depth)
    {
        if (item.File == recipe || depth > ProfileSet.DeepestNesting) return true;
        if (item.File is not Prep prep || item.IsBuiltIn || recipe is not Prep) return false;
        foreach (var line in prep.Ingredients)
        {
            if (line.Item.IsGiven && book.Resolve(line.Item.Value) is { } part && Uses(book, part, recipe, depth + 1)) return true;
        }

        return false;
    }
}
