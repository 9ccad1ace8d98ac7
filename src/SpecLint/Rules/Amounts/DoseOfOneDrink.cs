using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Amounts;

[Rule("SL2040", "dose-of-one-drink", "Far more of a seasoning than one drink takes, or next to nothing of what it is made of",
    Level.Warning, IsCause = true)]
[Limit("dose-undrinkable", "Undrinkable")]
[Limit("dose-slip-least", "Seasons")]
[Limit("dose-slip-most", "SlipMost")]
internal sealed partial class DoseOfOneDrink : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double serves = drink.ServesOrOne;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Item is not { File: Ingredient } item || !part.Line.Amount.IsGiven) continue;
            if ((DoseTable.Find(item.Id) ?? DoseTable.Find(item.CountsAs)) is not { } dose) continue;
            bool poured = dose.Unit == "mL";
            double each = (poured ? part.Millilitres : part.IsWeighed ? part.Grams.Typical : double.NaN) / serves;
            if (each > dose.Most || each < dose.Least) Report(context, part.Line, dose, each, each > dose.Most);
        }
    }

    private static void Report(RecipeContext context, Line line, Dose dose, double each, bool over)
    {
        var amount = line.Amount.Value;
        double limit = over ? dose.Most : dose.Least, perBase = each / amount.Base;
        var slip = Slips.Find(amount, context.Settings.Measures, b => over
            ? b * perBase <= limit && b * perBase >= limit * Seasons.Value / 100
            : b * perBase >= limit && b * perBase <= limit * SlipMost.Value);
        context.Report(new(Rule)
        {
            AskedLevel = over && dose.IsHarsh && each >= dose.Most * Undrinkable.Value ? Level.Error : null,
            At = context.AmountOf(line),
            Message = $"{Written.Item(line)} comes to {Say.With(each, dose.Unit)} in one drink, {(over ? "above" : "below")} the "
                + $"{Say.With(limit, dose.Unit)} that one drink takes of {dose.Name} at {(over ? "most" : "least")} ({dose.Source}).",
            Advice = slip is { } meant ? $"Write {meant.Text}, if {(meant.Rank == 0 ? "the unit" : "a digit")} slipped."
                : over ? "Check the amount and the item: is it meant in drops or dashes, or is it another form of it?"
                : "Check the amount: was it exchanged with another line, or did a digit slip?",
            Evidence = [Written.Given(context, line), Proof.Of("of one drink", limit, dose.Unit, dose.Source)],
            Corrections = context.Write(line.Amount.Span, slip?.Text),
        });
    }
}
