using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>
/// What an ingredient of the bar's own takes after, whatever kind its file gives it: the entry of the catalogue that it is
/// <c>like</c> in the end, and the one whose name it bears.
/// </summary>
internal static class Namesakes
{
    /// <summary>The entries, at most two.</summary>
    public static FixedList<Ingredient> Of(Ingredient own)
    {
        var found = new List<Ingredient>();
        if (own.LikeInTheEnd is { } end) found.Add(end);
        if (own.Name.IsGiven && BuiltInCatalogue.Find(BuiltInCatalogue.Slug(own.Name.Value)) is { } called && !found.Contains(called)) found.Add(called);
        return FixedList.Of(found);
    }

    /// <summary>The words of its id and name, but for those of one or two letters.</summary>
    public static IEnumerable<string> WordsOf(Ingredient own) => $"{own.Id}-{BuiltInCatalogue.Slug(own.Name.Or(""))}".Split('-').Where(static w => w.Length > 2);

    /// <summary>The entries that single words of its name or id name: <c>garlic</c> in "Confit garlic oil".</summary>
    public static FixedList<Ingredient> InWords(Ingredient own)
    {
        var found = new List<Ingredient>();
        foreach (string word in WordsOf(own))
        {
            if ((BuiltInCatalogue.Find(word) ?? BuiltInCatalogue.Find(Vocabulary.Plurals.Singular(word))) is not { } entry || found.Contains(entry)) continue;
            found.Add(entry);
        }

        return FixedList.Of(found);
    }
}
