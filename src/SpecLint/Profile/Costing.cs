using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>An amount of money with its range of about 95 %, in the currency of the bar.</summary>
/// <param name="Value">Typical.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
public readonly record struct Money(decimal Value, decimal Low, decimal High)
{
    /// <summary>An amount as money is written: two decimals.</summary>
    public static string Digits(decimal money) =>
        Math.Round(money, 2, MidpointRounding.AwayFromZero).ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The money of a fact.</summary>
    internal static Money Of(FactValue fact) => new((decimal)fact.Value, (decimal)fact.Low, (decimal)fact.High);

    /// <summary>The amount with its range where that says something, e.g. <c>2.16 EUR (2.06–2.25)</c>.</summary>
    public string Words(string currency)
    {
        string low = Digits(Low), high = Digits(High);
        return low == high ? $"{Digits(Value)} {currency}" : $"{Digits(Value)} {currency} ({low}–{high})";
    }

    /// <summary>The same times a factor.</summary>
    public Money Times(decimal factor) => new(Value * factor, Low * factor, High * factor);
}

/// <summary>What a line of a recipe costs.</summary>
/// <param name="Line">The line.</param>
/// <param name="Cost">What it costs; not given where that is open.</param>
/// <param name="Trimmed">How much of that is paid for what is thrown away.</param>
/// <param name="From">How it was worked out, in words.</param>
/// <param name="OpenBecause">Why it is open; empty where it is not.</param>
public sealed record CostLine(Line Line, Money Cost, decimal Trimmed, string From, string OpenBecause)
{
    /// <summary>Whether the cost is known.</summary>
    public bool IsKnown => OpenBecause.Length == 0;
}

/// <summary>
/// What a recipe costs: the price of what is bought, over the share of it that can be used, times what goes in. Prices are decimal
/// throughout; amounts, yields and pieces carry their ranges, which add by squares since they are independent.
/// </summary>
public sealed class Costing
{
    private const double Largest = 1e12;
    private const decimal LargestAmount = 1e12m;

    private Costing(IReadOnlyList<CostLine> lines, double serves, double grams, PriceBook prices)
    {
        Lines = lines;
        MadeGrams = grams;
        Made = double.IsNaN(serves) ? grams / 100 : serves;
        Prices = prices;
        decimal value = 0;
        double down = 0, up = 0;
        foreach (var line in lines)
        {
            value += line.Cost.Value;
            down += Square((double)(line.Cost.Value - line.Cost.Low));
            up += Square((double)(line.Cost.High - line.Cost.Value));
        }

        Whole = new Money(value, Math.Max(0, value - Decimal(Math.Sqrt(down))), value + Decimal(Math.Sqrt(up)));
    }

    /// <summary>Each line: ingredients, garnish, rim.</summary>
    public IReadOnlyList<CostLine> Lines { get; }

    /// <summary>What all that is known costs together, all serves.</summary>
    public Money Whole { get; }

    /// <summary>The lines without a cost, in words.</summary>
    public IEnumerable<string> Open => Lines.Where(l => !l.IsKnown).Select(l => l.OpenBecause).Distinct();

    /// <summary>Whether every line has a cost.</summary>
    public bool IsKnown => Lines.All(l => l.IsKnown);

    /// <summary>What of it is paid for trimmings.</summary>
    public decimal Trimmed => Lines.Sum(l => l.Trimmed);

    /// <summary>The prices that it was worked out with.</summary>
    internal PriceBook Prices { get; }

    /// <summary>Serves of a drink; hundreds of grams of a preparation as made, NaN where not known.</summary>
    private double Made { get; }

    /// <summary>What a preparation makes, g; NaN where not known, and of a drink.</summary>
    internal double MadeGrams { get; }

    /// <summary>What a serve of a drink costs; of a preparation 100 g.</summary>
    public Money Each => Made > 0 ? Whole.Times(Decimal(1 / Made)) : default;

    /// <summary>What a recipe costs.</summary>
    /// <param name="profile">Its profile.</param>
    public static Costing Of(RecipeProfile profile)
    {
        var set = profile.Set;
        var lines = new List<CostLine>(profile.Parts.Count);
        foreach (var part in profile.Parts) lines.Add(OfLine(part, profile, set));
        return profile.Recipe is Prep prep
            ? new Costing(lines, double.NaN, GramsMade(prep, profile), set.Prices)
            : new Costing(lines, profile.Recipe.ServesOrOne, double.NaN, set.Prices);
    }

