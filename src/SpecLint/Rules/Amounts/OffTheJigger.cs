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
        if (context.Settings.Bar is not { Jigger: { IsGiven: true, Value.Base: > 0 and var metric } jigger } bar) return;
        if (drink.ServesOrOne != 1) return;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Amount.IsGiven || part.Phase != PartPhase.Mix || part.Material is not { State: MaterialState.Liquid }) continue;
            var amount = line.Amount.Value;
            if ((amount.Form & QuantityForm.Range) != 0 || !Written.IsPoured(amount.Unit)) continue;

            // An ounce jigger of a house whose ounce is a whole number of steps is the same jigger.
            bool ounce = Written.IsOunce(amount.Unit);
            double step = ounce ? OunceStep.Value : metric, value = ounce ? amount.Value : amount.Base;
            if (Written.IsMultiple(value, step) || (ounce && Written.IsMultiple(amount.Base, metric))) continue;
            double nearest = Math.Max(step, Written.Nearest(value, step)), change = (nearest - value) / value * 100;
            string written = Written.Text(context, line.Amount.Span);
            string unit = !ounce ? "ml" : amount.Unit.Name == "oz" ? "oz" : written.TrimStart(Digits).Trim();
            string better = $"{Say.Number(nearest, 3)} {unit}";
            string off = $"{Say.Number(Math.Abs(change), 1)} % {(change > 0 ? "more" : "less")}";
            bool within = Math.Abs(change) <= Pour.Value;
            string why = within ? $": within the {Say.Number(Pour.Value)} % accuracy of a jigger" : "";
            var grade = within ? CorrectionGrade.Assured : CorrectionGrade.Proposed;
            context.Report(new(Rule)
            {
                At = context.AmountOf(line),
                Message = $"{Written.Item(line)} at {written} is between the marks of the bar's jigger, which are {Written.Number(step)} "
                    + $"{unit} apart ({(ounce ? OunceStep.Source : "bar.json")}). The nearest is {better}, {off}.",
                Advice = value < step * 0.75
                    ? "Write dashes, drops or a barspoon, or measure it with a syringe."
                    : $"Write {better}.",
                Evidence = [Written.Given(context, line), Proof.Of("jigger", jigger.Value, bar.At(jigger.Span))],
                Corrections = value < step * 0.75
                    ? []
                    : [new Correction(grade, $"Write {better}, {off}{why}.", [context.Rewrite(line.Amount.Span, better)])],
            });
        }
    }

    private static readonly char[] Digits = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', ',', '/', ' ', '½', '¼', '¾'];
}
