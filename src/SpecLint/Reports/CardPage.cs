using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>Paper that cards are printed on.</summary>
internal enum CardPaper
{
    /// <summary>A4 (ISO 216), 210 by 297 mm.</summary>
    A4,

    /// <summary>Letter (ANSI/ASME Y14.1), 8.5 by 11 in.</summary>
    Letter,

    /// <summary>A6 (ISO 216), 105 by 148 mm.</summary>
    A6,
}

/// <summary>
/// Cards for those who make a recipe: one a page, amounts large; or all of a menu on a list for a pocket. What must not be served
/// or made says so before anything else.
/// </summary>
internal sealed class CardPage
{
    private const string Style = """
        .card{max-width:52rem;border-width:2px;padding:.6rem 1rem;break-after:page}
        .card:last-of-type{break-after:auto}.card h2{border:0;margin:0;font-size:1.9rem;line-height:1.15}
        .amounts{font-size:1.35rem;margin:.6rem 0;width:100%}
        .amounts th,.amounts td{border:0;border-bottom:1px solid var(--line);padding:.15rem .4rem}
        .amounts td:first-child{font-weight:700;white-space:nowrap;text-align:right;width:7.5rem}.amounts th{font-weight:400}
        .two{display:flex;gap:1rem;flex-wrap:wrap}.two>*{flex:1 1 16rem;min-width:0}
        .picture{border:2px dashed var(--line);min-height:9rem;flex:0 1 12rem;display:flex;align-items:center;justify-content:center}
        .stop{border:4px double currentColor;padding:.3rem .6rem;font-weight:700}.small{font-size:.8rem}
        .card ol{margin:.3rem 0;padding-left:1.4rem}.allergens{font-size:1.1rem}
        .pocket td,.pocket th{font-size:.85rem;padding:.12rem .3rem}
        """;

    private readonly Html page;
    private readonly Verdicts verdicts;
    private readonly DisplayUnits units;
    private readonly LinkedBook book;
    private readonly CardPaper paper;

    private CardPage(Html page, Verdicts verdicts, CardPaper paper, DisplayUnits units)
    {
        this.page = page;
        this.verdicts = verdicts;
        this.units = units;
        this.paper = paper;
        book = verdicts.Profiles.Book;
    }

    /// <summary>Writes a card a recipe.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="recipes">The recipes, in order.</param>
    /// <param name="paper">Paper.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="version">Version of the product.</param>
    public static void WriteCards(
        TextWriter to, Verdicts verdicts, IReadOnlyList<Recipe> recipes, CardPaper paper, DisplayUnits units, string version)
    {
        var cards = new CardPage(new Html(to), verdicts, paper, units);
        cards.Begin(recipes.Count == 1 ? $"Spec card: {recipes[0].Name.Or(recipes[0].Id)}" : $"{recipes.Count} spec cards");
        foreach (var recipe in recipes) cards.Card(recipe);
        cards.page.End(LineCheckReport.Caution, version);
    }

    /// <summary>Writes the drinks of a menu as one list, to be cut and folded.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="menu">The menu.</param>
    /// <param name="paper">Paper.</param>
    /// <param name="units">Units of volume and temperature.</param>
    /// <param name="version">Version of the product.</param>
    public static void WritePocketList(TextWriter to, Verdicts verdicts, Menu menu, CardPaper paper, DisplayUnits units, string version)
    {
        var cards = new CardPage(new Html(to), verdicts, paper, units);
        cards.Begin($"{menu.Name.Or(menu.Id)}: pocket list");
        var rows = new List<IReadOnlyList<string>>();
        foreach (var (entry, drink) in DrinksOf(menu, verdicts.Profiles.Book)) rows.Add(cards.PocketRow(entry, drink));
        cards.page.BeginWide("Pocket list");
        cards.page.Raw(
            "<table class=\"pocket\"><thead><tr><th scope=\"col\">drink</th>"
            + "<th scope=\"col\">goes in</th><th scope=\"col\">method</th>"
            + "<th scope=\"col\">glass and garnish</th><th scope=\"col\">allergens</th></tr></thead>\n<tbody>\n");
        foreach (var row in rows)
            cards.page.Raw($"<tr><th scope=\"row\">{Html.Text(row[0])}</th>"
                + $"{string.Concat(row.Skip(1).Select(c => $"<td>{Html.Text(c)}</td>"))}</tr>\n");
        cards.page.Raw("</tbody></table></div>\n");
        cards.page.End(LineCheckReport.Caution, version);
    }

