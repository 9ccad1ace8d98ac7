using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>What sets an end to a lot.</summary>
internal enum LotEndKind
{
    /// <summary>A limit of a food code on food that needs cold, or the life of a part that does.</summary>
    Law,

    /// <summary>How long its recipe keeps it.</summary>
    Recipe,

    /// <summary>How long such a thing keeps once opened or made, by the trade.</summary>
    Trade,

    /// <summary>The use-by day written on it.</summary>
    Label,

    /// <summary>The last day of a lot that it was made from.</summary>
    Source,
}

/// <summary>An end of a lot.</summary>
/// <param name="Day">The last day on which it may be used.</param>
/// <param name="Days">Days from the day made or opened, that day counted; NaN where the day is not reckoned from there.</param>
/// <param name="Why">What sets it, in words.</param>
/// <param name="Kind">What kind of end it is.</param>
internal readonly record struct LotEnd(CalendarDate Day, double Days, string Why, LotEndKind Kind);

/// <summary>
/// The life of a lot in stock: the one place that dates it. Rules, labels and the line check read its last day here, so that they
/// can never tell two days of one lot.
/// </summary>
internal sealed class LotLife
{
    private const double SecondsADay = 86400;

    private static readonly Limit DateMark = Limits.Of("food-code-date-mark");

    /// <summary>
    /// Cultured milk, and cheese that is hard or semi-soft, bear no mark on opening (Food Code 3-501.17(G)); cream cheese, ricotta and
    /// mozzarella do.
    /// </summary>
    private static readonly string[] Unmarked =
    [
        "yogurt", "yoghurt", "sour-cream", "sour cream", "buttermilk", "creme-fraiche", "crème fraîche", "kefir", "parmesan", "cheddar",
        "gouda", "gruyere", "gruyère", "pecorino", "manchego", "blue-cheese", "blue cheese",
    ];

    private readonly List<LotEnd> ends = [];
    private readonly List<Given<string>> unknownSources = [];
    private readonly List<(Given<string> Code, Stock Stock, LotLife Life)> sources = [];

    private LotLife(Lot lot, Item? item, CalendarDate? otherwise)
    {
        Lot = lot;
        Item = item;
        From = lot.Made.IsGiven ? lot.Made.Value : lot.Opened.IsGiven ? lot.Opened.Value : otherwise;
    }

    /// <summary>The lot.</summary>
    public Lot Lot { get; }

    /// <summary>What it is a lot of; <see langword="null"/> where the id resolves to nothing.</summary>
    public Item? Item { get; }

    /// <summary>The preparation that it is a lot of; <see langword="null"/> where it is none.</summary>
    public Prep? Prep => Item is { ByProduct: null, File: Prep prep } ? prep : null;

    /// <summary>Day made, or opened; <see langword="null"/> where not given.</summary>
    public CalendarDate? From { get; }

    /// <summary>Whether some part of it needs cold unless something measured shows otherwise.</summary>
    public bool IsPerishable { get; private set; }

    /// <summary>Whether it needs cold: a part of it does, and no reading of the lot or its recipe shows that it need not be.</summary>
    public bool NeedsCold { get; private set; }

    /// <summary>
    /// Whether it is fresh: bought food that needs cold and keeps a few days at most once made, or food of the bar's own of which no
    /// file says how long it keeps. No maker packs it to stand unopened, so that its clock runs though nobody wrote that it is open.
    /// </summary>
    public bool IsFresh { get; private set; }

    /// <summary>Days that fresh food keeps at most; common practice, no source.</summary>
    private const double MostDaysFresh = 3;

    /// <summary>Temperature that its recipe keeps it at, °C, the warmest of a range; NaN where none is stated.</summary>
    public double AskedCelsius { get; private set; } = double.NaN;

    /// <summary>Temperature at which it stands, °C, the warmest of a range; NaN where not written.</summary>
    public double Celsius => Lot.At is { IsGiven: true, Value.Dimension: Dimension.Temperature } at ? at.Value.BaseHigh : double.NaN;

