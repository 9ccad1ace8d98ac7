using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Service;

/// <summary>How a drink of the menu stands before service.</summary>
public sealed class DrinkCheck
{
    private readonly List<string> reasons = [];
    private readonly List<string> conditions = [];
    private readonly List<string> lookFor = [];

    internal DrinkCheck(MenuEntry entry, Drink? drink)
    {
        Entry = entry;
        Drink = drink;
        Covers = entry.Covers.IsGiven && entry.Covers.Value > 0 ? Math.Min(entry.Covers.Value, 100_000) : 0;
    }

    /// <summary>The entry of the menu.</summary>
    public MenuEntry Entry { get; }

    /// <summary>The drink; <see langword="null"/> where the menu names none of the book.</summary>
    public Drink? Drink { get; }

    /// <summary>Id that the menu names.</summary>
    public string Id => Entry.Drink.Or("");

    /// <summary>What the guest calls it.</summary>
    public string Name => Entry.Name.IsGiven ? Entry.Name.Value : Drink?.Name.Or(Id) ?? Id;

    /// <summary>Serves expected; 0 where the menu does not say.</summary>
    public double Covers { get; }

    /// <summary>Serves that what is ready makes, at most as many as expected.</summary>
    public double CoversReady { get; internal set; }

    /// <summary>Whether it can be served.</summary>
    public Readiness Readiness => reasons.Count > 0 ? Readiness.No : conditions.Count > 0 ? Readiness.If : Readiness.Ready;

    /// <summary>Why it cannot be served.</summary>
    public IReadOnlyList<string> Reasons => reasons;

    /// <summary>What is to be done first.</summary>
    public IReadOnlyList<string> Conditions => conditions;

    /// <summary>What is not in the stock and easily seen: garnish and the like.</summary>
    public IReadOnlyList<string> LookFor => lookFor;

    /// <summary>Allergens that it contains, of those that count where the bar is.</summary>
    public IReadOnlyList<string> Contains { get; internal set; } = [];

    /// <summary>Allergens that it may contain.</summary>
    public IReadOnlyList<string> MayContain { get; internal set; } = [];

    /// <summary>Items whose allergens are not known.</summary>
    public IReadOnlyList<string> NotKnownOf { get; internal set; } = [];

    internal void No(string reason) => Add(reasons, reason);

    internal void If(string condition) => Add(conditions, condition);

    internal void Look(string what) => Add(lookFor, what);

    private static void Add(List<string> list, string text)
    {
        if (!list.Contains(text)) list.Add(text);
    }
}

/// <summary>Something to make before service.</summary>
/// <param name="Prep">What.</param>
/// <param name="Short">Mass that is missing for the expected serves, g.</param>
/// <param name="Times">How many times the recipe.</param>
/// <param name="Makes">Mass that this makes, g.</param>
/// <param name="MakesMillilitres">Volume that this makes, mL; NaN for a solid.</param>
/// <param name="Hours">Time that the steps of the method state, h.</param>
/// <param name="LastsUntil">Use-by of what is made; <see langword="null"/> where nothing sets one.</param>
/// <param name="Lines">Amounts, rounded to the tools.</param>
/// <param name="For">Ids of what needs it.</param>
public sealed record MakeTask(
    Prep Prep, double Short, double Times, double Makes, double MakesMillilitres, double Hours, CalendarDate? LastsUntil,
    IReadOnlyList<ScalePlanLine> Lines, IReadOnlyList<string> For)
{
    /// <summary>By-products that it leaves and that something else takes: id and mass taken, g. Nobody has to get those.</summary>
    public IReadOnlyList<(string Id, double Grams)> Credits { get; init; } = [];
}

/// <summary>
/// The check of a menu against what is in the house, before service. Pure: book, profiles, findings and date come in.
/// Whatever the stock file does not say is not taken for granted.
/// </summary>
public sealed class LineCheck
{
    /// <summary>Made on top of what is needed, for what stays in the bottle and on the jigger; common practice, no source.</summary>
    private const double Reserve = 1.1;

    /// <summary>What is made in longer than this is not ready tonight, h; common practice, no source.</summary>
    private const double LongestToday = 6;

