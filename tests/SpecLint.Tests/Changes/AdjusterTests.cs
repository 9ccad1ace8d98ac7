using System.Globalization;
using System.Text;
using CsCheck;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

public sealed class AdjusterTests
{
    private const string Bar = """
        { "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "scale": "1 g", "jigger": "2.5 ml", "fridge": "4 °C" },
          "glasses": { "small-coupe": { "brim": "150 ml", "washLine": "130 ml" }, "thimble": { "brim": "75 ml", "washLine": "65 ml" } } }
        """;

    private static string Sour(double gin, double lime, double syrup) => $$"""
        {
          "name": "Sluice", "style": "shaken-sour",
          "ingredients": [
            { "item": "gin", "amount": "{{gin}} ml" }, // the well
            { "item": "lime-juice", "amount": "{{lime}} ml" },
            { "item": "simple-syrup", "amount": "{{syrup}} ml" },
            { "item": "aromatic-bitters", "amount": "1 dash" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s", "items": [ "gin", "lime-juice" ] }, { "do": "fine-strain" } ],
          "glass": "small-coupe", "serves": 1
        }
        """;

    private const string Syrup = """
        { "name": "Marsh syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "400 g", "share": "66.7 % w/w" }, { "item": "water", "amount": "200 g", "share": "33.3 % w/w" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "600 g", "keep": { "at": "4 °C", "for": "7 d" } }
        """;

    private const string Soured = """
        { "name": "Sour cucumber", "family": "acid-adjusted-juice", "ingredients": [
            { "item": "cucumber-juice", "amount": "940 g" }, { "item": "citric-acid", "amount": "20 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "960 g", "target": { "standsInFor": "lime-juice" }, "keep": { "at": "4 °C", "for": "2 d" } }
        """;

    private static Adjustment? Try(AdjustRequest request, string id, out string why, params (string Path, string Text)[] files)
    {
        var input = Books.Input([("bar.json", Bar), .. files]);
        var before = Checker.Check(input);
        return Adjuster.Of(input, before, (Recipe)before.Book.Resolve(id)!.File, request, out why);
    }

    private static Adjustment Of(AdjustRequest request, string id, params (string Path, string Text)[] files)
    {
        var adjusted = Try(request, id, out string why, files);
        Assert.True(adjusted is not null, why);
        return adjusted!;
    }

    /// <summary>A declared strength that agreed follows the amounts; one that was wrong before stays for its own finding.</summary>
    [Theory]
    [InlineData(0, true)]
    [InlineData(9, false)]
    public void What_is_declared_follows_where_it_agreed(double off, bool follows)
    {
        var (book, profiles) = Checker.Profile(Books.Input(("bar.json", Bar), ("sluice.drink.json", Sour(50, 25, 20))));
        string declared = FormattableString.Invariant($"{profiles.Of((Recipe)book.Resolve("sluice")!.File).Get(Fact.Abv).Value + off:0.0} % v/v");
        string sour = Sour(50, 25, 20).Replace(
            "\"serves\": 1", $"\"serves\": 1, \"declares\": {{ \"allergens\": [], \"abv\": \"{declared}\" }}", StringComparison.Ordinal);
        var adjusted = Of(new AdjustRequest { Targets = [new AdjustTarget(Fact.Abv, 12, 12)] }, "sluice", ("sluice.drink.json", sour));
        string text = Encoding.UTF8.GetString(adjusted.File.Utf8.ToArray());
        Assert.Equal(!follows, text.Contains($"\"abv\": \"{declared}\"", StringComparison.Ordinal));
        Assert.Equal(follows, adjusted.Remarks.Any(r => r.Contains("declared strength follows", StringComparison.Ordinal)));
        if (follows) Assert.Matches("\"abv\": \"1[12](\\.\\d)? % v/v\"", text);
    }

    private static string After(Adjustment adjusted, string item) => adjusted.Lines.Single(l => l.Item == item).After;

