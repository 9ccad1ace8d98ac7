using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6019", "sulphite-too-much", "All parts together hold more sulphite than a wine may", Level.Error, Safety = true,
    IsConsequence = true, Needs = [Fact.Sulphite, Fact.Abv])]
[Limit("sulphite-aromatised-wine", "Most")]
[Limit("sulphite-soft-eu", "Soft")]
[Limit("declare-strength-from", "Strength")]
internal sealed partial class SulphiteTooMuch : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var sulphite = context.Fact(Fact.Sulphite);
        bool soft = context.Recipe is SpecLint.Book.Drink && context.Fact(Fact.Abv) is { IsKnown: true } abv && abv.High <= Strength.Value;
        var limit = soft ? Soft : Most;
        if (!sulphite.IsKnown || sulphite.Value <= limit.Value) return;
        Part? most = null;
        double brought = 0, added = 0, bought = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is null || !part.IsWeighed || part.Phase == PartPhase.Beside) continue;
            double mg = part.Grams.Typical * part.Material.Traces.Sulphite.Typical;
            bool isAdded = mg > 0
                && RecipeTree.AnyIn(part, context.Profile, static m => m.Kind.MayBringSulphite && m.Traces.Sulphite.Typical > 0);
            if (isAdded) added += mg;
            else bought += mg;
            if (!isAdded || mg <= brought) continue;
            brought = mg;
            most = part;
        }

        // A whole preparation of bought wine is within the law of its maker: what counts is what the house adds, in all its lines.
        if (most is null || added < bought) return;
        bool broken = sulphite.Low > limit.Value, law = limit.AppliesIn(context.Settings);
        context.Report(new(Rule)
        {
            Answer = broken ? Answer.Broken : Answer.NotShown,
            AskedLevel = broken && law && limit.LevelCap is null ? null : Level.Warning,
            At = context.AmountOf(most.Line),
            Message = $"Sulphur dioxide from all parts comes to {Say.Fact(Fact.Sulphite, sulphite)}, most of it from "
                + $"`{most.Line.Item.Or("")}`. The limit for {(soft ? "a drink without alcohol" : "an aromatised wine")} is "
                + $"{Say.Number(limit.Value)} mg/L ({limit.Source}), and guests with asthma react to far less.",
            Advice = "Use less of it, and tell guests of sulphites from 10 mg/L.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(Fact.Sulphite, sulphite), Proof.Of(limit)],
        });
    }
}
