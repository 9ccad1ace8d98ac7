using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>pH of preparations, with the range that it earns and what widens it.</summary>
public sealed class PhFactTests
{
    private static RecipeProfile Of(string family, params (string Item, double Grams)[] parts)
    {
        string lines = string.Join(", ", parts.Select(p => $$"""{ "item": "{{p.Item}}", "amount": "{{p.Grams}} g" }"""));
        string text = $$"""{ "name": "Trial", "family": "{{family}}", "ingredients": [ {{lines}} ], "yield": "{{parts.Sum(p => p.Grams)}} g" }""";
        var (book, profiles) = Checker.Profile(Books.Input(("trial.prep.json", text)));
        return profiles.Of(book.Preps[0]);
    }

    // Common practice, no source, for the ratio 94/4/2 by weight. Limes: pH 2.0 to 2.8 (FDA/CFSAN, approximate pH of foods), which it stands in for.
    [Theory]
    [InlineData("cucumber-juice")]
    [InlineData("celery-juice")]
    [InlineData("beetroot-juice")]
    [InlineData("orange-juice")]
    [InlineData("grapefruit-juice")]
    [InlineData("apple-juice")]
    [InlineData("pineapple-juice")]
    public void A_juice_with_citric_and_malic_acid_has_a_ph_with_its_range(string juice)
    {
        var ph = Of("acid-adjusted-juice", (juice, 940), ("citric-acid", 40), ("malic-acid", 20)).Get(Fact.Ph);
        Assert.True(ph.IsKnown, ph.OpenBecause);
        Assert.InRange(ph.Value, 2.0, 2.8);
        Assert.InRange((ph.High - ph.Low) / 2, 0.09, 0.40);
        Assert.StartsWith("computed", ph.From, StringComparison.Ordinal);
        if ((ph.High - ph.Low) / 2 > 0.15) Assert.Contains("wider by", ph.From, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lime-juice", 1.9, 2.5)]
    [InlineData("lemon-juice", 2.0, 2.7)]
    [InlineData("carrot-juice", 5.8, 6.7)]
    [InlineData("whole-milk", 6.4, 6.9)]
    public void What_is_nothing_but_one_part_has_the_ph_of_that_part(string item, double low, double high)
    {
        var ph = Of("juice", (item, 1000)).Get(Fact.Ph);
        Assert.True(ph.IsKnown, ph.OpenBecause);
        Assert.InRange(ph.Low, low, high);
        Assert.InRange(ph.High, low, high);
    }

    [Fact]
    public void Protein_widens_the_range_and_does_not_shut_it()
    {
        var ph = Of("other", ("whole-milk", 900), ("citric-acid", 20)).Get(Fact.Ph);
        Assert.True(ph.IsKnown, ph.OpenBecause);
        Assert.InRange(ph.Value, 2.5, 4);
        Assert.True(ph.High - ph.Low > 0.3);
        Assert.Contains("protein", ph.From, StringComparison.Ordinal);
    }

    // Ethanol weakens the acids of a juice and so lifts its pH, by 0.11 at 6 % by mass (Grunwald & Berkowitz, J. Am. Chem. Soc. 73:4939,
    // 1951; cucumbers pH 5.1 to 5.8: FDA/CFSAN, approximate pH of foods). Vodka holds no acid that could lower it.
    [Theory]
    [InlineData("cucumber-juice", 400)]
    [InlineData("carrot-juice", 400)]
    [InlineData("celery-juice", 600)]
    public void Spirit_does_not_hide_the_ph_of_a_juice(string juice, double grams)
    {
        var alone = Of("juice", (juice, grams)).Get(Fact.Ph);
        var spiked = Of("other", (juice, grams), ("vodka", 100)).Get(Fact.Ph);
        Assert.True(spiked.IsKnown, spiked.OpenBecause);
        Assert.InRange(spiked.Low, alone.Low - 0.2, alone.High);
        Assert.InRange(spiked.High, alone.Low, alone.High + 0.3);
        Assert.True(spiked.Low > 4.6);
    }

    [Fact]
    public void Where_nothing_holds_the_ph_none_is_given()
    {
        foreach (string salt in new[] { "calcium-lactate", "potassium-chloride", "magnesium-sulphate", "pink-salt", "msg" })
        {
            var ph = Of("other", (salt, 20), ("water", 980)).Get(Fact.Ph);
            Assert.False(ph.IsKnown, $"{salt}: {ph.Value}");
        }
    }

    // CRC Handbook, 102nd ed. 2021, potassium chloride: 13 % by mass 1.0843 kg/L (between 9 and 15 %), first ice −6.45 °C.
    [Fact]
    public void Potassium_chloride_is_a_salt()
    {
        var brine = Of("saline", ("potassium-chloride", 130), ("water", 870));
        Assert.InRange(brine.Get(Fact.FreezingPoint).Value, -6.7, -6.2);
        Assert.InRange(brine.Get(Fact.Density).Value, 1.082, 1.086);
        Assert.InRange(brine.Get(Fact.WaterActivity).Value, 0.930, 0.942);
    }

    [Fact]
    public void Erythritol_is_dissolved_and_chalk_is_not()
    {
        var syrup = Of("syrup", ("erythritol", 300), ("water", 700));
        Assert.InRange(syrup.Get(Fact.Brix).Value, 26, 29);
        Assert.InRange(syrup.Get(Fact.WaterActivity).Value, 0.925, 0.945);
        var chalky = Of("other", ("calcium-carbonate", 50), ("water", 950));
        Assert.InRange(chalky.Get(Fact.Brix).Value, 0, 0.2);
        Assert.InRange(chalky.Get(Fact.WaterActivity).Value, 0.999, 1);
    }
}
