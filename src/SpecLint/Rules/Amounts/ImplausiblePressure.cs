using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2035", "implausible-pressure", "A pressure that no bar works with, perhaps psi for bar", Level.Warning, IsCause = true)]
internal sealed partial class ImplausiblePressure : PlausibilityRule
{
    private static readonly PlausibleRange Target = PlausibleTable.Of("pressure-target");
    private static readonly (string Unit, double Factor, double Offset)[] Units =
        [("psi", 0.0689475729, 0), ("kPa", 0.01, 0), ("bar", 1, 0)];

    protected override Dimension Dimension => Dimension.Pressure;

    protected override (string Unit, double Factor, double Offset)[] Readings => Units;

    protected override string BaseUnit => "bar";

    public override void Check(FileContext context)
    {
        if (context is RecipeContext recipe)
        {
            foreach (var step in recipe.Recipe.Method)
            {
                if (!step.Amount.IsGiven) continue;
                var range = PlausibleTable.Of(PlausibleOf.Pressure, step.Verb, recipe.Recipe is Drink);
                One(recipe, step, step.Amount, range, "amount", "is at");
            }
        }

        if (context.File is Prep { Target: { } target }) One(context, target.Pressure, Target, "target.pressure", "The target is");
    }

    protected override string Words(double value) => $"{Say.Number(value)} bar";
}
