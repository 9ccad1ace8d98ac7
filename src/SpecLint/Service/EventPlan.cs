using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Service;

namespace SpecLint.Service;

/// <summary>An event to plan for.</summary>
/// <param name="Guests">Number of guests, more than 0.</param>
/// <param name="On">Its day.</param>
public sealed record EventRequest(int Guests, CalendarDate On)
{
    /// <summary>Drinks that a guest has; common practice where nobody says.</summary>
    public double DrinksEach { get; init; } = EventPlan.UsualDrinksEach;

    /// <summary>The hour of the first serve, 0 to 24.</summary>
    public double Hour { get; init; } = 18;

    /// <summary>Share of all serves by drink, %; the others share the rest as the covers of the menu have it.</summary>
    public IReadOnlyDictionary<string, double> Shares { get; init; } = new Dictionary<string, double>();
}

/// <summary>Serves of a drink.</summary>
/// <param name="Drink">The drink.</param>
/// <param name="Name">What the guest calls it.</param>
/// <param name="Share">Its share of all serves, %.</param>
/// <param name="Count">How many.</param>
/// <param name="Ice">Ice that they need, g, what melts before included.</param>
public sealed record EventServe(Drink Drink, string Name, double Share, int Count, double Ice);

/// <summary>Something to make for an event.</summary>
/// <param name="Make">What and how much.</param>
/// <param name="Station">Where it is made.</param>
/// <param name="Hours">What its steps state, and the work beside them, h.</param>
/// <param name="StartDay">The last day on which to begin.</param>
/// <param name="StartHour">The hour of that day.</param>
/// <param name="ReadyDay">The day on which it is then ready.</param>
/// <param name="Earliest">The first day on which it can be begun and still be good at the event;
/// <see langword="null"/> where nothing sets one.</param>
/// <param name="Warning">What stands in the way; empty where nothing does.</param>
public sealed record EventTask(
    MakeTask Make, string Station, double Hours, CalendarDate StartDay, double StartHour, CalendarDate ReadyDay, CalendarDate? Earliest,
    string Warning);

/// <summary>Something to buy for an event.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Amount">How much of it, the reserve included: mL, g or pieces.</param>
/// <param name="Dimension">Volume, mass or count.</param>
/// <param name="Size">The size that is bought, e.g. <c>700 ml</c>; empty where no list says.</param>
/// <param name="Count">How many of that size; 0 where no list says.</param>
/// <param name="Cases">Full cases among them, where they are bottles.</param>
/// <param name="Cost">What they cost; <see langword="null"/> where no list says.</param>
/// <param name="For">Ids of what needs it.</param>
public sealed record EventPurchase(
    string Id, string Name, double Amount, Dimension Dimension, string Size, int Count, int Cases, decimal? Cost, IReadOnlyList<string> For)
{
    /// <summary>Bottles beside the full cases.</summary>
    public int Loose => Count - (Cases * EventPlan.BottlesInCase);
}

/// <summary>
/// A plan for an event, backwards from its day: how many serves of each drink, what to make when and where, what to buy, how much ice.
/// Pure: the checked book and the request come in. Whatever is in stock is left out of account unless it is given.
/// </summary>
public sealed class EventPlan
{
    private static readonly Limit DrinksEach = Limits.Of("event-drinks-each");
    private static readonly Limit Reserve = Limits.Of("event-reserve");
    private static readonly Limit Setup = Limits.Of("event-setup");
    private static readonly Limit Hands = Limits.Of("event-hands");
    private static readonly Limit DayOfWork = Limits.Of("event-day-of-work");
    private static readonly Limit MostDaysBefore = Limits.Of("event-days-before");
    private static readonly Limit Case = Limits.Of("event-case");
    private static readonly Limit LargestBottle = Limits.Of("event-bottle-largest");
    private static readonly Limit MixingIce = Limits.Of("event-ice-mixing");
    private static readonly Limit GlassIce = Limits.Of("event-ice-glass");
    private static readonly Limit IceWaste = Limits.Of("event-ice-waste");

    // Hours between which somebody is there to begin something; common practice, no source.
    private const double Opens = 10, Closes = 20;