    /// <summary>The drinks of a menu that the book has, in its order.</summary>
    internal static IEnumerable<(MenuEntry Entry, Drink Drink)> DrinksOf(Menu menu, LinkedBook book)
    {
        foreach (var entry in menu.Drinks)
        {
            if (entry.Drink.IsGiven && book.Resolve(entry.Drink.Value)?.File is Drink drink) yield return (entry, drink);
        }
    }

    private void Begin(string title)
    {
        string size = paper switch { CardPaper.Letter => "letter;margin:.5in", CardPaper.A6 => "105mm 148mm;margin:6mm", _ => "A4;margin:12mm" };
        string text = paper == CardPaper.A6
            ? "@media print{html,body{font-size:8.5px;line-height:1.3}h1,.picture,footer .soft{display:none}"
                + ".card{border:0;padding:0;margin:0}.card h3{margin:.5rem 0 .1rem}.card p{margin:.1rem 0}"
                + "footer{margin-top:.4rem}.two>*{flex-basis:9rem}}"
            : "@media print{html,body{font-size:13.5px;line-height:1.4}h1{display:none}}";
        page.Begin(title, css: $"{Style}\n@page{{size:{size}}}{text}");
    }

    private void Card(Recipe recipe)
    {
        var verdict = verdicts.Of(recipe);
        page.Raw($"<article class=\"card\" id=\"{Html.Anchor("card-", recipe.Id)}\"><h2>{Html.Text(recipe.Name.Or(recipe.Id))}</h2>\n");
        page.Paragraph(Under(recipe), "soft");
        Stop(recipe, verdict);
        page.Raw("<div class=\"two\"><div>\n");
        Amounts(recipe);
        page.Raw("</div><div class=\"picture soft\">picture</div></div>\n<div class=\"two\"><div>\n<h3>Method</h3>\n");
        if (recipe.Method.Count == 0) page.Paragraph("No method is written.");
        else page.Raw($"<ol>\n{string.Concat(recipe.Method.Select(s => $"<li>{Html.Text(StepWords.Of(s, NameOf, units))}</li>\n"))}</ol>\n");
        page.Raw("</div><div>\n");
        Service(recipe, verdict);
        page.Raw("</div></div>\n");
        if (verdict.Answer != Readiness.No) Sizes(recipe);
        page.Paragraph(Figures(recipe), "soft small");
        page.Raw("</article>\n");
    }

    private string Under(Recipe recipe)
    {
        string kind = recipe is Drink drink ? drink.KnownStyle?.Name ?? "drink" : ((Prep)recipe).Family.OrNone().Id.Replace('-', ' ');
        return string.Join(" · ", new[]
        {
            kind,
            recipe.Revision.IsGiven ? $"revision {recipe.Revision.Value}" : "",
            recipe.Date.IsGiven ? recipe.Date.Value.ToString() : "",
            recipe.Id,
        }.Where(t => t.Length > 0));
    }

    private void Stop(Recipe recipe, Verdict verdict)
    {
        string what = recipe is Drink ? "DO NOT SERVE" : "DO NOT USE";
        if (!verdict.IsForbidden) what += " as it is written";
        if (verdict.Answer == Readiness.No) page.Paragraph($"{what}: {units.Spoken(string.Join("; ", verdict.Reasons))}.", "stop bad");
        else if (verdict.Answer == Readiness.If) page.Paragraph($"First: {units.Spoken(string.Join("; ", verdict.Conditions))}.", "mid");
    }

    private void Amounts(Recipe recipe)
    {
        string made = recipe is Drink d
            ? d.ServesOrOne == 1 ? "One serve" : $"{Say.Number(d.ServesOrOne, 1)} serves"
            : "One batch";
        page.Raw($"<table class=\"amounts\"><caption class=\"small\">{made}</caption><tbody>\n");
        foreach (var line in recipe.Ingredients)
        {
            string role = line.Role == LineRole.Part ? "" : $" ({line.Role.ToString().ToLowerInvariant()})";
            string amount = line.Amount.IsGiven ? StepWords.Written(line.Amount.Value, units) : "?";
            string besides = (line.Optional ? ", may be left out" : "") + (line.Note.IsGiven ? $", {line.Note.Value}" : "");
            string name = NameOf(line.Item.Or("?")) + role + besides;
            page.Raw($"<tr><td>{Html.Text(amount)}</td><th scope=\"row\">{Html.Text(name)}</th></tr>\n");
        }

        page.Raw("</tbody></table>\n");
    }

