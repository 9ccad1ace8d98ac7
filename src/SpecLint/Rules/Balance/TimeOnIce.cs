using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

[Rule("SL3022", "time-on-ice-unusual", "Shaken or stirred for a time far from usual", Level.Note)]
[Limit("shake-time-least", "ShakeLeast")]
[Limit("shake-time-most", "ShakeMost")]
[Limit("shake-time-foam", "ShakeFoam")]
[Limit("stir-time-least", "StirLeast")]
[Limit("stir-time-most", "StirMost")]
internal sealed partial class TimeOnIce : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.TechniqueStep is not { For: { IsGiven: true, Value.Dimension: Dimension.Duration } time } step) return;

        // A time that no shake takes is a slip, and told as one.
        if (Amounts.ImplausibleTime.Is(context, step)) return;
        var (least, most) = context.Profile.Technique switch
        {
            // A whip on a few pebbles is short by its name; egg and cream together are shaken until they stand.
            TechniqueKind.Shaken when !step.Verb.IsBrief => (ShakeLeast, IsFoam(context.Profile) ? ShakeFoam : ShakeMost),
            TechniqueKind.Stirred => (StirLeast, StirMost),
            _ => (null, null),
        };
        if (least is null || most is null || (time.Value.BaseHigh >= least.Value && time.Value.BaseLow <= most.Value)) return;
        bool over = time.Value.BaseLow > most.Value;
        var limit = over ? most : least;
        context.Report(new(Rule)
        {
            At = context.At(time.Span, context.PathOf(step) + ".for"),
            Message = $"It is {step.Verb.Past} for {Say.Number(time.Value.Base, 0)} s, {(over ? "longer" : "shorter")} than the usual "
                + $"{Say.Number(limit.Value, 0)} s {(over ? "at most" : "at least")} ({limit.Condition}; {limit.Source}).",
            Advice = over
                ? "Write the time that the bar uses. Longer only adds water."
                : "Write the time that the bar uses. As written, the drink is warmer and stronger than its kind.",
            Evidence = [Proof.Of("time", time.Value, context.At(time.Span)), Proof.Of(limit)],
        });
    }

    private static bool IsFoam(RecipeProfile profile) =>
        Builds.First(profile, static m => m is { Kind.IsEgg: true }) is not null
        && Builds.First(profile, static m => m is { Kind.IsDairy: true }) is not null;
}
