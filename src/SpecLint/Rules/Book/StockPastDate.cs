using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

/// <summary>SL9015: a lot past its use-by day.</summary>
internal sealed class StockPastDate : StockRule
{
    private static readonly RuleInfo Rule = new("SL9015", "stock-past-date", "A lot in stock is past its day", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context, Stock stock)
    {
        foreach (var lot in stock.Lots)
        {
            if (!lot.Item.IsGiven || !lot.UseBy.IsGiven || lot.UseBy.Value >= context.On) continue;
            int days = context.On.DaysSince(lot.UseBy.Value);
            var users = context.Book.UsersOf(lot.Item.Value);
            context.Report(new Finding(Rule)
            {
                Place = context.At(lot.UseBy.Span),
                Subject = context.Id,
                Path = $"lots[{lot.Item.Value}].useBy",
                Key = lot.LotCode.Or(lot.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                Message = $"The lot of `{lot.Item.Value}` was to be used by {lot.UseBy.Value}, {Say.Count(days, "day")} before {context.On}{(users.Count > 0 ? $"; {Say.Count(users.Count, "recipe")} {(users.Count == 1 ? "takes" : "take")} from it" : "")}.",
                Advice = "Throw it away and make it anew; a new date on an old lot is none.",
                Caution = "What is past its use-by day must not be served: follow the local food code.",
                Evidence = [Proof.Of("use by", lot.UseBy.Value.ToString(), context.At(lot.UseBy.Span)), Proof.Of("date of the run", context.On.ToString())],
                Related = [.. users.Take(5).Select(u => new RelatedPlace(u.Head, "takes from it"))],
            });
        }
    }
}
