using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>A form of promoting the drinking of alcohol.</summary>
/// <param name="Id">Its id.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Words">Words that offer it.</param>
internal sealed record PromotionForm(string Id, string What, FixedList<string> Words);

/// <summary>What the law of a place says of some forms.</summary>
/// <param name="Jurisdictions">Where it holds.</param>
/// <param name="Place">The name of the place.</param>
/// <param name="Forms">Ids of the forms.</param>
/// <param name="Says">What it says, behind the name of the place.</param>
/// <param name="Source">The law.</param>
internal sealed record PromotionLaw(FixedList<string> Jurisdictions, string Place, FixedList<string> Forms, string Says, string Source);

/// <summary>Promotions of alcohol and the laws on them (<c>promotions.json</c>).</summary>
internal static class PromotionTable
{
    private static readonly List<PromotionForm> AllForms = [];
    private static readonly List<PromotionLaw> Laws = [];
    private static readonly WordFilter Beginnings;

    static PromotionTable()
    {
        using var document = Tables.Open("promotions");
        foreach (var row in Tables.Rows(document))
        {
            string id = row.Text("id"), source = row.Text("source");
            if (row.Texts("words") is { Count: > 0 } words) AllForms.Add(new(id, row.Text("what"), words));
            else Laws.Add(new(row.RepeatedTexts("jurisdictions"), row.Text("place"), row.Texts("forms"), row.Text("says"), source));
        }

        Beginnings = WordFilter.OfFirstWords(AllForms.SelectMany(static f => f.Words));
    }

    /// <summary>The forms, in the order of the table; empty where a text holds no word with which one begins.</summary>
    public static IReadOnlyList<PromotionForm> FormsIn(string text) => Beginnings.MayHold(text) || text.IndexOf('-') >= 0 ? AllForms : [];

    /// <summary>The first law of a bar's places that is about a form; <see langword="null"/> where none is known.</summary>
    public static PromotionLaw? LawOn(PromotionForm form, Settings settings) =>
        settings.JurisdictionIsStated ? Laws.Find(l => l.Forms.Contains(form.Id) && l.Jurisdictions.Any(settings.AppliesIn)) : null;
}