    private readonly Verdicts verdicts;
    private readonly ProfileSet profiles;

    private EventPlan(Verdicts verdicts, Menu menu, EventRequest request)
    {
        this.verdicts = verdicts;
        profiles = verdicts.Profiles;
        Menu = menu;
        Request = request;
    }

    /// <summary>Drinks that a guest has where nobody says.</summary>
    public static double UsualDrinksEach => DrinksEach.Value;

    /// <summary>Bottles in a case.</summary>
    public static int BottlesInCase => (int)Case.Value;

    /// <summary>Work on one day, h, over which what keeps is begun earlier.</summary>
    public static double HoursOfADay => DayOfWork.Value;

    /// <summary>What is bought over what the serves need, %.</summary>
    public static double ReservePercent => Reserve.Value;

    /// <summary>The menu.</summary>
    public Menu Menu { get; }

    /// <summary>What is planned for.</summary>
    public EventRequest Request { get; }

    /// <summary>The profiles of the book.</summary>
    public ProfileSet Profiles => profiles;

    /// <summary>The serves, in the order of the menu.</summary>
    public IReadOnlyList<EventServe> Serves { get; private set; } = [];

    /// <summary>What to make, in the order of beginning.</summary>
    public IReadOnlyList<EventTask> Tasks { get; private set; } = [];

    /// <summary>What to buy, by id.</summary>
    public IReadOnlyList<EventPurchase> Purchases { get; private set; } = [];

    /// <summary>Ice, kg.</summary>
    public double Ice => Serves.Sum(s => s.Ice) / 1000;

    /// <summary>What cannot be served as it is written, each with the reason.</summary>
    public IReadOnlyList<string> CannotServe { get; private set; } = [];

    /// <summary>Plans an event.</summary>
    /// <param name="verdicts">The verdicts of the checked book.</param>
    /// <param name="menu">The menu.</param>
    /// <param name="request">The event.</param>
    /// <param name="stocks">What is in the house and may be used; none leaves that out of account.</param>
    /// <param name="why">Why it cannot be planned, in words; empty where it can.</param>
    public static EventPlan? Of(Verdicts verdicts, Menu menu, EventRequest request, IReadOnlyList<Stock> stocks, out string why)
    {
        var plan = new EventPlan(verdicts, menu, request);
        why = plan.CountServes();
        if (why.Length > 0) return null;
        var check = LineCheck.Ahead(verdicts, plan.WithServes(), stocks);
        plan.CannotServe = [.. check.Drinks.Where(d => d.Readiness == Readiness.No).Select(d => $"{d.Name}: {string.Join("; ", d.Reasons)}")];
        plan.Spread(check.Make);
        plan.Buy(check.Get);
        return plan;
    }

    private string CountServes()
    {
        var drinks = Menu.Drinks.Select(e => (Entry: e, Drink: e.Drink.IsGiven
            ? profiles.Book.Resolve(e.Drink.Value)?.File as Drink
            : null))
            .Where(d => d.Drink is not null)
            .ToList();
        if (drinks.Count == 0) return "the menu has no drink of the book";
        foreach (string id in Request.Shares.Keys)
        {
            if (!drinks.Exists(d => d.Drink!.Id == id)) return $"{id} is not on the menu";
        }

        double given = Request.Shares.Values.Sum();
        if (Math.Round(given - 100, 6) > 0) return "the shares come to more than 100 %";
        bool any = drinks.Exists(d => d.Entry.Covers.Or(0) > 0);
        double others = drinks.Where(d => !Request.Shares.ContainsKey(d.Drink!.Id)).Sum(d => any ? d.Entry.Covers.Or(0) : 1);
        if (others <= 0 && Math.Round(100 - given, 6) > 0) return "the shares come to less than 100 %, and no other drink has covers";
        double serves = Request.Guests * Request.DrinksEach;
        Serves =
        [
            .. drinks.Select(d =>
            {
                double share = Request.Shares.TryGetValue(d.Drink!.Id, out double set)
                    ? set
                    : others > 0 ? (100 - given) * (any ? d.Entry.Covers.Or(0) : 1) / others : 0;
                int count = (int)Math.Ceiling((serves * share / 100) - 1e-9);
                return new EventServe(d.Drink, d.Entry.Name.Or(d.Drink.Name.Or(d.Drink.Id)), share, count, count * IceOf(d.Drink));
            }),
        ];
        return "";
    }

