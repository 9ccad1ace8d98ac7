using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2033: a temperature that no bar works at, °F typed as °C the commonest.</summary>
internal sealed class ImplausibleTemperature : PlausibilityRule
{
    private static readonly PlausibleRange Kept = PlausibleTable.Of("keep-temperature");
    private static readonly PlausibleRange HeldHot = PlausibleTable.Of("hot-hold");
    private static readonly PlausibleRange Fridge = PlausibleTable.Of("fridge-temperature");
    private static readonly PlausibleRange Freezer = PlausibleTable.Of("freezer-temperature-range");
    private static readonly PlausibleRange Served = PlausibleTable.Of("served-temperature");
    private static readonly (string Unit, double Factor, double Offset)[] Scales = [("°F", 5.0 / 9, -160.0 / 9), ("°C", 1, 0)];

    private static readonly RuleInfo Rule = new("SL2033", "implausible-temperature", "A temperature that no bar works at, perhaps °F for °C", Level.Warning) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Dimension Dimension => Dimension.Temperature;

    /// <inheritdoc/>
    protected override (string Unit, double Factor, double Offset)[] Readings => Scales;

    /// <inheritdoc/>
    protected override string BaseUnit => "Cel";

    /// <inheritdoc/>
    public override void Check(FileContext context)
    {
        foreach (var (recipe, step, path) in Steps(context))
        {
            if (!step.At.IsGiven && !step.To.IsGiven) continue;
            var range = PlausibleTable.Of(PlausibleOf.Temperature, step.Verb, recipe.Recipe is Drink, StepMedium.IsDry(recipe, step));
            One(context, step.At, range, path + ".at", $"{Named(step)} is held at");
            One(context, step.To, range, path + ".to", $"{Named(step)} goes to");
        }

        if (context.File is Prep { Keep: { } keep }) Keep(context, keep.At, "keep.at", "It is kept at");
        if (context.File is Recipe { AsMeasured: { } measured }) One(context, measured.Temperature, Served, "measured.temperature", "It was measured at");
        if (context.File is Stock stock)
        {
            foreach (var lot in stock.Lots) Keep(context, lot.At, $"lots[{lot.Item.Or($"{lot.Number}")}].at", "The lot is kept at");
        }

        if (context.File is Bar bar)
        {
            One(context, bar.Fridge, Fridge, "tools.fridge", "The refrigerator is at");
            One(context, bar.Freezer, Freezer, "tools.freezer", "The freezer is at");
        }
    }

    /// <inheritdoc/>
    protected override string Words(double value) => $"{Say.Number(value, 0)} °C";

    /// <summary>What is held hot for service is kept over the cold and warm range, and is no slip.</summary>
    private void Keep(FileContext context, Given<Quantity> at, string path, string what)
    {
        if (at.IsGiven && HeldHot.Holds(at.Value.Base)) return;
        One(context, at, Kept, path, what);
    }
}