    private void Service(Recipe recipe, Verdict verdict)
    {
        if (recipe is Drink drink)
        {
            page.Heading(3, "In the glass");
            page.Paragraph($"Glass: {(drink.Glass.IsGiven ? GlassName(drink.GlassWritten) : "none is written")}. Ice: {IceOf(drink)}.");
            if (drink.Rim.Count > 0) page.Paragraph($"Rim: {Together(drink.Rim)}.");
            page.Paragraph($"Garnish: {(drink.Garnish.Count == 0 ? "none" : Together(drink.Garnish))}.");
        }
        else
        {
            page.Heading(3, "Keeping");
            page.Paragraph(Keeping((Prep)recipe, verdict));
        }

        page.Heading(3, "Allergens");
        page.Raw($"<p class=\"allergens\">{AllergensInHtml(recipe)}</p>\n");
        foreach (string text in LotLabel.AdvisoriesOf(recipe, verdicts.Profiles)) page.Paragraph(text);
    }

    private string Keeping(Prep prep, Verdict verdict) => Keeping(prep, verdict, units);

    /// <summary>How a preparation is kept and for how long, in sentences.</summary>
    internal static string Keeping(Prep prep, Verdict verdict, DisplayUnits units)
    {
        if (verdict.IsForbidden) return "Not to be kept or used until check finds nothing against it.";
        string yield = prep.Yield.IsGiven ? $"Makes {StepWords.Written(prep.Yield.Value, units)}. " : "";
        string at = double.IsNaN(verdict.StorageCelsius) ? "" : $" at {units.Temperature(verdict.StorageCelsius)}";
        string inside = prep.Keep is { In.IsGiven: true } keep ? $", {keep.In.Value.Id}" : "";
        string days = double.IsNaN(verdict.Days) || double.IsInfinity(verdict.Days)
            ? "No time is set"
            : verdict.Days < 1 ? "Use it the day it is made"
            : $"Use within {Say.Count((int)Math.Floor(verdict.Days), "day")}, the day made counted";
        return $"{yield}{days}{at}{inside}. Date the bottle.";
    }

    private void Sizes(Recipe recipe)
    {
        double[] sizes = recipe is Drink ? [10, 25, 50] : [2, 4];
        var plans = new List<(string Head, ScalePlan Plan)>();
        foreach (double size in sizes)
        {
            if (RequestFor(recipe, size) is { } request && ScalePlan.Of(verdicts, recipe, request, out _) is { } plan)
                plans.Add((recipe is Drink ? $"{Say.Number(size, 0)} serves" : $"×{Say.Number(size, 0)}", plan));
        }

        if (plans.Count == 0 || plans.Exists(p => p.Plan.Lines.Count != plans[0].Plan.Lines.Count)) return;
        page.Table(
            recipe is Drink ? "As a batch, without ice or water" : "Larger batches",
            ["goes in", .. plans.Select(p => p.Head)],
            [.. plans[0].Plan.Lines.Select((line, i) => (IReadOnlyList<string>)[
                NameOf(line.Item), .. plans.Select(p => LineCheckReport.LineOf(p.Plan.Lines[i], units))])],
            figures: true);
    }

    private ScaleRequest? RequestFor(Recipe recipe, double size)
    {
        if (recipe is Drink) return new ScaleRequest { Serves = size };
        if (((Prep)recipe).Yield is not { IsGiven: true, Value: { Dimension: Dimension.Volume or Dimension.Mass } yield }) return null;
        return yield.Dimension == Dimension.Volume
            ? new ScaleRequest { Millilitres = yield.Base * size }
            : new ScaleRequest { Grams = yield.Base * size };
    }

    private string Figures(Recipe recipe)
    {
        var profile = verdicts.Profiles.Of(recipe);
        var settings = verdicts.Profiles.Book.Settings;
        Fact[] shown = recipe is Drink
            ? [Fact.ServedVolume, Fact.Abv, Fact.Alcohol, Fact.Sugar, Fact.Acid, Fact.Dilution, Fact.Energy, Fact.Cost]
            : [Fact.Abv, Fact.Sugar, Fact.Acid, Fact.Brix, Fact.Ph, Fact.Cost];
        return string.Join(" · ", shown
            .Select(f => (Fact: f, Value: profile.Get(f)))
            .Where(f => f.Value.IsKnown && !double.IsNaN(f.Value.Value))
            .Select(f => $"{ProfileReport.LabelOf(f.Fact)} "
                + units.Range(f.Value.Value, f.Value.Low, f.Value.High, FactUnits.Words(f.Fact, profile.IsSolid, settings))));
    }