    /// <summary>A recipe is made whole, or in these shares of it.</summary>
    private const double SmallestShare = 0.25;

    private readonly ProfileSet profiles;
    private readonly Dictionary<string, List<LotCheck>> lotsById = new(StringComparer.Ordinal);
    private readonly Dictionary<LotCheck, double> left = [];
    private readonly Dictionary<string, (double Grams, List<string> For)> missing = new(StringComparer.Ordinal);
    private readonly Dictionary<Prep, (double Hours, string Why)> making = [];

    private readonly Verdicts verdicts;
    private readonly double longest;

    private LineCheck(Verdicts verdicts, Menu menu, double longest)
    {
        this.longest = longest;
        this.verdicts = verdicts;
        profiles = verdicts.Profiles;
        Menu = menu;
    }

    /// <summary>The menu.</summary>
    public Menu Menu { get; }

    /// <summary>The day.</summary>
    public CalendarDate On => profiles.Book.On;

    /// <summary>The profiles of the book.</summary>
    public ProfileSet Profiles => profiles;

    /// <summary>The drinks, in the order of the menu.</summary>
    public IReadOnlyList<DrinkCheck> Drinks { get; private set; } = [];

    /// <summary>All lots, in the order of the stock files.</summary>
    public IReadOnlyList<LotCheck> Lots { get; private set; } = [];

    /// <summary>What to make, in an order in which each stands behind what it needs.</summary>
    public IReadOnlyList<MakeTask> Make { get; private set; } = [];

    /// <summary>Bought things that are short or not in the stock: id, mass that is missing (g), and what needs them.</summary>
    public IReadOnlyList<(string Id, double Grams, IReadOnlyList<string> For)> Get { get; private set; } = [];

    /// <summary>Lots to throw away.</summary>
    public IEnumerable<LotCheck> ThrowAway => Lots.Where(l => l.ThrowAway);

    /// <summary>Allergens of the drinks of the menu, sorted.</summary>
    public IReadOnlyList<string> Allergens { get; private set; } = [];

    /// <summary>Whether every drink can be served as it is written, perhaps after something is done.</summary>
    public bool AllServed => Drinks.All(d => d.Readiness != Readiness.No);

    /// <summary>Checks a menu.</summary>
    /// <param name="verdicts">The verdicts of the checked book, whose day is that of the check.</param>
    /// <param name="menu">The menu.</param>
    /// <param name="stocks">The stock to look in.</param>
    public static LineCheck Of(Verdicts verdicts, Menu menu, IReadOnlyList<Stock> stocks) => Of(verdicts, menu, stocks, LongestToday);

    /// <summary>The same for a day ahead: what takes long to make is made in time.</summary>
    internal static LineCheck Ahead(Verdicts verdicts, Menu menu, IReadOnlyList<Stock> stocks) => Of(verdicts, menu, stocks, double.PositiveInfinity);

    private static LineCheck Of(Verdicts verdicts, Menu menu, IReadOnlyList<Stock> stocks, double longest)
    {
        var check = new LineCheck(verdicts, menu, longest);
        check.CheckLots(stocks);
        check.CheckDrinks();
        check.PlanMaking();
        return check;
    }

    private void CheckLots(IReadOnlyList<Stock> stocks)
    {
        var lots = new List<LotCheck>();
        foreach (var stock in stocks)
        {
            foreach (var lot in stock.Lots)
            {
                var check = LotCheck.Of(lot, stock, verdicts);
                lots.Add(check);
                if (!lotsById.TryGetValue(check.Id, out var list)) lotsById.Add(check.Id, list = []);
                list.Add(check);
                left[check] = check.Grams;
            }
        }

        // What goes off first is used first; what needs nothing done before what does.
        foreach (var list in lotsById.Values)
        {
            var sorted = list.OrderBy(l => l.Readiness).ThenBy(l => l.UseBy?.DayNumber ?? int.MaxValue).ToList();
            list.Clear();
            list.AddRange(sorted);
        }

        Lots = lots;
    }

