using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Service;

namespace SpecLint.Reports;

/// <summary>What goes out to a spreadsheet: profiles, allergens, the plan before service, costs and prices.</summary>
public static class Sheets
{
    /// <summary>The facts of recipes, a fact a row.</summary>
    /// <param name="items">Items of the book or the catalogue; ingredients are left out.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    public static Sheet Profile(IReadOnlyList<Item> items, Verdicts verdicts)
    {
        var sheet = new Sheet("id", "name", "kind", "fact", "value", "low", "high", "unit", "from", "open");
        var settings = verdicts.Profiles.Book.Settings;
        foreach (var recipe in items.Select(i => i.File).OfType<Recipe>())
        {
            var profile = verdicts.Profiles.Of(recipe);
            for (int i = 0; i < FactNames.Count; i++)
            {
                var fact = (Fact)i;
                var value = ProfileReport.ValueOf(fact, profile, verdicts);
                if (!value.IsKnown && (!ProfileReport.IsMeant(fact, recipe) || (fact == Fact.Cost && verdicts.Profiles.Prices.IsEmpty))) continue;
                sheet.Add(
                    recipe.Id, recipe.Name.Or(recipe.Id), ReportWords.KeyOf(recipe.Kind), FactNames.Name(fact), value.Value, value.Low,
                    value.High, FactUnits.Code(fact, profile.IsSolid, settings), value.From, value.OpenBecause);
            }
        }

        return sheet;
    }

    /// <summary>The allergens of the drinks of a menu: contains, may contain or not known of, a drink a row.</summary>
    /// <param name="menu">The menu.</param>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    public static Sheet Allergens(Menu menu, Verdicts verdicts)
    {
        var book = verdicts.Profiles.Book;
        var drinks = CardPage.DrinksOf(menu, book).Select(d => (d.Entry, d.Drink, Allergens: verdicts.Profiles.Of(d.Drink).Allergens)).ToList();
        string[] tokens = [.. drinks.SelectMany(d => d.Allergens.Contained(book.Settings).Concat(d.Allergens.Possible(book.Settings)))
            .Distinct()
            .OrderBy(t => t, StringComparer.Ordinal)];
        var sheet = new Sheet(["id", "name", .. tokens, "not known of", "served"]);
        foreach (var (entry, drink, allergens) in drinks)
        {
            var contained = allergens.Contained(book.Settings);
            var possible = allergens.Possible(book.Settings);
            sheet.Add(
            [
                drink.Id, entry.Name.Or(drink.Name.Or(drink.Id)),
                .. tokens.Select(t => contained.Contains(t) ? "contains" : possible.Contains(t) ? "may contain" : ""),
                string.Join(" ", allergens.Unknown.Select(u => u.Through[u.Through.Count - 1]).Distinct().OrderBy(u => u, StringComparer.Ordinal)),
                verdicts.Of(drink).Answer != Readiness.No,
            ]);
        }

        return sheet;
    }

    /// <summary>What to do before service, a task a row.</summary>
    /// <param name="check">The check of the menu against the stock.</param>
    public static Sheet Plan(LineCheck check)
    {
        var sheet = new Sheet("what", "id", "name", "grams", "millilitres", "times", "hours", "use by", "for", "why");
        foreach (var task in check.Make)
            sheet.Add(
                "make", task.Prep.Id, task.Prep.Name.Or(task.Prep.Id), task.Makes, task.MakesMillilitres, task.Times, task.Hours,
                task.LastsUntil?.ToString(), string.Join(" ", task.For), "");
        foreach (var lot in check.Lots.Where(l => l.ThrowAway))
            sheet.Add("discard", lot.Id, lot.Name, null, null, null, null, null, "", string.Join("; ", lot.Reasons));
        foreach (var drink in check.Drinks)
            sheet.Add(
                "serve",
                drink.Id,
                drink.Name,
                null,
                null,
                drink.Covers,
                null,
                null,
                "",
                drink.Readiness switch
                {
                    Readiness.No => "no: " + string.Join("; ", drink.Reasons),
                    Readiness.If => "if: " + string.Join("; ", drink.Conditions),
                    _ => "yes",
                });
        return sheet;
    }

    /// <summary>What recipes cost, a line a row; a drink a serve, a preparation the whole recipe.</summary>
    /// <param name="recipes">The recipes.</param>
    /// <param name="profiles">The profiles of the book.</param>
    /// <param name="of">How much of each; the usual where not given.</param>
    public static Sheet Costs(IReadOnlyList<Recipe> recipes, ProfileSet profiles, CostBatch? of = null)
    {
        of ??= CostBatch.Usual;
        var sheet = new Sheet("id", "name", "per", "item", "amount", "cost", "low", "high", "trimmings", "currency", "from", "open");
        string currency = FactUnits.CurrencyOf(profiles.Book.Settings);
        foreach (var recipe in recipes)
        {
            var cost = profiles.Of(recipe).Cost;
            decimal times = of.Factor(profiles.Of(recipe));
            string per = of.IsGiven ? of.Words(recipe) : of.Key(recipe);
            foreach (var line in cost.Lines)
            {
                var each = line.Cost.Times(times);
                string amount = line.Line.Amount.IsGiven ? Rounding.Words(line.Line.Amount.Value.Base, line.Line.Amount.Value) : "";
                if (line.IsKnown)
                    sheet.Add(
                        recipe.Id, recipe.Name.Or(recipe.Id), per, line.Line.Item.Or(""), amount, each.Value, each.Low, each.High,
                        line.Trimmed * times, currency, line.From, "");
                else
                    sheet.Add(
                        recipe.Id, recipe.Name.Or(recipe.Id), per, line.Line.Item.Or(""), amount, null, null, null, null, currency, "",
                        line.OpenBecause);
            }

            var whole = cost.Whole.Times(times);
            sheet.Add(
                recipe.Id, recipe.Name.Or(recipe.Id), per, "", "", whole.Value, whole.Low, whole.High, cost.Trimmed * times, currency,
                cost.IsKnown ? "all lines" : "the lines that have a price", string.Join("; ", cost.Open));
        }

        return sheet;
    }

    /// <summary>The prices in force, an item a row, as <c>prices</c> reads them.</summary>
    /// <param name="profiles">The profiles of the book.</param>
    public static Sheet Prices(ProfileSet profiles)
    {
        var sheet = new Sheet("item", "name", "price", "for", "yield", "on", "from", "currency");
        foreach (var pair in profiles.Prices.All)
        {
            var price = pair.Value;
            sheet.Add(
                pair.Key, profiles.Book.Resolve(pair.Key)?.File.Name.Or(pair.Key), price.Paid, Rounding.Words(price.Size.Base, price.Size),
                price.Yield is { } yield
                    ? Rounding.Words(yield.Base, yield)
                    : "", price.On?.ToString(), price.From, FactUnits.CurrencyOf(profiles.Book.Settings));
        }

        return sheet;
    }
}
