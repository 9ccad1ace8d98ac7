using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <content>Ingredients, menus, stock and the bar.</content>
public static partial class BookReader
{
    private static readonly PropertyShape[] SingleValues =
    [
        IngredientShape.Strength, IngredientShape.Density, IngredientShape.Ph, IngredientShape.TitratableAcidity, IngredientShape.Water,
        IngredientShape.Solids, IngredientShape.CarbonDioxide, IngredientShape.Salt, IngredientShape.Sodium, IngredientShape.Potassium,
        IngredientShape.Calcium, IngredientShape.Magnesium, IngredientShape.Chloride, IngredientShape.Sulphate,
        IngredientShape.Protein, IngredientShape.Fat, IngredientShape.Fibre, IngredientShape.Energy, IngredientShape.Caffeine,
        IngredientShape.Quinine, IngredientShape.Sulphite, IngredientShape.Purity, IngredientShape.Piece, IngredientShape.Yields,
    ];

    private static readonly (PropertyShape Group, string[] Paths)[] GroupedValues =
    [
        PathsOf(IngredientShape.Sugars), PathsOf(IngredientShape.Polyols), PathsOf(IngredientShape.Acids), PathsOf(IngredientShape.Life),
    ];

    private static (PropertyShape Group, string[] Paths) PathsOf(PropertyShape group) =>
        (group, [.. group.Value.Object!.All.Select(property =>
            StringPool.Get(System.Text.Encoding.UTF8.GetBytes(group.Name + "." + property.Name)))]);

    private static Ingredient BindIngredient(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var ingredient = new Ingredient { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[IngredientShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, IngredientShape.Shape, slots);
        Check(binder, slots, IngredientShape.Schema);
        ingredient.Name = Text(binder, slots, IngredientShape.Name);
        ingredient.Aliases = Texts(binder, slots, IngredientShape.Aliases);
        var kind = Word(binder, slots, IngredientShape.Kind);
        if (kind.IsGiven) ingredient.IngredientKind = new Given<ItemKind>(ItemKind.Of(kind.Value), kind.Span, kind.Name);
        ingredient.Like = Id(binder, slots, IngredientShape.Like);
        ingredient.State = Word(binder, slots, IngredientShape.State);
        var per = Word(binder, slots, IngredientShape.Per);
        if (per.IsGiven) ingredient.PerHundredMillilitres = new Given<bool>(per.Value == "100 ml", per.Span, per.Name);

        var mark = MarkOf(Word(binder, slots, IngredientShape.MarkProperty), Mark.House);
        var source = Text(binder, slots, IngredientShape.Source).Or(null!);
        var values = new Dictionary<string, SourcedValue>(StringComparer.Ordinal);
        foreach (var property in SingleValues) AddValue(binder, slots[property.Index], property.Value, property.Name, mark, source, values);
        Span<int> groupSlots = stackalloc int[16];
        foreach (var (group, paths) in GroupedValues)
        {
            int at = slots[group.Index];
            if (at < 0) continue;
            var shape = group.Value.Object!;
            var inner = groupSlots.Slice(0, shape.All.Length);
            if (!binder.Open(binder.Tree[at], shape, inner)) continue;
            for (int i = 0; i < inner.Length; i++) AddValue(binder, inner[i], shape.All[i].Value, paths[i], mark, source, values);
        }

        ingredient.Values = values;
        ingredient.Form = Text(binder, slots, IngredientShape.Form);
        ingredient.Allergens = BindAllergens(binder, slots[IngredientShape.Allergens.Index], mark, source);
        ingredient.Animal = Word(binder, slots, IngredientShape.Animal);
        ingredient.Hazard = Id(binder, slots, IngredientShape.Hazard);
        ingredient.KeepsCold = Flag(binder, slots, IngredientShape.KeepsCold);
        int open = slots[IngredientShape.Open.Index];
        if (binder.OpenMap(open, IngredientShape.Open.Value))
        {
            var reasons = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var property in binder.Tree[open].Properties)
            {
                var reason = binder.Text(property.Index, IngredientShape.Open.Value.Item!);
                if (reason.IsGiven && !reasons.ContainsKey(property.Name)) reasons[property.Name] = reason.Value;
            }

            ingredient.Open = reasons;
        }

        ingredient.Accept = BindAccept(binder, slots[IngredientShape.Accept.Index], IngredientShape.Accept.Value);
        ingredient.Notes = binder.TextOrTexts(slots[IngredientShape.Notes.Index], IngredientShape.Notes.Value);
        return ingredient;
    }

