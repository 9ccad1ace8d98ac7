using System.Globalization;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8020", "portions-and-yield-differ", "Portions that do not add up to the yield", Level.Error, IsConsequence = true)]
[Limit("yield-tolerance", "Off")]
[Limit("portion-shortfall", "Short")]
internal sealed partial class PortionsExceedYield : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!prep.PortionCount.IsGiven || !prep.PortionSize.IsGiven || !prep.Yield.IsGiven) return;
        double count = prep.PortionCount.Value, each = prep.PortionSize.Value.Base;
        if (count <= 0 || each <= 0) return;
        var (yield, unit) = (prep.PortionSize.Value.Dimension, prep.Yield.Value.Dimension) switch
        {
            (Dimension.Volume, _) => (Yields.Volume(context, prep), "mL"),
            (Dimension.Mass, Dimension.Mass) => (prep.Yield.Value.Base, "g"),
            _ => (double.NaN, ""),
        };
        if (double.IsNaN(yield)) return;
        double sum = count * each;
        bool over = sum > yield * (1 + (Off.Value / 100)), under = sum < yield * (1 - (Short.Value / 100));
        if (!over && !under) return;
        int fits = (int)Math.Floor((yield * (1 + (Off.Value / 100) / 2)) / each);
        context.Report(new(Rule)
        {
            AskedLevel = over ? null : Level.Note,
            At = context.At(prep.PortionCount.Span, "portions.count"),
            Message = $"{Say.Number(count, 1)} portions of {Say.With(each, unit)} are {Say.With(sum, unit)}, but the yield is "
                + $"{Say.With(yield, unit)}: {Say.Number(100 * Math.Abs((sum / yield) - 1), 0)} % "
                + $"{(over ? "more than is made" : "is left over")}.",
            Advice = fits >= 1 ? $"Write {fits}, or change the portion or the batch." : "Change the portion or the batch.",
            Evidence = [Proof.Of("portions", sum, unit), Proof.Of("yield", yield, unit), Proof.Of(over ? Off : Short)],
            Related = [context.See(prep.Yield.Span, "the yield")],
            Corrections = fits < 1
                ? []
                : Correction.Propose(
                    $"Write {fits} portions.",
                    new TextEdit(context.At(prep.PortionCount.Span), fits.ToString(CultureInfo.InvariantCulture))),
        });
    }
}