    private void CheckDrinks()
    {
        var settings = profiles.Book.Settings;
        var drinks = new List<DrinkCheck>();
        var allergens = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var entry in Menu.Drinks)
        {
            var drink = entry.Drink.IsGiven ? profiles.Book.Resolve(entry.Drink.Value)?.File as Drink : null;
            var check = new DrinkCheck(entry, drink);
            drinks.Add(check);
            if (drink is null)
            {
                check.No($"the menu names {(check.Id.Length == 0 ? "no drink" : check.Id)}, and the book has no such drink");
                continue;
            }

            var profile = profiles.Of(drink);
            check.Contains = profile.Allergens.Contained(settings);
            check.MayContain = profile.Allergens.Possible(settings);
            check.NotKnownOf = [.. profile.Allergens.Unknown
                .Select(u => u.Through[u.Through.Count - 1]).Distinct().OrderBy(i => i, StringComparer.Ordinal)];
            allergens.UnionWith(check.Contains);
            allergens.UnionWith(check.MayContain);
            Weigh(check, drink);
            Serve(check, drink, profile);
        }

        Drinks = drinks;
        Allergens = [.. allergens];
    }

    /// <summary>Findings of the menu's entry, of the drink and of everything in its tree.</summary>
    private void Weigh(DrinkCheck check, Drink drink)
    {
        var verdict = verdicts.Of(drink);
        foreach (string reason in verdict.Reasons) check.No(reason);
        foreach (string condition in verdict.Conditions) check.If(condition);
        foreach (var finding in verdicts.InTreeOf(drink))
        {
            if (finding.Level == Level.Error && !finding.Rule.Safety && !finding.Rule.LeavesHarmUnknown)
                check.If($"put right: {Verdict.Words(finding)}");
        }

        foreach (var finding in verdicts.On(Menu))
        {
            if (!finding.Rule.Safety || finding.Place.Span.Start < check.Entry.Span.Start || finding.Place.Span.End > check.Entry.Span.End) continue;
            if (finding.Level == Level.Error) check.No(Verdict.Words(finding));
            else if (finding.Level == Level.Warning) check.If(Verdict.Words(finding));
        }
    }

    /// <summary>Whether the verdict on a part forbids it: the drink's own verdict has said so.</summary>
    private bool IsForbidden(Item item) => !item.IsBuiltIn && verdicts.Of(item.File).IsForbidden;

    private void Serve(DrinkCheck check, Drink drink, RecipeProfile profile)
    {
        double serves = drink.ServesOrOne;

        // One serve is looked for even where no number is expected.
        double covers = Math.Max(1, check.Covers);
        double fromBatch = FromBatch(check, drink, covers);
        double rest = covers - fromBatch;
        double ready = double.PositiveInfinity;
        foreach (var part in profile.Parts)
        {
            if (part.Line.Optional) continue;
            if (part.Item is null)
            {
                check.No($"nothing is known of {part.Line.Item.Or("one of its lines")}");
                continue;
            }

            if (part.Material?.Kind is { IsWater: true } or { IsIce: true }) continue;
            if (IsForbidden(part.Item))
            {
                ready = 0;
                continue;
            }

            bool beside = part.Line.Role is LineRole.Garnish or LineRole.Rim;
            if (rest <= 0 && part.Phase == PartPhase.Mix) continue;
            double wanted = part.Phase == PartPhase.Mix ? rest : covers;
            double each = part.IsWeighed ? part.Grams.Typical / serves : double.NaN;
            double got = Take(check, part.Item, each, wanted, beside);
            if (!beside) ready = Math.Min(ready, part.Phase == PartPhase.Mix ? fromBatch + got : got);
        }

        check.CoversReady = Math.Min(covers, double.IsPositiveInfinity(ready) ? covers : ready);
        if (check.Covers == 0) check.CoversReady = 0;
    }

    /// <summary>Serves poured from a batch of the drink that is in the house.</summary>
    private double FromBatch(DrinkCheck check, Drink drink, double covers)
    {
        double got = 0;
        foreach (var prep in profiles.Book.Preps)
        {
            if (!prep.BatchOf.IsGiven || prep.BatchOf.Value != drink.Id || !lotsById.TryGetValue(prep.Id, out var lots)) continue;
            if (IsPouredElsewhere(prep.Id) || profiles.MaterialOf(prep.Id) is not { } material) continue;
            double each = GramsOfPortion(prep, material);
            if (!(each > 0)) continue;
            foreach (var lot in lots)
            {
                if (lot.Readiness != Readiness.Ready || !(left[lot] > 0)) continue;
                double serves = Math.Min(Math.Floor((left[lot] / each) + 1e-9), covers - got);
                if (serves <= 0) continue;
                left[lot] -= serves * each;
                got += serves;
            }
        }

        return got;
    }

    /// <summary>Whether a drink of the menu is made of a batch as it is: then it is that drink's.</summary>
    private bool IsPouredElsewhere(string batch)
    {
        foreach (var user in profiles.Book.UsersOf(batch))
        {
            if (user is Drink && Menu.Drinks.Any(d => d.Drink.IsGiven && d.Drink.Value == user.Id)) return true;
        }

        return false;
    }

    private static double GramsOfPortion(Prep prep, Material material)
    {
        if (!prep.PortionSize.IsGiven) return double.NaN;
        var size = prep.PortionSize.Value;
        return size.Dimension switch { Dimension.Volume => size.Base * material.Density, Dimension.Mass => size.Base, _ => double.NaN };
    }

    /// <summary>Takes what some serves need out of the lots; says what stands in the way.</summary>
    /// <returns>Serves that ready lots give.</returns>
    private double Take(DrinkCheck check, Item item, double each, double wanted, bool beside)
    {
        bool has = lotsById.TryGetValue(item.Id, out var lots);
        var prep = item.ByProduct is null ? item.File as Prep : null;
        double need = each * wanted, ready = 0, conditional = 0;
        bool unweighed = false;
        var conditions = new List<string>();
        var refusals = new List<string>();
        foreach (var lot in lots ?? [])
        {
            if (lot.Readiness == Readiness.No)
            {
                refusals.Add($"{Called(lot)}: {string.Join("; ", lot.Reasons)}");
                continue;
            }

            bool weighed = !double.IsNaN(left[lot]) && !double.IsNaN(need);
            if (ready + conditional >= need) break;
            double take = weighed ? Math.Min(left[lot], need - ready - conditional) : 0;
            if (weighed && take <= 0) continue;
            unweighed |= !weighed;
            if (weighed) left[lot] -= take;
            if (lot.Readiness == Readiness.Ready)
            {
                ready += take;
                continue;
            }

            conditional += take;
            foreach (string condition in lot.OwnConditions) conditions.Add($"{Called(lot)}: {condition}");
        }

        foreach (string condition in conditions) check.If(condition);
        if (unweighed)
        {
            if (beside) check.Look(item.Id);
            else check.If($"{item.Id}: see how much is left; the stock file does not say it in a way that can be reckoned with");
            return wanted;
        }

        double lacks = double.IsNaN(need) ? double.NaN : need - ready - conditional;
        if (lacks <= need * 1e-6) return ServesOf(ready, each, wanted);
        if (double.IsNaN(lacks) && has && refusals.Count < lots!.Count) return wanted;
        Lack(check, item, prep, lacks, beside, refusals, ready + conditional > 0);
        return ServesOf(ready, each, wanted);
    }

    private static double ServesOf(double grams, double each, double wanted) =>
        double.IsNaN(each) || each <= 0 ? wanted : Math.Min(wanted, Math.Floor((grams / each) + 1e-6));

    private void Lack(DrinkCheck check, Item item, Prep? prep, double lacks, bool beside, List<string> refusals, bool some)
    {
        string why = refusals.Count == 0 ? "" : $" ({string.Join("; ", refusals)})";
        string amount = double.IsNaN(lacks) ? "" : AmountOf(item, lacks);
        if (prep is not null)
        {
            var (hours, reason) = MakingOf(prep, 0);
            if (reason.Length > 0)
            {
                if (some) check.If($"{item.Id}: there is not enough for all, {amount} more would be needed, and {reason}{why}");
                else check.No($"{item.Id}: none can be used, and {reason}{why}");
                return;
            }

            Miss(item.Id, double.IsNaN(lacks) ? 0 : lacks, check.Id);
            string much = $"{(amount.Length > 0 ? amount : "some")}{(some ? " more" : "")}";
            string takes = hours > 0 ? $"(about {Hours(hours)} by its method)" : "";
            check.If($"make {item.Id}: {much} {takes}".TrimEnd() + why);
            return;
        }

        Miss(item.Id, double.IsNaN(lacks) ? 0 : lacks, check.Id);
        if (refusals.Count > 0) check.If($"get fresh {item.Id}{(amount.Length > 0 ? ", " + amount : "")}{why}");
        else if (item.ByProduct is not null) check.If($"{item.Id}: see that there is some, it is left from making {item.File.Id}");
        else if (beside) check.Look($"{item.Id}{(amount.Length > 0 ? ", " + amount : "")}");
        else if (some) check.If($"get {amount} more of {item.Id}");
        else check.If($"see that there is {item.Id}{(amount.Length > 0 ? $", {amount}" : "")}: it is not in the stock");
    }

    private void Miss(string id, double grams, string by)
    {
        if (!missing.TryGetValue(id, out var entry)) entry = (0, []);
        if (!entry.For.Contains(by)) entry.For.Add(by);
        missing[id] = (entry.Grams + grams, entry.For);
    }

    /// <summary>An amount of an item in words: by volume where it pours, else by mass.</summary>
    internal string AmountOf(Item item, double grams)
    {
        var material = profiles.MaterialOf(item.Id);
        bool pours = material is { State: MaterialState.Liquid } && material.Density > 0;
        double amount = pours ? grams / material!.Density : grams;
        string unit = pours ? "ml" : "g";
        return Math.Round(amount) >= 1000
            ? $"{Say.Number(amount / 1000, 2)} {(pours ? "l" : "kg")}"
            : $"{Say.Number(amount, amount < 10 ? 1 : 0)} {unit}";
    }

    private static string Hours(double hours) => hours < 1 ? $"{Say.Number(Math.Ceiling(hours * 60), 0)} min" : $"{Say.Number(hours, 1)} h";

    private static string Called(LotCheck lot) =>
        lot.Lot.LotCode.IsGiven ? $"{lot.Id} {lot.Lot.LotCode.Value}" : lot.From is { } from ? $"{lot.Id} of {from}" : lot.Id;

    /// <summary>Hours that making a preparation takes by its method, and why it cannot be made today; empty where it can.</summary>
    private (double Hours, string Why) MakingOf(Prep prep, int depth)
    {
        if (making.TryGetValue(prep, out var known)) return known;
        if (depth > 40) return (double.NaN, "it is made of itself");
        making[prep] = (double.NaN, "it is made of itself");
        double hours = 0;
        foreach (var step in prep.Method)
        {
            if (step.For is { IsGiven: true, Value.Dimension: Dimension.Duration }) hours += step.For.Value.Base / 3600;
        }

        var verdict = verdicts.Of(prep);
        string why = verdict.IsForbidden
            ? $"it must not be made as it is written (see check: {Verdict.RulesOf(verdict.Forbidding)})"
            : hours > longest ? $"making it takes {(hours >= 48 ? $"{Say.Number(hours / 24, 0)} days" : Hours(hours))}" : "";
        if (why.Length == 0)
        {
            foreach (var part in profiles.Of(prep).Parts)
            {
                if (part.Item is null)
                {
                    why = $"nothing is known of {part.Line.Item.Or("one of its lines")}";
                    break;
                }

                if (part.Item is not { ByProduct: null, File: Prep inner } || HasUsable(inner.Id)) continue;
                var (more, whyNot) = MakingOf(inner, depth + 1);
                if (whyNot.Length > 0)
                {
                    why = $"it needs {inner.Id}, of which {whyNot}";
                    break;
                }

                hours += more;
            }
        }

        making[prep] = (hours, why);
        return making[prep];
    }

    private bool HasUsable(string id) => lotsById.TryGetValue(id, out var lots) && lots.Exists(l => l.Readiness != Readiness.No);

    private void PlanMaking()
    {
        var tasks = new List<MakeTask>();
        var order = profiles.Book.OrderOfUse;

        // From the whole to its parts, so that what a batch needs is known before the batch of its part is sized.
        for (int i = order.Count - 1; i >= 0; i--)
        {
            var prep = order[i];
            if (!missing.TryGetValue(prep.Id, out var lack)) continue;
            missing.Remove(prep.Id);
            if (TaskOf(prep, lack.Grams, lack.For) is not { } task) continue;
            tasks.Add(task with { Credits = Credit(prep, task.Times) });
            foreach (var part in profiles.Of(prep).Parts)
            {
                if (part.Item is null || !part.IsWeighed
                    || part.Material?.Kind is { IsWater: true } or { IsIce: true } || part.Line.Optional) continue;
                double need = part.Grams.Typical * task.Times;
                foreach (var lot in lotsById.TryGetValue(part.Item.Id, out var lots) ? lots : [])
                {
                    if (lot.Readiness == Readiness.No || double.IsNaN(left[lot])) continue;
                    double take = Math.Min(left[lot], need);
                    left[lot] -= take;
                    need -= take;
                }

                if (need > 1e-6) Miss(part.Item.Id, need, prep.Id);
            }
        }

        tasks.Reverse();
        Make = tasks;
        Get = [.. missing.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => (m.Key, m.Value.Grams, (IReadOnlyList<string>)m.Value.For))];
    }

    /// <summary>Takes what making a preparation leaves off what is missing; what needs it stands behind it in the order of making.</summary>
    private List<(string Id, double Grams)> Credit(Prep prep, double times)
    {
        var credits = new List<(string, double)>();
        foreach (var left in prep.ByProducts)
        {
            if (!left.Id.IsGiven || !left.Amount.IsGiven || !missing.TryGetValue(left.Id.Value, out var lack) || !(lack.Grams > 0)) continue;
            double grams = times * left.Amount.Value.Dimension switch
            {
                Dimension.Mass => left.Amount.Value.Base,
                Dimension.Volume => left.Amount.Value.Base * (profiles.MaterialOf(left.Id.Value)?.Density ?? double.NaN),
                _ => double.NaN,
            };
            if (!(grams > 0)) continue;
            double taken = Math.Min(grams, lack.Grams);
            credits.Add((left.Id.Value, taken));
            if (lack.Grams - taken > 1e-6) missing[left.Id.Value] = (lack.Grams - taken, lack.For);
            else missing.Remove(left.Id.Value);
        }

        return credits;
    }

    /// <summary>How much to make: whole recipes where the surplus is drunk within its life, else quarters of one.</summary>
    private MakeTask? TaskOf(Prep prep, double lacks, List<string> forWhat)
    {
        var profile = profiles.Of(prep);
        double density = profile.Get(Fact.Density) is { IsKnown: true } d ? d.Value : double.NaN;
        double yield = prep.Yield.IsGiven ? prep.Yield.Value.Dimension switch
        {
            Dimension.Mass => prep.Yield.Value.Base,
            Dimension.Volume => prep.Yield.Value.Base * density,
            _ => profile.Mass,
        } : profile.Mass;
        if (!(yield > 0) || !(lacks > 0)) return null;
        double days = verdicts.Of(prep).Days;
        double wanted = lacks * Reserve;
        double whole = Math.Ceiling((wanted / yield) - 1e-9);
        double times = whole * yield <= lacks * Math.Max(1, Math.Floor(days)) * Reserve
            ? whole
            : Math.Ceiling((wanted / yield / SmallestShare) - 1e-9) * SmallestShare;
        var (hours, _) = MakingOf(prep, 0);
        CalendarDate? until = double.IsInfinity(days) ? null : LotLife.LastDay(On, days, [], On);
        return new MakeTask(
            prep, lacks, times, times * yield, profile.IsSolid ? double.NaN : times * yield / density, hours, until,
            ScalePlan.LinesAt(profile, times, profiles.Book.Settings), forWhat);
    }
}