    /// <summary>The cost as a fact: of a drink a serve, of a preparation 100 mL or, of a solid, 100 g.</summary>
    internal static FactValue FactOf(RecipeProfile profile)
    {
        if (profile.Set.Prices.IsEmpty) return FactValue.Open("the book has no price list");
        var cost = profile.Cost;
        if (!cost.IsKnown) return FactValue.Open(Say.List([.. cost.Open]));
        if (!(cost.Made > 0)) return FactValue.Open("how much it makes is not known");
        var each = cost.Each;
        if (profile.Recipe is Prep && !profile.IsSolid)
        {
            var density = profile.Get(Fact.Density);
            if (!density.IsKnown) return FactValue.Open("its density is not known");
            each = each.Times(Decimal(density.Value));
        }

        return new FactValue(Rounded(each.Value), Rounded(each.Low), Rounded(each.High), "prices", null);
    }

    private static double Rounded(decimal money) => (double)Math.Round(money, 6);

    private static double Square(double x) => x * x;

    /// <summary>An amount as a decimal number; what nobody could buy, or cannot be reckoned, stays within what a decimal number can hold.</summary>
    internal static decimal Decimal(double x) => x <= 0 ? 0 : x < Largest ? (decimal)x : LargestAmount;

    /// <summary>What a preparation yields, g: what it states, else what goes in less what is taken out.</summary>
    private static double GramsMade(Prep prep, RecipeProfile profile)
    {
        if (prep.Yield is { IsGiven: true, Value.Dimension: Dimension.Mass } mass) return mass.Value.Base;
        if (prep.Yield is { IsGiven: true, Value.Dimension: Dimension.Volume } volume)
            return profile.Get(Fact.Density) is { IsKnown: true } density ? volume.Value.Base * density.Value : double.NaN;
        return (profile.Unknown & (Unknowns.Mass | Unknowns.Composition)) == 0 ? profile.Mass : double.NaN;
    }

    private static CostLine OfLine(Part part, RecipeProfile whole, ProfileSet set)
    {
        string id = part.Line.Item.Or("");
        if (part.Item is not { } item) return Without(part.Line, $"{(id.Length == 0 ? "a line" : id)} is not known");
        if (!part.Line.Amount.IsGiven) return Without(part.Line, $"how much {id} goes in is not given");
        if (set.Prices.Find(id) is { } price) return OfPrice(part, price, set);
        if (item.ByProduct is not null) return new CostLine(part.Line, default, 0, $"left over from {item.File.Id}, which carries its cost", "");
        if (part.Material is { Kind.IsWater: true }) return new CostLine(part.Line, default, 0, "water is not counted", "");
        if (item.File is Recipe recipe)
            return set.TryBefore(recipe, whole) is { } inner ? OfPrep(part, inner) : Without(part.Line, $"what {id} costs is not known");
        if (JuiceOf(id, set) is { } fruit) return OfJuice(part, fruit.Price, fruit.Fruit, set);
        return Without(part.Line, $"there is no price of {id}");
    }

    private static CostLine Without(Line line, string because) => new(line, default, 0, "", because);

    private static CostLine OfPrep(Part part, RecipeProfile inner)
    {
        var cost = inner.Cost;
        if (!cost.IsKnown) return Without(part.Line, string.Join("; ", cost.Open));
        if (part.Line.Amount.Value.Dimension == Dimension.Count && inner.Recipe is Prep { PortionCount: { IsGiven: true, Value: > 0 } count })
        {
            decimal portions = Decimal(part.Line.Amount.Value.Value / count.Value);
            return new CostLine(
                part.Line, cost.Whole.Times(portions), cost.Trimmed * portions,
                $"one of {Say.Number(count.Value, 0)} made in the house ({inner.Recipe.Id})", "");
        }

        if (!part.IsWeighed || !(cost.Made > 0)) return Without(part.Line, $"how much {inner.Recipe.Id} weighs is not known");
        var share = part.Grams;
        var each = cost.Each.Times(0.01m);
        return new CostLine(
            part.Line,
            Product(each, share),
            each.Value == 0 || cost.Whole.Value == 0
                ? 0
                : Decimal((double)(cost.Trimmed / cost.Whole.Value)) * each.Value * Decimal(share.Typical),
            $"made in the house ({inner.Recipe.Id})",
            "");
    }

