using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Keeping;

namespace SpecLint.Service;

/// <summary>How a lot in stock stands on a day.</summary>
public sealed class LotCheck
{
    private static readonly Limit DateMark = Limits.Of("food-code-date-mark");
    private static readonly Limit BrixTolerance = Limits.Of("target-tolerance-brix");
    private static readonly Limit PhTolerance = Limits.Of("target-tolerance-ph");

    private readonly List<string> reasons = [];
    private readonly List<string> conditions = [];
    private readonly LotLife life;

    private LotCheck(LotLife life, Stock stock, Verdict? verdict)
    {
        this.life = life;
        Stock = stock;
        Verdict = verdict;
    }

    /// <summary>The lot.</summary>
    public Lot Lot => life.Lot;

    /// <summary>The file that it stands in.</summary>
    public Stock Stock { get; }

    /// <summary>What it is a lot of; <see langword="null"/> where the id resolves to nothing.</summary>
    public Item? Item => life.Item;

    /// <summary>Id of what it is a lot of.</summary>
    public string Id => Item?.Id ?? Lot.Item.Or("");

    /// <summary>What people call it.</summary>
    public string Name => Item is { ByProduct: null } item ? item.File.Name.Or(item.Id) : Id;

    /// <summary>The verdict on what it is a lot of; <see langword="null"/> where that is not known.</summary>
    public Verdict? Verdict { get; }

    /// <summary>Whether it can be used.</summary>
    public Readiness Readiness =>
        reasons.Count > 0
            ? Readiness.No
            : conditions.Count > 0 || Verdict is { Answer: not Readiness.Ready } ? Readiness.If : Readiness.Ready;

    /// <summary>Why it cannot be used, each a sentence without a full stop.</summary>
    public IReadOnlyList<string> Reasons => reasons;

    /// <summary>What is to be done before it is used, the lot's own and what its recipe asks for.</summary>
    public IReadOnlyList<string> Conditions =>
        Verdict is null ? conditions : [.. conditions, .. Verdict.Shortening.Select(Service.Verdict.Words), .. Verdict.Conditions];

    /// <summary>What is to be done before it is used, but for what its recipe asks for.</summary>
    internal IReadOnlyList<string> OwnConditions => conditions;

    /// <summary>Whether it is to be thrown away.</summary>
    public bool ThrowAway { get; private set; }

    /// <summary>Day made, or opened; <see langword="null"/> where not given.</summary>
    public CalendarDate? From => life.From;

    /// <summary>The last day on which it may be used; <see langword="null"/> where nothing sets one.</summary>
    public CalendarDate? UseBy { get; private set; }

    /// <summary>What sets the use-by.</summary>
    public string UseByFrom { get; private set; } = "";

    /// <summary>Mass left, g; NaN where it cannot be worked out.</summary>
    public double Grams { get; private set; } = double.NaN;

    /// <summary>How a lot stands on the day of its book.</summary>
    internal static LotCheck Of(Lot lot, Stock stock, Verdicts verdicts) => Of(lot, stock, verdicts, []);

