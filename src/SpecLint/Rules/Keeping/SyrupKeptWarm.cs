using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Keeping;

[Rule(
    "SL5025", "syrup-kept-warm", "Sugar in water is too thin to keep at room temperature", Level.Error, Safety = true, IsConsequence = true,
    Needs = [Fact.WaterActivity, Fact.Ph, Fact.Abv, Fact.Sugar])]
[Limit("table-b-water-activity", "Table")]
[Limit("syrup-water-activity", "Yeast")]
[Limit("alcohol-no-growth", "NoGrowth")]
[Limit("yeast-sugar", "Sugar")]
internal sealed partial class SyrupKeptWarm : PrepRule
{
    private const string NoAlcohol = "Its strength is not known, so no alcohol is shown to keep it, nor is its water activity known";
    private const string Sweet = "It is sweet, and its water activity is not known";

    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.IsSolid || SpecialCases.IsFerment(prep)) return;
        double celsius = Storage.Celsius(prep, context.Settings), days = Storage.Days(prep);
        bool unknown = double.IsNaN(celsius);
        if ((!unknown && !Storage.IsAtRoom(celsius)) || !Storage.MayOutlast(prep, SpecialCases.MarkedFromDays)) return;
        var state = context.Profile.Keeping!;
        if (state.HoldsPerishable || state.IsStrong || state.Verdict == KeepingVerdict.NotControlled) return;
        var activity = state.WaterActivity;

        // A wine, beer or liqueur of which nobody wrote the strength may hold no alcohol.
        bool weak = !state.Abv.IsKnown
            && context.Profile.Parts.Any(
                static p => p.Phase != PartPhase.Beside && p.Material is { } m && (m.Unknown & Unknowns.Strength) != 0);

        // What holds no sugar to speak of (salt water, acid in water, bitters) feeds nothing.
        var sugar = context.Fact(Fact.Sugar);
        if (!weak
            && (sugar.IsKnown
                ? sugar.Value < Sugar.Value && !context.Profile.Parts.Any(HoldsUnnamedSugar)
                : !context.Profile.Parts.Any(static p => p.Phase != PartPhase.Beside && p.Material is { Kind.Sweetens: true })))
            return;
        if (!activity.IsKnown)
        {
            Open(context, prep, days, unknown ? "" : $" at {KeepingWords.Degrees(celsius)}", weak);
            return;
        }

        bool thin = !state.IsHalfStrong && activity.Low >= Table.Value && !state.IsSour;
        if (activity.Low <= Yeast.Value || (unknown && !thin)) return;
        var limit = thin ? Table : Yeast;
        string where = unknown ? "at an unstated temperature" : $"at {KeepingWords.Degrees(celsius)}";
        string over = thin
            ? $"not below the {Say.Number(limit.Value)} under which table B asks for no cold"
            : $"above the {Say.Number(limit.Value)} at which yeasts and moulds grow";
        context.Report(new(Rule)
        {
            Answer = unknown || double.IsNaN(days) ? Answer.NotShown : Answer.Broken,
            AskedLevel = thin && !unknown && !double.IsNaN(days) ? null : Level.Warning,
            At = new(KeepingWords.AtTemperature(context, prep), "keep.at"),
            Message = $"It is kept {KeepingWords.ForDays(days)} {where} with a water activity of "
                + $"{Say.Range(activity.Value, activity.Low, activity.High, "")}, {over} ({limit.Source}).",
            Advice = thin ? "Keep it cold, or make it 2:1 by weight, which is below the limit." : "Keep it cold, or make it richer.",
            Caution = thin ? KeepingWords.Caution : null,
            Evidence = [.. KeepingWords.Evidence(context, state), Proof.Of(limit)],
        });
    }

    /// <summary>
    /// Whether a part sweetens by its kind, and its file gives its water or dry matter and no sugar: it is not free of it.
    /// </summary>
    private static bool HoldsUnnamedSugar(Part part) =>
        part is { Phase: not PartPhase.Beside, Material: { IsOwn: true, Kind.Sweetens: true, Ingredient: { } own } }
            && !own.Values.Keys.Any(static k =>
                k.StartsWith("sugars.", StringComparison.Ordinal) || k.StartsWith("polyols.", StringComparison.Ordinal));

    /// <summary>What nobody can work out the water activity of is not shown to keep.</summary>
    private static void Open(RecipeContext context, Prep prep, double days, string where, bool weak) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = Level.Warning,
            At = new(KeepingWords.AtTemperature(context, prep), "keep.at"),
            Message = $"It is kept {KeepingWords.ForDays(days)}{where}. {(weak ? NoAlcohol : Sweet)}. Only a water activity below "
                + $"{Say.Number(Table.Value)} asks for no cold at any pH ({Table.Source}).",
            Advice = weak
                ? "Write the strength from its label into its file, or keep it cold."
                : "Write the amounts and the yield by mass, measure the °Brix or the water activity, or keep it cold.",
            Caution = KeepingWords.Caution,
            Evidence = double.IsNaN(days) ? [Proof.Of(Table)] : [Proof.Of("keep.for", days, "d"), Proof.Of(Table)],
        });
}
