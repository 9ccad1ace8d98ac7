using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Vocabulary;

/// <summary>The tables of vessels, glasses and ice, and that what depends on a word does so alike for every word of its row.</summary>
public sealed class VesselTests
{
    [Fact]
    public void Every_name_of_a_type_has_its_traits_and_its_rating()
    {
        foreach (var type in VesselType.All)
        {
            var own = Vessel.Of(type.Id);
            Assert.Same(type, own.Type);
            foreach (string name in (string[])[type.Name, .. type.Aliases, type.Id.Replace('-', ' '), type.Id.ToUpperInvariant(), type.Id + ", dated"])
            {
                var vessel = Vessel.Of(name);
                Assert.Same(type, vessel.Type);
                Assert.Same(type, vessel.Rated);
                Assert.Equal(Traits(own), Traits(vessel));
            }
        }
    }

    [Fact]
    public void No_word_means_two_types() =>
        Assert.Empty(VesselType.All.SelectMany(
            t => (string[])[t.Id, t.Name, .. t.Aliases], (t, w) => (t.Id, Word: w.ToLowerInvariant().Replace(' ', '-').Replace(",", ""))).Distinct()
            .GroupBy(p => p.Word).Where(g => g.Count() > 1).Select(g => g.Key));

    [Theory]
    [InlineData("swing-top bottle", true)]
    [InlineData("Swing Top Bottle", true)]
    [InlineData("bottle with a screw cap", true)]
    [InlineData("bottle, corked", true)]
    [InlineData("swing-top bottle, cap loose", false)]
    [InlineData("jar, not sealed", false)]
    [InlineData("jar under a muslin", false)]
    [InlineData("bottle with no cap", false)]
    [InlineData("bottle", false)]
    public void A_state_says_whether_it_is_shut(string text, bool isClosed) => Assert.Equal(isClosed, Vessel.Of(text).IsClosed);

    [Theory]
    [InlineData("copper mug", true, false)]
    [InlineData("copper mugs", true, false)]
    [InlineData("copper mug, lined", true, true)]
    [InlineData("copper mug, nickel-lined", true, true)]
    [InlineData("copper mug, not lined", true, false)]
    [InlineData("unlined brass bowl", true, false)]
    [InlineData("steel mug, no copper", false, false)]
    public void A_material_counts_unless_it_is_denied(string text, bool copper, bool lined) =>
        Assert.Equal((copper, lined), (Vessel.Of(text).IsCopper, Vessel.Of(text).IsLined));

    [Fact]
    public void What_says_more_than_a_name_is_not_rated_by_it()
    {
        Assert.Equal("keg-stainless", Vessel.Of("keg, chilled").Rated?.Id);
        Assert.Null(Vessel.Of("home-made keg of wood").Rated);
        Assert.True(Vessel.Of("home-made keg of wood").IsKeg);
    }

    [Fact]
    public void A_live_ferment_is_reported_in_every_vessel_that_closes()
    {
        foreach (string word in VesselType.All.SelectMany(t => (string[])[t.Id, .. t.Aliases]))
        {
            var vessel = Vessel.Of(word);
            if (!vessel.IsClosed || vessel.Rated is { IsForPressure: true, RatingBar: > 2 }) continue;
            Assert.Contains(Books.Check(Ferment(word)).Findings.Flat(), f => f.Rule.Id == "SL5027" && f.Answer == Answer.Broken);
        }
    }

    [Fact]
    public void Every_ferment_in_a_vented_vessel_is_quiet()
    {
        foreach (var type in VesselType.All) Assert.DoesNotContain(Books.Check(Ferment(type.Id + ", cap loose")).Findings.Flat(), f => f.Rule.Id == "SL5027");
    }

    [Theory]
    [InlineData("\"in\": \"botle\"", "bottle")]
    [InlineData("\"in\": \"jarr\"", "jar")]
    public void An_unknown_vessel_is_reported_with_the_nearest_word(string keep, string near)
    {
        var finding = Assert.Single(Books.Check(("tart.prep.json", Prep.Replace("\"in\": \"bottle\"", keep))).Findings.Flat(), f => f.Rule.Id == "SL1031");
        Assert.Contains($"`{near}`", finding.Advice);
    }

    [Fact]
    public void No_word_of_the_tables_is_unknown()
    {
        foreach (string word in VesselType.Words)
            Assert.DoesNotContain(
                Books.Check(("tart.prep.json", Prep.Replace("\"in\": \"bottle\"", $"\"in\": \"{word}\""))).Findings.Flat(),
                f => f.Rule.Id == "SL1031");
        foreach (string word in Ice.Words) Assert.True(Ice.Of(word).IsKnown, word);
        foreach (var glass in GlassType.All)
        {
            foreach (string word in (string[])[glass.Name, .. glass.Aliases]) Assert.Same(glass, GlassType.Of(word));
        }
    }

    [Fact]
    public void A_lots_vessel_is_looked_up_too()
    {
        var result = Books.Check(
            ("tart.prep.json", Prep),
            ("fridge.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "tart", "made": "2026-11-24", "in": "gizmo" } ] }"""));
        Assert.Equal("lots[tart].in", Assert.Single(result.Findings.Flat(), f => f.Rule.Id == "SL1031").Path);
    }

    private const string Prep = """
        {
          "name": "Tart syrup", "family": "syrup", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" },
          "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ]
        }
        """;

    private static (string, string) Ferment(string vessel) => ("fizz.prep.json", $$"""
        {
          "name": "Ginger ferment", "family": "ferment", "keep": { "at": "20 °C", "in": "{{vessel}}", "for": "3 d" },
          "ingredients": [ { "item": "white-sugar", "amount": "150 g" }, { "item": "water", "amount": "850 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" }, { "do": "ferment", "at": "20 °C", "for": "2 d" } ]
        }
        """);

    private static string Traits(Vessel vessel) =>
        string.Join(
            " ",
            typeof(Vessel)
                .GetProperties()
                .Where(p => p.PropertyType == typeof(bool) && p.Name != nameof(Vessel.IsKnown) && (bool)p.GetValue(vessel)!)
                .Select(p => p.Name));
}
