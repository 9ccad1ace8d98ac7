using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule("SL8010", "slush-will-not-set", "A slush too strong or too sweet to set", Level.Warning, Needs = [Fact.FreezingPoint], IsConsequence = true)]
[Limit("slush-ice-least", "Least")]
[Limit("slush-machine-coldest", "Coldest")]
internal sealed partial class SlushTooStrong : PrepRule
{
    /// <summary>Words by which a step that freezes says that it makes a slush.</summary>
    private static readonly string[] SlushWords = ["slush", "slushy", "slushie", "granita", "frozen machine", "slush machine", "barrel freezer"];

    private static bool SaysSlush(Step step) =>
        Hazards.HazardWords.HasWords(step.Until, SlushWords) || Hazards.HazardWords.HasWords(step.Note, SlushWords) || Hazards.HazardWords.HasWords(step.Into, SlushWords);

    public override void Check(RecipeContext context, Prep prep)
    {
        Step? slush = null;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Slushes || (step.Verb.Freezes && SaysSlush(step))) slush = step;
        }

        if (slush is null || context.Profile.IsSolid) return;
        double t = slush.At.IsGiven ? slush.At.Value.Base : slush.To.IsGiven ? slush.To.Value.Base : double.NaN;
        if (double.IsNaN(t) && prep.Keep is { At.IsGiven: true } keep) t = keep.At.Value.Base;
        if (double.IsNaN(t)) t = context.Settings.Bar is { Freezer.IsGiven: true } bar ? bar.Freezer.Value.Base : Limits.Of("freezer-temperature").Value;
        var point = context.Fact(Fact.FreezingPoint);
        if (!point.IsKnown) return;
        double ice = point.Low >= t
            ? 100 * (Freezing.IceFraction(context.Profile.Grams, new Celsius(t))?.Value ?? double.NaN)
            : point.High < t ? 0 : double.NaN;
        if (double.IsNaN(ice) || ice >= Least.Value) return;
        double Ice(ReadOnlySpan<double> grams) => 100 * (Freezing.IceFraction(grams, new Celsius(t))?.Value ?? 0);
        double factor = Solving.Factor(context.Profile, p => Substances.IsWater(p.Material), Ice, Least.Value * 1.5);
        var corrections = new List<Correction>();

        // A machine that runs colder keeps the drink; water changes it.
        double colder = double.NaN;
        for (double c = Math.Floor(t); c >= Coldest.Value && double.IsNaN(colder); c--)
        {
            if (100 * (Freezing.IceFraction(context.Profile.Grams, new Celsius(c))?.Value ?? 0) >= Least.Value * Guards.SlushColder) colder = c;
        }

        string take = double.IsNaN(colder)
            ? "Add water, or take less spirit and sugar."
            : $"Run it at {Say.Number(colder, 0)} °C, where about a third of it is ice. Or add water, which makes it weaker.";
        if (double.IsNaN(colder) && Batch.Water(context.Profile).Line is { } water && !double.IsNaN(factor))
        {
            var amount = water.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            take = $"Take {Rounding.Words(rounded, amount)} of {water.Line.Item.Or("water")} instead of {Rounding.Words(amount.Base, amount)}.";
            corrections.Add(new Correction(CorrectionGrade.Proposed, take, [new TextEdit(context.At(water.Line.Amount.Span), Rounding.Text(rounded, amount))]));
        }

        context.Report(new(Rule)
        {
            At = context.VerbOf(slush),
            Message = $"Its first ice forms at {Say.Fact(Fact.FreezingPoint, point)}, so at {Say.Number(t, 0)} °C {Say.Number(ice, 0)} "
                + $"% of it is ice, below the {Say.With(Least.Value, "%")} that a slush needs ({Least.Source}).",
            Advice = take,
            Evidence = [Proof.Of(Fact.FreezingPoint, point), Proof.Of($"ice at {Say.Number(t, 0)} °C", ice, "%"), Proof.Of(Least)],
            Corrections = corrections,
        });
    }
}
