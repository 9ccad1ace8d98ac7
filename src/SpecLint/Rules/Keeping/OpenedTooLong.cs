using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule("SL5010", "opened-too-long", "A bought ingredient has been open for longer than it keeps", Level.Warning, Safety = true)]
[Limit("food-code-date-mark", "Mark")]
[Limit("opened-long-over", "Long")]
internal sealed partial class OpenedTooLong : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        // What the bar squeezes or cuts itself has a day made: its life begins there. Past its day is a finding of its own.
        var from = lot.Opened.IsGiven ? lot.Opened : lot.Made;
        if (!from.IsGiven
            || !lot.Item.IsGiven
            || from.Value > context.On
            || (lot.UseBy.IsGiven && lot.UseBy.Value < context.On))
            return;
        var life = LotLife.Of(lot, context.Profiles);
        if (life.Prep is not null || (life.LastByRules ?? life.Taste) is not { } last || last.Day >= context.On) return;
        bool controlled = life.LastOf(LotEndKind.Law) is { } law && law.Day < context.On;
        int open = context.On.DaysSince(from.Value) + 1;
        string pause = lot.Frozen.Count == 0 ? "" : " (days in the freezer not counted)";
        context.Report(new(Rule)
        {
            AskedLevel = controlled
                ? (KeptPastDateMark.IsYardstick(context.Settings, open) ? Level.Warning : Level.Error)
                : !life.IsPerishable && open < last.Days * Long.Value ? Level.Note : null,
            At = context.At(from.Span, Lots.PathOf(lot, lot.Opened.IsGiven ? "opened" : "made")),
            Key = Lots.KeyOf(lot),
            Message = $"`{lot.Item.Value}` was {(lot.Opened.IsGiven ? "opened" : "made")} on {from.Value}, "
                + $"{Say.Count(open, "day")} ago counting that day; its last day was {last.Day}{pause}: {last.Why}.",
            Advice = !life.IsPerishable
                ? "Taste it against a fresh bottle, and open a new one if it has faded."
                : lot.Opened.IsGiven
                    ? "Discard it and open a new one. The maker's label takes precedence over this figure."
                    : "Discard it and make a fresh batch.",
            Caution = !life.IsPerishable ? null : KeepingWords.Caution,
            Evidence = [Proof.Of("days open", open, "d"), Proof.Of("last day", last.Day.ToString()),
                Proof.Of("life", last.Days, "d", last.Why)],
        });
    }
}