    /// <summary>Ice of a serve, g: to mix it and in its glass, with what melts before.</summary>
    private double IceOf(Drink drink)
    {
        var profile = profiles.Of(drink);
        var (iced, _) = GlassFill.IceOf(profile, drink);
        bool mixed = profile.Technique is TechniqueKind.Shaken or TechniqueKind.Stirred or TechniqueKind.Thrown or TechniqueKind.Blended;
        return ((mixed ? MixingIce.Value : 0) + (iced ? GlassIce.Value : 0)) * (1 + (IceWaste.Value / 100));
    }

    /// <summary>The menu with the serves of the event as its covers.</summary>
    private Menu WithServes()
    {
        var counts = Serves.ToDictionary(s => s.Drink.Id, s => s.Count, StringComparer.Ordinal);
        return new Menu
        {
            Source = Menu.Source,
            Id = Menu.Id,
            Problems = Menu.Problems,
            Name = Menu.Name,
            Drinks =
            [
                .. Menu.Drinks.Where(e => counts.TryGetValue(e.Drink.Or(""), out int count) && count > 0)
                    .Select(e => new MenuEntry
                    {
                        Span = e.Span,
                        Number = e.Number,
                        Drink = e.Drink,
                        Name = e.Name,
                        Words = e.Words,
                        Claims = e.Claims,
                        Covers = new Given<double>(counts[e.Drink.Value], e.Span),
                    }),
            ],
        };
    }

    /// <summary>
    /// As late as can be, then spread: while a day holds more work than one person can do at it, what keeps longest of what is begun on that day
    /// is begun a day earlier, with what goes into it. Nothing is moved that would then be past on the day, or whose time is not known.
    /// </summary>
    private void Spread(IReadOnlyList<MakeTask> makes)
    {
        var latest = new Dictionary<string, int>(StringComparer.Ordinal);
        var stays = new HashSet<string>(StringComparer.Ordinal);
        var tasks = Schedule(makes, latest);
        while (Movable(tasks, stays) is { } task)
        {
            string id = task.Make.Prep.Id;
            int day = task.StartDay.DaysSince(Request.On) - 1;
            bool had = latest.TryGetValue(id, out int before);
            latest[id] = day;
            var moved = Schedule(makes, latest);
            if (day >= -MostDaysBefore.Value
                && !moved.Exists(m => m.Warning.Length > 0
                    && tasks.Exists(t => t.Make == m.Make && (t.Warning.Length == 0 || m.StartDay < t.StartDay))))
            {
                tasks = moved;
                continue;
            }

            stays.Add(id);
            if (had) latest[id] = before;
            else latest.Remove(id);
        }

        Tasks = tasks;
    }

    /// <summary>
    /// Of what is begun on the fullest day, what keeps longest and may be begun earlier; <see langword="null"/> where no day is too full or
    /// nothing may.
    /// </summary>
    private EventTask? Movable(IReadOnlyList<EventTask> tasks, HashSet<string> stays)
    {
        foreach (var day in tasks.GroupBy(t => t.StartDay.DayNumber)
            .Where(d => d.Count() * Hands.Value > DayOfWork.Value).OrderByDescending(d => d.Key))
        {
            var task = day.Where(t => !stays.Contains(t.Make.Prep.Id) && MayBeEarlier(t))
                .OrderByDescending(t => verdicts.Of(t.Make.Prep).Days)
                .ThenBy(t => t.Make.Prep.Id, StringComparer.Ordinal)
                .FirstOrDefault();
            if (task is not null) return task;
        }

        return null;
    }

    private bool MayBeEarlier(EventTask task) =>
        !double.IsNaN(verdicts.Of(task.Make.Prep).Days)
            && !verdicts.Of(task.Make.Prep).IsForbidden
            && (task.Earliest is not { } earliest || earliest < task.StartDay);

