using SpecLint.Book;
using SpecLint.Catalogue;

namespace SpecLint.Profile;

/// <summary>
/// What an ingredient of the bar's own takes after, whatever kind its file gives it: the entry of the catalogue that it is
/// <c>like</c> in the end, and the one whose name it or that bears.
/// </summary>
internal static class Namesakes
{
    /// <summary>The entries, at most three.</summary>
    public static FixedList<Ingredient> Of(Ingredient own)
    {
        var found = new List<Ingredient>();
        if (own.LikeInTheEnd is { } end) found.Add(end);
        foreach (var named in new[] { own, own.LikeInTheEnd })
        {
            if (named is { Name.IsGiven: true }
                && BuiltInCatalogue.Find(BuiltInCatalogue.Slug(named.Name.Value)) is { } called
                && !found.Contains(called))
                found.Add(called);
        }

        return FixedList.Of(found);
    }

    /// <summary>The words of its id and name, and of those of what it is <c>like</c>, but for those of one or two letters.</summary>
    public static IEnumerable<string> WordsOf(Ingredient own)
    {
        string text = $"{own.Id}-{BuiltInCatalogue.Slug(own.Name.Or(""))}";
        if (own.LikeInTheEnd is { } end) text += $"-{end.Id}-{BuiltInCatalogue.Slug(end.Name.Or(""))}";
        return text.Split('-').Where(static w => w.Length > 2);
    }

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
