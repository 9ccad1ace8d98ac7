using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

/// <summary>SL5023: a dried good, salt or sugar too moist to keep.</summary>
internal sealed class DriedTooMoist : PrepRule
{
    private static readonly Limit Mould = Limits.Of("dried-water-activity-mould");
    private static readonly Limit Safety = Limits.Of("dried-water-activity-safety");

    private static readonly RuleInfo Rule = new("SL5023", "dried-too-moist", "A dried good is too moist to keep at room temperature", Level.Error)
    {
        Safety = true,
        IsConsequence = true,
        Needs = [Fact.WaterActivity],
        Limits = [Mould.Id, Safety.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context, Prep prep)
    {
        if (!context.Profile.IsSolid && !prep.Family.OrNone().IsDry) return;
        double celsius = Storage.Celsius(prep, context.Settings), days = Storage.Days(prep);
        if (celsius < StoredTooWarm.LimitOf(context.Settings).Value || !(days > SpecialCases.MarkedFromDays)) return;
        var activity = context.Fact(Fact.WaterActivity);
        if (!activity.IsKnown || activity.Low <= Mould.Value) return;
        bool unsafeToo = activity.Low > Safety.Value;
        var limit = unsafeToo ? Safety : Mould;
        bool measured = KeepingVerdicts.IsMeasured(activity);
        context.Report(new Finding(Rule)
        {
            AskedLevel = unsafeToo ? null : Level.Warning,
            Place = measured ? context.At(prep.Measured!.WaterActivity.Span) : KeepingWords.At(context, prep),
            Subject = context.Id,
            Path = measured ? "measured.waterActivity" : "keep.for",
            Message = $"Its water activity {(measured ? "is measured as" : "comes to")} {Say.Range(activity.Value, activity.Low, activity.High, "")}, above {Say.Number(limit.Value)}: {(unsafeToo ? "bacteria" : "moulds")} can grow on it at room temperature ({limit.Source}).",
            Advice = $"Dry it further until it measures at most {Say.Number(Mould.Value)}, or keep it cold.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of(Fact.WaterActivity, activity, true), Proof.Of(limit)],
        });
    }
}
