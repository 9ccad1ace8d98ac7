using System.Collections.Concurrent;
using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>A category of allergens that the law of one jurisdiction lists.</summary>
/// <param name="Jurisdiction">The jurisdiction.</param>
/// <param name="Id">Id of the category, e.g. <c>tree-nuts</c>.</param>
/// <param name="Name">Its name in the law.</param>
/// <param name="Tokens">Tokens of the substances in it.</param>
/// <param name="DeclareAs">What is to be written.</param>
/// <param name="Threshold">mg/kg from which it counts; NaN where any amount does.</param>
/// <param name="ThresholdCounts">Whether the threshold itself counts ("at least"), or only what is over it.</param>
/// <param name="Source">The law.</param>
/// <param name="Mark">How far to trust it.</param>
public sealed record AllergenCategory(
    string Jurisdiction, string Id, string Name, FixedList<string> Tokens, string DeclareAs,
    double Threshold, bool ThresholdCounts, string Source, Mark Mark)
{
    // A sum of parts that is ten in decimals is ten here too.
    private const double Rounding = 1e-9;

    /// <summary>Whether an amount is listed; always where the law knows no threshold.</summary>
    /// <param name="amount">mg/kg.</param>
    public bool Counts(double amount) =>
        double.IsNaN(Threshold) || (ThresholdCounts ? amount >= Threshold * (1 - Rounding) : amount > Threshold * (1 + Rounding));
}

/// <summary>What the law of each jurisdiction lists as allergens, and the words that bars write for them.</summary>
internal static class AllergenTable
{
    private static readonly Dictionary<string, List<TableValue>> Rows = Read();
    private static readonly ConcurrentDictionary<string, FixedList<AllergenCategory>> ByJurisdiction = new(StringComparer.Ordinal);
    private static readonly Lazy<Dictionary<string, FixedList<string>>> Words = new(LoadWords);

    /// <summary>Tokens of all substances that a jurisdiction lists, sorted.</summary>
    public static FixedList<string> Tokens { get; } =
        [.. Rows.Values.SelectMany(static rows => rows).SelectMany(static row => row.Texts("tokens"))
            .Distinct().OrderBy(t => t, StringComparer.Ordinal)];

    // With the tokens of ingredients that no list names any more.
    private static readonly HashSet<string> AllTokens = new(Tokens, StringComparer.Ordinal) { "chestnut", "coconut" };

    /// <summary>The categories of a jurisdiction; empty where none are known.</summary>
    public static IReadOnlyList<AllergenCategory> In(string jurisdiction) =>
        ByJurisdiction.TryGetValue(jurisdiction, out var list) ? list
        : Rows.TryGetValue(jurisdiction, out var rows)
            ? ByJurisdiction.GetOrAdd(jurisdiction, [.. rows.Select(row => CategoryOf(jurisdiction, row))]) : [];

    /// <summary>The category in which a jurisdiction lists a substance; <see langword="null"/> where it does not.</summary>
    public static AllergenCategory? Of(string jurisdiction, string token)
    {
        var list = In(jurisdiction);
        for (int i = 0; i < list.Count; i++)
        {
            var tokens = list[i].Tokens;
            for (int t = 0; t < tokens.Count; t++)
            {
                if (tokens[t] == token) return list[i];
            }
        }

        return null;
    }

    /// <summary>The tokens that a word stands for: itself where it is one; empty where it is none that is known.</summary>
    public static FixedList<string> TokensOf(string word)
    {
        if (IsToken(word)) return [word];
        return Words.Value.TryGetValue(BuiltInCatalogue.Slug(word), out var known) ? known : [];
    }

    /// <summary>The words that bars write for the tokens.</summary>
    public static IEnumerable<string> AllWords => Words.Value.Keys;

    /// <summary>Whether a word is a token.</summary>
    public static bool IsToken(string word) => AllTokens.Contains(word);

    /// <summary>Whether a list of words covers a token, by itself, by another word for it, or by its group.</summary>
    internal static bool Covers(FixedList<Reading.Given<string>> words, string token)
    {
        for (int i = 0; i < words.Count; i++)
        {
            if (words[i].Value == token) return true;
        }

        for (int i = 0; i < words.Count; i++)
        {
            if (words[i].IsGiven && !IsToken(words[i].Value) && TokensOf(words[i].Value).Contains(token)) return true;
        }

        return false;
    }

    /// <summary>The rows of each jurisdiction, of a table that stays open: a bar asks for those of one or two.</summary>
    private static Dictionary<string, List<TableValue>> Read()
    {
        var table = new Dictionary<string, List<TableValue>>(StringComparer.Ordinal);
        foreach (var row in Tables.Rows(Tables.Open("allergens")))
        {
            string jurisdiction = row.Text("jurisdiction");
            // A state has rows of its own beside those of its country (ISO 3166-2).
            if (!Settings.AllJurisdictions.Contains(jurisdiction.Split('-')[0])) continue;

            // What a law only recommends is kept in the table for the reader.
            if (row.TryGet("optional", out _)) continue;
            if (!table.TryGetValue(jurisdiction, out var list)) table.Add(jurisdiction, list = []);
            list.Add(row);
        }

        return table;
    }

    private static AllergenCategory CategoryOf(string jurisdiction, TableValue row) =>
        new(
            jurisdiction, row.Text("category"), row.Text("name"), row.Texts("tokens"), row.Text("declareAs"),
            row.Number("thresholdMgPerKg"), row.Text("thresholdOperator") == "at least", row.Text("source"), row.Mark());

    private static Dictionary<string, FixedList<string>> LoadWords()
    {
        var words = new Dictionary<string, FixedList<string>>(StringComparer.Ordinal);
        using var document = Tables.Open("allergen-words");
        foreach (var row in Tables.Rows(document))
            words.Add(row.Text("word"), row.Texts("tokens"));
        return words;
    }
}