    /// <summary>Whether its recipe keeps it frozen and it stands warmer than a freezer: its clock runs.</summary>
    public bool IsThawed => Storage.IsFrozen(AskedCelsius) && Celsius > AskedCelsius + FreezerSwing;

    /// <summary>Whether it stands warmer than its recipe keeps it: a freezer may swing, a refrigerator by as much as a meter reads.</summary>
    public bool IsWarmerThanAsked => Celsius > AskedCelsius + (Storage.IsFrozen(AskedCelsius) ? FreezerSwing : ReadingStep);

    /// <summary>
    /// Its times in the freezer, as far as they are shown: one without an end, of a lot that stands warmer than a freezer, has ended on
    /// a day that nobody wrote, and stops no clock.
    /// </summary>
    public IReadOnlyList<FrozenTime> Frozen =>
        Celsius > Storage.FreezerCelsius + FreezerSwing ? [.. Lot.Frozen.Where(static t => t.To is not null)] : Lot.Frozen;

    /// <summary>What two thermometers of a bar may differ by, K; common practice, no source.</summary>
    private const double ReadingStep = 1;

    /// <summary>How far a freezer may be above the temperature asked for, K; common practice, no source.</summary>
    internal const double FreezerSwing = 4;

    /// <summary>Whether its readings say that it was made by its recipe as it was before a change.</summary>
    public bool IsOfOtherRecipe { get; private set; }

    /// <summary>Until when a bought thing that needs no cold holds its taste; no end of its use.</summary>
    public LotEnd? Taste { get; private set; }

    /// <summary>The ends that are known, in no order.</summary>
    public IReadOnlyList<LotEnd> Ends => ends;

    /// <summary>The earliest end; <see langword="null"/> where nothing sets one.</summary>
    public LotEnd? Last => Earliest(static _ => true);

    /// <summary>The earliest end but what its label says; <see langword="null"/> where nothing sets one.</summary>
    public LotEnd? LastByRules => Earliest(static e => e.Kind != LotEndKind.Label);

    /// <summary>Codes of <c>madeFrom</c> that name no other lot in stock.</summary>
    public IReadOnlyList<Given<string>> UnknownSources => unknownSources;

    /// <summary>Lots that it was made from, each with its own last day.</summary>
    public IReadOnlyList<(Given<string> Code, Stock Stock, LotLife Life)> Sources => sources;

    /// <summary>The earliest end of some kinds; <see langword="null"/> where nothing sets one.</summary>
    public LotEnd? LastOf(params LotEndKind[] kinds) => Earliest(e => Array.IndexOf(kinds, e.Kind) >= 0);

    /// <summary>The life of a lot.</summary>
    public static LotLife Of(Lot lot, ProfileSet profiles) => Of(lot, profiles, [], null);

    /// <summary>The life of a lot that does not say when it was made, if that was today: it has no later last day, whenever it was made.</summary>
    public static LotLife OfMadeToday(Lot lot, ProfileSet profiles) => Of(lot, profiles, [], profiles.Book.On);

    private static LotLife Of(Lot lot, ProfileSet profiles, HashSet<Lot> onTheWay, CalendarDate? otherwise)
    {
        var book = profiles.Book;
        var life = new LotLife(lot, lot.Item.IsGiven ? book.Resolve(lot.Item.Value) : null, otherwise);
        if (life.Prep is { } prep) life.Date(prep, profiles);
        else if (life.Item?.File is Ingredient && profiles.MaterialOf(life.Item.Id) is { } material) life.Date(material, book);
        life.Follow(profiles, onTheWay);
        if (lot.UseBy.IsGiven) life.ends.Add(new LotEnd(lot.UseBy.Value, double.NaN, "its label", LotEndKind.Label));
        return life;
    }

