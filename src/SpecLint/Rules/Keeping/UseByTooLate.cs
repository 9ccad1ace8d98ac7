using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5008", "use-by-too-late", "A use-by date is later than the rules of keeping allow", Level.Error, Safety = true, Needs = [Fact.Life])]
[Limit("food-code-date-mark", "Mark")]
internal sealed partial class UseByTooLate : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        if (!lot.UseBy.IsGiven) return;
        var life = LotLife.Of(lot, context.Profiles);

        // Whenever it was made, it was no later than today.
        bool undated = life.From is null && (life.Prep is not null || life.IsFresh) && lot.Frozen.Count == 0;
        if (undated) life = LotLife.OfMadeToday(lot, context.Profiles);
        if (life.LastByRules is not { } latest || lot.UseBy.Value <= latest.Day) return;
        var law = life.LastOf(LotEndKind.Law, LotEndKind.Source);
        bool broken = law is { } end && lot.UseBy.Value > end.Day;

        // What the recipe states beyond its quality has a finding of its own, on the recipe.
        // One that is past already has one too, on the day opened.
        if (!broken
            && latest.Kind == LotEndKind.Trade
            && (!life.IsPerishable || life.LastOf(LotEndKind.Recipe) is not null || latest.Day < context.On))
            return;
        bool isLaw = broken && (life.Prep is not null || Mark.AppliesIn(context.Settings));
        Report(context, lot, life, latest, undated, isLaw ? null : Level.Warning);
    }

    private static void Report(FileContext context, Lot lot, LotLife life, LotEnd latest, bool undated, Level? level)
    {
        var place = context.At(lot.UseBy.Span);
        string from = undated ? $"even if it was made on {context.On}, the day of this check"
            : life.From is { } day ? $"counting from {day}, that day included"
            : "with no day made given";
        string pause = lot.Frozen.Count == 0 ? "" : ", without days in the freezer, which stop the clock but do not reset it";
        context.Report(new(Rule)
        {
            AskedLevel = level,
            Answer = undated && life.Prep is null ? Answer.NotShown : Answer.Broken,
            AllowedDays = undated || double.IsNaN(latest.Days) ? null : latest.Days,
            At = new(place, Lots.PathOf(lot, "useBy")),
            Key = Lots.KeyOf(lot),
            Message = $"The use-by of `{lot.Item.Value}` is {lot.UseBy.Value}, but it keeps until {latest.Day}, {from}{pause}. The day is "
                + $"set by {latest.Why}.",
            Advice = undated && life.Prep is null
                ? "Write the day it was made or opened. If the maker packed it to keep until then, write in its own file how long it keeps "
                    + "once opened."
                : undated ? "Find out on which day it was made and mark its use-by from that day, or discard it."
                : $"Mark it {latest.Day}, and discard what is left after that day.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("from", undated ? "not given" : life.From?.ToString() ?? "not given"), Proof.Of("days", latest.Days, "d"),
                Proof.Of("latest", latest.Day.ToString()), Proof.Of("set by", latest.Why)],
            Related = life.Prep is { Keep: { For.IsGiven: true } keep } prep && latest.Kind == LotEndKind.Recipe
                ? [new RelatedPlace(prep.At(keep.For.Span), "how long the recipe keeps it")]
                : [],
            Corrections = undated ? [] : [new Correction(
                CorrectionGrade.Proposed, $"Mark it {latest.Day}.", [new TextEdit(place, $"\"{latest.Day}\"")]) { KeepsTheThing = true }],
        });
    }
}
