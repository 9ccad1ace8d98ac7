using CsCheck;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>Costs worked out by hand, to the cent.</summary>
public sealed class CostingTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "scale": "0.1 g" }, "costs": { "currency": "EUR" } }""";

    private static (ProfileSet Profiles, Recipe Recipe) Book(string lines, string prices, string serves = "1", params (string Path, string Text)[] more)
    {
        var result = Books.Check([
            ("bar.json", Bar),
            ("neap.drink.json", $$"""{ "name": "Neap", "ingredients": [ {{lines}} ], "method": [ { "do": "build" } ], "serves": {{serves}} }"""),
            ("a.prices.json", $$"""{ "on": "2026-10-01", "prices": [ {{prices}} ] }"""),
            .. more]);
        return (result.Profiles, result.Book.Drinks[0]);
    }

    private static Costing Of(string lines, string prices, string serves = "1", params (string Path, string Text)[] more)
    {
        var (profiles, recipe) = Book(lines, prices, serves, more);
        return profiles.Of(recipe).Cost;
    }

    [Fact]
    public void Bottles_are_poured_by_volume()
    {
        // 50 of 700 mL at 28.00 are 2.00; 10 of 750 mL at 15.00 are 0.20; nothing of it is rounded on the way.
        var cost = Of(
            """{ "item": "gin", "amount": "50 ml" }, { "item": "dry-vermouth", "amount": "10 ml" }""",
            """{ "item": "gin", "price": 28, "for": "700 ml" }, { "item": "dry-vermouth", "price": 15, "for": "75 cl" }""");
        Assert.True(cost.IsKnown);
        Assert.Equal(2.20m, Math.Round(cost.Whole.Value, 10));
        Assert.Equal([2.00m, 0.20m], cost.Lines.Select(l => Math.Round(l.Cost.Value, 10)));
        Assert.Equal(0m, cost.Trimmed);

        // Two pours are independent: what each may be off adds by squares.
        double low = Math.Sqrt(cost.Lines.Sum(l => Math.Pow((double)(l.Cost.Value - l.Cost.Low), 2)));
        Assert.True(low > 0);
        Assert.Equal(2.20 - low, (double)cost.Whole.Low, 9);
    }

    // Nothing of a fruit, more than there is, serves without end: a cost or a reason, never a fault.
    [Theory]
    [InlineData("0 ml", "1")]
    [InlineData("1e300 ml", "1")]
    [InlineData("999999999999 l", "1")]
    [InlineData("25 ml", "1e300")]
    [InlineData("25 ml", "1e-300")]
    public void An_amount_beyond_reason_is_no_fault(string amount, string serves)
    {
        foreach (string price in new[] { """{ "item": "lime", "price": 0.5, "for": "1 piece" }""", """{ "item": "lime", "price": 999999, "for": "1 g" }""", """{ "item": "lime-juice", "price": 3, "for": "1 l", "yield": "50 % w/w" }""" })
        {
            var (profiles, recipe) = Book(
                $$"""{ "item": "lime-juice", "amount": "{{amount}}" }, { "item": "gin", "amount": "50 ml" }""",
                price + """, { "item": "gin", "price": 28, "for": "700 ml" }""",
                serves);
            var fact = profiles.Of(recipe).Get(Fact.Cost);
            Assert.True(fact.IsKnown ? double.IsFinite(fact.High) && fact.Low <= fact.High : fact.OpenBecause is { Length: > 0 });
        }
    }

    [Fact]
    public void A_drink_for_several_is_shared_and_pieces_are_counted()
    {
        // 1 egg of a tray of 30 at 7.50 is 0.25; 2 sprigs of a bunch of 20 at 1.40 are 0.14: 0.39 for two serves.
        var cost = Of(
            """{ "item": "gin", "amount": "0.7 ml" }, { "item": "mint", "amount": "2 sprigs" }""",
            """{ "item": "gin", "price": 250, "for": "700 ml" }, { "item": "mint", "price": 1.4, "for": "20 pieces" }""",
            "2");
        Assert.Equal(0.39m, Math.Round(cost.Whole.Value, 10));
        Assert.Equal(0.195m, Math.Round(cost.Each.Value, 10));
    }

    [Fact]
    public void What_is_trimmed_is_paid_for()
    {
        // Half of it can be used: 100 g in the drink are 200 g bought, 0.40 at 2.00 a kilogram, of which 0.20 is thrown away.
        var house = Of("""{ "item": "ginger-juice", "amount": "100 g" }""", """{ "item": "ginger-juice", "price": 2, "for": "1 kg", "yield": "50 % w/w" }""");
        Assert.Equal((0.40m, 0.20m), (Math.Round(house.Whole.Value, 10), Math.Round(house.Trimmed, 10)));

        // The table of trimmings: 51 % of a pineapple is left, so that 510 g are one kilogram bought.
        var table = Of("""{ "item": "pineapple", "amount": "510 g" }""", """{ "item": "pineapple", "price": 2, "for": "1 kg" }""");
        Assert.Equal(2.00m, Math.Round(table.Whole.Value, 10));
        Assert.Equal(0.98m, Math.Round(table.Trimmed, 10));
        Assert.Contains("USDA Standard Reference 28, food 09266: refuse 49 %", table.Lines[0].From, StringComparison.Ordinal);
        Assert.InRange((double)table.Whole.Low, 2 * 0.51 / 0.59, 2 * 0.51 / 0.57);
        Assert.InRange((double)table.Whole.High, 2 * 0.51 / 0.47, 2 * 0.51 / 0.45);

        // What the house weighs comes before the table.
        var own = Of("""{ "item": "pineapple", "amount": "510 g" }""", """{ "item": "pineapple", "price": 2, "for": "1 kg", "yield": "100 % w/w" }""");
        Assert.Equal(1.02m, Math.Round(own.Whole.Value, 10));
    }

    [Fact]
    public void Juice_is_paid_for_in_fruit()
    {
        // One lime of 60 for 18.00 is 0.30 and gives 28 mL (15 to 60): 28 mL are one lime, with the range of the fruit.
        var cost = Of("""{ "item": "lime-juice", "amount": "28 ml" }""", """{ "item": "lime", "price": 18, "for": "60 pieces" }""");
        Assert.Equal(0.30m, Math.Round(cost.Whole.Value, 10));
        Assert.InRange((double)cost.Whole.High, 0.56, 0.57);
        Assert.InRange((double)cost.Whole.Low, 0.13, 0.141);
        Assert.True(cost.Trimmed > 0 && cost.Trimmed < cost.Whole.Value);
        Assert.Contains("1 lime, 28 mL of juice each", cost.Lines[0].From, StringComparison.Ordinal);
    }

    [Fact]
    public void A_preparation_costs_what_goes_in_over_what_comes_out()
    {
        // 500 g of sugar at 1.20 a kilogram are 0.60 and make 900 g; 90 g of it are a tenth: 0.06.
        var more = ("marsh-syrup.prep.json", """{ "name": "Marsh syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "450 g" } ], "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "900 g" }""");
        var (profiles, recipe) = Book(
            """{ "item": "marsh-syrup", "amount": "90 g" }""", """{ "item": "white-sugar", "price": 1.2, "for": "1 kg" }""", "1", more);
        Assert.Equal(0.06m, Math.Round(profiles.Of(recipe).Cost.Whole.Value, 10));
        var fact = profiles.Of(profiles.Book.Preps[0]).Get(Fact.Cost);
        double density = profiles.Of(profiles.Book.Preps[0]).Get(Fact.Density).Value;
        Assert.Equal(0.60 / 9 * density, fact.Value, 5);
        Assert.True(fact.Low <= fact.Value && fact.Value <= fact.High);
    }

    [Fact]
    public void Without_a_price_the_cost_is_open_and_says_of_what()
    {
        var (profiles, recipe) = Book(
            """{ "item": "gin", "amount": "50 ml" }, { "item": "dill", "amount": "1 sprig" }""",
            """{ "item": "gin", "price": 28, "for": "700 ml" }""");
        var cost = profiles.Of(recipe).Cost;
        Assert.False(cost.IsKnown);
        Assert.Equal(["there is no price of dill"], cost.Open);
        var fact = profiles.Of(recipe).Get(Fact.Cost);
        Assert.False(fact.IsKnown);
        Assert.Equal("there is no price of dill", fact.OpenBecause);
        var none = Books.Check(("neap.drink.json", """{ "name": "Neap", "ingredients": [ { "item": "gin", "amount": "50 ml" } ], "serves": 1 }"""));
        Assert.Equal("the book has no price list", none.Profiles.Of(none.Book.Drinks[0]).Get(Fact.Cost).OpenBecause);
    }

    [Fact]
    public void The_latest_price_is_in_force()
    {
        var cost = Of(
            """{ "item": "gin", "amount": "70 ml" }""",
            """{ "item": "gin", "price": 28, "for": "700 ml" }, { "item": "gin", "price": 30, "for": "700 ml", "on": "2026-11-01" }, { "item": "gin", "price": 20, "for": "700 ml", "on": "2025-11-01" }""");
        Assert.Equal(3.00m, Math.Round(cost.Whole.Value, 10));
    }

    [Fact]
    public void A_price_twice_as_high_is_a_cost_twice_as_high_and_nothing_overflows() =>
        Gen.Select(Gen.Int[1, 100_000_000], Gen.Int[1, 9_999_999], Gen.Int[1, 9_999_999]).Sample(
        (cents, amount, size) =>
        {
            decimal price = cents / 100m;
            string text = price.ToString(System.Globalization.CultureInfo.InvariantCulture), twice = (2 * price).ToString(System.Globalization.CultureInfo.InvariantCulture);
            var one = Of($$"""{ "item": "gin", "amount": "{{amount}} ml" }""", $$"""{ "item": "gin", "price": {{text}}, "for": "{{size}} ml" }""");
            var two = Of($$"""{ "item": "gin", "amount": "{{amount}} ml" }""", $$"""{ "item": "gin", "price": {{twice}}, "for": "{{size}} ml" }""");
            Assert.Equal(2 * one.Whole.Value, two.Whole.Value);
            Assert.True(one.Whole.Low <= one.Whole.Value && one.Whole.Value <= one.Whole.High);
        },
        iter: 30,
        threads: 1);

    [Theory]
    [InlineData("9999999 l", "0.00000001 ml", "1000000000")]
    [InlineData("0.00000001 ml", "9999999 l", "0")]
    [InlineData("9999999 l", "0.00000001 g", "1000000000")]
    public void What_nobody_could_buy_is_no_fault(string amount, string size, string price) =>
        Assert.True(Of(
            $$"""{ "item": "gin", "amount": "{{amount}}" }""", $$"""{ "item": "gin", "price": {{price}}, "for": "{{size}}" }""",
            "0.0000001").Each.Value >= 0);
}
