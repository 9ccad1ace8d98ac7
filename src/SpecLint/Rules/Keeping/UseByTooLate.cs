using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5008: a use-by date later than the rules of keeping allow.</summary>
internal sealed class UseByTooLate : StockRule
{
    private static readonly Limit Mark = Limits.Of("food-code-date-mark");

    private static readonly RuleInfo Rule = new("SL5008", "use-by-too-late", "A use-by date is later than the rules of keeping allow", Level.Error)
    {
        Safety = true,
        Needs = [Fact.Life],
        Limits = [Mark.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context, Stock stock)
    {
        foreach (var lot in stock.Lots)
        {
            if (!lot.UseBy.IsGiven || !(lot.Made.IsGiven || lot.Opened.IsGiven)) continue;
            if (Lots.PrepOf(context, lot) is { } prep)
            {
                if (!lot.Made.IsGiven) continue;
                double safety = Lots.NeedsCold(context, lot, prep) ? Math.Min(Mark.Value, context.Profiles.Of(prep).KeepingTerms!.Safety.Days) : double.PositiveInfinity;
                double stated = Storage.Days(prep);
                if (safety <= stated || double.IsNaN(stated))
                    Hold(context, lot, lot.Made.Value, safety, null, safety == Mark.Value ? $"food that needs cold keeps {KeepingWords.Days(safety)}, the day it is made counted ({Mark.Source})" : $"a mixture takes the date of its earliest part, here {KeepingWords.Days(safety)} (Food Code 3-501.17)", null);
                else
                    Hold(context, lot, lot.Made.Value, stated, Level.Warning, $"its recipe keeps it {KeepingWords.Days(stated)}, the day it is made counted", new RelatedPlace(prep.At(prep.Keep!.For.Span), "how long the recipe keeps it"));
            }
            else if (lot.Opened.IsGiven && Lots.PerishableOf(context, lot) is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant)
            {
                Hold(context, lot, lot.Opened.Value, Mark.Value, Mark.AppliesIn(context.Settings) ? null : Level.Warning, $"opened food that needs cold keeps {KeepingWords.Days(Mark.Value)}, the day it is opened counted ({Mark.Source})", null);
            }
        }
    }

    private static void Hold(FileContext context, Lot lot, CalendarDate from, double days, Level? level, string because, RelatedPlace? related)
    {
        if (double.IsInfinity(days) || double.IsNaN(days)) return;
        int frozen = Lots.FrozenDays(lot, lot.UseBy.Value);

        // The first day is day 1: seven days from the 1st end on the 7th.
        var latest = from.AddDays(Math.Max(0, (int)Math.Ceiling(days) - 1) + frozen);
        if (lot.UseBy.Value <= latest) return;
        var place = context.At(lot.UseBy.Span);
        string pause = lot.Frozen.Count == 0 ? "" : $", {Say.Count(frozen, "day")} in the freezer left out, which stop the clock and do not set it back";
        context.Report(new Finding(Rule)
        {
            AskedLevel = level,
            Place = place,
            Subject = context.Id,
            Path = Lots.PathOf(lot, "useBy"),
            Key = Lots.KeyOf(lot),
            Message = $"The use-by of `{lot.Item.Value}` is {lot.UseBy.Value}, but {because}: from {from} that is {latest}{pause}.",
            Advice = $"Mark it {latest}; throw away what is left after that day.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("from", from.ToString()), Proof.Of("days", days, "d"), Proof.Of("days frozen", frozen, "d"), Proof.Of("latest", latest.ToString())],
            Related = related is null ? [] : [related],
            Corrections = [new Correction(CorrectionGrade.Proposed, $"Mark it {latest}.", [new TextEdit(place, $"\"{latest}\"")]) { KeepsTheThing = true }],
        });
    }
}