    private static CostLine OfPrice(Part part, PriceEntry price, ProfileSet set)
    {
        var used = AmountLike(part, price.Size.Dimension);
        if (double.IsNaN(used.Typical))
            return Without(
                part.Line, $"the price of {part.Line.Item.Or("")} is per {Unit(price.Size)}, and how much of that goes in is not known");
        var (yield, why) = YieldOf(price, part.Line.Item.Or(""), set);
        var bought = new Trace(used.Typical / yield.Typical, used.Low / yield.Typical, used.High / yield.Typical);
        return Bought(part.Line, price, bought, yield, why);
    }

    /// <summary>Juice of a fruit that is priced by the piece or by weight: pieces are what is bought.</summary>
    private static CostLine OfJuice(Part part, PriceEntry price, Ingredient fruit, ProfileSet set)
    {
        var given = fruit.Values["yields"];
        double ml = part.Millilitres;
        if (double.IsNaN(ml)) return Without(part.Line, $"how many millilitres of {part.Line.Item.Or("")} go in is not known");
        double spread = part.Grams.Typical > 0 ? (part.Grams.High - part.Grams.Low) / 2 / part.Grams.Typical : 0;
        double up = Math.Sqrt(Math.Pow((given.Typical / given.Low) - 1, 2) + (spread * spread));
        double down = Math.Sqrt(Math.Pow(1 - (given.Typical / given.High), 2) + (spread * spread));
        double pieces = ml / given.Typical, size = pieces;
        if (price.Size.Dimension == Dimension.Mass)
        {
            if (set.MaterialOf(fruit.Id) is not { Piece.Typical: > 0 } whole) return Without(part.Line, $"what one {fruit.Id} weighs is not known");
            size = pieces * whole.Piece.Typical;
        }
        else if (price.Size.Dimension != Dimension.Count)
        {
            return Without(part.Line, $"the price of {fruit.Id} is per {Unit(price.Size)}");
        }

        var material = set.MaterialOf(fruit.Id);
        double used = material is { Piece.Typical: > 0 } && part.IsWeighed && pieces > 0
            ? Math.Min(1, part.Grams.Typical / (pieces * material.Piece.Typical))
            : 1;
        string source = given.Source is { Length: > 0 } from ? $" ({from})" : "";
        return Bought(
            part.Line,
            price,
            new Trace(size, size * Math.Max(0, 1 - down), size * (1 + up)),
            new Trace(used, used, used),
            $"{Say.Number(pieces, 2)} {fruit.Id}, {Say.Number(given.Typical, 0)} mL of juice each{source}");
    }

    private static CostLine Bought(Line line, PriceEntry price, Trace bought, Trace yield, string why)
    {
        double size = price.Size.Base;
        if (!(size > 0)
            || double.IsInfinity(bought.High)
            || double.IsNaN(bought.High)
            || double.IsNaN(bought.Typical)
            || double.IsNaN(bought.Low)
            || double.IsNaN(yield.Typical))
            return Without(line, $"the size that {line.Item.Or("")} is bought in is not known");

        // The range of the yield joins that of the amount by squares: the two are independent.
        double low = bought.Low, high = bought.High;
        if (bought.Typical > 0 && (yield.Low != yield.Typical || yield.High != yield.Typical))
        {
            double down = Math.Sqrt(Math.Pow(1 - (low / bought.Typical), 2) + Math.Pow(1 - (yield.Typical / yield.High), 2));
            double up = Math.Sqrt(Math.Pow((high / bought.Typical) - 1, 2) + Math.Pow((yield.Typical / yield.Low) - 1, 2));
            (low, high) = (bought.Typical * Math.Max(0, 1 - down), bought.Typical * (1 + up));
        }

        var cost = Product(new Money(price.Paid, price.Paid, price.Paid), new Trace(bought.Typical / size, low / size, high / size));
        return new CostLine(line, cost, cost.Value * Decimal(1 - yield.Typical), $"{Amount(price)}{(why.Length > 0 ? "; " + why : "")}", "");
    }

