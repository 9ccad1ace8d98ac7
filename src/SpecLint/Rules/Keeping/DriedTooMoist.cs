using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5023", "dried-too-moist", "A dried good is too moist to keep at room temperature", Level.Error, Safety = true, IsConsequence = true,
    Needs = [Fact.WaterActivity])]
[Limit("dried-water-activity-mould", "Mould")]
[Limit("dried-water-activity-safety", "Safety")]
[Limit("dried-moist-share", "Moist")]
[Limit("bound-dry-matter", "DryMatter")]
internal sealed partial class DriedTooMoist : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!context.Profile.IsSolid && !prep.Family.OrNone().IsDry) return;
        double celsius = Storage.Celsius(prep, context.Settings), days = Storage.Days(prep);
        if (celsius < StoredTooWarm.LimitOf(context.Settings).Value || !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays)) return;
        var activity = context.Fact(Fact.WaterActivity);
        bool measured = KeepingVerdicts.IsMeasured(activity);
        if (!activity.IsKnown || activity.Low <= Mould.Value)
        {
            if (!measured) Open(context, prep, activity);
            return;
        }

        bool unsafeToo = activity.Low > Safety.Value;
        var limit = unsafeToo ? Safety : Mould;
        context.Report(new(Rule)
        {
            AskedLevel = unsafeToo ? null : Level.Warning,
            At = measured
                ? context.At(prep.Measured!.WaterActivity.Span, "measured.waterActivity")
                : new(KeepingWords.At(context, prep), "keep.for"),
            Message = $"Its water activity {(measured ? "is measured as" : "comes to")} "
                + $"{Say.Range(activity.Value, activity.Low, activity.High, "")}, above {Say.Number(limit.Value)}: "
                + $"{(unsafeToo ? "bacteria" : "moulds")} can grow on it at room temperature ({limit.Source}).",
            Advice = $"Dry it further until it measures at most {Say.Number(Mould.Value)}, or keep it cold.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.WaterActivity, activity, true), Proof.Of(limit)],
        });
    }

    /// <summary>What holds a moist part is not shown to be dry, where nobody can work its water activity out.</summary>
    private static void Open(RecipeContext context, Prep prep, FactValue activity)
    {
        // Whether it was dried enough is asked by the rule of drying, where no mass tells the end.
        if (context.Profile.Keeping!.IsDried && (DryingWithoutEndPoint.Speaks(prep) || HoldsItsDryMatter(context, prep))) return;
        double mass = context.Profile.Mass, water = mass > 0 ? 100 * context.Profile.Grams[(int)Science.Component.Water] / mass : 100;
        if (prep.Target is { WaterActivity.IsGiven: true }
            || !context.Profile.Parts.Any(static p => p.Phase == PartPhase.Mix
                && p.Material is { } m
                && 100 * m.Of(Science.Component.Water) > Moist.Value))
            return;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = Level.Warning,
            At = new(KeepingWords.At(context, prep), "measured.waterActivity"),
            Message = $"By its amounts {Say.Number(water, 0)} % of it is water, and nothing shows its water activity: over "
                + $"{Say.Number(Mould.Value)} moulds can grow on it at room temperature ({Mould.Source}).",
            Advice = $"Measure the water activity and dry it until it is {Say.Number(Mould.Value)} or less, or keep it cold.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.WaterActivity, activity, true), Proof.Of(Mould)],
        });
    }

    /// <summary>
    /// Whether the yield is given and is not lighter than the dry matter that goes in: a lighter one tells nothing of the water left.
    /// </summary>
    private static bool HoldsItsDryMatter(RecipeContext context, Prep prep)
    {
        if (!prep.Yield.IsGiven) return false;
        double dry = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Mix && part.IsWeighed && part.Material is { } material)
                dry += KeepingWords.DryGramsOf(part, material);
        }

        return prep.Yield.Value.Dimension != Reading.Dimension.Mass || prep.Yield.Value.BaseHigh >= dry * (1 - (DryMatter.Value / 100));
    }
}
