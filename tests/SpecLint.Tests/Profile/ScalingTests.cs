using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>Scaling keeps the ratios, within what a jigger can measure.</summary>
public sealed class ScalingTests
{
    private const string Sour = """
        { "name": "Low Tide", "style": "shaken-sour",
          "ingredients": [
            { "item": "gin", "amount": "60 ml" }, { "item": "lemon-juice", "amount": "22.5 ml" }, { "item": "simple-syrup", "amount": "22.5 ml" },
            { "item": "orange-bitters", "amount": "2 dashes" } ],
          "method": [ { "do": "shake", "ice": "cubed" }, { "do": "fine-strain", "into": "glass" } ],
          "glass": "small-coupe", "garnish": [ { "item": "lemon-peel", "amount": "1 piece" } ],
          "declares": { "allergens": [] } }
        """;

    private const string Bar = """
        { "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "tools": { "jigger": "2.5 ml" },
          "glasses": { "small-coupe": { "brim": "150 ml", "washLine": "130 ml" } } }
        """;

    /// <summary>Common practice, no source: a small stemmed glass takes a smaller drink, and the scaled spec keeps its ratios.</summary>
    [Fact]
    public void A_small_glass_takes_a_smaller_drink_with_its_ratios_kept()
    {
        var result = Books.Check(("bar.json", Bar), ("low-tide.drink.json", Sour));
        var drink = result.Book.Drinks[0];
        var profile = result.Profiles.Of(drink);
        var over = Assert.Single(result.Findings, f => f.Rule.Id is "SL8001" or "SL8002");
        var scaled = Scaling.To(profile, 130, result.Book.Settings)!;
        Assert.InRange(scaled.Volume, 120, 131.5);

        // Rounded to the jigger, no part's share moves by more than half a step of the smallest part; the facts hardly move.
        Assert.True(scaled.LargestDrift < 0.08, $"{scaled.LargestDrift}");
        double gin = Of("gin"), lemon = Of("lemon-juice"), syrup = Of("simple-syrup");
        Assert.InRange(gin / lemon, 60 / 22.5 * 0.92, 60 / 22.5 * 1.08);
        Assert.Equal(lemon, syrup);
        Assert.All(new[] { gin, lemon, syrup }, ml => Assert.Equal(0, ml % 2.5, 9));
        Assert.InRange(scaled.Abv, profile.Get(Fact.Abv).Low, profile.Get(Fact.Abv).High);
        Assert.InRange(scaled.Acid / profile.Get(Fact.Acid).Value, 0.93, 1.07);
        Assert.InRange(scaled.Sugar / profile.Get(Fact.Sugar).Value, 0.93, 1.07);

        // The correction of the finding writes these amounts, and the corrected drink has no such finding.
        string corrected = Sour;
        foreach (var edit in over.Corrections[0].Edits.OrderByDescending(e => e.Place.Span.Start))
            corrected = corrected[..edit.Place.Span.Start] + edit.NewText + corrected[edit.Place.Span.End..];
        var after = Books.Check(("bar.json", Bar), ("low-tide.drink.json", corrected));
        Assert.DoesNotContain(after.Findings, f => f.Rule.Id is "SL8001" or "SL8002");

        double Of(string item) => scaled.Lines.Single(l => l.Part.Line.Item.Value == item).Rounded;
    }

    [Fact]
    public void Pieces_and_garnish_keep_their_number_and_dashes_stay_whole()
    {
        var result = Books.Check(("bar.json", Bar), ("low-tide.drink.json", Sour));
        var scaled = Scaling.By(result.Profiles.Of(result.Book.Drinks[0]), 0.5, result.Book.Settings)!;
        Assert.Equal("1 piece", scaled.Lines.Single(l => l.Part.Line.Item.Value == "lemon-peel").Text);
        Assert.Equal("1 dash", scaled.Lines.Single(l => l.Part.Line.Item.Value == "orange-bitters").Text);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    [InlineData(10)]
    [InlineData(100)]
    public void A_factor_scales_every_line(double factor)
    {
        var result = Books.Check(("bar.json", Bar), ("low-tide.drink.json", Sour));
        var profile = result.Profiles.Of(result.Book.Drinks[0]);
        var scaled = Scaling.By(profile, factor, result.Book.Settings)!;
        foreach (var line in scaled.Lines.Where(l => l.Part.Line.Role != LineRole.Garnish))
            Assert.Equal(line.Part.Line.Amount.Value.Base * factor, line.Exact, 9);
        Assert.InRange(scaled.Volume / profile.Get(Fact.ServedVolume).Value / factor, 0.93, 1.07);
    }
}
