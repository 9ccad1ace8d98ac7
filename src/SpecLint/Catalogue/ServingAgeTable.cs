using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>From which age the law of a country lets a guest be served.</summary>
/// <param name="Jurisdictions">The country.</param>
/// <param name="Place">Its name.</param>
/// <param name="Spirits">Spirits and drinks with them.</param>
/// <param name="Fermented">Beer, wine and the like alone.</param>
/// <param name="Source">The law.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record ServingAge(
    FixedList<string> Jurisdictions, string Place, double Spirits, double Fermented, string Source, Mark Mark);

/// <summary>The ages of the laws, and how an age is written for serving (<c>serving-ages.json</c>).</summary>
internal static class ServingAgeTable
{
    /// <summary>The ages that are looked for: younger ones are those of a guest, older ones of a spirit.</summary>
    private const int Least = 10, Most = 20;

    private static readonly Lazy<(List<ServingAge> Laws, List<Form> Forms)> Rows = new(Load);

    private sealed record Form(FixedList<string> Before, FixedList<string> After, FixedList<string> NotBehind);

    /// <summary>The laws of a bar's countries.</summary>
    public static IReadOnlyList<ServingAge> In(Settings settings) =>
        settings.JurisdictionIsStated ? Rows.Value.Laws.FindAll(l => l.Jurisdictions.Any(settings.AppliesIn)) : [];

    /// <summary>The ages from which a text says that guests are served.</summary>
    public static List<int> AgesIn(string text)
    {
        var ages = new List<int>();
        for (int at = 0; at + 1 < text.Length; at++)
        {
            if (!char.IsDigit(text[at])) continue;
            if (at > 0 && (char.IsLetterOrDigit(text[at - 1]) || text[at - 1] is '.' or ',')) continue;
            int end = at;
            while (end < text.Length && char.IsDigit(text[end])) end++;
            int age = 0;
            for (int i = at; i < end && age <= Most; i++) age = (age * 10) + (text[i] - '0');
            if (age is >= Least and <= Most
                && Rows.Value.Forms.Exists(f => IsWritten(text, at, end, f)))
                ages.Add(age);
            at = end;
        }

        return ages;
    }

    private static bool IsWritten(string text, int at, int end, Form form)
    {
        string before = text.Substring(0, at).TrimEnd(), after = text.Substring(end).TrimStart();
        if (form.NotBehind.Any(w => Phrases.Has(after, w))) return false;
        if (after == "+" || (after.Length > 1 && after[0] == '+' && after[1] is ')' or ',' or '.' or ';')) return true;
        bool isBefore = form.Before.Count == 0 || form.Before.Any(w => Ends(before, w));
        string? unit = form.After.FirstOrDefault(w => Starts(after, w));
        return isBefore && (form.After.Count == 0 || unit is not null);
    }

    private static bool Ends(string text, string word) => text.EndsWith(word, StringComparison.OrdinalIgnoreCase)
        && (text.Length == word.Length || !char.IsLetterOrDigit(text[text.Length - word.Length - 1]));

    private static bool Starts(string text, string word) => text.StartsWith(word, StringComparison.OrdinalIgnoreCase)
        && (text.Length == word.Length || !char.IsLetterOrDigit(text[word.Length]));

    private static (List<ServingAge> Laws, List<Form> Forms) Load()
    {
        List<ServingAge> laws = [];
        List<Form> forms = [];
        using var document = Tables.Open("serving-ages");
        foreach (var row in Tables.Rows(document))
        {
            if (row.TryGet("spirits", out _))
            {
                double spirits = row.Number("spirits"), fermented = row.Number("fermented");
                var places = row.RepeatedTexts("jurisdictions");
                laws.Add(new(places, row.Text("place"), spirits, fermented, row.Text("source"), row.Mark()));
            }
            else forms.Add(new(row.Texts("before"), row.Texts("after"), row.Texts("notBehind")));
        }

        return (laws, forms);
    }
}
