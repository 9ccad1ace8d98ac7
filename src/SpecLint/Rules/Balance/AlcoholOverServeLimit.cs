using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3017", "alcohol-over-serve-limit", "More alcohol in a serve than the house or practice allows", Level.Warning, Needs = [Fact.Alcohol], Safety = true, IsConsequence = true)]
[Limit("alcohol-per-serve", "Practice")]
internal sealed partial class AlcoholOverServeLimit : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        var alcohol = context.Fact(Fact.Alcohol);
        var (limit, house) = LimitOf(context.Settings);
        bool hasHouse = house.IsGiven;
        if (!alcohol.IsKnown)
        {
            Unknown(context, drink, alcohol, limit);
            return;
        }

        if (Findings.Check.AtMost(alcohol, limit) != Stand.Broken) return;
        var remedy = Remedy.Amount(context, Remedy.EthanolOf, grams => grams[(int)Science.Component.Ethanol] / drink.ServesOrOne, limit, "g of alcohol", "Take less spirit, or write how many it serves.");
        context.Report(new(Rule)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"A serve holds {Say.Fact(Fact.Alcohol, alcohol)} of alcohol{InDrinks(context.Settings, alcohol.Value)}, above the {Say.With(limit, "g")} {(hasHouse ? "that the house allows (bar.json, limits.alcoholPerServe)" : $"of common practice ({Practice.Source})")}.",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Caution = Caution,
            Evidence = [Proof.Of(Fact.Alcohol, alcohol), hasHouse ? Proof.Of("limits.alcoholPerServe", house.Value, context.Settings.Bar!.At(house.Span)) : Proof.Of(Practice)],
        });
    }

    /// <summary>The strength of some part is not known, and the others are over the limit without it.</summary>
    private static void Unknown(RecipeContext context, Drink drink, FactValue alcohol, double limit)
    {
        double known = context.Profile.Grams[(int)Science.Component.Ethanol] / drink.ServesOrOne;
        bool over = known > limit;

        // A spirit of which nobody knows the strength may be of any.
        if (!over && !context.Profile.Parts.Any(static p => p.IsWeighed && p.Material is { Kind: { IsSpirit: true, IsDosed: false } } m && (m.Unknown & Unknowns.Strength) != 0)) return;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"The alcohol in a serve cannot be computed ({alcohol.OpenBecause}). {(over ? $"The amounts that are known come to {Say.With(known, "g")}, above {Say.With(limit, "g")}" : $"Nothing shows that it is at most {Say.With(limit, "g")}")}.",
            Advice = "Write the strength of every part, take less spirit, or write how many it serves.",
            Caution = Caution,
            Evidence = [Proof.Of(Fact.Alcohol, alcohol), Proof.Of("known parts", known, "g"), Proof.Of("limit", limit, "g")],
        });
    }

    private const string Caution = "Alcohol harms: follow the licensing law where you serve, print the strength, and offer water and smaller serves.";

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
