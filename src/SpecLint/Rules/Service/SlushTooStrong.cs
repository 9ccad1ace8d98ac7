using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Hazards;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8010", "slush-will-not-set", "A slush too strong or too sweet to set", Level.Warning,
    Needs = [Fact.FreezingPoint], IsConsequence = true)]
[Limit("slush-ice-least", "Least")]
[Limit("slush-machine-coldest", "Coldest")]
internal sealed partial class SlushTooStrong : PrepRule
{

    public override void Check(RecipeContext context, Prep prep)
    {
        Step? slush = null;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Slushes || (step.Verb.Freezes && (SaysSlush(step) || IsSlush(prep.Keep)))) slush = step;
        }

        if (slush is null || context.Profile.IsSolid) return;
        var known = slush.At.IsGiven ? slush.At : slush.To.IsGiven ? slush.To : prep.Keep?.At ?? default;
        double t = known.IsGiven ? known.Value.Base : Cold.Freezer(context.Settings);
        var point = context.Fact(Fact.FreezingPoint);
        if (!point.IsKnown) return;
        double ice = point.Low >= t ? Cold.Ice(context.Profile.Grams, t) : point.High < t ? 0 : double.NaN;
        if (double.IsNaN(ice) || ice >= Least.Value) return;
        var (advice, corrections) = Remedy(context, t);
        context.Report(new(Rule)
        {
            At = context.VerbOf(slush),
            Message = $"Its first ice forms at {Say.Fact(Fact.FreezingPoint, point)}, so at {Say.Number(t, 0)} °C {Say.Number(ice, 0)} "
                + $"% of it is ice, below the {Say.With(Least.Value, "%")} that a slush needs ({Least.Source}).",
            Advice = advice,
            Evidence = [Proof.Of(Fact.FreezingPoint, point), Proof.Of($"ice at {Say.Number(t, 0)} °C", ice, "%"), Proof.Of(Least)],
            Corrections = corrections,
        });
    }

    /// <summary>What makes a slush of it. A machine that runs colder keeps the drink; water changes it.</summary>
    private static (string Advice, IReadOnlyList<Correction> Corrections) Remedy(RecipeContext context, double t)
    {
        for (double colder = Math.Floor(t); colder >= Coldest.Value; colder--)
        {
            if (Cold.Ice(context.Profile.Grams, colder) >= Least.Value * Guards.SlushColder)
                return (
                    $"Run it at {Say.Number(colder, 0)} °C, where about a third of it is ice. Or add water, which makes it weaker.", []);
        }

        double Ice(ReadOnlySpan<double> grams) => 100 * (Freezing.IceFraction(grams, new Celsius(t))?.Value ?? 0);
        double factor = Solving.Factor(context.Profile, static p => Substances.IsWater(p.Material), Ice, Least.Value * 1.5);
        if (Batch.Water(context.Profile).Line is not { } water || double.IsNaN(factor))
            return ("Add water, or take less spirit and sugar.", []);
        var amount = water.Line.Amount.Value;
        string words = Rounding.Words(Rounding.ToStep(amount.Base * factor, amount, context.Settings), amount);
        string take = $"Take {words} of {water.Line.Item.Or("water")} instead of {Rounding.Words(amount.Base, amount)}.";
        return (take, context.Write(water.Line.Amount.Span, words, take));
    }

    private static bool SaysSlush(Step step) =>
        HazardWords.HasWords(step.Until, TextWords.Slush)
        || HazardWords.HasWords(step.Note, TextWords.Slush)
        || HazardWords.HasWords(step.Into, TextWords.Slush)
        || (step.Vessel.IsGiven && SaysSlush(step.Vessel.Value));

    /// <summary>Whether it is kept in something called after a slush: a "slush tank".</summary>
    private static bool IsSlush(SpecLint.Book.Keeping? keep) => keep is not null && SaysSlush(keep.Vessel);

    private static bool SaysSlush(Vessel vessel) =>
        TextWords.Slush.Any(word => HazardWords.HasWords(vessel.Id.Replace('-', ' '), word));
}
