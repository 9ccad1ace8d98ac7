using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2014", "between-the-marks", "An amount between the marks of the bar's jigger", Level.Note)]
[Limit("amount-ounce-step", "OunceStep")]
[Limit("tolerance-pour-small", "Pour")]
internal sealed partial class OffTheJigger : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Settings.Bar is not { Jigger.IsGiven: true } bar || drink.ServesOrOne != 1) return;
        double metric = bar.Jigger.Value.Base;
        if (!(metric > 0)) return;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Phase != PartPhase.Mix || part.Material is not { State: MaterialState.Liquid }) continue;
            var amount = line.Amount.Value;
            if ((amount.Form & QuantityForm.Range) != 0 || !Written.IsPoured(amount.Unit)) continue;
            bool ounce = Written.IsOunce(amount.Unit);

            // An ounce jigger of a house whose ounce is a whole number of steps is the same jigger.
            double step = ounce ? OunceStep.Value : metric, value = ounce ? amount.Value : amount.Base;
            if (Written.IsMultiple(value, step) || (ounce && Written.IsMultiple(amount.Base, metric))) continue;
            double nearest = Math.Max(step, Written.Nearest(value, step));
            double change = (nearest - value) / value * 100;
            string unit = ounce ? amount.Unit.Name == "oz" ? "oz" : Written.Text(context, line.Amount.Span).TrimStart(Digits).Trim() : "ml";
            bool within = Math.Abs(change) <= Pour.Value;
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} at {Written.Text(context, line.Amount.Span)} is between the marks of the bar's "
                    + $"jigger, which are {Written.Number(step)} {unit} apart ({(ounce ? OunceStep.Source : "bar.json")}). The nearest "
                    + $"is {Say.Number(nearest, 3)} {unit}, {Say.Number(Math.Abs(change), 1)} % {(change > 0 ? "more" : "less")}.",
                Advice = value < step * 0.75 ? "Write dashes, drops or a barspoon, or measure it with a syringe." : $"Write {Say.Number(nearest, 3)} {unit}.",
                Evidence = [Proof.Of("amount", amount, context.At(line.Amount.Span)), Proof.Of("jigger", bar.Jigger.Value, bar.At(bar.Jigger.Span))],
                Corrections = value < step * 0.75
                    ? []
                    : [new Correction(
                        within ? CorrectionGrade.Assured : CorrectionGrade.Proposed,
                        $"Write {Say.Number(nearest, 3)} {unit}, {Say.Number(Math.Abs(change), 1)} % "
                            + $"{(change > 0 ? "more" : "less")}{(within ? $": within the {Say.Number(Pour.Value)} % accuracy of a jigger" : "")}.",
                        [new TextEdit(context.At(line.Amount.Span), $"\"{Say.Number(nearest, 3)} {unit}\"")])],
            });
        }
    }

    private static readonly char[] Digits = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', ',', '/', ' ', '½', '¼', '¾'];
}
