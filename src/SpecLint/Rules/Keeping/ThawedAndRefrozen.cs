using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

[Rule("SL5042", "thawed-and-refrozen", "Food that needs cold was thawed and frozen again", Level.Warning, Safety = true)]
[Limit("thawed-at-most", "Thawed")]
internal sealed partial class ThawedAndRefrozen : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.Item.IsGiven) return;
        if (LongestThaw(lot) is { } thaw)
        {
            if (IsPerishable(context, lot))
                Report(context, lot, thaw.Days, context.At(thaw.Again.Span, Lots.PathOf(lot, "frozen")), thaw.Words);
        }
        else if (lot.Frozen.Count < 2 && Said(lot) is { } said && IsPerishable(context, lot))
        {
            Report(context, lot, double.NaN, context.At(lot.Note.Span, Lots.PathOf(lot, "note")), said);
        }
    }

    /// <summary>The longest time between two in the freezer that is over the limit, or that nobody wrote down.</summary>
    private static (double Days, FrozenTime Again, string Words)? LongestThaw(Lot lot)
    {
        (double Days, FrozenTime Again, string Words)? longest = null;
        FrozenTime? before = null;
        foreach (var time in lot.Frozen.OrderBy(static t => t.From))
        {
            if (before is { To: { } to })
            {
                double days = time.From.DaysSince(to);
                if (days > Thawed.Value && !(longest?.Days >= days)) longest = (days, time, $"thawed on {to} and frozen again on {time.From}");
            }
            else if (before is not null)
            {
                longest ??= (double.NaN, time, $"frozen on {before.From} and again on {time.From}");
            }

            before = time;
        }

        return longest;
    }

    private static string? Said(Lot lot)
    {
        if (!lot.Note.IsGiven) return null;
        string note = lot.Note.Value;
        int from = Phrases.First(note, 0, note.Length, TextWords.Refrozen, out int end);
        return from > note.Length || Phrases.IsDenied(note, from, end) ? null : $"frozen again, as its note says (\"{note.Substring(from, end - from)}\")";
    }

    /// <summary>Whether it needs cold, or may: thawing spoils no spirit, salt or syrup.</summary>
    private static bool IsPerishable(FileContext context, Lot lot) =>
        LotLife.Of(lot, context.Profiles) is { NeedsCold: true } or { IsPerishable: true, Prep: null };

    private static void Report(FileContext context, Lot lot, double days, Spot at, string happened)
    {
        bool known = !double.IsNaN(days);
        context.Report(new(Rule)
        {
            Answer = known ? Answer.Broken : Answer.NotShown,
            At = at,
            Key = Lots.KeyOf(lot),
            Message = $"The lot of `{lot.Item.Value}` was {happened}"
                + $"{(known ? $", after {Say.Count((int)days, "day")}" : ", and nothing says how long it was thawed")}. Thawed food goes back "
                + $"into the freezer only from the fridge and within {Say.Number(Thawed.Value)} day, or once it is cooked ({Thawed.Source}). "
                + "What grew while it was thawed is still there, and its days do not start again.",
            Advice = "Discard it. Freeze the next lot in the sizes that one service needs, and thaw only what is used.",
            Caution = KeepingWords.Caution,
            Evidence = [known ? Proof.Of("thawed", days, "d") : Proof.Of("frozen", happened), Proof.Of(Thawed)],
        });
    }
}
