using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3017", "alcohol-over-serve-limit", "More alcohol in a serve than the house or practice allows", Level.Warning,
    Needs = [Fact.Alcohol], Safety = true, IsConsequence = true)]
[Limit("alcohol-per-serve", "Practice")]
internal sealed partial class AlcoholOverServeLimit : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        var alcohol = context.Fact(Fact.Alcohol);
        var (limit, house) = LimitOf(context.Settings);
        if (!alcohol.IsKnown) Unknown(context, drink, alcohol, limit);
        else if (Findings.Check.AtMost(alcohol, limit) == Stand.Broken) Over(context, drink, alcohol, limit, house);
    }

    private static void Over(RecipeContext context, Drink drink, FactValue alcohol, double limit, Given<Quantity> house)
    {
        double serves = drink.ServesOrOne;
        var remedy = Remedy.Amount(
            context, Remedy.EthanolOf, grams => grams[(int)Science.Component.Ethanol] / serves, limit, "g of alcohol",
            "Take less spirit, or write how many it serves.");
        string whose = house.IsGiven
            ? "that the house allows (bar.json, limits.alcoholPerServe)"
            : $"of common practice ({Practice.Source})";
        context.Report(new(Rule)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"A serve holds {Say.Fact(Fact.Alcohol, alcohol)} of alcohol{InDrinks(context.Settings, alcohol.Value)}, above the "
                + $"{Say.With(limit, "g")} {whose}.",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Caution = Caution,
            Evidence =
            [
                Proof.Of(Fact.Alcohol, alcohol),
                house.IsGiven ? Proof.Of("limits.alcoholPerServe", house.Value, context.Settings.Bar!.At(house.Span)) : Proof.Of(Practice),
            ],
        });
    }

    /// <summary>The strength of some part is not known, and the others are over the limit without it.</summary>
    private static void Unknown(RecipeContext context, Drink drink, FactValue alcohol, double limit)
    {
        double known = context.Profile.Grams[(int)Science.Component.Ethanol] / drink.ServesOrOne;
        bool over = known > limit;
        if (!over && !context.Profile.Parts.Any(static p => p.IsWeighed && MayBeOfAny(p.Material))) return;
        string what = over
            ? $"The amounts that are known come to {Say.With(known, "g")}, above {Say.With(limit, "g")}"
            : $"Nothing shows that it is at most {Say.With(limit, "g")}";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"The alcohol in a serve cannot be computed ({alcohol.OpenBecause}). {what}.",
            Advice = "Write the strength of every part, take less spirit, or write how many it serves.",
            Caution = Caution,
            Evidence = [Proof.Of(Fact.Alcohol, alcohol), Proof.Of("known parts", known, "g"), Proof.Of("limit", limit, "g")],
        });
    }

    /// <summary>A spirit of which nobody knows the strength may be of any.</summary>
    private static bool MayBeOfAny(Material? material) =>
        material is { Kind: { IsSpirit: true, IsDosed: false } } && (material.Unknown & Unknowns.Strength) != 0;

    private const string Caution =
        "Alcohol harms: follow the licensing law where you serve, print the strength, and offer water and smaller serves.";

    /// <summary>Grams of ethanol that a serve may hold: what the house sets, else practice.</summary>
    internal static (double Grams, Given<Quantity> House) LimitOf(Settings settings) =>
        settings.Bar is { } bar && bar.Limits.TryGetValue("alcoholPerServe", out var house)
        && house is { IsGiven: true, Value.Dimension: Dimension.Mass }
            ? (house.Value.Base, house)
            : (Practice.Value, default);

    private static string InDrinks(Settings settings, double grams)
    {
        foreach (string code in settings.StatedJurisdictions)
        {
            if (StandardDrinkTable.Find(code) is not { } drink) continue;
            return $", {Say.Number(grams / drink.Grams, 1)} × the {drink.Name} of {Say.Number(drink.Grams, 1)} g ({drink.Country})";
        }

        return "";
    }
}