    private IReadOnlyList<string> PocketRow(MenuEntry entry, Drink drink)
    {
        var verdict = verdicts.Of(drink);
        string name = entry.Name.Or(drink.Name.Or(drink.Id));
        if (verdict.Answer == Readiness.No) name += $" – DO NOT SERVE: see check ({Verdict.RulesOf(verdict.Forbidding.Concat(verdict.Shortening))})";
        return [
            name,
            string.Join(", ", drink.Ingredients.Select(l =>
                $"{(l.Amount.IsGiven ? StepWords.Written(l.Amount.Value, units) : "?")} {NameOf(l.Item.Or("?"))}")),
            string.Join("; ", drink.Method.Select(s => StepWords.Of(s, NameOf, units))),
            $"{(drink.Glass.IsGiven ? GlassName(drink.GlassWritten) : "")}{(drink.Garnish.Count == 0 ? "" : ", " + Together(drink.Garnish))}",
            AllergensInWords(drink)];
    }

    private string AllergensInWords(Recipe recipe)
    {
        var (contains, may, unknown) = AllergensOf(recipe);
        var words = new List<string>();
        if (contains.Count > 0) words.Add("contains " + string.Join(", ", contains).ToUpperInvariant());
        if (may.Count > 0) words.Add("may contain " + string.Join(", ", may).ToUpperInvariant());
        if (unknown.Count > 0) words.Add($"not known of {Say.List(unknown)}: ask");
        return words.Count == 0 ? "none known of" : string.Join("; ", words);
    }

    private string AllergensInHtml(Recipe recipe)
    {
        var (contains, may, unknown) = AllergensOf(recipe);
        if (contains.Count + may.Count + unknown.Count == 0) return "None known of. Ask each guest.";
        return string.Join(" ", new[]
        {
            contains.Count > 0 ? $"Contains <strong>{Html.Text(string.Join(", ", contains).ToUpperInvariant())}</strong>." : "",
            may.Count > 0 ? $"May contain <strong>{Html.Text(string.Join(", ", may).ToUpperInvariant())}</strong>." : "",
            unknown.Count > 0 ? $"<strong>Not known of {Html.Text(Say.List(unknown))}</strong>: ask." : "",
        }.Where(t => t.Length > 0));
    }

    private (IReadOnlyList<string> Contains, IReadOnlyList<string> May, IReadOnlyList<string> Unknown) AllergensOf(Recipe recipe)
    {
        var allergens = verdicts.Profiles.Of(recipe).Allergens;
        return (
            allergens.Contained(book.Settings), allergens.Possible(book.Settings),
            [.. allergens.Unknown.Select(u => NameOf(u.Through[u.Through.Count - 1])).Distinct().OrderBy(n => n, StringComparer.Ordinal)]);
    }

    private static string IceOf(Drink drink)
    {
        // What is strained off is not in the glass.
        int last = drink.Method.ToList().FindLastIndex(s => s.Verb.Strains);
        foreach (var step in drink.Method.Skip(last + 1))
        {
            if (step.HasIce) return step.IceWritten.Length > 0 ? step.IceWritten.Replace('-', ' ') : step.Ice.Value.Id.Replace('-', ' ');
        }

        return last >= 0 && drink.Method[last].HasIce ? drink.Method[last].IceWritten.Replace('-', ' ') : "none in the glass";
    }

    private string Together(FixedList<Line> lines) =>
        Say.List([.. lines.Select(l =>
            $"{(l.Amount.IsGiven ? StepWords.Written(l.Amount.Value, units) + " " : "")}{NameOf(l.Item.Or("?"))}")]);

    private string GlassName(string id) =>
        book.Settings.Bar?.Glasses.TryGetValue(id, out var glass) == true
            ? glass.Name.Or(id.Replace('-', ' '))
            : id.Replace('-', ' ');

    private string NameOf(string id) => book.Resolve(id) is { ByProduct: null } item ? item.File.Name.Or(id) : id.Replace('-', ' ');
}
