using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6018", "additive-over-limit", "A drink holds more of an additive than the law allows", Level.Error, Safety = true,
    IsConsequence = true, Needs = [Fact.ServedVolume, Fact.Abv])]
[Limit("benzoate-eu", "BenzoicEu")]
[Limit("benzoate-us", "BenzoateUs")]
[Limit("benzoate-ca", "BenzoicCa")]
[Limit("benzoate-anz", "BenzoicAnz")]
[Limit("sorbate-eu", "SorbicEu")]
[Limit("phosphoric-eu", "PhosphoricEu")]
[Limit("benzoic-to-benzoate", "AsBenzoate")]
[Limit("phosphoric-to-p2o5", "AsPentoxide")]
[Limit("sorbate-with-benzoate-eu", "SorbicBesideBenzoic")]
[Limit("preservative-spirit-under-15", "Mixed")]
[Limit("preservative-spirit-over-15", "None")]
[Limit("declare-strength-from", "Alcoholic")]
[Limit("spirit-drink-strength", "Spirit")]
[Limit("malic-us", "MalicUs")]
[Limit("acetic-us", "AceticUs")]
[Limit("alcoholic-beverage-us", "AlcoholicUs")]
[Limit("quillaia-eu", "QuillaiaEu")]
internal sealed partial class AdditiveOverLimit : DrinkRule
{
    /// <summary>mg/L that a soda poured over spirit may carry into it without being an addition of the bar's.</summary>
    private const double Trace = 50;

    public override void Check(RecipeContext context, Drink drink)
    {
        HoldQuillaia(context, drink);
        double benzoic = 0, sorbic = 0, phosphoric = 0, malic = 0, acetic = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (!IsAdded(part)) continue;
            benzoic += part.Grams.Typical * part.Material!.Of(Component.Benzoic);
            sorbic += part.Grams.Typical * part.Material.Of(Component.Sorbic);
            phosphoric += part.Grams.Typical * part.Material.Of(Component.Phosphoric);
            malic += part.Grams.Typical * part.Material.Of(Component.Malic);
            acetic += part.Grams.Typical * part.Material.Of(Component.Acetic);
        }

        if (benzoic <= 0 && sorbic <= 0 && phosphoric <= 0 && malic <= 0 && acetic <= 0) return;
        double litres = LitresOf(context, drink);
        if (!(litres > 0)) return;

        // By strength: drinks without alcohol, mixtures under 15 % vol, and over that none at all.
        var abv = context.Fact(Fact.Abv);
        bool mixed = abv.IsKnown ? abv.Low > Alcoholic.Value : context.Profile.Grams[(int)Component.Ethanol] > 0;
        bool spirit = abv.IsKnown && abv.Low > Spirit.Value;
        var sorbicLimit = spirit ? None : mixed ? Mixed : benzoic > 0 ? SorbicBesideBenzoic : SorbicEu;
        var benzoicLimit = spirit ? None : mixed ? Mixed : BenzoicEu;
        Hold(context, Component.Benzoic, "benzoic acid", benzoic * 1000 / litres, benzoicLimit);
        if (mixed || (abv.IsKnown && abv.High >= AlcoholicUs.Value) || HoldsSpirit(context))
        {
            Hold(context, Component.Malic, "malic acid", malic * 100 / context.Profile.Mass, MalicUs);
            Hold(context, Component.Acetic, "acetic acid", acetic * 100 / context.Profile.Mass, AceticUs);
        }

        Hold(context, Component.Benzoic, "sodium benzoate", benzoic * AsBenzoate.Value * 1e6 / context.Profile.Mass, BenzoateUs);
        Hold(context, Component.Benzoic, "benzoic acid", benzoic * 1e6 / context.Profile.Mass, BenzoicCa);

        // The item of the Code is drinks without alcohol.
        if (!mixed) Hold(context, Component.Benzoic, "benzoic acid", benzoic * 1e6 / context.Profile.Mass, BenzoicAnz);
        Hold(context, Component.Sorbic, "sorbic acid", sorbic * 1000 / litres, sorbicLimit);
        Hold(context, Component.Phosphoric, "phosphoric acid (as P2O5)", phosphoric * AsPentoxide.Value * 1000 / litres, PhosphoricEu);
    }

    /// <summary>Whether a spirit is poured, however much of something else there is to it.</summary>
    private static bool HoldsSpirit(RecipeContext context) =>
        context.Profile.Parts.Any(static p => p.IsWeighed && p.Phase != PartPhase.Beside && p.Material is { Kind.IsSpirit: true });

    /// <summary>
    /// Volume of all serves, L; where it cannot be worked out, that of its mass as water, which is rather too much than too little.
    /// </summary>
    private static double LitresOf(RecipeContext context, Drink drink) =>
        context.Fact(Fact.ServedVolume) is { IsKnown: true, Value: > 0 } volume
            ? volume.Value * drink.ServesOrOne / 1000
            : context.Profile.Mass / 1000;

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

        if (most is not null) Report(context, most, name, value, limit);
    }

    /// <summary>The dry matter of the extract in a litre: its law counts it without water.</summary>
    private static void HoldQuillaia(RecipeContext context, Drink drink)
    {
        double grams = 0;
        Part? most = null;
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Hazard.Id != "quillaia-extract" || double.IsNaN(load.Grams)) continue;
            grams += load.Grams * (1 - (context.Profiles.MaterialOf(load.Id)?.Of(Component.Water) ?? 0));
            most ??= load.Part;
        }

        if (most is null || !QuillaiaEu.AppliesIn(context.Settings)) return;
        double value = 1000 * grams / LitresOf(context, drink);
        if (value > QuillaiaEu.Value) Report(context, most, "quillaia extract (dry)", value, QuillaiaEu);
    }

    private static void Report(RecipeContext context, Part most, string name, double value, Limit limit)
    {
        string unit = limit.Unit.Replace("mg/l", "mg/L");
        context.Report(new(Rule)
        {
            AskedLevel = limit.LevelCap,
            At = context.AmountOf(most.Line),
            Key = limit.Id,
            Message = $"The drink holds {Say.Number(value, value < 10 ? 2 : 0)} {unit} of {name}, mostly from "
                + $"`{most.Line.Item.Or("")}`. The limit is {Say.Number(limit.Value)} {unit} ({limit.Source}).",
            Advice = limit.Value > 0
                ? $"Reduce it to at most {Say.Number(100 * limit.Value / value, 0)} %."
                : "Leave it out: a drink of that strength needs none.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(name, value, limit.Unit), Proof.Of(limit)],
        });
    }

    /// <summary>
    /// Whether what a part holds was added: coffee, fruit and milk bring such acids by nature, which the law does not count.
    /// </summary>
    private static bool IsAdded(Part part) =>
        part.IsWeighed && part.Phase != PartPhase.Beside && part.Material is { Kind.IsFood: false };
}
