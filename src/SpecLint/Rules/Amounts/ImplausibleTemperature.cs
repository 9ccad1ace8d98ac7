using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2033", "implausible-temperature", "A temperature that no bar works at, perhaps °F for °C", Level.Warning, IsCause = true)]
internal sealed partial class ImplausibleTemperature : PlausibilityRule
{
    private static readonly PlausibleRange Kept = PlausibleTable.Of("keep-temperature");
    private static readonly PlausibleRange HeldHot = PlausibleTable.Of("hot-hold");
    private static readonly PlausibleRange HeldHotFor = PlausibleTable.Of("hot-hold-time");
    private static readonly PlausibleRange Fridge = PlausibleTable.Of("fridge-temperature");
    private static readonly PlausibleRange Freezer = PlausibleTable.Of("freezer-temperature-range");
    private static readonly PlausibleRange Served = PlausibleTable.Of("served-temperature");
    private static readonly (string Unit, double Factor, double Offset)[] Scales = [("°F", 5.0 / 9, -160.0 / 9), ("°C", 1, 0)];

    protected override Dimension Dimension => Dimension.Temperature;

    protected override (string Unit, double Factor, double Offset)[] Readings => Scales;

    protected override string BaseUnit => "Cel";

    public override void Check(FileContext context)
    {
        if (context is RecipeContext recipe)
        {
            foreach (var step in recipe.Recipe.Method)
            {
                if (!step.At.IsGiven && !step.To.IsGiven) continue;
                if (step.At.IsGiven) One(recipe, step, step.At, Range(recipe, step, reaches: false), "at", "is held at");
                if (step.To.IsGiven) One(recipe, step, step.To, Range(recipe, step, reaches: true), "to", "goes to");
            }
        }

        if (context.File is Prep { Keep: { } keep } prep)
        {
            if (prep.Family.OrNone().IsKeptInFreezer && keep.At.IsGiven && Kept.Holds(keep.At.Value.Base))
                One(context, keep.At, Freezer, "keep.at", "It is a batch for the freezer, and kept at");
            else Keep(context, keep.At, keep.For, "keep.at", "It is kept at");
        }

        if (context.File is Recipe { AsMeasured: { } measured })
            One(context, measured.Temperature, Served, "measured.temperature", "It was measured at");
        if (context.File is Stock stock)
        {
            foreach (var lot in stock.Lots)
                Keep(context, lot.At, default, $"lots[{lot.Item.Or($"{lot.Number}")}].at", "The lot is kept at");
        }

        if (context.File is Bar bar)
        {
            One(context, bar.Fridge, Fridge, "tools.fridge", "The refrigerator is at");
            One(context, bar.Freezer, Freezer, "tools.freezer", "The freezer is at");
        }
    }

    private static PlausibleRange? Range(RecipeContext context, Step step, bool reaches) =>
        PlausibleTable.Of(PlausibleOf.Temperature, step.Verb, context.Recipe is Drink, StepMedium.IsDry(context, step, reaches));

    protected override string Words(double value) => $"{Say.Number(value, 0)} °C";

    /// <summary>What is held hot for service is kept over the cold and warm range, and is no slip.</summary>
    private void Keep(FileContext context, Given<Quantity> at, Given<Quantity> time, string path, string what)
    {
        // What is held hot for longer than a day is not for service.
        if (at.IsGiven && HeldHot.Holds(at.Value.Base) && !(time.IsGiven && time.Value.BaseLow > HeldHotFor.High)) return;
        One(context, at, Kept, path, what);
    }
}
