namespace SpecLint.Catalogue;

/// <summary>A food as the words of menus name it.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Words">Its words, plain.</param>
/// <param name="Stems">Its words, and beginnings of words of what is made from it, plain.</param>
/// <param name="IsTaste">Whether it is often told for a taste.</param>
internal sealed record MenuFood(string Id, FixedList<string> Words, FixedList<string> Stems, bool IsTaste)
{
    private const int LettersOfStem = 4;

    /// <summary>Whether plain words tell of it: a longer word anywhere, a short one by itself.</summary>
    public bool IsToldIn(string plain)
    {
        foreach (string stem in Stems)
        {
            bool whole = stem.Length < LettersOfStem;
            for (int at = -1; (at = plain.IndexOf(stem, at + 1, StringComparison.Ordinal)) >= 0;)
            {
                int end = at + stem.Length;
                if (!whole) return true;
                if ((at == 0 || plain[at - 1] == ' ') && (end == plain.Length || plain[end] == ' ')) return true;
            }
        }

        return false;
    }
}

/// <summary>The foods that menus name (<c>menu-foods.json</c>).</summary>
internal static class MenuFoodTable
{
    private static readonly Lazy<Dictionary<string, List<MenuFood>>> Foods = new(Load);

    /// <summary>
    /// The foods that a piece of a menu's words may name, as a whole and without words that only say how it is; empty where it names none.
    /// </summary>
    public static IReadOnlyList<MenuFood> NamedBy(string piece) => Foods.Value.TryGetValue(Plain(piece), out var foods)
        || Foods.Value.TryGetValue(Plain(MenuWords.Bare(piece, alsoBefore: true)), out foods) ? foods : [];

    private static string Plain(string words) => BuiltInCatalogue.Slug(words).Replace('-', ' ');

    private static Dictionary<string, List<MenuFood>> Load()
    {
        var byWord = new Dictionary<string, List<MenuFood>>(StringComparer.Ordinal);
        using var document = Tables.Open("menu-foods");
        foreach (var row in Tables.Rows(document))
        {
            FixedList<string> words = [.. row.Texts("words").Select(Plain).Distinct()];
            var food = new MenuFood(row.Text("id"), words, [.. words, .. row.Texts("also").Select(Plain)], row.Flag("taste"));
            foreach (string word in words)
            {
                if (!byWord.TryGetValue(word, out var foods)) byWord.Add(word, foods = []);
                foods.Add(food);
            }
        }

        return byWord;
    }
}
