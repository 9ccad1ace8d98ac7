using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>Minerals of a plant hold its acids where no pH was measured: FDA/CFSAN, Approximate pH of Foods and Food Products.</summary>
public sealed class FreeIonTests
{
    [Theory]
    [InlineData("parsley leaves", """ "acids": { "malic": "0.113 g", "succinic": "0.104 g", "oxalic": "0.128 g" }, "potassium": "466 mg" """, 4.6)]
    [InlineData("maple syrup", """ "sugars": { "sucrose": "66 g" }, "acids": { "malic": "0.2 g" }, "potassium": "212 mg" """, 4.6)]
    public void A_plant_whose_minerals_outweigh_its_acids_is_not_sour(string name, string contents, double least)
    {
        string own = $$"""{ "name": "{{name}}", "kind": "syrup", "state": "liquid", "per": "100 g", {{contents}} }""";
        var ph = PhOf(own);
        Assert.True(!ph.IsKnown || ph.Value > least, $"{name}: {ph.Value}");
    }

    [Fact]
    public void Acid_that_no_mineral_holds_stays_free()
    {
        var with = PhOf("""{ "name": "Sour", "kind": "syrup", "state": "liquid", "per": "100 g", "acids": { "citric": "5 g" }, "potassium": "100 mg" }""");
        var without = PhOf("""{ "name": "Sour", "kind": "syrup", "state": "liquid", "per": "100 g", "acids": { "citric": "5 g" } }""");
        Assert.InRange(with.Value, without.Value + 0.02, without.Value + 0.6);
    }

    // McIlvaine 1921: 20 parts of 0.2 M disodium phosphate with citric acid; what is weighed out as salt has no ions that a table left out.
    [Fact]
    public void Salts_that_are_weighed_leave_a_narrow_range_and_listed_minerals_a_wide_one()
    {
        const string Contents = """ "state": "liquid", "per": "100 g", "water": "96.5 g", "acids": { "phosphoric": "1.62 g", "citric": "0.27 g" }, "sodium": "760 mg" """;
        var weighed = PhOf($$"""{ "name": "Buffer", "kind": "acid", {{Contents}} }""");
        var listed = PhOf($$"""{ "name": "Buffer", "kind": "syrup", {{Contents}} }""");
        Assert.InRange((weighed.High - weighed.Low) / 2, 0.08, 0.15);
        Assert.True(!listed.IsKnown || listed.High - listed.Low > 1.5 * (weighed.High - weighed.Low));
    }

    private static FactValue PhOf(string own)
    {
        var (book, profiles) = Checker.Profile(Books.Input(
            ("own.ingredient.json", own),
            ("point.prep.json", """{ "name": "Point", "ingredients": [ { "item": "own", "amount": "100 g" } ] }""")));
        return profiles.Of((Recipe)book.Resolve("point")!.File).Get(Fact.Ph);
    }
}
