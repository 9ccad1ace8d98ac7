using SpecLint.Book;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>A sheet for guests: what is on a menu, and which allergens are in it, in words for guests. It defers to the staff.</summary>
internal static class GuestPage
{
    /// <summary>What the sheet begins with.</summary>
    public const string Please = "Please tell us about any allergy or intolerance before you order, also if you have had the drink "
        + "before. Our drinks are made by hand at one bar with shared tools, so traces can get from one to another. Ask us: we show you "
        + "what is in each drink.";

    private const string Style = """
        .allergen{font-weight:700;text-transform:uppercase}
        .sheet h2{border:0;margin:.9rem 0 0;font-size:1.15rem}.sheet p{margin:.1rem 0}
        .please{border:2px solid currentColor;padding:.4rem .7rem}
        @page{size:A4;margin:12mm}
        @media print{html,body{font-size:12.5px;line-height:1.35}.sheet{columns:2;column-gap:8mm}
        .sheet h2{break-after:avoid;margin:.6rem 0 0}.sheet p{break-inside:avoid}}
        """;

    /// <summary>Writes the sheet; what must not be served is left out of it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="menu">The menu.</param>
    /// <param name="version">Version of the product.</param>
    /// <returns>Names of the drinks that were left out, since they must not be served or the book does not have them.</returns>
    public static IReadOnlyList<string> Write(TextWriter to, Verdicts verdicts, Menu menu, string version)
    {
        var book = verdicts.Profiles.Book;
        var left = menu.Drinks
            .Where(e => !e.Drink.IsGiven || book.Resolve(e.Drink.Value)?.File is not Drink)
            .Select(e => e.Name.Or(e.Drink.Or("?"))).ToList();
        var page = new Html(to);
        page.Begin(menu.Name.Or(menu.Id), css: Style);
        page.Raw($"<p class=\"please\"><strong>{Html.Text(Please)}</strong></p>\n<div class=\"sheet\">\n");
        foreach (var (entry, drink) in CardPage.DrinksOf(menu, book))
        {
            string name = entry.Name.Or(drink.Name.Or(drink.Id));
            if (verdicts.Of(drink).Answer == Readiness.No)
            {
                left.Add(name);
                continue;
            }

            var allergens = verdicts.Profiles.Of(drink).Allergens;
            page.Heading(2, name);
            if (entry.Words.IsGiven) page.Paragraph(entry.Words.Value);
            var contains = allergens.Contained(book.Settings);
            var may = allergens.Possible(book.Settings);
            if (contains.Count > 0) page.Raw($"<p>Contains <span class=\"allergen\">{Html.Text(InWords(contains))}</span>.</p>\n");
            if (may.Count > 0) page.Raw($"<p>May contain <span class=\"allergen\">{Html.Text(InWords(may))}</span>.</p>\n");
            if (allergens.Unknown.Count > 0) page.Paragraph("We do not know everything that is in one of its ingredients: please ask us.");
            else if (contains.Count + may.Count == 0) page.Paragraph("We know of no allergen among its ingredients: please ask us all the same.");
            foreach (string text in LotLabel.AdvisoriesOf(drink, verdicts.Profiles)) page.Paragraph(text);
        }

        page.Raw("</div>\n");
        page.End($"As our recipes stood on {book.On}. Recipes and suppliers change; what our staff tell you goes before this sheet.", version);
        return left;
    }

    private static string InWords(IReadOnlyList<string> tokens) => Say.List([.. tokens.Select(t => t.Replace('-', ' '))]);
}