    /// <summary>
    /// The last day of something that keeps a number of days: the first day is day 1, and days in the freezer do not count.
    /// </summary>
    /// <param name="from">Day made or opened.</param>
    /// <param name="days">Days; a part of a day counts as the day it begins.</param>
    /// <param name="frozen">Times in the freezer; they may overlap.</param>
    /// <param name="on">The day of the check: an open time in the freezer runs to here.</param>
    public static CalendarDate LastDay(CalendarDate from, double days, IReadOnlyList<FrozenTime> frozen, CalendarDate on)
    {
        // Days that come of hours and of ranges are not whole to the last digit.
        int left = (int)Math.Ceiling(Math.Min(days, 100_000) - 1e-6);
        if (left < 1) left = 1;
        var day = from;

        // Day by day: a day counts unless it is spent frozen from its start.
        for (int used = 0; ; day = day.AddDays(1))
        {
            if (!IsFrozen(frozen, day, on)) used++;
            if (used >= left) return day;
        }
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

    private void Date(Prep prep, ProfileSet profiles)
    {
        var profile = profiles.Of(prep);
        var state = profile.Keeping!;
        AskedCelsius = Storage.Celsius(prep, profiles.Book.Settings);
        IsOfOtherRecipe = Lot.Measured is { } measured && Readings.AreOfOther(measured, prep, profiles.Book);
        IsPerishable = state.HoldsPerishable && !state.IsDried;
        NeedsCold = IsPerishable && !IsShownStable(state, profiles.Book);
        if (From is not { } from) return;
        var terms = IsThawed ? KeepingLife.TermsOf(prep, profile, profiles, Celsius) : profile.KeepingTerms!;
        var on = profiles.Book.On;
        End(from, Storage.LeastDays(prep), "its recipe", LotEndKind.Recipe, on);
        if (NeedsCold)
        {
            End(from, terms.Safety.Days, WordsOf(terms.Safety), LotEndKind.Law, on);
            double days = KeepingLife.DaysOfBase(prep, profile, profiles.Book.Settings);
            End(from, days, "how long bars keep such a base (SL5019)", LotEndKind.Trade, on);
        }
        End(from, terms.Parts.Days, WordsOf(terms.Parts), LotEndKind.Trade, on);
        End(from, terms.Family.Days, WordsOf(terms.Family), LotEndKind.Trade, on);
    }

    private const string WordsOfDateMark = "the date mark of food that needs cold (Food Code 3-501.17)";

    private static string WordsOf(KeepingEnd end) => end.From == DateMark.Id ? WordsOfDateMark : end.From;

    private void Date(Material material, LinkedBook book)
    {
        var what = Perishables.Of(material);
        IsPerishable = what != Perishable.None;
        NeedsCold = what is Perishable.Dairy or Perishable.Egg or Perishable.NutOrPulse or Perishable.ListedPlant or Perishable.Juice;
        IsFresh = NeedsCold && (LifeOpened(material) is { } stated ? stated.High <= MostDaysFresh * SecondsADay : material.IsOwn);
        if (From is not { } from) return;
        var ingredient = material.Ingredient!;
        bool marked = !Phrases.HasAny(ingredient.Id, Unmarked) && !(ingredient.Name.IsGiven && Phrases.HasAny(ingredient.Name.Value, Unmarked));
        if (marked && NeedsCold && what != Perishable.Juice) End(from, DateMark.Value, WordsOfDateMark, LotEndKind.Law, book.On);
        if (LifeOpened(material) is not { } opened)
        {
            // How long food of the bar's own keeps, nobody says: no longer than any other that needs cold.
            if (material.IsOwn && IsPerishable && marked && ends.Count == 0) End(from, DateMark.Value, WordsOfDateMark, LotEndKind.Trade, book.On);
            return;
        }

        string why = $"it keeps {Spell(opened.Low / SecondsADay, opened.High / SecondsADay)} once {(Lot.Opened.IsGiven ? "opened" : "made")}";

        // A range is not read at its longest end: what can make ill is used within its typical time, and the range is said.
        if (IsPerishable) End(from, opened.Typical / SecondsADay, why, LotEndKind.Trade, book.On);
        else Taste = new LotEnd(LastDay(from, opened.High / SecondsADay, Frozen, book.On), opened.High / SecondsADay, why, LotEndKind.Trade);
    }

    private static SourcedValue? LifeOpened(Material material) =>
        material.Ingredient!.Values.TryGetValue("life.opened", out var life) && life.Dimension == Dimension.Duration ? life : null;

    /// <summary>Follows the lots that it was made from: what needs cold keeps no longer than what went into it had left.</summary>
    private void Follow(ProfileSet profiles, HashSet<Lot> onTheWay)
    {
        if (Lot.MadeFrom.Count == 0 || !onTheWay.Add(Lot)) return;
        foreach (var code in Lot.MadeFrom)
        {
            if (!code.IsGiven) continue;
            bool any = false;
            foreach (var (stock, lot) in profiles.Book.LotsCalled(code.Value))
            {
                if (onTheWay.Contains(lot)) continue;
                any = true;
                var source = Of(lot, profiles, onTheWay, null);
                sources.Add((code, stock, source));
                if (!NeedsCold || !source.IsPerishable || source.Last is not { } last) continue;
                string why = $"{source.Item?.Id ?? lot.Item.Or("")} {code.Value} in it, whose last day is {last.Day} ({last.Why})";
                int left = From is { } from ? last.Day.DaysSince(from) + 1 : 0;
                ends.Add(left < 1
                    ? new LotEnd(last.Day, double.NaN, why, LotEndKind.Source)
                    : new LotEnd(LastDay(From!.Value, left, Frozen, profiles.Book.On), left, why, LotEndKind.Source));
            }

            if (!any) unknownSources.Add(code);
        }

        onTheWay.Remove(Lot);
    }

    /// <summary>A range of days in words, in hours where it is short.</summary>
    private static string Spell(double low, double high)
    {
        bool hours = high <= 2;
        string least = Say.Number(hours ? low * 24 : low, 0), most = Say.Number(hours ? high * 24 : high, 0);
        return $"{(least == most ? most : $"{least} to {most}")} {(hours ? "h" : "days")}";
    }

    private void End(CalendarDate from, double days, string why, LotEndKind kind, CalendarDate on)
    {
        if (double.IsNaN(days) || double.IsInfinity(days)) return;
        ends.Add(new LotEnd(LastDay(from, days, Frozen, on), days, why, kind));
    }

    private bool IsShownStable(KeepingState state, LinkedBook book)
    {
        if (Lot.Measured is not { } measured || !(measured.Ph.IsGiven || measured.WaterActivity.IsGiven))
            return !IsOfOtherRecipe && state.Verdict == KeepingVerdict.NotControlled;
        var ph = measured.Ph.IsGiven ? Read(measured.Ph.Value, Meters.PhHalfWidth(measured, book)) : state.Ph;
        var activity = measured.WaterActivity.IsGiven ? Read(measured.WaterActivity.Value, Meters.WaterActivityHalfWidth) : state.WaterActivity;
        return KeepingVerdicts.Of(state.Table, ph, activity, Perishables.IsListed(state.What)).Verdict == KeepingVerdict.NotControlled;
    }

    private static FactValue Read(Quantity quantity, double half) => new(quantity.Value, quantity.Low - half, quantity.High + half, "measured", null);

    private LotEnd? Earliest(Func<LotEnd, bool> wanted)
    {
        LotEnd? first = null;
        foreach (var end in ends)
        {
            // Of two on one day, what is written on the lot is what people know.
            if (wanted(end) && (first is not { } known || end.Day < known.Day || (end.Day == known.Day && end.Kind == LotEndKind.Label))) first = end;
        }

        return first;
    }
}
