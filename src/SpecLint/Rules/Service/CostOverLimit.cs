using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8030", "cost-over-limit", "A serve costs more to make than the house allows", Level.Note,
    Needs = [Fact.Cost], IsConsequence = true)]
internal sealed partial class CostOverLimit : DrinkRule
{
    private const int Shown = 3;

    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Settings.Bar is not { Costs.MostPerServe: { IsGiven: true } most } || context.Profiles.Prices.IsEmpty) return;
        var cost = context.Fact(Fact.Cost);
        if (Findings.Check.AtMost(cost, (double)most.Value) != Stand.Broken) return;
        string currency = FactUnits.CurrencyOf(context.Settings);
        decimal serves = Costing.Decimal(Math.Max(1e-6, drink.ServesOrOne));
        var dearest = context.Profile.Cost.Lines
            .Where(static l => l.Cost.Value > 0)
            .OrderByDescending(static l => l.Cost.Value)
            .ThenBy(static l => l.Line.Number)
            .Take(Shown)
            .Select(l => $"{l.Line.Item.Or("")} {Money.Digits(l.Cost.Value / serves)} {currency}");
        context.Report(new(Rule)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"A serve costs {context.Profile.Cost.Each.Words(currency)} to make, above the {Money.Digits(most.Value)} "
                + $"{currency} that the house allows (bar.json, costs.mostPerServe).",
            Advice = $"Most of it is {Say.List([.. dearest])}.",
            Evidence =
            [
                new Evidence(FactNames.Name(Fact.Cost), cost.Value, cost.Low, cost.High, currency),
                Proof.Of("costs.mostPerServe", (double)most.Value, currency, "bar.json"),
            ],
        });
    }
}
