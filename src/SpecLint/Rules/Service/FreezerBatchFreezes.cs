using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule("SL8009", "freezer-batch-freezes", "A bottle for pouring that sets in the freezer", Level.Error, Needs = [Fact.FreezingPoint, Fact.Abv], IsConsequence = true)]
[Limit("freezer-ice-most", "Most")]
internal sealed partial class FreezerBatchFreezes : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.IsSolid) return;
        var (t, span) = Temperature(context, prep);
        if (t > Guards.FreezerWarmest || !Pours(prep)) return;
        var point = context.Fact(Fact.FreezingPoint);
        var abv = context.Fact(Fact.Abv);
        if (!point.IsKnown || !abv.IsKnown || point.High <= t) return;
        if (Freezing.IceFraction(context.Profile.Grams, new Celsius(t)) is not { } ice || 100 * ice.Value <= Most.Value) return;
        double factor = Solving.Factor(context.Profile, p => Substances.IsWater(p.Material), grams => 100 * (Freezing.IceFraction(grams, new Celsius(t))?.Value ?? double.NaN), Most.Value * 0.75);
        string take = "Raise its strength, or keep it in the refrigerator and pour it over ice.";
        var corrections = new List<Correction>();
        if (Batch.Water(context.Profile).Line is { } water && !double.IsNaN(factor) && factor > Guards.LeastFactor)
        {
            var amount = water.Line.Amount.Value;
            double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
            double then = Solving.With(context.Profile, p => Substances.IsWater(p.Material), rounded / amount.Base, Solving.Strength);
            take = $"Take {Rounding.Words(rounded, amount)} of {water.Line.Item.Or("water")} instead of {Rounding.Words(amount.Base, amount)}, which brings it to {Say.With(then, "% vol")}, or keep it in the refrigerator.";
            corrections.Add(new Correction(CorrectionGrade.Proposed, $"Write {Rounding.Words(rounded, amount)} of `{water.Line.Item.Or("water")}`.", [new TextEdit(context.At(water.Line.Amount.Span), Rounding.Text(rounded, amount))]));
        }

        context.Report(new(Rule)
        {
            At = context.At(span, prep.Keep is { At.IsGiven: true } ? "keep.at" : "ingredients"),
            Message = $"At {Say.Fact(Fact.Abv, abv)} its first ice forms at {Say.Fact(Fact.FreezingPoint, point)}. At {Say.Number(t, 0)} °C {Say.Number(100 * ice.Value, 0)} % of it is ice, above the {Say.With(Most.Value, "%")} at which it stops pouring ({Most.Source}).",
            Advice = take,
            Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of(Fact.FreezingPoint, point), Proof.Of($"ice at {Say.Number(t, 0)} °C", 100 * ice.Value, "%"), Proof.Of(Most)],
            Corrections = corrections,
        });
    }

    /// <summary>Where it is kept: what the recipe says, else the bar's freezer for a freezer batch.</summary>
    internal static (double Celsius, Reading.TextSpan Span) Temperature(RecipeContext context, Prep prep)
    {
        if (prep.Keep is { At: { IsGiven: true } at }) return (at.Value.Base, at.Span);
        var span = prep.IngredientsSpan;
        if (!prep.Family.OrNone().IsKeptInFreezer) return (20, span);
        return (context.Settings.Bar is { Freezer.IsGiven: true } bar ? bar.Freezer.Value.Base : Limits.Of("freezer-temperature").Value, span);
    }

    private static bool Pours(Prep prep)
    {
        if (!Batch.Is(prep)) return false;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Slushes) return false;
        }

        // A batch that is frozen to be thawed says so by its use.
        return prep.Family.OrNone() is { IsBatch: true, IsCarbonated: false };
    }
}
