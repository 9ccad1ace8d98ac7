using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Balance;

/// <summary>SL3022: shaken or stirred for a time far from usual.</summary>
internal sealed class TimeOnIce : DrinkRule
{
    private static readonly Limit ShakeLeast = Limits.Of("shake-time-least");
    private static readonly Limit ShakeMost = Limits.Of("shake-time-most");
    private static readonly Limit StirLeast = Limits.Of("stir-time-least");
    private static readonly Limit StirMost = Limits.Of("stir-time-most");

    private static readonly RuleInfo Rule = new("SL3022", "time-on-ice-unusual", "Shaken or stirred for a time far from usual", Level.Note)
    {
        Limits = [ShakeLeast.Id, ShakeMost.Id, StirLeast.Id, StirMost.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.TechniqueStep is not { For: { IsGiven: true, Value.Dimension: Dimension.Duration } time } step) return;

        // A time that no shake takes is a slip, and told as one.
        if (Amounts.ImplausibleTime.Is(context, step)) return;
        var (least, most) = context.Profile.Technique switch
        {
            // A whip on a few pebbles is short by its name.
            TechniqueKind.Shaken when !step.Verb.IsBrief => (ShakeLeast, ShakeMost),
            TechniqueKind.Stirred => (StirLeast, StirMost),
            _ => (null, null),
        };
        if (least is null || most is null || (time.Value.BaseHigh >= least.Value && time.Value.BaseLow <= most.Value)) return;
        bool over = time.Value.BaseLow > most.Value;
        var limit = over ? most : least;
        context.Report(new Finding(Rule)
        {
            Place = context.At(time.Span),
            Subject = context.Id,
            Path = context.PathOf(step) + ".for",
            Message = $"It is {step.Verb.Past} for {Say.Number(time.Value.Base, 0)} s, {(over ? "longer" : "shorter")} than the usual {Say.Number(limit.Value, 0)} s {(over ? "at most" : "at least")} ({limit.Condition}; {limit.Source}).",
            Advice = over
                ? "Write the time that the bar uses. Longer only adds water."
                : "Write the time that the bar uses. As written, the drink is warmer and stronger than its kind.",
            Evidence = [Proof.Of("time", time.Value, context.At(time.Span)), Proof.Of(limit)],
        });
    }
}