    /// <summary>Backwards from the day: what is needed by others is ready when they begin, and no two things are begun at once.</summary>
    /// <param name="makes">What is to be made, what goes into another before it.</param>
    /// <param name="latest">Days, counted from that of the event, after which something is not to be begun.</param>
    private List<EventTask> Schedule(IReadOnlyList<MakeTask> makes, Dictionary<string, int> latest)
    {
        var starts = new Dictionary<string, double>(StringComparer.Ordinal);
        var tasks = new List<EventTask>();
        for (int i = makes.Count - 1; i >= 0; i--)
        {
            var make = makes[i];
            double finish = Request.Hour - Setup.Value;
            foreach (var other in makes)
            {
                if (starts.TryGetValue(other.Prep.Id, out double begun) && TakesFrom(other.Prep, make.Prep)) finish = Math.Min(finish, begun);
            }

            double hours = HoursOf(make.Prep) + Hands.Value, start = Working(finish - hours);
            if (latest.TryGetValue(make.Prep.Id, out int day)) start = Math.Min(start, Working((24 * day) + Closes));
            while (starts.Values.Where(s => Math.Abs(s - start) < Hands.Value - 1e-6).DefaultIfEmpty(double.NaN).Min() is var taken
                && !double.IsNaN(taken)) start = Working(taken - Hands.Value);
            starts[make.Prep.Id] = start;
            tasks.Add(TaskOf(make, hours, start));
        }

        return [.. tasks.OrderBy(t => t.StartDay.DayNumber).ThenBy(t => t.StartHour).ThenBy(t => t.Make.Prep.Id, StringComparer.Ordinal)];
    }

    /// <summary>Whether a preparation takes another, or what making that leaves.</summary>
    private bool TakesFrom(Prep taker, Prep from)
    {
        foreach (var line in taker.Ingredients)
        {
            if (line.Item.IsGiven && profiles.Book.Resolve(line.Item.Value)?.File == from) return true;
        }

        return false;
    }

    private static double HoursOf(Prep prep)
    {
        double hours = 0;
        foreach (var step in prep.Method)
        {
            if (step.For is { IsGiven: true, Value.Dimension: Dimension.Duration }) hours += step.For.Value.Base / 3600;
        }

        return hours;
    }

    /// <summary>The last time not after another at which somebody is there to begin; hours from the start of the day of the event.</summary>
    private static double Working(double hour)
    {
        double day = Math.Floor(hour / 24), clock = hour - (24 * day);
        return clock < Opens ? (24 * (day - 1)) + Closes - Hands.Value : Math.Min(hour, (24 * day) + Closes - Hands.Value);
    }

    private EventTask TaskOf(MakeTask make, double hours, double start)
    {
        int startDay = (int)Math.Floor(start / 24), readyDay = (int)Math.Floor((start + hours) / 24);
        double days = verdicts.Of(make.Prep).Days;
        CalendarDate? earliest = null;
        string warning = "";
        if (!double.IsNaN(days) && !double.IsInfinity(days))
        {
            // The day on which it is ready is the first of its days.
            int firstReady = 1 - (int)Math.Max(1, Math.Floor(days));
            earliest = Request.On.AddDays(firstReady - (readyDay - startDay));
            if (readyDay < firstReady)
                warning = $"it keeps {Say.Number(days, 0)} d by the verdict and would be past on the day: begin it so that it is ready "
                    + $"on {Request.On.AddDays(firstReady)}, or make it in parts";
        }

        if (verdicts.Of(make.Prep).IsForbidden)
            warning = $"it must not be made as it is written (see check: {Verdict.RulesOf(verdicts.Of(make.Prep).Forbidding)})";
        return new EventTask(
            make, StationOf(make.Prep), hours, Request.On.AddDays(startDay), start - (24 * startDay), Request.On.AddDays(readyDay),
            earliest, warning);
    }