    private static void AddValue(
        Binder binder, int at, ValueShape shape, string path, Mark mark, string? source, Dictionary<string, SourcedValue> values)
    {
        if (at < 0) return;
        var node = binder.Tree[at];
        if (node.Kind != JsonKind.Object)
        {
            var plain = binder.Quantity(at, shape);
            if (plain.IsGiven) values[path] = Value(plain.Value, plain.Value, mark, source, node.Span);
            return;
        }

        Span<int> slots = stackalloc int[5];
        binder.Open(node, shape.Object!, slots);
        var all = shape.Object!.All;
        var value = binder.Quantity(slots[SourcedShape.Value], all[SourcedShape.Value].Value);
        var range = binder.Quantity(slots[SourcedShape.Range], all[SourcedShape.Range].Value);
        var ownMark = MarkOf(binder.Word(slots[SourcedShape.Mark], all[SourcedShape.Mark].Value), mark);
        string? ownSource = binder.Text(slots[SourcedShape.Source], all[SourcedShape.Source].Value).Or(source!);
        binder.Text(slots[SourcedShape.Note], all[SourcedShape.Note].Value);
        if (value.IsGiven || range.IsGiven)
            values[path] = Value(value.IsGiven ? value.Value : range.Value, range.IsGiven ? range.Value : value.Value, ownMark, ownSource, node.Span);
    }

    private static SourcedValue Value(Quantity typical, Quantity range, Mark mark, string? source, TextSpan span)
    {
        // Proof is a strength by volume, by the factor of its unit.
        var dimension = typical.Dimension == Dimension.Proof ? Dimension.PercentByVolume : typical.Dimension;
        double value = typical.Base;
        return new SourcedValue(value, Math.Min(range.BaseLow, value), Math.Max(range.BaseHigh, value), dimension, mark, source, span);
    }

    private static Mark MarkOf(Given<string> word, Mark fallback) => word.Or("") switch
    {
        "read" => Mark.Read,
        "memory" => Mark.Memory,
        "common practice" => Mark.CommonPractice,
        "computed" => Mark.Computed,
        "house" => Mark.House,
        _ => fallback,
    };

    private static AllergenStatement? BindAllergens(Binder binder, int at, Mark mark, string? source)
    {
        if (at < 0) return null;
        Span<int> slots = stackalloc int[AllergenShape.Shape.All.Length];
        var node = binder.Tree[at];
        if (!binder.Open(node, AllergenShape.Shape, slots)) return null;
        var contains = Texts(binder, slots, AllergenShape.Contains);
        var mayContain = Texts(binder, slots, AllergenShape.MayContain);
        var exempt = BindExemptions(binder, slots[AllergenShape.Exempt.Index]);
        var ownMark = MarkOf(Word(binder, slots, AllergenShape.MarkProperty), mark);
        string? ownSource = Text(binder, slots, AllergenShape.Source).Or(source!);
        return new AllergenStatement(
            Values(contains), Values(mayContain), exempt, ownMark, ownSource, node.Span)
        { SaysWhatItContains = slots[AllergenShape.Contains.Index] >= 0 };
    }

    private static FixedList<AllergenExemption> BindExemptions(Binder binder, int at) =>
        BindRows(binder, at, AllergenShape.Exempt.Value, ExemptionShape.Shape, static (b, row, slots, _) =>
        {
            var allergen = Word(b, slots, ExemptionShape.Allergen);
            var places = Texts(b, slots, ExemptionShape.In);
            string? because = Text(b, slots, ExemptionShape.Because).Or(null!);
            string? law = Text(b, slots, ExemptionShape.Source).Or(null!);
            return allergen.IsGiven ? new AllergenExemption(allergen.Value, Values(places), because, law) : null;
        });

    private static string[] Values(FixedList<Given<string>> texts)
    {
        if (texts.Count == 0) return [];
        var values = new string[texts.Count];
        for (int i = 0; i < values.Length; i++) values[i] = texts[i].Value;
        return values;
    }

