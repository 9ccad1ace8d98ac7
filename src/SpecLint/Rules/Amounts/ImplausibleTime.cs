using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2034", "implausible-time", "A time that no step takes: minutes for seconds, or hours for minutes", Level.Warning, IsCause = true)]
[Limit("opened-long-over", "LifeOver")]
internal sealed partial class ImplausibleTime : PlausibilityRule
{
    private const double Minute = 60, Hour = 3600, Day = 86400;

    private static readonly PlausibleRange Kept = PlausibleTable.Of("keep-time");
    private static readonly (string Unit, double Factor, double Offset)[] Units =
        [("s", 1, 0), ("min", Minute, 0), ("h", Hour, 0), ("d", Day, 0)];

    protected override Dimension Dimension => Dimension.Duration;

    protected override (string Unit, double Factor, double Offset)[] Readings => Units;

    protected override string BaseUnit => "s";

    /// <summary>Whether the time of a step is one that it cannot take; another rule then has nothing to add.</summary>
    internal static bool Is(RecipeContext context, Step step) =>
        step.For is { IsGiven: true, Value: { Dimension: Dimension.Duration } time }
        && PlausibleTable.Of(PlausibleOf.Duration, step.Verb, context.Recipe is Drink)?.Excludes(time.BaseLow, time.BaseHigh) == true;

    public override void Check(FileContext context)
    {
        if (context is RecipeContext recipe)
        {
            foreach (var step in recipe.Recipe.Method)
            {
                if (!step.For.IsGiven) continue;
                One(recipe, step, step.For, PlausibleTable.Of(PlausibleOf.Duration, step.Verb, recipe.Recipe is Drink), "for", "lasts");
            }
        }

        if (context.File is Ingredient ingredient) LifeBeyondItsLike(context, ingredient);
        if (context.File is Prep { Keep: { } keep }) One(context, keep.For, Kept, "keep.for", "It is kept for");
    }

    /// <summary>An opened life of many times that of what it is like: months for days.</summary>
    private static void LifeBeyondItsLike(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.Like.IsGiven || BuiltInCatalogue.Find(ingredient.Like.Value) is not { } like) return;
        if (!ingredient.Values.TryGetValue("life.opened", out var own) || !like.Values.TryGetValue("life.opened", out var usual)) return;
        if (own.Span.Length == 0 || !(own.Low > usual.High * LifeOver.Value)) return;
        context.Report(new(Rule)
        {
            At = context.At(own.Span, "life.opened"),
            Message = $"Once opened it is said to keep {Say.Number(own.Typical / Day, 0)} d, and {like.Id} keeps "
                + $"{Say.Number(usual.Low / Day, 0)}–{Say.Number(usual.High / Day, 0)} d ({usual.Source}): more than "
                + $"{Say.Number(LifeOver.Value)} times as long.",
            Advice = "Check the unit: days or weeks may be meant. The maker's label takes precedence.",
            Evidence = [Proof.Of("life once opened", own.Typical / Day, "d"), Proof.Of(LifeOver)],
        });
    }

    protected override string Words(double value) =>
        value < Minute ? $"{Say.Number(value)} s"
        : value < Hour ? $"{Say.Number(value / Minute)} min"
        : value < 2 * Day ? $"{Say.Number(value / Hour)} h"
        : $"{Say.Number(value / Day)} d";
}
