using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Hazards;

[Rule(
    "SL6020", "caffeine-with-alcohol", "A drink combines a lot of caffeine with alcohol", Level.Warning, Safety = true,
    Needs = [Fact.Caffeine, Fact.Abv, Fact.ServedVolume])]
[Limit("caffeine-per-serve", "Serve")]
[Limit("caffeine-us", "Added")]
[Limit("declare-strength-from", "Strength")]
[Limit("guard-pure-caffeine", "Pure")]
internal sealed partial class CaffeineWithAlcohol : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (!MayHoldAlcohol(context)) return;
        var caffeine = context.Fact(Fact.Caffeine);
        if (caffeine.IsKnown)
            Hold(context, drink, caffeine);
        else if (MostMilligrams(context) > Serve.Value * drink.ServesOrOne && OpenSource(context.Profile) is { } source)
            Open(context, source, caffeine);
    }

    /// <summary>
    /// The most caffeine that its sources can bring together, mg: it may be known to be little where the amount of something
    /// else is not. Infinite where a source is not weighed, what it holds is not given, or its share of the drink counts.
    /// </summary>
    private static double MostMilligrams(RecipeContext context)
    {
        double most = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Material is not { } material
                || (material.Unknown & Unknowns.Caffeine) != 0
                || HidesUnknown(part, context.Profile, []))
                return double.PositiveInfinity;
            double perGram = material.Traces.Caffeine.High;
            if (perGram <= 0) continue;
            if ((!part.IsWeighed && !IsShareOfOne(part))
                || (Added.AppliesIn(context.Settings) && (MayBeAdded(part, context.Profile) || HoldsPure(part, context.Profile))))
                return double.PositiveInfinity;
            double grams = part.IsWeighed
                ? part.Grams.High
                : part.Line.Amount.Value.BaseHigh
                    * context.Recipe.ServesOrOne
                    * Amounts.TenfoldPour.LimitOf(material)!.Value
                    * material.Density;
            most += grams * perGram;
        }

        // What shows only deeper in the tree was not added up.
        foreach (var leaf in RecipeTree.Of(context.Profile))
        {
            if (leaf.Part.Phase != PartPhase.Beside
                && leaf.Part.Material is { } material
                && !(material.Traces.Caffeine.High > 0)
                && HoldsCaffeine(leaf.Ingredient))
                return double.PositiveInfinity;
        }

        return most > 0 ? most : double.PositiveInfinity;
    }

    /// <summary>Whether a part is a preparation that something goes into of which nothing is known, through others too.</summary>
    private static bool HidesUnknown(Part part, RecipeProfile profile, HashSet<Recipe> seen) =>
        part.Item?.File is Prep inner
        && seen.Add(inner)
        && profile.Set.TryBefore(inner, profile) is { } of
        && of.Parts.Any(p => p.Phase != PartPhase.Beside && (p.Material is null || HidesUnknown(p, of, seen)));

    /// <summary>
    /// Whether a liquid is given as a share of one drink ("1/3"): it is at most that share of the largest pour of its kind.
    /// </summary>
    private static bool IsShareOfOne(Part part) =>
        part.Line.Amount is { IsGiven: true, Value: { Dimension: Reading.Dimension.Count, BaseHigh: <= 1 } }
            && part.Material is { State: MaterialState.Liquid } material
            && Amounts.TenfoldPour.LimitOf(material) is not null;

    /// <summary>Whether there is alcohol in it, or may be: a strength that cannot be worked out is not shown to be low.</summary>
    private static bool MayHoldAlcohol(RecipeContext context)
    {
        var abv = context.Fact(Fact.Abv);
        if (abv.IsKnown) return abv.High > Strength.Value;
        double ethanol = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (part.Material is not { } material || (material.Unknown & Unknowns.Strength) != 0) return true;
            if (part.IsWeighed) ethanol += part.Grams.Typical * material.Of(Component.Ethanol);
            else if (material.Of(Component.Ethanol) > 0) return true;
        }

        return ethanol > Strength.Value / 100 * context.Profile.Mass;
    }

    private static void Hold(RecipeContext context, Drink drink, FactValue caffeine)
    {
        Part? most = null;
        double brought = 0, byNature = 0, mayBeAdded = 0;
        bool holdsPure = false;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is null || !part.IsWeighed || part.Phase == PartPhase.Beside) continue;
            double mg = part.Grams.Typical * part.Material.Traces.Caffeine.Typical;
            if (mg <= 0) continue;
            holdsPure |= HoldsPure(part, context.Profile);
            if (MayBeAdded(part, context.Profile)) mayBeAdded += mg;
            else byNature += mg;
            if (mg <= brought) continue;
            brought = mg;
            most = part;
        }

        if (most is null) return;
        double perKilogram = caffeine.Value * drink.ServesOrOne / (context.Profile.Mass / 1000);
        bool dose = caffeine.Value > Serve.Value;

        // Coffee, tea and cocoa bring theirs by nature: the limit by mass is about caffeine that is added.
        bool added = Added.AppliesIn(context.Settings) && perKilogram > Added.Value && mayBeAdded >= byNature && !dose;

        // Caffeine added as such to alcohol is not a permitted additive in the US, in any amount.
        bool pure = Added.AppliesIn(context.Settings) && !dose && holdsPure;
        if (!dose && !added && !pure) return;
        string over = pure
            ? "added as such, which is not a permitted additive in alcoholic drinks in the US (FDA 2010, from memory)"
            : $"above the {Say.Number(Added.Value)} mg/kg limit for alcoholic drinks ({Added.Source})";
        context.Report(new(Rule)
        {
            Answer = dose && caffeine.Low <= Serve.Value ? Answer.NotShown : Answer.Broken,
            At = context.AmountOf(most.Line),
            Message = dose
                ? $"A drink with alcohol{OfStrength(context)} holds {Say.Fact(Fact.Caffeine, caffeine)} of caffeine, above the "
                    + $"{Say.Number(Serve.Value)} mg of a single dose ({Serve.Source}). Caffeine hides from guests how drunk they are."
                : $"The drink holds {Say.Number(perKilogram, 0)} mg/kg of caffeine, mostly from `{most.Line.Item.Or("")}`, {over}.",
            Advice = "Use less of it, or a decaffeinated version, and do not serve it after many other drinks.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of(Fact.Caffeine, caffeine), Proof.Of("caffeine", perKilogram, "mg/kg"), Proof.Of(dose ? Serve : Added)],
        });
    }

    /// <summary>Whether the caffeine of a part may be added: coffee, tea and cocoa bring theirs by nature.</summary>
    private static bool MayBeAdded(Part part, RecipeProfile profile) =>
        RecipeTree.AnyIn(part, profile, static m => m.Kind.MayHoldAddedCaffeine && m.Traces.Caffeine.High > 0);

    /// <summary>Whether caffeine as such is in a part, itself or in what its preparation is made of.</summary>
    private static bool HoldsPure(Part part, RecipeProfile profile) =>
        RecipeTree.AnyIn(part, profile, static m => m.Traces.Caffeine.High > Pure.Value);

    private static string OfStrength(RecipeContext context) =>
        context.Fact(Fact.Abv) is { IsKnown: true } abv ? $" ({Say.Fact(Fact.Abv, abv)})" : "";

    /// <summary>The first part that brings caffeine, or whose own caffeine is not given.</summary>
    private static Part? OpenSource(RecipeProfile profile)
    {
        foreach (var part in profile.Parts)
        {
            if (part.Phase != PartPhase.Beside && part.Material is { MayHoldCaffeine: true }) return part;
        }

        foreach (var leaf in RecipeTree.Of(profile))
        {
            if (leaf.Part.Phase != PartPhase.Beside && HoldsCaffeine(leaf.Ingredient)) return leaf.Part;
        }

        return null;
    }

    private static bool HoldsCaffeine(Ingredient ingredient) => ingredient.Values.TryGetValue("caffeine", out var given) && given.High > 0;

    /// <summary>How much caffeine there is, nobody can tell: it is not shown to be little.</summary>
    private static void Open(RecipeContext context, Part source, FactValue caffeine) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            At = HazardWords.OpenAmountOf(context, source.Line),
            Key = "unknown",
            Message = $"The drink holds alcohol and the caffeine of `{source.Line.Item.Or("")}`, and how much caffeine is not known: "
                + $"{caffeine.OpenBecause ?? "it is not given"}. Above {Say.Number(Serve.Value)} mg in a drink ({Serve.Source}) it hides "
                + "from guests how drunk they are.",
            Advice = "Write the amount in the line, and `caffeine` in the ingredient's file: the maker's figure, or that of a similar brew "
                + "by `like`.",
            Caution = HazardWords.Caution,
            Evidence = [Proof.Of("not known", caffeine.OpenBecause ?? "the caffeine"), Proof.Of(Serve)],
        });
}