    private static Menu BindMenu(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var menu = new Menu { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[MenuShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, MenuShape.Shape, slots);
        Check(binder, slots, MenuShape.Schema);
        menu.Name = Text(binder, slots, MenuShape.Name);
        menu.Drinks = BindEntries(binder, slots[MenuShape.Drinks.Index]);
        menu.Accept = BindAccept(binder, slots[MenuShape.Accept.Index], MenuShape.Accept.Value);
        menu.Notes = binder.TextOrTexts(slots[MenuShape.Notes.Index], MenuShape.Notes.Value);
        return menu;
    }

    private static FixedList<MenuEntry> BindEntries(Binder binder, int at) =>
        BindRows(binder, at, MenuShape.Drinks.Value, MenuShape.Entry, static (b, row, slots, number) => new MenuEntry
        {
            Span = row.Span,
            Number = number,
            Drink = Id(b, slots, MenuShape.Drink),
            Name = Text(b, slots, MenuShape.EntryName),
            Words = Text(b, slots, MenuShape.Words),
            Covers = b.Number(slots[MenuShape.Covers.Index], MenuShape.Covers.Value),
            Claims = Texts(b, slots, MenuShape.Claims),
            Notes = b.TextOrTexts(slots[MenuShape.EntryNotes.Index], MenuShape.EntryNotes.Value),
        });

    private static Stock BindStock(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var stock = new Stock { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[StockShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, StockShape.Shape, slots);
        Check(binder, slots, StockShape.Schema);
        stock.Name = Text(binder, slots, StockShape.Name);
        stock.On = Date(binder, slots, StockShape.On);
        stock.Lots = BindLots(binder, slots[StockShape.Lots.Index]);
        stock.Accept = BindAccept(binder, slots[StockShape.Accept.Index], StockShape.Accept.Value);
        stock.Notes = binder.TextOrTexts(slots[StockShape.Notes.Index], StockShape.Notes.Value);
        return stock;
    }

    private static FixedList<Lot> BindLots(Binder binder, int at) =>
        BindRows(binder, at, StockShape.Lots.Value, StockShape.LotShape, static (b, row, slots, number) => new Lot
        {
            Span = row.Span,
            Number = number,
            Item = Id(b, slots, StockShape.Item),
            Made = Date(b, slots, StockShape.Made),
            Opened = Date(b, slots, StockShape.Opened),
            UseBy = Date(b, slots, StockShape.UseBy),
            Amount = Quantity(b, slots, StockShape.Amount),
            At = Quantity(b, slots, StockShape.At),
            In = Vessel(b, slots, StockShape.In),
            Measured = BindMeasurement(b, slots[StockShape.Measured.Index]),
            LotCode = b.TextOrNumber(slots[StockShape.LotCode.Index], StockShape.LotCode.Value),
            MadeFrom = Texts(b, slots, StockShape.MadeFrom),
            By = Text(b, slots, StockShape.By),
            Frozen = BindFrozen(b, slots[StockShape.Frozen.Index]),
            Note = Text(b, slots, StockShape.Note),
        });

    private static FixedList<FrozenTime> BindFrozen(Binder binder, int at) =>
        BindRows(binder, at, StockShape.Frozen.Value, StockShape.FrozenTime, static (b, row, slots, _) =>
        {
            var from = Date(b, slots, StockShape.From);
            var to = Date(b, slots, StockShape.To);
            return from.IsGiven ? new FrozenTime(from.Value, to.IsGiven ? to.Value : null, row.Span) : null;
        });

    private static PriceList BindPrices(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var list = new PriceList { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[PricesShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, PricesShape.Shape, slots);
        Check(binder, slots, PricesShape.Schema);
        list.Name = Text(binder, slots, PricesShape.Name);
        list.On = Date(binder, slots, PricesShape.On);
        list.From = Text(binder, slots, PricesShape.From);
        list.Prices = BindPriceRows(binder, slots[PricesShape.Prices.Index]);
        list.Accept = BindAccept(binder, slots[PricesShape.Accept.Index], PricesShape.Accept.Value);
        list.Notes = binder.TextOrTexts(slots[PricesShape.Notes.Index], PricesShape.Notes.Value);
        return list;
    }

    private static FixedList<Price> BindPriceRows(Binder binder, int at) =>
        BindRows(binder, at, PricesShape.Prices.Value, PricesShape.PriceShape, static (b, row, slots, number) => new Price
        {
            Span = row.Span,
            Number = number,
            Item = Id(b, slots, PricesShape.Item),
            Paid = Money(b, slots[PricesShape.Paid.Index], PricesShape.Paid.Value),
            For = Quantity(b, slots, PricesShape.For),
            Yield = Quantity(b, slots, PricesShape.Yield),
            On = Date(b, slots, PricesShape.PriceOn),
            From = Text(b, slots, PricesShape.PriceFrom),
            Note = Text(b, slots, PricesShape.Note),
        });

    /// <summary>An amount of money: the decimal number that is written, not the binary one nearest to it.</summary>
    private static Given<decimal> Money(Binder binder, int at, ValueShape shape)
    {
        // The conversion keeps fifteen digits, so that 24.9 is 24.9.
        var number = binder.Number(at, shape);
        return number.IsGiven ? new Given<decimal>((decimal)number.Value, number.Span, binder.Tree[at].NameSpan) : default;
    }

    private static Bar BindBar(Binder binder, SourceFile file, string id, List<ReadingProblem> problems)
    {
        var bar = new Bar { Source = file, HoldsObject = true, Id = id, Problems = problems };
        Span<int> slots = stackalloc int[BarShape.Shape.All.Length];
        binder.Open(binder.Tree.Root, BarShape.Shape, slots);
        Check(binder, slots, BarShape.Schema);
        bar.Name = Text(binder, slots, BarShape.Name);
        bar.Jurisdictions = Texts(binder, slots, BarShape.Jurisdictions);
        bar.Measures = BindMap(binder, slots[BarShape.Measures.Index], BarShape.Measures.Value, static (b, at, shape) => b.Quantity(at, shape));
        BindTools(binder, slots[BarShape.Tools.Index], bar);
        bar.Glasses = BindGlasses(binder, slots[BarShape.Glasses.Index]);
        bar.Vessels = BindVessels(binder, slots[BarShape.Vessels.Index]);
        bar.Limits = BindMap(binder, slots[BarShape.Limits.Index], BarShape.Limits.Value, static (b, at, shape) => b.Quantity(at, shape));
        bar.Costs = BindCosts(binder, slots[BarShape.Costs.Index]);
        bar.Rules = BindMap(binder, slots[BarShape.Rules.Index], BarShape.Rules.Value, BindLevel);
        bar.Schemas = BindMap(binder, slots[BarShape.Schemas.Index], BarShape.Schemas.Value, static (b, at, shape) => b.Text(at, shape));
        bar.Files = Texts(binder, slots, BarShape.Files);
        bar.LeaveOut = Texts(binder, slots, BarShape.LeaveOut);
        bar.Asks = Texts(binder, slots, BarShape.Asks);
        bar.AsOf = Date(binder, slots, BarShape.AsOf);
        bar.Accept = BindAccept(binder, slots[BarShape.Accept.Index], BarShape.Accept.Value);
        bar.Notes = binder.TextOrTexts(slots[BarShape.Notes.Index], BarShape.Notes.Value);
        return bar;
    }

    private static Dictionary<string, Given<T>> BindMap<T>(Binder binder, int at, ValueShape shape, Func<Binder, int, ValueShape, Given<T>> read)
    {
        var map = new Dictionary<string, Given<T>>(StringComparer.Ordinal);
        if (!binder.OpenMap(at, shape)) return map;
        foreach (var property in binder.Tree[at].Properties)
        {
            var value = read(binder, property.Index, shape.Item!);
            string name = property.Name;
            if (value.IsGiven && !map.ContainsKey(name)) map[name] = value;
        }

        return map;
    }

    private static Given<RuleLevel> BindLevel(Binder binder, int at, ValueShape shape)
    {
        var node = binder.Tree[at];
        Given<string> word, because = default;
        Given<CalendarDate> until = default;
        if (node.Kind == JsonKind.Object)
        {
            Span<int> slots = stackalloc int[BarShape.LevelShape.All.Length];
            if (!binder.Open(node, BarShape.LevelShape, slots)) return default;
            word = Word(binder, slots, BarShape.Level);
            because = Text(binder, slots, BarShape.LevelBecause);
            until = Date(binder, slots, BarShape.LevelUntil);
        }
        else
        {
            word = binder.Word(at, shape.Item!);
        }

        return word.IsGiven && Settings.TryLevel(word.Value, out var level)
            ? new Given<RuleLevel>(new RuleLevel(level, because, until), node.Span, node.NameSpan)
            : default;
    }

    private static CostSettings? BindCosts(Binder binder, int at)
    {
        if (at < 0) return null;
        Span<int> slots = stackalloc int[BarShape.CostsShape.All.Length];
        if (!binder.Open(binder.Tree[at], BarShape.CostsShape, slots)) return null;
        return new CostSettings(
            binder.Pattern(slots[BarShape.Currency.Index], BarShape.Currency.Value),
            Money(binder, slots[BarShape.MostPerServe.Index], BarShape.MostPerServe.Value),
            Quantity(binder, slots, BarShape.PricesHold),
            binder.Tree[at].Span);
    }

    private static void BindTools(Binder binder, int at, Bar bar)
    {
        if (at < 0) return;
        Span<int> slots = stackalloc int[BarShape.ToolsShape.All.Length];
        if (!binder.Open(binder.Tree[at], BarShape.ToolsShape, slots)) return;
        bar.Scale = Quantity(binder, slots, BarShape.Scale);
        bar.Jigger = Quantity(binder, slots, BarShape.Jigger);
        bar.Fridge = Quantity(binder, slots, BarShape.Fridge);
        bar.Freezer = Quantity(binder, slots, BarShape.Freezer);
        int meters = slots[BarShape.Meters.Index];
        if (!binder.OpenMap(meters, BarShape.Meters.Value)) return;
        var map = new Dictionary<string, Meter>(StringComparer.Ordinal);
        Span<int> inner = stackalloc int[BarShape.MeterShape.All.Length];
        foreach (var property in binder.Tree[meters].Properties)
        {
            if (!binder.Open(property, BarShape.MeterShape, inner)) continue;
            var meter = new Meter(
                property.Name,
                binder.Number(inner[BarShape.MeterPh.Index], BarShape.MeterPh.Value),
                binder.Number(inner[BarShape.MeterBrix.Index], BarShape.MeterBrix.Value),
                Date(binder, inner, BarShape.Calibrated),
                property.Span);
            if (!map.ContainsKey(meter.Id)) map[meter.Id] = meter;
        }

        bar.Meters = map;
    }

    private static Dictionary<string, Glass> BindGlasses(Binder binder, int at)
    {
        var map = new Dictionary<string, Glass>(StringComparer.Ordinal);
        if (!binder.OpenMap(at, BarShape.Glasses.Value)) return map;
        Span<int> slots = stackalloc int[BarShape.GlassShape.All.Length];
        foreach (var property in binder.Tree[at].Properties)
        {
            if (!binder.Open(property, BarShape.GlassShape, slots)) continue;
            Check(binder, slots, BarShape.GlassNotes);
            var glass = new Glass(
                property.Name, Quantity(binder, slots, BarShape.Brim), Quantity(binder, slots, BarShape.WashLine), property.Span)
            { Name = Text(binder, slots, BarShape.GlassName) };
            if (!map.ContainsKey(glass.Id)) map[glass.Id] = glass;
        }

        return map;
    }

    private static Dictionary<string, VesselSpec> BindVessels(Binder binder, int at)
    {
        var map = new Dictionary<string, VesselSpec>(StringComparer.Ordinal);
        if (!binder.OpenMap(at, BarShape.Vessels.Value)) return map;
        Span<int> slots = stackalloc int[BarShape.VesselShape.All.Length];
        foreach (var property in binder.Tree[at].Properties)
        {
            if (!binder.Open(property, BarShape.VesselShape, slots)) continue;
            var vessel = new VesselSpec(
                property.Name, Quantity(binder, slots, BarShape.Capacity), Quantity(binder, slots, BarShape.Rating), property.Span);
            if (!map.ContainsKey(vessel.Id)) map[vessel.Id] = vessel;
        }

        return map;
    }
}