    private static string StationOf(Prep prep)
    {
        bool heats = false, waits = false;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Dries || step.Verb.Freezes) return "dryer and freezer";
            heats |= step.Verb.Heats || step.Verb.Cooks || step.Verb.Boils || step.Verb.Pasteurises;
            waits |= step.Verb.Ferments || step.Verb.Extracts;
        }

        return prep.Family.OrNone().IsBatch ? "bar" : heats ? "stove" : waits ? "infusions and ferments" : "cold bench";
    }

    private void Buy(IReadOnlyList<(string Id, double Grams, IReadOnlyList<string> For)> needs)
    {
        var pieces = Pieces();
        var purchases = new List<EventPurchase>();
        foreach (var (id, grams, forWhat) in needs)
        {
            if (profiles.Book.Resolve(id) is not { ByProduct: null } item || item.File is Recipe) continue;
            var material = profiles.MaterialOf(id);
            double more = 1 + (Reserve.Value / 100), amount = grams;
            var dimension = Dimension.Mass;
            if (pieces.TryGetValue(id, out double count) && !forWhat.Any(f => profiles.Book.Resolve(f)?.File is Prep))
                (amount, dimension) = (count, Dimension.Count);
            else if (material is { State: MaterialState.Liquid } && material.Density > 0)
                (amount, dimension) = (grams / material.Density, Dimension.Volume);
            amount = dimension == Dimension.Count ? Math.Ceiling((amount * more) - 1e-9) : amount * more;
            purchases.Add(Purchase(id, item.File.Name.Or(id), amount, dimension, forWhat));
        }

        Purchases = purchases;
    }

    /// <summary>Pieces of the serves that are counted and not weighed: garnish.</summary>
    private Dictionary<string, double> Pieces()
    {
        var pieces = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var serve in Serves)
        {
            foreach (var line in LinkedBook.LinesOf(serve.Drink))
            {
                if (line.Item.IsGiven && line.Amount is { IsGiven: true, Value.Dimension: Dimension.Count } amount)
                    pieces[line.Item.Value] = (pieces.TryGetValue(line.Item.Value, out double known)
                        ? known
                        : 0) + (serve.Count * amount.Value.Value / serve.Drink.ServesOrOne);
            }
        }

        return pieces;
    }

    private EventPurchase Purchase(string id, string name, double amount, Dimension dimension, IReadOnlyList<string> forWhat)
    {
        if (profiles.Prices.Find(id) is { } price)
        {
            double used = Costing.YieldOf(price, id, profiles).Share.Typical;
            double size = price.Size.Dimension == dimension ? price.Size.Base
                : price.Size.Dimension == Dimension.Mass
                    && dimension == Dimension.Volume
                    && profiles.MaterialOf(id) is { Density: > 0 } material ? price.Size.Base / material.Density
                : double.NaN;
            if (size > 0)
            {
                int count = (int)Math.Min(1e6, Math.Ceiling((amount / used / size) - 1e-9));
                bool bottles = price.Size.Dimension == Dimension.Volume && price.Size.Base <= LargestBottle.Value;
                return new EventPurchase(
                    id, name, amount, dimension, Rounding.Words(price.Size.Base, price.Size), count, bottles ? count / BottlesInCase : 0,
                    price.Paid * count, forWhat);
            }
        }

        // Juice that nobody sells is pressed from fruit, of which one gives so much.
        if (dimension == Dimension.Volume && id.EndsWith("-juice", StringComparison.Ordinal))
        {
            string fruit = id.Substring(0, id.Length - "-juice".Length);
            if (profiles.MaterialOf(fruit)?.Ingredient is { } ingredient
                && ingredient.Values.TryGetValue("yields", out var each)
                && each is { Dimension: Dimension.Volume, Typical: > 0 })
            {
                int count = (int)Math.Ceiling((amount / each.Typical) - 1e-9);
                decimal? cost = profiles.Prices.Find(fruit) is { Size: { Dimension: Dimension.Count, Base: > 0 } } piece
                    ? piece.Paid * count / Costing.Decimal(piece.Size.Base)
                    : null;
                return new EventPurchase(id, name, amount, dimension, ingredient.Name.Or(fruit), count, 0, cost, forWhat);
            }
        }

        return new EventPurchase(id, name, amount, dimension, "", 0, 0, null, forWhat);
    }
}
