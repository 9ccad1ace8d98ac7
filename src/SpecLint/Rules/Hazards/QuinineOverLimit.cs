using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6006", "quinine-over-limit", "A drink holds more quinine than the law allows", Level.Error, Safety = true, IsConsequence = true,
    Needs = [Fact.Quinine, Fact.ServedVolume, Fact.Abv])]
[Limit("quinine-us", "Most")]
[Limit("quinine-eu-soft", "Soft")]
[Limit("quinine-eu-strong", "Strong")]
[Limit("quinine-anz", "Tonic")]
[Limit("declare-strength-from", "Strength")]
[Limit("tolerance-extraction-low", "Extraction")]
[Limit("guard-most-dilution", "MostDilution")]
internal sealed partial class QuinineOverLimit : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        var quinine = context.Fact(Fact.Quinine);
        var volume = context.Fact(Fact.ServedVolume);
        double serves = drink.ServesOrOne;

        // Where what is served cannot be computed, what goes in undiluted is the least that it can be.
        double millilitres = volume.IsKnown ? volume.Value : context.Profile.InputVolume / serves;
        if (context.Profile.HazardLoads.FirstOrDefault(l => IsBark(l) && (double.IsNaN(l.Grams) || !(millilitres > 0))) is { } open)
        {
            NotShown(context, open);
            return;
        }

        if (!(millilitres > 0)) return;
        var (low, typical, high) = quinine.IsKnown
            ? (quinine.Low, quinine.Value, quinine.High)
            : (0, Weighed(context.Profile) / serves, 0);
        HazardLoad? from = null;
        foreach (var load in context.Profile.HazardLoads)
        {
            if (load.Hazard.Id is "quinine" or "house-tonic-syrup") from ??= load;
            if (!IsBark(load)) continue;
            var content = load.Hazard.Contents[0];
            low += load.Grams / serves * content.Low * (load.Strained ? Extraction.Value / 100 : 1);
            typical += load.Grams / serves * content.Typical;
            high += load.Grams / serves * content.High;
            from = load;
        }

        // Any part may bring it, a house's own too: the one that brings the most is named.
        Part? most = from?.Part;
        double brought = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (from is not null || part.Material is not { } material || !part.IsWeighed || part.Phase == PartPhase.Beside) continue;
            double mg = part.Grams.Typical * material.Traces.Quinine.Typical;
            if (mg <= brought) continue;
            brought = mg;
            most = part;
        }

        var limit = LimitOf(context);
        double perLitre = 1000 / millilitres;
        if (most is null || typical * perLitre <= limit.Value) return;

        // Where only the dilution is open, it is over the limit if it is after all the water that mixing can add.
        double mostMillilitres = volume.IsKnown
            ? volume.Value
            : AllIsWeighed(context.Profile) ? millilitres * (1 + (MostDilution.Value / 100)) : double.PositiveInfinity;
        bool broken = low * 1000 / mostMillilitres > limit.Value;
        bool law = limit.AppliesIn(context.Settings);
        context.Report(new(Rule)
        {
            Answer = broken ? Answer.Broken : Answer.NotShown,
            AskedLevel = broken && law && limit.LevelCap is null ? null : Level.Warning,
            At = context.AmountOf(most.Line),
            Message = $"The drink comes to {Say.Range(typical * perLitre, low * perLitre, high * perLitre, "mg/L")} of quinine and "
                + $"related alkaloids from {(from is null ? $"`{most.Line.Item.Or("")}`" : HazardWords.NameOf(from))}. The limit is "
                + $"{Say.Number(limit.Value)} mg/L{(law ? "" : ", the yardstick here")} ({limit.Source}).",
            Advice = "Use less of it or lengthen it with soda, and name quinine on the menu.",
            Caution = HazardWords.Caution,
            Evidence = [new Evidence("quinine", typical * perLitre, low * perLitre, high * perLitre, "mg/L"), Proof.Of(limit)],
        });
    }

    private static bool IsBark(HazardLoad load) => load.Hazard.Id == "cinchona-bark" && load.Hazard.Contents.Count > 0;

    /// <summary>Bark of which nobody can tell how much is in the drink.</summary>
    private static void NotShown(RecipeContext context, HazardLoad load)
    {
        var limit = LimitOf(context);
        bool law = limit.AppliesIn(context.Settings);
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = law && limit.LevelCap is null ? null : Level.Warning,
            At = context.AmountOf(load.Part.Line),
            Message = $"{HazardWords.NameOf(load)} brings quinine, and nothing shows how much: its amount or the volume of the drink is "
                + $"not known. The limit is {Say.Number(limit.Value)} mg/L{(law ? "" : ", the yardstick here")} ({limit.Source}).",
            Advice = "Write the amounts of the preparation and of the drink, and its assay.",
            Caution = HazardWords.Caution,
            Evidence = [HazardWords.Of(context, load), Proof.Of(limit)],
        });
    }

    /// <summary>What the parts whose amount is known bring, mg, where something else of the drink is not known.</summary>
    private static double Weighed(RecipeProfile profile)
    {
        double mg = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Material is { } material && part.IsWeighed && part.Phase != PartPhase.Beside)
                mg += part.Grams.Typical * material.Traces.Quinine.Typical;
        }

        return mg;
    }

    private static bool AllIsWeighed(RecipeProfile profile) =>
        !profile.Parts.Any(static p => !p.IsWeighed && p.Phase != PartPhase.Beside);

    /// <summary>
    /// The limit in force: that of the US, of the EU and Great Britain by strength, of Australia and New Zealand; else that of the US as a
    /// yardstick.
    /// </summary>
    private static Limit LimitOf(RecipeContext context)
    {
        if (Most.AppliesIn(context.Settings)) return Most;
        bool alcoholic = context.Fact(Fact.Abv) is { IsKnown: true } abv && abv.Low > Strength.Value;
        if (Soft.AppliesIn(context.Settings)) return alcoholic ? Strong : Soft;
        return Tonic.AppliesIn(context.Settings) ? Tonic : Most;
    }
}
