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
        int ounces = 0, millilitres = 0, pounds = 0, grams = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (!Counts(context, part)) continue;
            var unit = part.Line.Amount.Value.Unit;
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
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!Counts(context, part)) continue;
            var amount = line.Amount.Value;
            if (byVolume ? !Written.IsOunce(amount.Unit) : !Written.IsPound(amount.Unit)) continue;
            first ??= line;
            double value = Written.Nearest(amount.Base, amount.Base >= 100 ? 1 : 0.5);
            exact &= Math.Abs(value - amount.Base) < Guards.ExactAmount * amount.Base && amount.BaseLow == amount.BaseHigh;
            edits.Add(context.Rewrite(line.Amount.Span, $"{Written.Number(value)} {(byVolume ? "ml" : "g")}"));
        }

        string one = byVolume ? "ounces" : "pounds or ounces by weight", other = byVolume ? "millilitres" : "grams";
        string how = exact
            ? ", within 2 % of the written amounts."
            : "; bar.json does not give the size of the ounce, or the number is rounded.";
        var grade = exact ? CorrectionGrade.Assured : CorrectionGrade.Proposed;
        context.Report(new(Rule)
        {
            At = context.AmountOf(first!),
            Message = $"{Say.Count(byVolume ? ounces : pounds, "line")} in {one} and {(byVolume ? millilitres : grams)} in {other}. "
                + "Two systems need two sets of tools and are easily confused.",
            Advice = $"Write all of it in {other}.",
            Corrections = [new Correction(grade, $"Write {Say.Count(edits.Count, "line")} in {other}{how}", edits)],
        });
    }

    /// <summary>Whether an amount is of a system: a unit that another rule calls wrong is no second one.</summary>
    private static bool Counts(RecipeContext context, Part part)
    {
        if (!part.Line.Amount.IsGiven || part.Phase == PartPhase.Beside) return false;
        if (part.Material is not { } material || !Written.IsOunce(part.Line.Amount.Value.Unit)) return true;
        return material.State == MaterialState.Liquid && !(material.Kind.IsBitters && context.Recipe is Drink);
    }
}
