using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>What the rules on statements share.</summary>
internal static class Additives
{
    /// <summary>How many files may be like one another in a row: more is a circle.</summary>
    private const int MostLinks = 16;

    /// <summary>Whether an item is a catalogue entry, or a bar's own file that is like it.</summary>
    public static bool IsOrLike(BookContext context, Item item, string id)
    {
        if (item.Id == id) return true;
        var next = item.File as Ingredient;
        for (int i = 0; i < MostLinks && next is { Like.IsGiven: true }; i++)
        {
            if (next.Like.Value == id) return true;
            next = context.Book.Resolve(next.Like.Value)?.File as Ingredient;
        }

        return false;
    }

    /// <summary>Whether an item is one of some catalogue entries, or a bar's own file that is like one.</summary>
    public static bool IsOrLikeAny(BookContext context, Item item, HashSet<string> ids)
    {
        if (ids.Contains(item.Id)) return true;
        var next = item.File as Ingredient;
        for (int i = 0; i < MostLinks && next is { Like.IsGiven: true }; i++)
        {
            if (ids.Contains(next.Like.Value)) return true;
            next = context.Book.Resolve(next.Like.Value)?.File as Ingredient;
        }

        return false;
    }

    /// <summary>
    /// What the law on statements binds: packed food and drink; of a drink that is poured the country may ask more or less.
    /// </summary>
    public static string Scope(Recipe recipe) => recipe is Drink ? "; binding for packed drinks, local rules for poured ones" : "";

    /// <summary>Whether an advisory of the recipe has one of some words.</summary>
    public static bool IsSaid(Recipe recipe, string[] words)
    {
        foreach (var text in recipe.Declares?.Advisory ?? [])
        {
            if (!text.IsGiven) continue;
            foreach (string word in words)
            {
                if (text.Value.IndexOf(word, StringComparison.OrdinalIgnoreCase) >= 0) return true;
            }
        }

        return false;
    }

    /// <summary>The edit that adds an advisory where there is none yet; <see langword="null"/> where there is one.</summary>
    public static TextEdit? SayFirst(Recipe recipe, string text) =>
        recipe.Declares is { Advisory.Count: > 0 } ? null : Say(recipe, text);

    /// <summary>The edit that adds an advisory.</summary>
    public static TextEdit? Say(Recipe recipe, string text) =>
        recipe.Declares is { Advisory: { Count: > 0 } advisory }
            ? JsonEdits.AddToList(recipe, new Given<FixedList<Given<string>>>(advisory, advisory[0].Span), text)
            : Declares.Edit(recipe, "advisory", $"[\"{text}\"]");
}
