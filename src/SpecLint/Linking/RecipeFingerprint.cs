using System.Globalization;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Linking;

/// <summary>
/// The fingerprint of what a recipe is made of and how: amounts, method and yield, with the house preparations and own ingredients
/// in it. Notes, garnish, the order of the lines, spelling and units do not enter it. A reading that bears it is of this recipe.
/// </summary>
public static class RecipeFingerprint
{
    /// <summary>Names the ingredients of the fingerprint; it rises when they change, and older ones then match nothing.</summary>
    private const string Version = "r1-";

    private const int LongestText = 16 * 1024;
    private const int Deepest = 24;

    /// <summary>The fingerprint of a recipe of a book: <c>r1-</c> and 64 bits (FNV-1a) as 16 hexadecimal digits.</summary>
    public static string Of(Recipe recipe, LinkedBook book)
    {
        ulong hash = 14695981039346656037;
        foreach (string part in PartsOf(recipe, book, 0))
        {
            foreach (char c in part) hash = (hash ^ c) * 1099511628211;
            hash = (hash ^ 0xFFFF) * 1099511628211;
        }

        return Version + hash.ToString("x16", CultureInfo.InvariantCulture);
    }

    private static List<string> PartsOf(Recipe recipe, LinkedBook book, int depth)
    {
        var amounts = new SortedDictionary<string, (double Low, double High)>(StringComparer.Ordinal);
        foreach (var line in recipe.Ingredients)
        {
            string key = $"{ItemOf(line, book, depth)}|{line.Role}|{(line.Amount.IsGiven ? line.Amount.Value.Dimension.ToString() : "none")}";
            if (line.Amount.IsGiven && line.Amount.Value.Dimension is Dimension.Count or Dimension.Part) key += "|" + line.Amount.Value.Unit.Name;
            amounts.TryGetValue(key, out var sum);
            amounts[key] = line.Amount.IsGiven ? (sum.Low + line.Amount.Value.BaseLow, sum.High + line.Amount.Value.BaseHigh) : sum;
        }

        var parts = amounts.Select(a => $"{a.Key}={Number(a.Value.Low)}-{Number(a.Value.High)}").ToList();
        foreach (var step in recipe.Method)
        {
            parts.Add(string.Join(
                "|",
                step.Verb == Verb.None ? BuiltInCatalogue.Slug(step.Written) : step.Verb.Id,
                string.Join(",", step.Items.Where(i => i.IsGiven).Select(i => IdOf(i.Value, book)).OrderBy(i => i, StringComparer.Ordinal)),
                Amount(step.For),
                Amount(step.At),
                Amount(step.To),
                Amount(step.Amount),
                step.Until.IsGiven ? BuiltInCatalogue.Slug(step.Until.Value) : ""));
        }

        if (recipe is Prep prep) parts.Add("yield=" + Amount(prep.Yield));
        return parts;
    }

    /// <summary>An item: of a house preparation or an own ingredient what it is made of; of the catalogue its id.</summary>
    private static string ItemOf(Line line, LinkedBook book, int depth)
    {
        if (!line.Item.IsGiven) return BuiltInCatalogue.Slug(line.ItemText.Or(""));
        if (book.Resolve(line.Item.Value) is not { } item) return BuiltInCatalogue.Slug(line.Item.Value);
        if (item.IsBuiltIn) return item.Id;
        string left = item.ByProduct is null ? "" : "left:" + item.Id + ":";
        return item.File switch
        {
            Recipe inner when depth < Deepest => $"{left}({WithinOf(inner, book, depth + 1)})",
            Ingredient own => $"({string.Join(";", ValuesOf(own, book))})",
            _ => item.Id,
        };
    }

    /// <summary>
    /// What a preparation in a recipe is made of, worked out once a book. A long text stands as its own hash: a preparation that
    /// comes in by many ways would double it with each level.
    /// </summary>
    private static string WithinOf(Recipe inner, LinkedBook book, int depth)
    {
        if (book.FingerprintTexts.TryGetValue((inner, depth), out string? known)) return known;
        string text = string.Join(";", PartsOf(inner, book, depth));
        if (text.Length > LongestText)
        {
            ulong hash = 14695981039346656037;
            foreach (char c in text) hash = (hash ^ c) * 1099511628211;
            text = "#" + hash.ToString("x16", CultureInfo.InvariantCulture);
        }

        return book.FingerprintTexts.GetOrAdd((inner, depth), text);
    }

    private static IEnumerable<string> ValuesOf(Ingredient own, LinkedBook book)
    {
        var flat = Inheritance.Flatten(own, id => book.Resolve(id)?.File as Ingredient);
        yield return flat.IngredientKind.IsGiven ? flat.IngredientKind.Value.Id : "";
        yield return flat.Form.Or("");
        yield return flat.PerHundredMillilitres.Or(false) ? "per 100 ml" : "per 100 g";
        foreach (var value in flat.Values.Where(v => !v.Key.StartsWith("life", StringComparison.Ordinal)).OrderBy(v => v.Key, StringComparer.Ordinal))
            yield return $"{value.Key}={Number(value.Value.Typical)}";
    }

    private static string IdOf(string id, LinkedBook book) => book.Resolve(id)?.Id ?? BuiltInCatalogue.Slug(id);

    private static string Amount(Given<Quantity> amount) =>
        amount.IsGiven ? $"{amount.Value.Dimension}:{Number(amount.Value.BaseLow)}-{Number(amount.Value.BaseHigh)}" : "";

    /// <summary>Six digits: what two units make of one amount is one number.</summary>
    private static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
