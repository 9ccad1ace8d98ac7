using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7010", "alcohol-misdeclared", "The declared grams of alcohol differ from the computed grams", Level.Warning, Needs = [Fact.Alcohol],
    IsConsequence = true)]
[Limit("declared-alcohol-tolerance", "Tolerance")]
[Limit("declared-alcohol-millilitres", "Rounding")]
internal sealed partial class AlcoholMisdeclared : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { Alcohol.IsGiven: true } declares || declares.Alcohol.Value.Dimension != Dimension.Mass) return;
        var alcohol = context.Fact(Fact.Alcohol);
        if (!alcohol.IsKnown) return;
        double declared = declares.Alcohol.Value.Base;
        bool isMillilitres = Math.Abs(declared - (alcohol.Value / Science.FoodEnergyModel.EthanolGramsPerMillilitre)) <= Rounding.Value
            && Math.Abs(declared - alcohol.Value) > Tolerance.Value;
        bool holds = alcohol.Low <= declared + Tolerance.Value && alcohol.High >= declared - Tolerance.Value;
        if (holds && !isMillilitres) return;
        string right = Say.Number(alcohol.Value, 0);
        string per = context.Recipe is Drink ? "a serve" : "100 mL";
        context.Report(new(Rule)
        {
            // A stronger bottle of the kind may hold it; but the figure is just that of the millilitres.
            Answer = holds ? Answer.NotShown : Answer.Broken,
            AskedLevel = holds ? Level.Note : null,
            At = context.At(declares.Alcohol.Span, "declares.alcohol"),
            Message = $"Declared at {Say.Number(declared)} g of alcohol, {per} holds {Say.Fact(Fact.Alcohol, alcohol)}. "
                + (isMillilitres
                    ? $"{Say.Number(declared)} is its alcohol in mL, and a mL weighs {Say.Number(Science.FoodEnergyModel.EthanolGramsPerMillilitre, 3)} g."
                    : $"Rounding explains {Say.Number(Tolerance.Value)} g ({Tolerance.Source})."),
            Advice = $"Declare {right} g, or change the recipe to match.",
            Caution = "People count their drinks by the declared figure. Local law decides what must be declared.",
            Evidence =
            [
                Proof.Of(Fact.Alcohol, alcohol),
                Proof.Of("declared", declares.Alcohol.Value, context.At(declares.Alcohol.Span)),
                Proof.Of(Tolerance),
            ],
            Corrections = context.Write(declares.Alcohol.Span, $"{right} g", $"Declare {right} g."),
        });
    }
}
