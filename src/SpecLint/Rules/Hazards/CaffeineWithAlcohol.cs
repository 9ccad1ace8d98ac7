using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6020", "caffeine-with-alcohol", "A drink combines a lot of caffeine with alcohol", Level.Warning, Safety = true, Needs = [Fact.Caffeine, Fact.Abv, Fact.ServedVolume])]
[Limit("caffeine-per-serve", "Serve")]
[Limit("caffeine-us", "Added")]
[Limit("declare-strength-from", "Strength")]
[Limit("guard-pure-caffeine", "Pure")]
internal sealed partial class CaffeineWithAlcohol : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        var caffeine = context.Fact(Fact.Caffeine);
        if (!caffeine.IsKnown || !(caffeine.Value > 0)) return;
        var abv = context.Fact(Fact.Abv);
        if (!abv.IsKnown || abv.Low <= Strength.Value) return;
        Part? most = null;
        double brought = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is null || !part.IsWeighed || part.Phase == PartPhase.Beside) continue;
            double mg = part.Grams.Typical * part.Material.Traces.Caffeine.Typical;
            if (mg <= brought) continue;
            brought = mg;
            most = part;
        }

        if (most is null) return;
        double perKilogram = caffeine.Value * drink.ServesOrOne / (context.Profile.Mass / 1000);
        bool dose = caffeine.Low > Serve.Value;

        // Coffee, tea and cocoa bring theirs by nature: the limit by mass is about caffeine that is added.
        bool added = Added.AppliesIn(context.Settings) && perKilogram > Added.Value && most.Material!.Kind.MayHoldAddedCaffeine && !dose;

        // Caffeine added as such to alcohol is not a permitted additive in the US, in any amount.
        bool pure = Added.AppliesIn(context.Settings) && !dose && most.Material!.Traces.Caffeine.Typical > Pure.Value;
        added |= pure;
        if (!dose && !added) return;
        var limit = dose ? Serve : Added;
        context.Report(new(Rule)
        {
            At = context.AmountOf(most.Line),
            Message = dose
                ? $"A drink of {Say.Fact(Fact.Abv, abv)} holds {Say.Fact(Fact.Caffeine, caffeine)} of caffeine, above the {Say.Number(Serve.Value)} mg of a single dose ({Serve.Source}). Caffeine hides from guests how drunk they are."
                : $"The drink holds {Say.Number(perKilogram, 0)} mg/kg of caffeine, mostly from `{most.Line.Item.Or("")}`, {(pure ? "added as such, which is not a permitted additive in alcoholic drinks in the US (FDA 2010, from memory)" : $"above the {Say.Number(Added.Value)} mg/kg limit for alcoholic drinks ({Added.Source})")}.",
            Advice = "Use less of it, or a decaffeinated version, and do not serve it after many other drinks.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(Fact.Caffeine, caffeine), Proof.Of("caffeine", perKilogram, "mg/kg"), Proof.Of(limit)],
        });
    }
}
