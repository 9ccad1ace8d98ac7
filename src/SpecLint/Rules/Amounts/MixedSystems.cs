using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Amounts;

[Rule("SL2013", "mixed-systems", "Ounces and millilitres, or pounds and grams, in one recipe", Level.Note)]
internal sealed partial class MixedSystems : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var parts = context.Profile.Parts;
        int ounces = 0, millilitres = 0, pounds = 0, grams = 0;
        for (int i = 0; i < parts.Count; i++)
        {
            var line = parts[i].Line;
            if (!line.Amount.IsGiven || parts[i].Phase == PartPhase.Beside || Caught(context, parts[i])) continue;
            var unit = line.Amount.Value.Unit;
            if (Written.IsOunce(unit)) ounces++;
            else if (Written.IsMetricVolume(unit)) millilitres++;
            else if (Written.IsPound(unit)) pounds++;
            else if (unit.Dimension == Dimension.Mass && unit.System == UnitSystem.Metric) grams++;
        }

        bool byVolume = ounces > 0 && millilitres > 0, byMass = pounds > 0 && grams > 0;
        if (!byVolume && !byMass) return;
        var edits = new List<TextEdit>();
        Line? first = null;
        bool exact = true;
        for (int i = 0; i < parts.Count; i++)
        {
            var line = parts[i].Line;
            if (!line.Amount.IsGiven || parts[i].Phase == PartPhase.Beside || Caught(context, parts[i])) continue;
            var amount = line.Amount.Value;
            bool convert = byVolume ? Written.IsOunce(amount.Unit) : Written.IsPound(amount.Unit);
            if (!convert) continue;
            first ??= line;
            double value = Written.Nearest(amount.Base, amount.Base >= 100 ? 1 : 0.5);
            exact &= Math.Abs(value - amount.Base) < Guards.ExactAmount * amount.Base && amount.BaseLow == amount.BaseHigh;
            edits.Add(new TextEdit(context.At(line.Amount.Span), $"\"{Written.Number(value)} {(byVolume ? "ml" : "g")}\""));
        }

        string one = byVolume ? "ounces" : "pounds or ounces by weight", other = byVolume ? "millilitres" : "grams";
        context.Report(new(Rule)
        {
            At = context.At(first!.Amount.Span, RecipeContext.PathOf(first, "amount")),
            Message = $"{Say.Count(byVolume ? ounces : pounds, "line")} in {one} and {(byVolume ? millilitres : grams)} in {other}. "
                + $"Two systems need two sets of tools and are easily confused.",
            Advice = $"Write all of it in {other}.",
            Corrections =
            [
                new Correction(
                    exact ? CorrectionGrade.Assured : CorrectionGrade.Proposed,
                    $"Write {Say.Count(edits.Count, "line")} in {other}" + (exact
                        ? ", within 2 % of the written amounts."
                        : "; bar.json does not give the size of the ounce, or the number is rounded."),
                    edits),
            ],
        });
    }

    /// <summary>A unit that another rule calls wrong is no second system.</summary>
    private static bool Caught(RecipeContext context, Part part) =>
        part.Material is { } material && Written.IsOunce(part.Line.Amount.Value.Unit)
        && (material.State != MaterialState.Liquid || (material.Kind.IsBitters && context.Recipe is Drink));
}
