using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Service;

/// <summary>Whether something can be used or served tonight.</summary>
public enum Readiness
{
    /// <summary>As it stands.</summary>
    Ready,

    /// <summary>If something is done or measured first.</summary>
    If,

    /// <summary>Not as it stands.</summary>
    No,
}

/// <summary>How a lot in stock stands on a day.</summary>
public sealed class LotCheck
{
    private static readonly Limit ColdHold = Limits.Of("food-code-cold-hold");
    private static readonly Limit DateMark = Limits.Of("food-code-date-mark");
    private static readonly Limit ColdHoldOfEngland = Limits.Of("cold-hold-gb");
    private static readonly Limit BrixTolerance = Limits.Of("target-tolerance-brix");
    private static readonly Limit PhTolerance = Limits.Of("target-tolerance-ph");

    private readonly List<string> reasons = [];
    private readonly List<string> conditions = [];

    private LotCheck(Lot lot, Stock stock, Item? item)
    {
        Lot = lot;
        Stock = stock;
        Item = item;
    }

    /// <summary>The lot.</summary>
    public Lot Lot { get; }

    /// <summary>The file that it stands in.</summary>
    public Stock Stock { get; }

    /// <summary>What it is a lot of; <see langword="null"/> where the id resolves to nothing.</summary>
    public Item? Item { get; }

    /// <summary>Id of what it is a lot of.</summary>
    public string Id => Item?.Id ?? Lot.Item.Or("");

    /// <summary>What people call it.</summary>
    public string Name => Item is { ByProduct: null } item ? item.File.Name.Or(item.Id) : Id;

    /// <summary>Whether it can be used.</summary>
    public Readiness Readiness => reasons.Count > 0 ? Readiness.No : conditions.Count > 0 ? Readiness.If : Readiness.Ready;

    /// <summary>Why it cannot be used, each a sentence without a full stop.</summary>
    public IReadOnlyList<string> Reasons => reasons;

    /// <summary>What is to be done before it is used.</summary>
    public IReadOnlyList<string> Conditions => conditions;

    /// <summary>Whether it is to be thrown away.</summary>
    public bool ThrowAway { get; private set; }

    /// <summary>Day made, or opened; <see langword="null"/> where not given.</summary>
    public CalendarDate? From { get; private set; }

    /// <summary>The last day on which it may be used; <see langword="null"/> where nothing sets one.</summary>
    public CalendarDate? UseBy { get; private set; }

    /// <summary>What sets the use-by.</summary>
    public string UseByFrom { get; private set; } = "";

    /// <summary>Mass left, g; NaN where it cannot be worked out.</summary>
    public double Grams { get; private set; } = double.NaN;

    /// <summary>
    /// The last day of something that keeps a number of days: the first day is day 1, and days in the freezer do not count.
    /// </summary>
    /// <param name="from">Day made or opened.</param>
    /// <param name="days">Days; a part of a day counts as the day it begins.</param>
    /// <param name="frozen">Times in the freezer; they may overlap.</param>
    /// <param name="on">The day of the check: an open time in the freezer runs to here.</param>
    public static CalendarDate LastDay(CalendarDate from, double days, IReadOnlyList<FrozenTime> frozen, CalendarDate on)
    {
        int left = (int)Math.Ceiling(Math.Min(days, 100_000));
        if (left < 1) left = 1;
        var day = from;

        // Day by day: a day counts unless it is spent frozen from its start.
        for (int used = 0; ; day = day.AddDays(1))
        {
            if (!IsFrozen(frozen, day, on)) used++;
            if (used >= left) return day;
        }
    }

    internal static LotCheck Of(Lot lot, Stock stock, ProfileSet profiles, CalendarDate on)
    {
        var book = profiles.Book;
        var check = new LotCheck(lot, stock, lot.Item.IsGiven ? book.Resolve(lot.Item.Value) : null);
        check.From = lot.Made.IsGiven ? lot.Made.Value : lot.Opened.IsGiven ? lot.Opened.Value : null;
        check.Weigh(profiles);
        if (check.Item is null)
        {
            check.reasons.Add($"{check.Id} is in no file of the book and not in the catalogue");
            return check;
        }

        if (check.Item is { ByProduct: null, File: Prep prep }) check.Judge(prep, profiles.Of(prep), book, on);
        else if (check.Item.File is Ingredient) check.Judge(profiles.MaterialOf(check.Id)!, book, on);
        else check.JudgeLabel(on);
        return check;
    }

    private static bool IsFrozen(IReadOnlyList<FrozenTime> frozen, CalendarDate day, CalendarDate on)
    {
        foreach (var time in frozen)
        {
            // It goes in on the first day and comes out on the last: from the first to the day before the last it stands still.
            var to = time.To ?? (on > time.From ? on : time.From);
            if (day >= time.From && day < to) return true;
        }

        return false;
    }

