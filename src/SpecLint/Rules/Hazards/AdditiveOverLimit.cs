using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6018: more of an additive in a drink than the law allows.</summary>
internal sealed class AdditiveOverLimit : DrinkRule
{
    private static readonly Limit BenzoicEu = Limits.Of("benzoate-eu");
    private static readonly Limit BenzoateUs = Limits.Of("benzoate-us");
    private static readonly Limit SorbicEu = Limits.Of("sorbate-eu");
    private static readonly Limit PhosphoricEu = Limits.Of("phosphoric-eu");
    private static readonly Limit AsBenzoate = Limits.Of("benzoic-to-benzoate");
    private static readonly Limit AsPentoxide = Limits.Of("phosphoric-to-p2o5");

    private static readonly Limit SorbicBesideBenzoic = Limits.Of("sorbate-with-benzoate-eu");
    private static readonly Limit Mixed = Limits.Of("preservative-spirit-under-15");
    private static readonly Limit None = Limits.Of("preservative-spirit-over-15");
    private static readonly Limit Alcoholic = Limits.Of("declare-strength-from");
    private static readonly Limit Spirit = Limits.Of("spirit-drink-strength");

    /// <summary>mg/L that a soda poured over spirit may carry into it without being an addition of the bar's.</summary>
    private const double Trace = 50;

    private static readonly RuleInfo Rule = new("SL6018", "additive-over-limit", "A drink holds more of an additive than the law allows", Level.Error)
    {
        Safety = true,
        IsConsequence = true,
        Needs = [Fact.ServedVolume, Fact.Abv],
        Limits = [BenzoicEu.Id, BenzoateUs.Id, SorbicEu.Id, PhosphoricEu.Id, AsBenzoate.Id, AsPentoxide.Id, SorbicBesideBenzoic.Id, Mixed.Id, None.Id, Alcoholic.Id, Spirit.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        double benzoic = 0, sorbic = 0, phosphoric = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (!IsAdded(part)) continue;
            benzoic += part.Grams.Typical * part.Material!.Of(Component.Benzoic);
            sorbic += part.Grams.Typical * part.Material.Of(Component.Sorbic);
            phosphoric += part.Grams.Typical * part.Material.Of(Component.Phosphoric);
        }

        if (benzoic <= 0 && sorbic <= 0 && phosphoric <= 0) return;
        var volume = context.Fact(Fact.ServedVolume);
        if (!volume.IsKnown || !(volume.Value > 0)) return;
        double litres = volume.Value * drink.ServesOrOne / 1000;
        // By strength: drinks without alcohol, mixtures under 15 % vol, and over that none at all.
        var abv = context.Fact(Fact.Abv);
        bool mixed = abv.IsKnown && abv.Low > Alcoholic.Value, spirit = abv.IsKnown && abv.Low > Spirit.Value;
        var sorbicLimit = spirit ? None : mixed ? Mixed : benzoic > 0 ? SorbicBesideBenzoic : SorbicEu;
        var benzoicLimit = spirit ? None : mixed ? Mixed : BenzoicEu;
        Hold(context, Component.Benzoic, "benzoic acid", benzoic * 1000 / litres, benzoicLimit);
        Hold(context, Component.Benzoic, "sodium benzoate", benzoic * AsBenzoate.Value * 1e6 / context.Profile.Mass, BenzoateUs);
        Hold(context, Component.Sorbic, "sorbic acid", sorbic * 1000 / litres, sorbicLimit);
        Hold(context, Component.Phosphoric, "phosphoric acid, as P2O5,", phosphoric * AsPentoxide.Value * 1000 / litres, PhosphoricEu);
    }

    private static void Hold(RecipeContext context, Component component, string name, double value, Limit limit)
    {
        if (!(value > limit.Value + (limit == None ? Trace : 0)) || !limit.AppliesIn(context.Settings)) return;
        Part? most = null;
        double brought = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (!IsAdded(part)) continue;
            double grams = part.Grams.Typical * part.Material!.Of(component);
            if (grams <= brought) continue;
            brought = grams;
            most = part;
        }

        if (most is null) return;
        string unit = limit.Unit.Replace("mg/l", "mg/L");
        context.Report(new Finding(Rule)
        {
            AskedLevel = limit.LevelCap,
            Place = context.At(most.Line.Amount.IsGiven ? most.Line.Amount.Span : most.Line.Item.Span),
            Subject = context.Id,
            Path = RecipeContext.PathOf(most.Line, "amount"),
            Key = limit.Id,
            Message = $"The drink holds {Say.Number(value, 0)} {unit} of {name}, mostly from `{most.Line.Item.Or("")}`. The limit is {Say.Number(limit.Value)} {unit} ({limit.Source}).",
            Advice = limit.Value > 0 ? $"Reduce it to at most {Say.Number(100 * limit.Value / value, 0)} %." : "Leave it out: a drink of that strength needs none.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(name, value, limit.Unit), Proof.Of(limit)],
        });
    }

    /// <summary>Whether what a part holds was added: coffee, fruit and milk bring such acids by nature, which the law does not count.</summary>
    private static bool IsAdded(Part part) =>
        part.IsWeighed && part.Phase != PartPhase.Beside
        && part.Material is { Kind.IsFood: false };
}
