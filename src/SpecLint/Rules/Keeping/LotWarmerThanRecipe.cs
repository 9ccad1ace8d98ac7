using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5036", "lot-warmer-than-recipe", "A lot stands warmer than its recipe keeps it", Level.Warning, Safety = true,
    Needs = [Fact.Ph, Fact.WaterActivity])]
[Limit("freezer-temperature", "Freezer")]
internal sealed partial class LotWarmerThanRecipe : LotRule
{
    protected override void Check(FileContext context, Lot lot)
    {
        var life = LotLife.Of(lot, context.Profiles);
        if (life.Prep is not { } prep || !life.IsWarmerThanAsked) return;

        // Too warm for any food that needs cold is a finding of its own, but for a ferment, which stands warm.
        if (life.NeedsCold && !SpecialCases.IsFerment(prep) && StoredTooWarm.IsTooWarm(life.Celsius, context.Settings)) return;
        bool thawed = life.IsThawed && life.IsPerishable;
        string so = thawed
            ? "it has thawed, and its days count from the day made, except the times under `frozen`"
            : "the time in the recipe does not apply there";
        context.Report(new(Rule)
        {
            At = context.At(lot.At.Span, Lots.PathOf(lot, "at")),
            Key = Lots.KeyOf(lot),
            Message = $"The lot of `{lot.Item.Value}` stands at {KeepingWords.Degrees(life.Celsius)}, but its recipe keeps it at "
                + $"{KeepingWords.Degrees(life.AskedCelsius)}: {so}.",
            Advice = thawed
                ? $"Do not freeze it again: use it by {life.LastByRules?.Day.ToString() ?? "the end of the day"}, or discard it. Write "
                    + "under `frozen` when it was in the freezer."
                : "Bring it to the temperature of its recipe, or write in the recipe how long it keeps where it stands.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("storage temperature", life.Celsius, "Cel"), Proof.Of("keep.at", life.AskedCelsius, "Cel"),
                Proof.Of(Freezer)],
            Related = [new RelatedPlace(
                prep.Keep is { } keep ? prep.At(keep.At.IsGiven ? keep.At.Span : keep.Span) : prep.Head, "how its recipe keeps it")],
        });
    }
}