    private void Weigh(ProfileSet profiles)
    {
        if (!Lot.Amount.IsGiven || Item is null || profiles.MaterialOf(Id) is not { } material) return;
        var amount = Lot.Amount.Value;
        Grams = amount.Dimension switch
        {
            Dimension.Mass => amount.Base,
            Dimension.Volume => amount.Base * material.Density,
            Dimension.Count => amount.Base * material.Piece.Typical,
            _ => double.NaN,
        };
    }

    private void Judge(Prep prep, RecipeProfile profile, LinkedBook book, CalendarDate on)
    {
        var state = profile.Keeping!;
        bool cold = NeedsCold(state, profile, book);
        if (From is { } from)
        {
            var terms = profile.KeepingTerms!;
            double stated = Storage.Days(prep);
            if (!double.IsNaN(stated)) End(from, stated, "its recipe", on);
            if (cold && terms.Safety.IsSet) End(from, terms.Safety.Days, terms.Safety.From == DateMark.Id ? "the date mark of food that needs cold (Food Code 3-501.17)" : terms.Safety.From, on);
            if (double.IsNaN(stated))
            {
                var least = terms.Parts.Or(terms.Family.Days, terms.Family.From, terms.Family.Part);
                if (least.IsSet) End(from, least.Days, least.From, on);
            }
        }
        else if (state.HoldsPerishable)
        {
            reasons.Add("it bears no day on which it was made");
            ThrowAway = true;
        }
        else
        {
            conditions.Add("find out when it was made, and write the day on it");
        }

        JudgeDates(on, mustGo: cold || state.HoldsPerishable);
        double asked = Storage.Celsius(prep, book.Settings);
        JudgeTemperature(cold, Storage.IsFrozen(asked), asked, book.Settings);
        if (Readiness != Readiness.No) JudgeReadings(prep, profile, state, book, on);
    }

    private void Judge(Material material, LinkedBook book, CalendarDate on)
    {
        var what = Perishables.Of(material);
        bool hard = what is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant;
        bool cold = hard || what == Perishable.Juice;
        if (From is { } from)
        {
            if (hard) End(from, DateMark.Value, "the date mark of food that needs cold (Food Code 3-501.17)", on);
            if (material.Ingredient!.Values.TryGetValue("life.opened", out var opened) && opened.Dimension == Dimension.Duration)
            {
                double days = opened.High / 86400;
                if (what != Perishable.None) End(from, days, "how long it keeps once opened", on);
                else if (LastDay(from, days, Lot.Frozen, on) < on) conditions.Add($"taste it against a fresh one: open since {from}, past the {Say.Number(days, 0)} days that it usually holds its taste");
            }
        }
        else if (hard)
        {
            reasons.Add("it bears no day on which it was opened");
            ThrowAway = true;
        }

        JudgeDates(on, mustGo: what != Perishable.None);
        JudgeTemperature(cold, false, double.NaN, book.Settings);
    }

    private void JudgeLabel(CalendarDate on) => JudgeDates(on, mustGo: true);

    private void End(CalendarDate from, double days, string why, CalendarDate on)
    {
        if (double.IsNaN(days) || double.IsInfinity(days)) return;
        var last = LastDay(from, days, Lot.Frozen, on);
        if (UseBy is { } known && known <= last) return;
        UseBy = last;
        UseByFrom = why;
    }

    private void JudgeDates(CalendarDate on, bool mustGo)
    {
        if (Lot.UseBy.IsGiven && (UseBy is not { } known || Lot.UseBy.Value < known))
        {
            UseBy = Lot.UseBy.Value;
            UseByFrom = "its label";
        }

        if (From is { } from && from > on)
        {
            conditions.Add($"put its day right: it says {from}, which is still to come");
            return;
        }

        if (UseBy is { } last && last < on)
        {
            reasons.Add($"its use-by was {last} ({UseByFrom})");
            ThrowAway = mustGo || UseByFrom == "its label";
            return;
        }

        foreach (var time in Lot.Frozen)
        {
            if (time.To is null && time.From <= on) conditions.Add("thaw it in the refrigerator, and write the day of thawing on it");
        }
    }

