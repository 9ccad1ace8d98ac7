using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5019", "perishable-base-kept-long", "A base of dairy, egg, nut, coconut or chickpea water is kept over five days", Level.Warning,
    Safety = true, IsConsequence = true, Needs = [Fact.Ph, Fact.WaterActivity, Fact.Abv])]
[Limit("dairy-preparation-days", "Practice")]
[Limit("food-code-date-mark", "Mark")]
internal sealed partial class PerishableBaseKeptLong : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        double days = Storage.Days(prep);
        var state = context.Profile.Keeping!;
        if (double.IsPositiveInfinity(KeepingLife.DaysOfBase(prep, context.Profile, context.Settings))) return;
        if (days > context.Profile.KeepingTerms!.Least.Days && !IsHeldHot(context, prep)) return;
        context.Report(new(Rule)
        {
            AllowedDays = Practice.Value,
            At = new(KeepingWords.At(context, prep), "keep.for"),
            Message = $"It is kept {KeepingWords.Days(days)} with {KeepingWords.NameOf(state.Part)} in it. Bars use such a base within "
                + $"{KeepingWords.Days(Practice.Value)} ({Practice.Source}), and the legal limit is "
                + $"{KeepingWords.Days(Mark.Value)} ({Mark.Source}).",
            Advice = $"Make less, and keep it at most {KeepingWords.Days(Practice.Value)}.",
            Caution = KeepingWords.Caution,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of("keep.for", days, "d"), Proof.Of(Practice)],
        });
    }

    /// <summary>Whether it is held hot: no date mark of cold food speaks of it, however long it stands.</summary>
    private static bool IsHeldHot(RecipeContext context, Prep prep) =>
        Storage.Celsius(prep, context.Settings) >= StoredTooWarm.HotLimitOf(context.Settings).Value;
}
