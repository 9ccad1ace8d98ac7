using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9027", "price-too-old", "A price older than the house allows", Level.Note)]
internal sealed partial class PriceTooOld : PricesRule
{
    private const double SecondsPerDay = 86400;

    public override void Check(FileContext context, PriceList list)
    {
        if (context.Settings.Bar is not { Costs.PricesHold: { IsGiven: true } hold }) return;
        double days = hold.Value.Base / SecondsPerDay;
        List<Price> old = [], undated = [];
        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || context.Profiles.Prices.Find(price.Item.Value)?.Source != price) continue;
            if (list.DayOf(price) is not { IsGiven: true } day) undated.Add(price);
            else if (context.On.DayNumber - day.Value.DayNumber > days) old.Add(price);
        }

        string over = $"more than the {Say.Number(days, 0)} days that a price holds in this house (bar.json, costs.pricesHold)";
        Report(context, old, "old", p => $"is of {list.DayOf(p).Value}, {over}");
        Report(context, undated, "undated", static _ => "has no day, so it cannot be told whether it still holds");
    }

    /// <summary>One finding for all prices of a list: whoever brings it up to date does so once.</summary>
    private static void Report(FileContext context, List<Price> prices, string key, Func<Price, string> what)
    {
        if (prices.Count == 0) return;
        var first = prices[0];
        string others = prices.Count > 1 ? $" {prices.Count - 1} more of the list {(key == "old" ? "are too old" : "have none")}." : "";
        context.Report(new(Rule)
        {
            At = context.At(first.Item.Span, $"prices[{first.Item.Value}]"),
            Key = key,
            Message = $"The price of `{first.Item.Value}` {what(first)}.{others}",
            Advice = "Bring the list up to date: costs are worked out with it as it is.",
            Evidence = [Proof.Of("prices", prices.Count, "1")],
        });
    }
}
