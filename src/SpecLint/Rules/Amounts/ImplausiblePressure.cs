using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

/// <summary>SL2035: a pressure that no bar works with, psi typed as bar the commonest.</summary>
internal sealed class ImplausiblePressure : PlausibilityRule
{
    private static readonly PlausibleRange Target = PlausibleTable.Of("pressure-target");
    private static readonly (string Unit, double Factor, double Offset)[] Units = [("psi", 0.0689475729, 0), ("kPa", 0.01, 0), ("bar", 1, 0)];

    private static readonly RuleInfo Rule = new("SL2035", "implausible-pressure", "A pressure that no bar works with, perhaps psi for bar", Level.Warning) { IsCause = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    protected override Dimension Dimension => Dimension.Pressure;

    /// <inheritdoc/>
    protected override (string Unit, double Factor, double Offset)[] Readings => Units;

    /// <inheritdoc/>
    protected override string BaseUnit => "bar";

    /// <inheritdoc/>
    public override void Check(FileContext context)
    {
        foreach (var (recipe, step, path) in Steps(context))
            One(context, step.Amount, PlausibleTable.Of(PlausibleOf.Pressure, step.Verb, recipe.Recipe is Drink), path + ".amount", $"{Named(step)} is at");
        if (context.File is Prep { Target: { } target }) One(context, target.Pressure, Target, "target.pressure", "The target is");
    }

    /// <inheritdoc/>
    protected override string Words(double value) => $"{Say.Number(value)} bar";
}
