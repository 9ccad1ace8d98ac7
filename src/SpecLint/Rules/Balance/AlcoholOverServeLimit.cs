using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3017", "alcohol-over-serve-limit", "More alcohol in a serve than the house or practice allows", Level.Warning, Needs = [Fact.Alcohol], Safety = true, IsConsequence = true)]
[Limit("alcohol-per-serve", "Practice")]
internal sealed partial class AlcoholOverServeLimit : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        var alcohol = context.Fact(Fact.Alcohol);
        if (!alcohol.IsKnown) return;
        var (limit, house) = LimitOf(context.Settings);
        bool hasHouse = house.IsGiven;
        if (Findings.Check.AtMost(alcohol, limit) != Stand.Broken) return;
        var remedy = Remedy.Amount(context, Remedy.EthanolOf, grams => grams[(int)Science.Component.Ethanol] / drink.ServesOrOne, limit, "g of alcohol", "Take less spirit, or write how many it serves.");
        context.Report(new(Rule)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"A serve holds {Say.Fact(Fact.Alcohol, alcohol)} of alcohol{InDrinks(context.Settings, alcohol.Value)}, above the {Say.With(limit, "g")} {(hasHouse ? "that the house allows (bar.json, limits.alcoholPerServe)" : $"of common practice ({Practice.Source})")}.",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Caution = "Alcohol harms: follow the licensing law where you serve, print the strength, and offer water and smaller serves.",
            Evidence = [Proof.Of(Fact.Alcohol, alcohol), hasHouse ? Proof.Of("limits.alcoholPerServe", house.Value, context.Settings.Bar!.At(house.Span)) : Proof.Of(Practice)],
        });
    }

    /// <summary>Grams of ethanol that a serve may hold: what the house sets, else practice.</summary>
    internal static (double Grams, Given<Quantity> House) LimitOf(Settings settings)
    {
        bool hasHouse = settings.Bar is { } bar && bar.Limits.TryGetValue("alcoholPerServe", out var house) && house.IsGiven && house.Value.Dimension == Dimension.Mass;
        return hasHouse ? (settings.Bar!.Limits["alcoholPerServe"].Value.Base, settings.Bar.Limits["alcoholPerServe"]) : (Practice.Value, default);
    }

    private static string InDrinks(Settings settings, double grams)
    {
        foreach (string code in settings.StatedJurisdictions)
        {
            if (StandardDrinkTable.Find(code) is { } drink) return $", {Say.Number(grams / drink.Grams, 1)} × the {drink.Name} of {Say.Number(drink.Grams, 1)} g ({drink.Country})";
        }

        return "";
    }
}
