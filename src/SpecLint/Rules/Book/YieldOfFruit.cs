using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9037", "yield-of-fruit", "A price with a yield that the fruit does not give", Level.Warning)]
[Limit("trimming-apart", "Apart")]
[Limit("bought-juice-yield", "Bought")]
internal sealed partial class YieldOfFruit : PricesRule
{
    public override void Check(FileContext context, PriceList list)
    {
        foreach (var price in list.Prices)
        {
            if (!price.Item.IsGiven || price.Yield is not { IsGiven: true } yield) continue;
            if (price.For is not { IsGiven: true, Value.Dimension: Dimension.Mass }) continue;
            var ids = IdsOf(context, price.Item.Value);
            if (ids.Select(JuiceYields.Find).FirstOrDefault(static y => y is not null) is { } juice)
            {
                // Juice that is bought ready is used almost whole.
                if (yield.Value.BaseHigh >= Bought.Value && !NamesFruit(context, price, juice)) continue;
                if (yield.Value.BaseLow > juice.High || yield.Value.BaseHigh < juice.Low)
                    Report(context, price, $"whole {juice.Of} gives {Between(juice.Low, juice.High)} as juice ({juice.Source})", juice.Typical);
            }
            else if (ids.Select(TrimmingTable.Find).FirstOrDefault(static t => t is not null) is { } trimming
                && yield.Value.Base < 100
                && (yield.Value.BaseLow > trimming.High + Apart.Value || yield.Value.BaseHigh < trimming.Low - Apart.Value))
            {
                Report(context, price, $"{Between(trimming.Low, trimming.High)} of it is left, {trimming.Used} ({trimming.Source})", trimming.Typical);
            }
        }
    }

    /// <summary>The item and what it is like.</summary>
    private static IEnumerable<string> IdsOf(FileContext context, string item)
    {
        yield return context.Book.Resolve(item)?.Id ?? item;
        if (context.Profiles.MaterialOf(item) is not { } material) yield break;
        foreach (var other in material.TakesAfter) yield return other.Id;
    }

    private static bool NamesFruit(FileContext context, Price price, JuiceYield juice)
    {
        if (!price.Note.IsGiven) return false;
        var words = SpokenWords.Of(price.Note.Value);
        for (int i = 0; i < words.Count; i++)
        {
            if (SpokenWords.ItemAt(context.Book, words, i).Ids.Contains(juice.Of)) return true;
        }

        return false;
    }

    private static string Between(double low, double high) => $"{Say.Number(low)} to {Say.Number(high)} %";

    private static void Report(FileContext context, Price price, string gives, double typical) => context.Report(new(Rule)
    {
        At = context.At(price.Yield.Span, $"prices[{price.Item.Value}].yield"),
        Message = $"The yield of `{price.Item.Value}` is {context.File.Source.TextOf(price.Yield.Span).Trim('"')}, and {gives}.",
        Advice = $"Weigh what one purchase gives. Until then, {Say.Number(typical)} % is typical.",
        Evidence = [Proof.Of("yield", price.Yield.Value, context.At(price.Yield.Span))],
    });
}
