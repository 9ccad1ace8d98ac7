using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5037", "lot-source-unfit", "A lot was made from a lot that was past its last day or that no stock file lists", Level.Error,
    Safety = true, Needs = [Fact.Life])]
internal sealed partial class LotSourceUnfit : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (lot.MadeFrom.Count == 0) return;
        var life = LotLife.Of(lot, context.Profiles);
        string made = $"The lot of `{lot.Item.Or("?")}` was made";
        foreach (var code in life.UnknownSources)
        {
            Report(context, lot, code, Answer.NotShown, [],
                $"{made} from lot `{code.Value}`, which no stock file lists, so its last day and contents are not known.",
                "List that lot with the day it was made or opened, or correct its code.");
        }

        foreach (var (code, of, source) in life.Sources)
        {
            string from = $"from lot `{code.Value}` of `{source.Lot.Item.Or("?")}`";
            var last = source is { IsPerishable: true, Last: { } end } ? end : (LotEnd?)null;
            RelatedPlace[] related = [new(of.At(source.Lot.Span), "the lot that it was made from")];
            if (life.From is { } day && source.From is { } later && later > day)
                Report(context, lot, code, Answer.NotShown, related,
                    $"{made} on {day} {from}, which is of {later}: one of the days or the code is wrong, and a recall would follow the "
                        + "wrong lot.",
                    "Find out which lot went in, and correct the day or the code.");
            else if (life.From is null && last?.Day < context.On)
                Report(context, lot, code, Answer.NotShown, related,
                    $"{made} {from}, whose last day was {last.Value.Day} ({last.Value.Why}), and nothing says on which day it was "
                        + "made. A mixture takes the date of its earliest part (Food Code 3-501.17).",
                    "Discard it, or write the day on which it was made.");
            else if (last?.Day < life.From)
                Report(context, lot, code, Answer.Broken, related,
                    $"{made} on {life.From} {from}, whose last day was {last.Value.Day} ({last.Value.Why}). A mixture takes the date "
                        + "of its earliest part (Food Code 3-501.17).",
                    "Discard it.");
        }
    }

    private static void Report(
        FileContext context, Lot lot, Reading.Given<string> code, Answer answer, RelatedPlace[] related, string message, string advice) =>
        context.Report(new(Rule)
        {
            Answer = answer,
            AskedLevel = answer == Answer.NotShown ? Level.Warning : null,
            At = context.At(code.Span, Lots.PathOf(lot, $"madeFrom[{code.Value}]")),
            Key = Lots.KeyOf(lot),
            Message = message,
            Advice = advice,
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("made from", code.Value)],
            Related = related,
        });
}
