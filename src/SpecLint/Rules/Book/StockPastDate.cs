using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Book;

[Rule("SL9015", "stock-past-date", "A lot in stock is past its day", Level.Error, Safety = true)]
internal sealed partial class StockPastDate : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.Item.IsGiven || LotLife.Of(lot, context.Profiles) is not { Last: { } last } life || last.Day >= context.On) return;
        bool labelled = lot.UseBy.IsGiven && lot.UseBy.Value < context.On;

        // A bought thing past its life, its label not, has a rule of its own in the family of keeping.
        if (!labelled && life.Prep is null && last.Kind != LotEndKind.Source) return;
        string days = Say.Count(context.On.DaysSince(last.Day), "day");
        var users = context.Book.UsersOf(lot.Item.Value);
        var place = context.At(labelled ? lot.UseBy.Span : lot.Made.IsGiven ? lot.Made.Span : lot.Item.Span);
        string taken = users.Count == 0 ? "" : $"; {Say.Count(users.Count, "recipe")} {(users.Count == 1 ? "takes" : "take")} from it";
        bool taste = !labelled && last.Kind == LotEndKind.Trade && !life.IsPerishable;
        context.Report(new(Rule)
        {
            AskedLevel = taste ? Level.Note : null,
            At = new(place, $"lots[{lot.Item.Value}].{(labelled ? "useBy" : "made")}"),
            Key = lot.LotCode.Or(lot.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            Message = $"The last day of the lot of `{lot.Item.Value}` was {last.Day} ({last.Why}), {days} before {context.On}{taken}.",
            Advice = taste
                ? "Taste it against a fresh batch, and make a fresh batch if it has faded."
                : "Discard it and make a fresh batch. Re-dating an old lot does not extend its life.",
            Caution = taste ? null : "A lot past its use-by day must not be served. Follow the local food code.",
            Evidence = [Proof.Of("last day", last.Day.ToString(), place), Proof.Of("date of the run", context.On.ToString())],
            Related = [.. users.Take(5).Select(u => new RelatedPlace(u.Head, "takes from it"))],
        });
    }
}
