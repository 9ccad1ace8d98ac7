using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2034", "implausible-time", "A time that no step takes: minutes for seconds, or hours for minutes", Level.Warning, IsCause = true)]
internal sealed partial class ImplausibleTime : PlausibilityRule
{
    private const double Minute = 60, Hour = 3600, Day = 86400;

    private static readonly PlausibleRange Kept = PlausibleTable.Of("keep-time");
    private static readonly (string Unit, double Factor, double Offset)[] Units = [("s", 1, 0), ("min", Minute, 0), ("h", Hour, 0), ("d", Day, 0)];

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
                if (step.For.IsGiven) One(recipe, step, step.For, PlausibleTable.Of(PlausibleOf.Duration, step.Verb, recipe.Recipe is Drink), "for", "lasts");
            }
        }

        if (context.File is Prep { Keep: { } keep }) One(context, keep.For, Kept, "keep.for", "It is kept for");
    }

    protected override string Words(double value) =>
        value < Minute ? $"{Say.Number(value)} s"
        : value < Hour ? $"{Say.Number(value / Minute)} min"
        : value < 2 * Day ? $"{Say.Number(value / Hour)} h"
        : $"{Say.Number(value / Day)} d";
}
