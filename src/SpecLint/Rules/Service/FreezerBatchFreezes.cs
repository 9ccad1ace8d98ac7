using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8009", "freezer-batch-freezes", "A bottle for pouring that sets in the freezer", Level.Error,
    Needs = [Fact.FreezingPoint, Fact.Abv], IsConsequence = true)]
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
        double ice = Cold.Ice(context.Profile.Grams, t);
        if (!(ice > Most.Value)) return;
        var (advice, corrections) = TakeWater(context, t);
        context.Report(new(Rule)
        {
            At = context.At(span, prep.Keep is { At.IsGiven: true } ? "keep.at" : "ingredients"),
            Message = $"At {Say.Fact(Fact.Abv, abv)} its first ice forms at {Say.Fact(Fact.FreezingPoint, point)}. At "
                + $"{Say.Number(t, 0)} °C {Say.Number(ice, 0)} % of it is ice, above the {Say.With(Most.Value, "%")} at which it stops "
                + $"pouring ({Most.Source}).",
            Advice = advice,
            Evidence =
            [
                Proof.Of(Fact.Abv, abv), Proof.Of(Fact.FreezingPoint, point), Proof.Of($"ice at {Say.Number(t, 0)} °C", ice, "%"),
                Proof.Of(Most),
            ],
            Corrections = corrections,
        });
    }

    /// <summary>How much less water makes it pour, in words and as a correction.</summary>
    private static (string Advice, IReadOnlyList<Correction> Corrections) TakeWater(RecipeContext context, double t)
    {
        double factor = Solving.Factor(
            context.Profile, static p => Substances.IsWater(p.Material), grams => Cold.Ice(grams, t), Most.Value * 0.75);
        if (Batch.Water(context.Profile).Line is not { } water || double.IsNaN(factor) || factor <= Guards.LeastFactor)
            return ("Raise its strength, or keep it in the refrigerator and pour it over ice.", []);
        var amount = water.Line.Amount.Value;
        double rounded = Rounding.ToStep(amount.Base * factor, amount, context.Settings);
        double then = Solving.With(
            context.Profile, static p => Substances.IsWater(p.Material), rounded / amount.Base, Solving.Strength);
        string words = Rounding.Words(rounded, amount), item = water.Line.Item.Or("water");
        return (
            $"Take {words} of {item} instead of {Rounding.Words(amount.Base, amount)}, which brings it to {Say.With(then, "% vol")}, or "
                + "keep it in the refrigerator.",
            context.Write(water.Line.Amount.Span, words, $"Write {words} of `{item}`."));
    }

    /// <summary>Where it is kept: what the recipe says, else the bar's freezer for a freezer batch.</summary>
    private static (double Celsius, TextSpan Span) Temperature(RecipeContext context, Prep prep) =>
        prep.Keep is { At: { IsGiven: true } at }
            ? (at.Value.Base, at.Span)
            : (prep.Family.OrNone().IsKeptInFreezer ? Cold.Freezer(context.Settings) : 20, prep.IngredientsSpan);

    /// <summary>A batch that is frozen to be thawed says so by its use, and a slush is none.</summary>
    private static bool Pours(Prep prep) =>
        Batch.Is(prep)
        && prep.Family.OrNone() is { IsBatch: true, IsCarbonated: false }
        && !prep.Method.Any(static s => s.Verb.Slushes);
}
