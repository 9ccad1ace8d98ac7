using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8024", "hot-drink-too-strong", "A hot drink so strong that its vapour is harsh", Level.Warning,
    Needs = [Fact.Abv], IsConsequence = true)]
[Limit("dry-hot-alcohol", "Most")]
[Limit("hot-drink-from", "Hot")]
internal sealed partial class HotDrinkTooStrong : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.Technique is not (TechniqueKind.NoIce or TechniqueKind.Unknown)) return;
        bool hot = drink.KnownStyle is { IsHot: true };
        foreach (var step in drink.Method) hot |= Heat.Reaches(step, Hot.Value);
        if (!hot) return;
        var abv = context.Fact(Fact.Abv);
        if (Findings.Check.AtMost(abv, Most.Value) != Stand.Broken) return;

        // The band of the style says the same where it is broken too.
        if (drink.KnownStyle is { } style && style.Seen(Fact.Abv) is { } seen && abv.Low > seen.High) return;
        var remedy = Remedy.Amount(
            context, Remedy.EthanolOf, Solving.Strength, Most.Value * 0.9, "% vol", "Take less spirit, or more hot water.");
        context.Report(new(Rule)
        {
            At = context.At(drink.IngredientsSpan, "ingredients"),
            Message = $"It is served hot at {Say.Fact(Fact.Abv, abv)}, above the {Say.With(Most.Value, "% vol")} at which its vapour "
                + $"starts to sting ({Most.Source}).",
            Advice = remedy.Words,
            Corrections = remedy.Corrections,
            Caution = "Spirit near a flame or over a hot plate can catch fire: keep it off the heat and follow the fire rules of the "
                + "house.",
            Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of(Most)],
        });
    }
}