    private static string Amount(PriceEntry price) =>
        $"{price.Paid.ToString("0.00##", System.Globalization.CultureInfo.InvariantCulture)} for "
            + $"{Rounding.Words(price.Size.Base, price.Size)}";

    private static Money Product(Money price, Trace amount)
    {
        decimal value = price.Value * Decimal(amount.Typical);
        double down = Math.Sqrt(Square((double)(price.Value - price.Low) * amount.Typical) + Square((double)price.Value * (amount.Typical - amount.Low)));
        double up = Math.Sqrt(Square((double)(price.High - price.Value) * amount.Typical) + Square((double)price.Value * (amount.High - amount.Typical)));
        return new Money(value, Math.Max(0, value - Decimal(down)), value + Decimal(up));
    }

    /// <summary>What goes in, in the dimension of the size that is bought; NaN where it cannot be had.</summary>
    private static Trace AmountLike(Part part, Dimension dimension)
    {
        var amount = part.Line.Amount.Value;
        var nothing = new Trace(double.NaN, double.NaN, double.NaN);
        switch (dimension)
        {
            case Dimension.Mass:
                return part.IsWeighed ? part.Grams : nothing;
            case Dimension.Volume:
                if (double.IsNaN(part.Millilitres)) return nothing;
                return part.IsWeighed && part.Grams.Typical > 0
                    ? new Trace(
                        part.Millilitres, part.Millilitres * part.Grams.Low / part.Grams.Typical,
                        part.Millilitres * part.Grams.High / part.Grams.Typical)
                    : new Trace(part.Millilitres, amount.BaseLow, amount.BaseHigh);
            case Dimension.Count:
                if (amount.Dimension == Dimension.Count && !PieceTable.IsPart(amount.Unit.Name)) return new Trace(amount.Value, amount.Low, amount.High);
                return part is { IsWeighed: true, Material.Piece.Typical: > 0 }
                    ? new Trace(
                        part.Grams.Typical / part.Material.Piece.Typical, part.Grams.Low / part.Material.Piece.Typical,
                        part.Grams.High / part.Material.Piece.Typical)
                    : nothing;
            default:
                return nothing;
        }
    }

    /// <summary>The share of what is bought that can be used: what the house weighs, else the table, else all of it.</summary>
    internal static (Trace Share, string Why) YieldOf(PriceEntry price, string item, ProfileSet set)
    {
        if (price.Yield is { Base: > 0 } house)
            return (new Trace(
                house.Base / 100, house.BaseLow / 100, house.BaseHigh / 100), $"{Say.Number(house.Base, 0)} % of it can be used (the house)");
        var trimming = TrimmingTable.Find(item) ?? TrimmingTable.Find(set.MaterialOf(item)?.Ingredient?.Like.Or("") ?? "");
        return trimming is null
            ? (new Trace(1, 1, 1), "")
            : (new Trace(
                trimming.Typical / 100, trimming.Low / 100, trimming.High / 100), $"{Say.Number(trimming.Typical, 0)} % of it can be "
                    + $"used, {trimming.Used} ({trimming.Source})");
    }

    /// <summary>The fruit whose juice an item is, with its price.</summary>
    private static (PriceEntry Price, Ingredient Fruit)? JuiceOf(string id, ProfileSet set)
    {
        for (int i = 0; i < 5 && id.Length > 0; i++)
        {
            if (id.EndsWith("-juice", StringComparison.Ordinal))
            {
                string fruit = id.Substring(0, id.Length - "-juice".Length);
                if (set.Prices.Find(fruit) is { } price
                    && set.MaterialOf(fruit)?.Ingredient is { } ingredient
                    && ingredient.Values.TryGetValue("yields", out var yields)
                    && yields is { Dimension: Dimension.Volume, Low: > 0 })
                    return (price, ingredient);
            }

            id = set.Book.Resolve(id)?.File is Ingredient { Like.IsGiven: true } own ? own.Like.Value : "";
        }

        return null;
    }

    private static string Unit(Quantity size) => size.Dimension switch { Dimension.Volume => "volume", Dimension.Mass => "mass", _ => "piece" };
}