    /// <summary>By hand: 400 g of sugar are half of 800 g, so that 400 g of water go in; two thirds of the sugar stay a half.</summary>
    [Fact]
    public void A_syrup_is_brought_to_fifty_brix_with_water_alone()
    {
        var adjusted = Of(
            new AdjustRequest { Targets = [new AdjustTarget(Fact.Brix, 50, 50)], Keep = ["white-sugar"] },
            "marsh-syrup",
            ("marsh-syrup.prep.json", Syrup));
        Assert.True(adjusted.IsReached);
        Assert.Equal("400 g", After(adjusted, "white-sugar"));
        double water = double.Parse(After(adjusted, "water").Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(water, 361, 445); // 400 g, and what 5 % of the target allow: 400/0.525 − 400 and 400/0.475 − 400
        string text = Encoding.UTF8.GetString(adjusted.File.Utf8.ToArray());
        Assert.Contains($"\"yield\": \"{400 + water} g\"", text, StringComparison.Ordinal);
        double share = Math.Round(100 * 400 / (400 + water), 2);
        Assert.Contains($"\"share\": \"{share.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)} % w/w\"", text, StringComparison.Ordinal);
    }

    /// <summary>Whatever a drink of other pours comes to can be reached: those pours reach it.</summary>
    [Fact]
    public void What_other_pours_come_to_is_reached() => Gen.Select(Gen.Int[14, 26], Gen.Int[6, 14], Gen.Int[6, 14]).Sample(
        (gin, lime, syrup) =>
        {
            var other = Books.Check(("bar.json", Bar), ("sluice.drink.json", Sour(gin * 2.5, lime * 2.5, syrup * 2.5)));
            var profile = other.Profiles.Of(other.Book.Drinks[0]);
            AdjustTarget[] targets = [.. new[] { Fact.Abv, Fact.Sugar, Fact.Acid }.Select(f => new AdjustTarget(f, profile.Get(f).Value, profile.Get(f).Value))];
            var adjusted = Of(new AdjustRequest { Targets = targets }, "sluice", ("sluice.drink.json", Sour(50, 25, 20)));
            Assert.True(
                adjusted.IsReached,
                $"{gin * 2.5}/{lime * 2.5}/{syrup * 2.5}: " + string.Join(
                    "; ", adjusted.Figures.Select(f => $"{f.Name} {f.Low} {f.After.Value} {f.InTheWay}")));
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void What_is_kept_stays_and_the_text_keeps_its_shape()
    {
        string before = Sour(50, 25, 20);
        var adjusted = Of(
            new AdjustRequest { Targets = [new AdjustTarget(Fact.Abv, 19, 21)], Keep = ["lime-juice", "simple-syrup"] },
            "sluice",
            ("sluice.drink.json", before));
        Assert.True(adjusted.IsReached);
        Assert.Equal(("25 ml", "20 ml", "1 dash"), (After(adjusted, "lime-juice"), After(adjusted, "simple-syrup"), After(adjusted, "aromatic-bitters")));
        string after = Encoding.UTF8.GetString(adjusted.File.Utf8.ToArray());
        Assert.Equal(before.Replace("\"50 ml\"", $"\"{After(adjusted, "gin")}\"", StringComparison.Ordinal), after);

        // What is shown is what the changed recipe comes to, with its range.
        var anew = Books.Check(("bar.json", Bar), ("sluice.drink.json", after));
        Assert.Equal(anew.Profiles.Of(anew.Book.Drinks[0]).Get(Fact.Abv), adjusted.Figures[0].After);
        Assert.True(adjusted.Figures[0].After.Low < adjusted.Figures[0].After.High);
    }

    [Fact]
    public void A_volume_keeps_the_drink_and_a_glass_is_fitted()
    {
        var half = Of(new AdjustRequest { Targets = [new AdjustTarget(Fact.ServedVolume, 70, 70)] }, "sluice", ("sluice.drink.json", Sour(50, 25, 20)));
        Assert.True(half.IsReached);
        var moved = half.Comparison.Recipes.Single(r => r.Id == "sluice").Facts;
        Assert.True(moved.Where(f => f.Fact is Fact.Abv).All(f => Math.Abs(f.After!.Value.Value - f.Before!.Value.Value) < 1.5));
        var fitted = Of(new AdjustRequest { Glass = "thimble" }, "sluice", ("sluice.drink.json", Sour(50, 25, 20)));
        Assert.True(fitted.IsReached);
        Assert.InRange(fitted.Figures[0].After.Value, 37.5, 67);
        Assert.Contains("\"glass\": \"thimble\"", Encoding.UTF8.GetString(fitted.File.Utf8.ToArray()), StringComparison.Ordinal);
    }

    /// <summary>What brings neither sugar nor acid shrinks with the rest, or the drink becomes another.</summary>
    [Fact]
    public void A_smaller_drink_has_less_of_each_line()
    {
        string bitter = Sour(50, 25, 20).Replace("\"1 dash\"", "\"15 ml\"", StringComparison.Ordinal);
        var before = Books.Check(("bar.json", Bar), ("sluice.drink.json", bitter));
        double served = before.Profiles.Of(before.Book.Drinks[0]).Get(Fact.ServedVolume).Value;
        var half = Of(new AdjustRequest { Targets = [new AdjustTarget(Fact.ServedVolume, served / 2, served / 2)] }, "sluice", ("sluice.drink.json", bitter));
        Assert.True(half.IsReached);
        Assert.Equal(4, half.Lines.Count);
        Assert.All(half.Lines, line => Assert.InRange(Millilitres(line.After) / Millilitres(line.Before), 0.4, 0.7));
    }

    private static double Millilitres(string amount) => double.Parse(amount.Split(' ')[0], CultureInfo.InvariantCulture);

    [Fact]
    public void What_cannot_be_reached_says_how_near_it_gets_and_what_stands_in_the_way()
    {
        var strong = Of(new AdjustRequest { Targets = [new AdjustTarget(Fact.Abv, 60, 60)] }, "sluice", ("sluice.drink.json", Sour(50, 25, 20)));
        Assert.False(strong.IsReached);
        Assert.Matches(@"comes no nearer than \d.*the most of it is in gin \(4\d(\.\d)? % vol\), and the ice adds \d+ % of water", strong.Figures[0].InTheWay);

        var none = Of(
            new AdjustRequest { Targets = [new AdjustTarget(Fact.Acid, 2, 2)], Keep = ["lime-juice", "gin"] },
            "sluice",
            ("sluice.drink.json", Sour(50, 25, 20)));
        Assert.False(none.IsReached);
        Assert.Contains("comes no nearer than", none.Figures[0].InTheWay, StringComparison.Ordinal);

        // Each can be had, both together cannot: the same syrup brings both.
        var both = Of(
            new AdjustRequest
            {
                Targets = [new AdjustTarget(Fact.Sugar, 4, 4), new AdjustTarget(Fact.SugarAcidRatio, 20, 20)],
                Keep = ["gin", "lime-juice"],
            },
            "sluice",
            ("sluice.drink.json", Sour(50, 25, 20)));
        Assert.Contains(both.Figures, f => !f.IsReached && f.InTheWay.Contains("asked for with it", StringComparison.Ordinal));

        var fixedAll = Of(
            new AdjustRequest { Targets = [new AdjustTarget(Fact.Abv, 25, 25)], Keep = ["gin", "lime-juice", "simple-syrup"] },
            "sluice",
            ("sluice.drink.json", Sour(50, 25, 20)));
        Assert.Equal("no line may change", fixedAll.Figures[0].InTheWay);
        Assert.False(fixedAll.IsChanged);
    }

    [Fact]
    public void A_juice_is_made_like_lime_and_says_so_also_where_it_is_reached()
    {
        var without = Of(new AdjustRequest { Like = "orange-juice", Keep = ["citric-acid"] }, "sour-cucumber", ("sour-cucumber.prep.json", Soured));
        Assert.False(without.IsReached);
        Assert.Contains("the acid as a whole", without.LikeInTheWay, StringComparison.Ordinal);

        // Without a line that brings it, the acid that is missing is named.
        var noMalic = Of(new AdjustRequest { Like = "apple-juice" }, "sour-cucumber", ("sour-cucumber.prep.json", Soured));
        Assert.False(noMalic.IsReached);

        var like = Of(new AdjustRequest { Like = "lime-juice", Add = ["malic-acid"] }, "sour-cucumber", ("sour-cucumber.prep.json", Soured));
        Assert.True(like.IsReached, like.LikeInTheWay);
        Assert.False(like.LikeBefore!.Holds);
        Assert.InRange(like.Like!.Acid.Value / like.Like.ModelAcid, 0.95, 1.05);
        Assert.Contains("malic-acid", Encoding.UTF8.GetString(like.File.Utf8.ToArray()), StringComparison.Ordinal);

        // Asked once more, it is like lime already, and nothing changes.
        var again = Of(
            new AdjustRequest { Like = "lime-juice" }, "sour-cucumber",
            ("sour-cucumber.prep.json", Encoding.UTF8.GetString(like.File.Utf8.ToArray())));
        Assert.True(again.IsReached);
    }

    [Fact]
    public void An_item_that_ran_out_is_replaced_in_lines_and_steps_and_the_ratios_solved_again()
    {
        const string strong = """{ "name": "Overproof", "like": "gin", "strength": "57 % v/v" }""";
        var adjusted = Of(
            new AdjustRequest { Without = "gin", Use = "overproof" }, "sluice", ("sluice.drink.json", Sour(50, 25, 20)),
            ("overproof.ingredient.json", strong));
        string text = Encoding.UTF8.GetString(adjusted.File.Utf8.ToArray());
        Assert.DoesNotContain("\"gin\"", text, StringComparison.Ordinal);
        Assert.Contains("\"items\": [ \"overproof\", \"lime-juice\" ]", text, StringComparison.Ordinal);

        // By hand: 50 ml at 40 % carry as much alcohol as 35 ml at 57 %.
        Assert.Contains(After(adjusted, "overproof"), new[] { "32.5 ml", "35 ml", "37.5 ml" });
        Assert.Equal(["alcohol", "sugar to acid"], adjusted.Figures.Select(f => f.Name));
        Assert.True(adjusted.IsReached);
    }

    [Fact]
    public void Substitutes_are_ranked_by_what_is_in_the_house()
    {
        const string stock = """{ "on": "2026-11-25", "lots": [ { "item": "house-vodka", "opened": "2026-11-20", "amount": "700 ml" } ] }""";
        var input = Books.Input(
            ("bar.json", Bar), ("sluice.drink.json", Sour(50, 25, 20)), ("a.stock.json", stock),
            ("house-vodka.ingredient.json", """{ "name": "House vodka", "like": "vodka" }"""),
            ("other-gin.ingredient.json", """{ "name": "Other gin", "like": "gin" }"""),
            ("milk-punch-base.ingredient.json", """{ "name": "Creamy", "like": "gin", "allergens": { "contains": ["milk"] } }"""));
        var before = Checker.Check(input);
        var found = Substitutes.Of(input, before, before.Book.Drinks[0], new AdjustRequest { Without = "gin" }, 6);
        var ids = found.Select(f => f.Item.Id).ToList();
        Assert.DoesNotContain("gin", ids);
        Assert.DoesNotContain("lime-juice", ids);
        Assert.Contains("house-vodka", ids);
        Assert.True(ids.IndexOf("other-gin") >= 0 && ids.IndexOf("other-gin") < ids.IndexOf("milk-punch-base"), string.Join(" ", ids));
        Assert.NotEmpty(found.Single(f => f.Item.Id == "milk-punch-base").Adjustment.Harm);
        Assert.Equal(Availability.InStock, found.Single(f => f.Item.Id == "house-vodka").Availability);
    }

    [Fact]
    public void What_cannot_be_tried_says_why()
    {
        (string, string)[] files = [("sluice.drink.json", Sour(50, 25, 20)), ("marsh-syrup.prep.json", Syrup)];
        Assert.Null(Try(new AdjustRequest(), "sluice", out string none, files));
        Assert.Contains("no target", none, StringComparison.Ordinal);
        Assert.Null(Try(new AdjustRequest { Like = "lime-juice" }, "sluice", out string like, files));
        Assert.Contains("--like", like, StringComparison.Ordinal);
        Assert.Null(Try(new AdjustRequest { Glass = "bucket" }, "sluice", out string glass, files));
        Assert.Contains("bucket", glass, StringComparison.Ordinal);
        Assert.Null(Try(new AdjustRequest { Targets = [new AdjustTarget(Fact.Abv, 5, 5)], Keep = ["rum"] }, "sluice", out string keep, files));
        Assert.Contains("rum", keep, StringComparison.Ordinal);
        Assert.Null(Try(new AdjustRequest { Targets = [new AdjustTarget(Fact.Abv, 5, 5)], Add = ["no-such-thing"] }, "sluice", out string add, files));
        Assert.Contains("no-such-thing", add, StringComparison.Ordinal);
    }
}
