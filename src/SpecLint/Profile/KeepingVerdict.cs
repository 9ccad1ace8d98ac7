using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// What the tables of the Food Code say of a preparation. None of them says that it is fit to drink: the best says only that
/// time and temperature need not be its control.
/// </summary>
public enum KeepingVerdict
{
    /// <summary>Not shown: treat as controlled by time and temperature.</summary>
    Unknown,

    /// <summary>The code names such food: controlled by time and temperature.</summary>
    ListedAsControlled,

    /// <summary>The table asks for a product assessment: treat as controlled by time and temperature.</summary>
    AssessmentRequired,

    /// <summary>Not controlled by time and temperature, by a measured value with its margin.</summary>
    NotControlled,
}

/// <summary>The one place where pH and water activity become a verdict of keeping.</summary>
internal static class KeepingVerdicts
{
    private static readonly Reach AnyPh = new(0, 14);
    private static readonly Reach AnyActivity = new(0, 1);

    /// <summary>The verdict of a pair of values.</summary>
    /// <param name="table"><c>A</c> for what was heated by a recorded process and then packed, else <c>B</c>.</param>
    /// <param name="ph">pH with its range; only a measured one may clear, a computed one may only make the verdict worse.</param>
    /// <param name="waterActivity">Water activity with its range, likewise.</param>
    /// <param name="listed">Whether the code names such food as controlled.</param>
    /// <returns>The verdict, and whether the measured figures clear at their own value but not over their whole range.</returns>
    public static (KeepingVerdict Verdict, bool NearLimit) Of(string table, FactValue ph, FactValue waterActivity, bool listed)
    {
        bool phMeasured = IsMeasured(ph), activityMeasured = IsMeasured(waterActivity);

        // A pH that is only computed clears nothing, whatever the water activity is.
        bool mayClear = phMeasured || (activityMeasured && !ph.IsKnown);
        bool near = false;
        if (mayClear)
        {
            var phBand = phMeasured ? new Reach(ph.Low, ph.High) : AnyPh;
            var activityBand = activityMeasured ? new Reach(waterActivity.Low, waterActivity.High) : AnyActivity;
            if (KeepingTables.NotControlled(table, activityBand, phBand).All) return (KeepingVerdict.NotControlled, false);
            var phPoint = phMeasured ? new Reach(ph.Value, ph.Value) : AnyPh;
            var activityPoint = activityMeasured ? new Reach(waterActivity.Value, waterActivity.Value) : AnyActivity;
            near = KeepingTables.NotControlled(table, activityPoint, phPoint).All;
        }

        var worstPh = ph.IsKnown ? new Reach(ph.Low, ph.High) : AnyPh;
        var worstActivity = waterActivity.IsKnown ? new Reach(waterActivity.Low, waterActivity.High) : AnyActivity;
        if (listed) return (KeepingVerdict.ListedAsControlled, near);
        bool none = !KeepingTables.NotControlled(table, worstActivity, worstPh).Any;
        return (none || (phMeasured && activityMeasured) ? KeepingVerdict.AssessmentRequired : KeepingVerdict.Unknown, near);
    }

    /// <summary>Whether a fact was measured.</summary>
    public static bool IsMeasured(FactValue fact) => fact.IsKnown && fact.From == "measured";
}

