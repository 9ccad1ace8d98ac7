using CsCheck;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Service;

public sealed class ScalePlanTests
{
    private const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "measures": { "dash": "0.8 ml" }, "tools": { "scale": "1 g", "jigger": "2.5 ml", "fridge": "4 °C" }, "vessels": { "tall-box": { "capacity": "4 l" } } }""";

    private const string Stirred = """
        { "name": "Sluice", "style": "stirred",
          "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "dry-vermouth", "amount": "20 ml" }, { "item": "orange-bitters", "amount": "2 dashes" } ],
          "method": [ { "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" } ],
          "garnish": [ { "item": "lemon-peel", "amount": "1 piece" } ], "serves": 1 }
        """;

    private const string Fizzed = """
        { "name": "Ebb", "ingredients": [ { "item": "gin", "amount": "40 ml" }, { "item": "lemon-juice", "amount": "20 ml" }, { "item": "egg-white", "amount": "1 white" }, { "item": "soda-water", "amount": "60 ml", "role": "top" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }
        """;

    private const string Syrup = """
        { "name": "Marsh syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "400 g" }, { "item": "water", "amount": "200 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "600 g", "keep": { "at": "4 °C", "for": "28 d" } }
        """;

    private static readonly Verdicts Verdicts = Verdicts.Of(Books.Check(
        ("bar.json", Bar), ("sluice.drink.json", Stirred), ("ebb.drink.json", Fizzed), ("marsh-syrup.prep.json", Syrup)));

    private static readonly ProfileSet Profiles = Verdicts.Profiles;

    private static ScalePlan Plan(string id, ScaleRequest request)
    {
        var plan = ScalePlan.Of(Verdicts, (Recipe)Profiles.Book.Resolve(id)!.File, request, out string why);
        Assert.True(plan is not null, why);
        return plan!;
    }

    private static FactValue Exact(ScalePlan plan, Fact fact) => plan.Facts.Single(f => f.Fact == fact).Exact;

    [Fact]
    public void Before_rounding_a_batch_has_the_facts_of_its_drink_at_every_size() => Gen.Int[1, 400].Sample(
        serves =>
        {
            var plan = Plan("sluice", new ScaleRequest { Serves = serves });
            var drink = Profiles.Of(plan.Recipe);
            Assert.Equal(drink.Get(Fact.MixAbv).Value, Exact(plan, Fact.Abv).Value, 6);
            Assert.Equal(serves * drink.Get(Fact.MixVolume).Value, Exact(plan, Fact.MixVolume).Value, 4);
        },
        iter: 25,
        threads: 1);

    [Fact]
    public void Rounding_moves_no_line_by_more_than_half_a_step() => Gen.Double[0.5, 300].Sample(
        serves =>
        {
            var plan = Plan("sluice", new ScaleRequest { Serves = serves });
            foreach (var line in plan.Lines)
            {
                double step = line.Exact >= 2000 ? 10 : line.Exact >= 200 ? 5 : line.Exact >= 10 ? 2.5 : 0.5;
                Assert.True(Math.Abs(line.Rounded - line.Exact) <= (step / 2) + 1e-6, $"{line.Item}: {line.Exact} became {line.Rounded}");
                Assert.True(line.Rounded > 0);
            }
        },
        iter: 25,
        threads: 1);

    [Fact]
    public void Water_for_a_poured_batch_brings_it_to_the_drink_as_served()
    {
        var plan = Plan("sluice", new ScaleRequest { Serves = 20, Poured = true });
        var drink = Profiles.Of(plan.Recipe);
        Assert.Equal(drink.Get(Fact.Abv).Value, Exact(plan, Fact.Abv).Value, 2);
        Assert.Equal(20 * drink.Get(Fact.ServedVolume).Value, Exact(plan, Fact.MixVolume).Value, 0);
        Assert.InRange(plan.Water, plan.WaterRange.Low, plan.WaterRange.High);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_batch_comes_to_the_volume_asked_for(bool poured)
    {
        var plan = Plan("sluice", new ScaleRequest { Millilitres = 3000, Poured = poured });
        Assert.InRange(plan.Volume, 2980, 3020);
        Assert.Equal("tall-box", plan.Container!.Name);
        Assert.True(plan.Container.Headspace >= 5);
        Assert.Equal(plan.Factor, plan.Serves, 9);
    }

    [Fact]
    public void Dashes_become_millilitres_of_the_house()
    {
        var bitters = Plan("sluice", new ScaleRequest { Serves = 40 }).Lines.Single(l => l.Item == "orange-bitters");
        Assert.Equal("ml", bitters.Unit);
        Assert.Equal(40 * 2 * 0.8, bitters.Exact, 9);
        Assert.Equal(65, bitters.Rounded);
    }

    [Fact]
    public void Eggs_stay_whole_and_tops_stay_with_the_glass()
    {
        var plan = Plan("ebb", new ScaleRequest { Serves = 3.6 });
        Assert.Equal(4, plan.Lines.Single(l => l.Item == "egg-white").Rounded);
        Assert.DoesNotContain(plan.Lines, l => l.Item == "soda-water");
        Assert.Equal("soda-water", Assert.Single(plan.AtTheGlass).Item.Value);
        Assert.Contains(plan.Remarks, r => r.StartsWith("egg-white: 3.6", StringComparison.Ordinal));
        Assert.True(plan.Life.IsKnown, "juice and egg set an end");
    }

    [Fact]
    public void A_preparation_is_scaled_by_its_yield_and_keeps_as_its_recipe_says()
    {
        var plan = Plan("marsh-syrup", new ScaleRequest { Grams = 1500 });
        Assert.Equal(2.5, plan.Factor, 9);
        Assert.Equal([1000d, 500d], plan.Lines.Select(l => l.Rounded));
        Assert.Equal(28, plan.StatedDays);
        Assert.Equal(Profiles.Of(plan.Recipe).Get(Fact.Brix).Value, Exact(plan, Fact.Brix).Value, 6);
    }

    [Fact]
    public void What_cannot_be_scaled_says_why()
    {
        var syrup = (Recipe)Profiles.Book.Resolve("marsh-syrup")!.File;
        Assert.Null(ScalePlan.Of(Verdicts, syrup, new ScaleRequest { Serves = 4 }, out string portions));
        Assert.Contains("portions", portions, StringComparison.Ordinal);
        Assert.Null(ScalePlan.Of(Verdicts, syrup, new ScaleRequest { Grams = 4, Poured = true }, out string poured));
        Assert.Contains("--poured", poured, StringComparison.Ordinal);
        Assert.Null(ScalePlan.Of(Verdicts, (Recipe)Profiles.Book.Resolve("ebb")!.File, new ScaleRequest { Grams = 400 }, out string mass));
        Assert.Contains("volume", mass, StringComparison.Ordinal);
    }
}