    private void JudgeTemperature(bool cold, bool frozen, double asked, Settings settings)
    {
        if (Readiness == Readiness.No) return;
        var limit = settings.Jurisdictions is ["GB"] ? ColdHoldOfEngland : ColdHold;
        if (Lot.At is not { IsGiven: true, Value.Dimension: Dimension.Temperature } at)
        {
            if (cold || frozen) conditions.Add("take its temperature: none is written down");
            return;
        }

        double celsius = at.Value.BaseHigh;
        if (cold && celsius > limit.Value)
        {
            reasons.Add($"it stands at {Say.Number(celsius, 1)} °C, over {Say.Number(limit.Value, 0)} °C ({limit.Source})");
            ThrowAway = true;
        }
        else if (frozen && celsius > asked + 4)
        {
            conditions.Add($"bring it to {Say.Number(asked, 0)} °C: it stands at {Say.Number(celsius, 1)} °C, and its strength and texture count on the freezer");
        }
    }

    /// <summary>Whether it needs cold: neither its own reading nor that of the recipe shows that it need not be.</summary>
    private bool NeedsCold(KeepingState state, RecipeProfile profile, LinkedBook book)
    {
        if (!state.HoldsPerishable || profile.IsSolid) return false;
        if (Lot.Measured is not { } measured || !(measured.Ph.IsGiven || measured.WaterActivity.IsGiven)) return state.Verdict != KeepingVerdict.NotControlled;
        var ph = measured.Ph.IsGiven ? Read(measured.Ph.Value, Meters.PhHalfWidth(measured, book)) : state.Ph;
        var activity = measured.WaterActivity.IsGiven ? Read(measured.WaterActivity.Value, Meters.WaterActivityHalfWidth) : state.WaterActivity;
        return KeepingVerdicts.Of(state.Table, ph, activity, Perishables.IsListed(state.What)).Verdict != KeepingVerdict.NotControlled;
    }

    private static FactValue Read(Quantity quantity, double half) => new(quantity.Value, quantity.Low - half, quantity.High + half, "measured", null);

    private void JudgeReadings(Prep prep, RecipeProfile profile, KeepingState state, LinkedBook book, CalendarDate on)
    {
        var measured = Lot.Measured;
        bool rests = state.HoldsPerishable && state.Verdict == KeepingVerdict.NotControlled && KeepingVerdicts.IsMeasured(state.Ph);
        bool ferment = prep.Family.Or("") == "ferment";
        if (measured is not { Ph.IsGiven: true })
        {
            bool late = From is { } from && on.DaysSince(from) + 1 > DateMark.Value;
            if ((rests && late) || ferment || prep.Target is { Ph.IsGiven: true })
                conditions.Add(rests ? $"measure its pH: its keeping rests on {Say.Number(state.Ph.Value, 2)} as read of another lot" : "measure its pH");
        }
        else
        {
            double half = Meters.PhHalfWidth(measured, book), read = measured.Ph.Value.Value;
            var wanted = prep.Target is { Ph.IsGiven: true } target ? target.Ph : prep.Measured is { Ph.IsGiven: true } recipe ? recipe.Ph : default;
            if (wanted.IsGiven && Math.Abs(read - wanted.Value.Value) > half + PhTolerance.Value + Math.Max(0, (wanted.Value.High - wanted.Value.Low) / 2))
                conditions.Add($"find out why its pH is {Say.Number(read, 2)} and its recipe says {Say.Number(wanted.Value.Value, 2)}; adjust it and measure again");
            if (rests && NeedsCold(state, profile, book))
                conditions.Add($"keep it cold and within the date mark: its pH of {Say.Number(read, 2)} (±{Say.Number(half, 2)}) does not show what the recipe's reading showed");
            JudgeMeter(measured, book, on, rests || ferment);
        }

        if (measured is { Brix.IsGiven: true } && prep.Target is { Brix.IsGiven: true } sweet)
        {
            double half = Meters.BrixHalfWidth(measured, book), read = measured.Brix.Value.Value;
            if (Math.Abs(read - sweet.Brix.Value.Value) > half + BrixTolerance.Value)
                conditions.Add($"bring it to its {Say.Number(sweet.Brix.Value.Value, 1)} °Bx: it reads {Say.Number(read, 1)}");
        }
    }

    private void JudgeMeter(Measurement measured, LinkedBook book, CalendarDate on, bool matters)
    {
        if (!matters) return;
        if (!measured.Meter.IsGiven)
        {
            conditions.Add("measure its pH with a calibrated meter: it is not written which one was used");
            return;
        }

        Meter? meter = null;
        book.Settings.Bar?.Meters.TryGetValue(measured.Meter.Value, out meter);
        var read = measured.On.IsGiven ? measured.On.Value : From ?? on;
        if (meter is null || !meter.Calibrated.IsGiven || meter.Calibrated.Value < read)
            conditions.Add($"calibrate {measured.Meter.Value} with two buffers and measure its pH again: {(meter is { Calibrated.IsGiven: true } ? $"last calibrated {meter.Calibrated.Value}" : "no day of calibration is known")}");
    }
}