    private static LotCheck Of(Lot lot, Stock stock, Verdicts verdicts, HashSet<Lot> onTheWay)
    {
        var profiles = verdicts.Profiles;
        var book = profiles.Book;
        var life = LotLife.Of(lot, profiles);
        var check = new LotCheck(life, stock, life.Item is { IsBuiltIn: false } own ? verdicts.Of(own.File) : null);
        check.Weigh(profiles);
        if (check.Item is null)
        {
            check.reasons.Add($"{check.Id} is in no file of the book and not in the catalogue");
            return check;
        }

        if (check.Verdict is { IsForbidden: true } verdict)
        {
            // What must not be used has no last day.
            check.reasons.AddRange(verdict.Forbidding.Select(Service.Verdict.Words));
            return check;
        }

        check.JudgeAge();
        check.JudgeDates(book.On);
        if (check.Item.ByProduct is null) check.JudgeTemperature(book.Settings);
        if (onTheWay.Add(lot)) check.JudgeSources(verdicts, onTheWay);
        if (!stock.On.IsGiven) check.conditions.Add("count and date the stock: its file does not say on which day it was in the house");
        if (check.Readiness != Readiness.No && life.Prep is { } prep) check.JudgeReadings(prep, profiles.Of(prep), book);
        check.JudgeFindings(verdicts.On(stock, lot).Where(f => f.Rule.Safety));

        // What must not be used has no day to be used by; one that is past says why.
        if (check.Readiness == Readiness.No && check.UseBy >= book.On) check.UseBy = null;
        return check;
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

    private void JudgeAge()
    {
        if (From is not null || Item!.ByProduct is not null) return;
        if (life.Prep is null && !life.NeedsCold) return;
        if (life.IsPerishable && Lot.UseBy.IsGiven && Lot.Frozen.Count == 0)
        {
            // Its label says until when, as the law asks (Food Code 3-501.17(A)); nobody can check it.
            conditions.Add(life.Prep is null
                ? $"write on it when it was opened, if it is open: only its use-by day, {Lot.UseBy.Value}, is known"
                : $"find out on which day it was made: only its use-by day, {Lot.UseBy.Value}, is known");
        }
        else if (life.IsPerishable)
        {
            reasons.Add($"nothing says on which day it was {(life.Prep is null ? "opened" : "made")}");
            ThrowAway = true;
        }
        else
        {
            conditions.Add("find out when it was made, and write the day on it");
        }
    }

    private void JudgeDates(CalendarDate on)
    {
        var last = life.Last;
        if (From is { } made && Verdict?.AllowedDays is { } allowed)
        {
            var day = LotLife.LastDay(made, allowed.Days, life.Frozen, on);
            if (last is not { } known || day < known.Day) last = new LotEnd(day, allowed.Days, allowed.From, LotEndKind.Law);
        }

        UseBy = last?.Day;
        UseByFrom = last?.Why ?? "";
        if (From is { } from && from > on)
        {
            conditions.Add($"put its day right: it says {from}, which is still to come");
            return;
        }

        if (last is { } end && end.Day < on)
        {
            if (end.Kind == LotEndKind.Trade && !life.IsPerishable)
            {
                conditions.Add($"taste it against a fresh one: such a preparation is used by {end.Day} ({end.Why})");
                return;
            }

            reasons.Add($"its use-by was {end.Day} ({end.Why})");
            IsPast = true;
            ThrowAway = life.IsPerishable || life.Prep is null || end.Kind == LotEndKind.Label;
            return;
        }

        if (life.Taste is { } taste && taste.Day < on)
            conditions.Add($"taste it against a fresh one: open since {From}, past {taste.Day} ({taste.Why})");
        foreach (var time in Lot.Frozen)
        {
            if (time.To is null && time.From <= on) conditions.Add("thaw it in the refrigerator, and write the day of thawing on it");
        }
    }

    private void JudgeTemperature(Settings settings)
    {
        if (Readiness == Readiness.No) return;
        var limit = StoredTooWarm.LimitOf(settings);
        double celsius = life.Celsius, asked = life.AskedCelsius;
        if (double.IsNaN(celsius))
        {
            if (life.NeedsCold || asked <= limit.Value) conditions.Add("take its temperature: none is written down");
            return;
        }

        // What its maker closed keeps closed; fresh food is closed by nobody.
        bool isOpen = life.Prep is not null || Lot.Opened.IsGiven || Lot.Made.IsGiven || life.IsFresh;
        if (life.NeedsCold && isOpen && StoredTooWarm.IsTooWarm(celsius, settings))
        {
            reasons.Add($"it stands at {Say.Number(celsius, 1)} °C, over {Say.Number(limit.Value, 0)} °C ({limit.Source})");
            ThrowAway = true;
        }
        else if (life.IsThawed && life.IsPerishable)
        {
            conditions.Add($"use it as thawed and do not freeze it again: its recipe keeps it at {Say.Number(asked, 0)} °C, and it "
                + $"stands at {Say.Number(celsius, 1)} °C");
        }
        else if (life.IsWarmerThanAsked)
        {
            conditions.Add($"bring it to {Say.Number(asked, 0)} °C, as its recipe keeps it: it stands at {Say.Number(celsius, 1)} °C");
        }
    }

    /// <summary>What it was made from: a lot that must not be used for more than its age is bad in what was made of it.</summary>
    private void JudgeSources(Verdicts verdicts, HashSet<Lot> onTheWay)
    {
        foreach (var code in life.UnknownSources) conditions.Add($"find lot {code.Value}, which it was made from: no stock file lists it");
        foreach (var (code, stock, source) in life.Sources)
        {
            if (onTheWay.Contains(source.Lot)) continue;
            var check = Of(source.Lot, stock, verdicts, onTheWay);
            if (check.Readiness == Readiness.No && !check.IsPast)
                reasons.Add($"it was made from {check.Id} {code.Value}: {string.Join("; ", check.Reasons)}");
        }
    }

    /// <summary>Whether it is out of use for its age alone.</summary>
    private bool IsPast { get; set; }

    /// <summary>What check reports of the lot and nothing above has said.</summary>
    private void JudgeFindings(IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
        {
            if (finding.Level == Level.Error && Readiness != Readiness.No && finding.AllowedDays is null) reasons.Add(Service.Verdict.Words(finding));
            else if (finding.Level == Level.Warning && conditions.Count + reasons.Count == 0) conditions.Add(Service.Verdict.Words(finding));
        }
    }

    private void JudgeReadings(Prep prep, RecipeProfile profile, LinkedBook book)
    {
        var on = book.On;
        var state = profile.Keeping!;
        var measured = Lot.Measured;
        if (life.IsOfOtherRecipe)
            conditions.Add("find out by which recipe it was made: its readings are of the recipe before a change, and its days are "
                + "those of the recipe as it stands");
        bool rests = state.HoldsPerishable && state.Verdict == KeepingVerdict.NotControlled && KeepingVerdicts.IsMeasured(state.Ph);
        bool ferment = prep.Family.OrNone().Ferments;
        if (measured is not { Ph.IsGiven: true })
        {
            bool late = From is { } from && on.DaysSince(from) + 1 > DateMark.Value;
            if ((rests && late) || ferment || prep.Target is { Ph.IsGiven: true })
                conditions.Add(rests
                    ? $"measure its pH: its keeping rests on {Say.Number(state.Ph.Value, 2)} as read of another lot"
                    : "measure its pH");
        }
        else
        {
            double half = Meters.PhHalfWidth(measured, book), read = measured.Ph.Value.Value;
            var wanted = prep.Target is { Ph.IsGiven: true } target ? target.Ph : prep.Measured is { Ph.IsGiven: true } recipe ? recipe.Ph : default;
            if (wanted.IsGiven && Math.Abs(read - wanted.Value.Value)
                > half + PhTolerance.Value + Math.Max(0, (wanted.Value.High - wanted.Value.Low) / 2))
                conditions.Add($"find out why its pH is {Say.Number(read, 2)} and its recipe says {Say.Number(wanted.Value.Value, 2)}; "
                    + $"adjust it and measure again");
            if (rests && life.NeedsCold)
                conditions.Add($"keep it cold and within the date mark: its pH of {Say.Number(read, 2)} (±{Say.Number(half, 2)}) does "
                    + $"not show what the recipe's reading showed");
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
            conditions.Add($"calibrate {measured.Meter.Value} with two buffers and measure its pH again: "
                + $"{(meter is { Calibrated.IsGiven: true } ? $"last calibrated {meter.Calibrated.Value}" : "no day of calibration is known")}");
    }
}