/// <summary>How a preparation stands to the rules of keeping.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="Table">The table that it rests on, <c>A</c> or <c>B</c>.</param>
/// <param name="NearLimit">Whether the measured figures clear at their own value but not over their whole range.</param>
/// <param name="What">Why it needs cold unless shown otherwise.</param>
/// <param name="Part">The part that brings this; <see langword="null"/> where none does.</param>
/// <param name="Ph">The pH used.</param>
/// <param name="WaterActivity">The water activity used.</param>
/// <param name="Abv">The strength, % vol.</param>
internal sealed record KeepingState(
    KeepingVerdict Verdict, string Table, bool NearLimit, Perishable What, Part? Part, FactValue Ph, FactValue WaterActivity, FactValue Abv)
{
    private static readonly Limit NoGrowth = Limits.Of("alcohol-no-growth-practice");
    private static readonly Limit SomeGrowth = Limits.Of("alcohol-no-growth");
    private static readonly Limit TablePh = Limits.Of("table-b-ph");
    private static readonly Limit UpperPh = Limits.Of("acidified-ph");
    private static readonly ThermalResistance Listeria = ThermalResistance.ById("listeria")!;

    /// <summary>What would need cold in it but for the strength of its spirit: it does again where that is thinned out.</summary>
    public Perishable HeldBySpirit { get; private init; }

    /// <summary>Whether it needs cold only by what spirit held in a preparation that is thinned out here.</summary>
    public bool IsThinned { get; private init; }

    /// <summary>Whether it is dried by its method: the rules of drying judge it, and the clock of cold food is none of its own.</summary>
    public bool IsDried { get; private init; }

    /// <summary>
    /// Whether it is a solid that the rules of drying judge, or that is dry by what it is made of. One that holds food whose file says that it
    /// needs cold, and of which nobody knows how much water is free in it, is not shown to be.
    /// </summary>
    public bool StaysDry { get; private init; }

    /// <summary>Whether some part of it needs cold.</summary>
    public bool HoldsPerishable => What != Perishable.None;

    /// <summary>Whether it is shown that it is to be controlled, by the code's list or by figures.</summary>
    public bool IsShownControlled => HoldsPerishable && Verdict is KeepingVerdict.ListedAsControlled or KeepingVerdict.AssessmentRequired;

    /// <summary>Whether it is neither shown to need cold nor shown not to.</summary>
    public bool IsOpen => HoldsPerishable && Verdict == KeepingVerdict.Unknown;

    /// <summary>Whether its whole range of strength is at or over the strength at which nothing grows in practice; that clears nothing.</summary>
    public bool IsStrong => Abv.IsKnown && Abv.Low >= NoGrowth.Value;

    /// <summary>Whether pathogens are not known to grow at its strength; that clears nothing.</summary>
    public bool IsHalfStrong => Abv.IsKnown && Abv.Low >= SomeGrowth.Value;

    /// <summary>Whether the whole range of its pH, measured or computed, lies under the pH of table B; that clears only where measured.</summary>
    public bool IsSour => Ph.IsKnown && Ph.High < TablePh.Value;

    /// <summary>Whether the whole range of its pH, measured or computed, lies over 4.6: low in acid.</summary>
    public bool IsLowAcid => Ph.IsKnown && Ph.Low > UpperPh.Value;

    /// <summary>How a preparation stands.</summary>
    public static KeepingState Of(Prep prep, RecipeProfile profile, ProfileSet set)
    {
        var abv = profile.Get(Fact.Abv);
        bool strong = abv.IsKnown && abv.Low >= NoGrowth.Value;
        var what = Perishable.None;
        var held = Perishable.None;
        Part? because = null;
        bool extracted = false, thinned = false, moist = false;
        foreach (var part in profile.Parts)
        {
            bool thins = false;
            if (part.Phase == PartPhase.Beside || part.Material is null || part.Line.Role == LineRole.Fining) continue;
            var of = Perishable.None;
            if (part.Item?.File is Prep inner && set.TryBefore(inner, profile) is { Keeping: { } keeping })
            {
                of = part.Item.ByProduct is null ? keeping.What : keeping.What == Perishable.None ? Perishable.Plant : keeping.What;

                // A dry blend of plants is what each of them is once water reaches it.
                if (of == Perishable.None && Perishables.IsExtracted(part, profile))
                {
                    of = Perishables.In(part, profile);
                    extracted = true;
                }

                moist |= keeping is { HoldsPerishable: true, StaysDry: false };
                thins = of == Perishable.None && keeping.HeldBySpirit != Perishable.None;
                if (thins) of = keeping.HeldBySpirit;
                thins |= keeping.IsThinned;
            }
            else
            {
                of = Perishables.In(part, profile);
                extracted |= Perishables.IsExtracted(part, profile);
                moist |= of != Perishable.None && part.Phase == PartPhase.Mix && part.Material.Ingredient?.KeepsCold.Or(false) == true;
            }

            // Spirit takes the water out of a plant part's reach: an infusion has no part that needs cold, if it stays strong.
            if (strong
                && (part.Phase == PartPhase.TakenOut
                    || thins
                    || of is Perishable.Plant or Perishable.ListedPlant
                    || (of == Perishable.NutOrPulse && part.Material.Kind.IsNut)))
            {
                if (of > held) held = of;
                continue;
            }

            if (of == Perishable.NutOrPulse && part.Material.Kind.IsNut && profile.IsSolid) continue;
            if (of > what)
            {
                what = of;
                because = part;
                thinned = thins;
            }
        }

        var ph = profile.Get(Fact.Ph);

        // What a dry plant gives off in water is not what it is made of: nothing computed tells the pH of tea or of a stock.
        var computed = ph;
        if (extracted && !KeepingVerdicts.IsMeasured(ph)) ph = FactValue.Open("what a dried plant gives off in water is not known");
        else if (!ph.IsKnown) ph = MixedPh.Of(profile, ph);
        var activity = profile.Get(Fact.WaterActivity);
        bool dried = profile.IsSolid && Techniques.Has(prep, static v => v.Dries);
        string table = IsHeatedAndPacked(prep) ? "A" : "B";
        var (verdict, near) = KeepingVerdicts.Of(table, KeepingVerdicts.IsMeasured(activity) ? computed : ph, activity, Perishables.IsListed(what));
        return new KeepingState(verdict, table, near, what, because, ph, activity, abv)
        {
            HeldBySpirit = held,
            IsThinned = thinned,
            IsDried = dried,
            StaysDry = profile.IsSolid && (dried || activity.IsKnown || !moist),
        };
    }

    /// <summary>
    /// Whether the method records a heating that table A rests on (six decimal reductions of Listeria by a step with temperature
    /// and time) in the closed pack, or right before it is packed: nothing is done to it in between.
    /// </summary>
    private static bool IsHeatedAndPacked(Prep prep)
    {
        if (!Storage.IsSealed(prep)) return false;
        bool heated = false, packed = false;
        foreach (var step in prep.Method)
        {
            if (ReductionOf(step) is { } reduction && Listeria.TargetLog is { } target && reduction >= target)
            {
                heated = true;
            }
            else if (step.Verb.Seals)
            {
                packed = true;
            }
            else if (!(heated && packed && step.Verb.Keeps && !step.Verb.Opens))
            {
                // Whatever is done to it in the open, straining, funnelling, cooling, lets in what the heat had killed.
                heated = false;
                packed = false;
            }
        }

        return heated && packed;
    }

    /// <summary>Least decimal reduction of Listeria by one step; <see langword="null"/> where the step gives no temperature or no time.</summary>
    internal static double? ReductionOf(Step step)
    {
        var heat = step.To.IsGiven ? step.To : step.At;
        if (!WetHeat.IsPossible(step)) return null;
        if (!heat.IsGiven || !step.For.IsGiven || heat.Value.Dimension != Dimension.Temperature || step.For.Value.Dimension != Dimension.Duration) return null;
        var t = new Celsius(heat.Value.BaseLow);
        ReadOnlySpan<TemperatureReading> record = [new(0, t), new(step.For.Value.BaseLow / 60, t)];
        return Lethality.Reduction(Listeria, record)?.Least;
    }
}
