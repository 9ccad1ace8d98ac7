using SpecLint.Catalogue;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Profile;

/// <summary>A slice is not the whole fruit, and a garnish is not juice.</summary>
public sealed class PiecesTests
{
    private const string Stirred = """{ "do": "stir", "ice": "cubed", "for": "25 s" }, { "do": "strain" }""";
    private const string Shaken = """{ "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" }""";
    private const string Muddled = """{ "do": "muddle" }, { "do": "build", "ice": "cubed" }""";
    private const string Built = """{ "do": "build", "ice": "cubed" }, { "do": "stir", "for": "10 s" }""";

    [Theory]
    [InlineData("orange", "1 slice", 5, 14)]
    [InlineData("lime", "2 wedges", 12, 28)]
    [InlineData("lemon", "1/2 piece", 42, 80)]
    [InlineData("lemon", "1 half", 38, 88)]
    [InlineData("pineapple", "3 slices", 168, 330)]
    [InlineData("cucumber", "4 slices", 16, 48)]
    [InlineData("mint", "8 leaves", 0.8, 4)]
    [InlineData("mint", "1 sprig", 0.8, 3)]
    [InlineData("basil", "1 sprig", 0.5, 3)]
    [InlineData("ginger", "2 slices", 2.4, 10)]
    [InlineData("grapefruit", "1 half wheel", 6, 35)]
    [InlineData("orange", "1 piece", 150, 280)]
    [InlineData("orange", "1 twist", 1.5, 12)]
    public void A_piece_weighs_what_a_piece_weighs(string item, string amount, double low, double high)
    {
        var result = Checker.Profile(Books.Input(Drink(item, amount, Shaken)));
        var part = result.Profiles.Of(result.Book.Drinks[0]).Parts[1];
        Assert.InRange(part.Grams.Typical, low, high);
    }

    [Theory]
    [InlineData(Built)]
    [InlineData(Stirred)]
    public void A_piece_that_only_lies_in_the_drink_gives_little(string method)
    {
        double plain = Strength(method), slice = Strength(method, ("orange", "1 slice"));
        Assert.InRange(slice, plain - 0.2, plain);
    }

    [Fact]
    public void A_muddled_piece_gives_its_juice()
    {
        double plain = Strength(Muddled), slice = Strength(Muddled, ("orange", "1 slice")), four = Strength(Muddled, ("lime", "4 wedges"));
        Assert.InRange(slice, plain * 0.85, plain - 0.3);
        Assert.InRange(four, plain * 0.5, plain * 0.9);
    }

    [Fact]
    public void Every_share_is_one_of_a_whole_and_every_piece_of_the_table_is_of_the_catalogue()
    {
        using var table = Tables.Open("pieces");
        foreach (var row in table.Root.Get("pieces").Items)
        {
            Assert.All(row.Texts("items"), id => Assert.NotNull(BuiltInCatalogue.Find(id)));
            Assert.True(row.Number("low") <= row.Number("grams") && row.Number("grams") <= row.Number("high") && row.Text("source").Length > 0);
            Assert.True(SpecLint.Reading.Measures.Default.TryFind(row.Text("piece"), out var word) && word.Unit.Name == row.Text("piece"), row.Text("piece"));
        }

        foreach (var row in table.Root.Get("shares").Items)
        {
            Assert.True(row.Number("low") <= row.Number("share") && row.Number("share") <= row.Number("high") && row.Number("high") < 1);
            Assert.True(SpecLint.Reading.Measures.Default.TryFind(row.Text("piece"), out var word) && word.Unit.Name == row.Text("piece"), row.Text("piece"));
        }
    }

    private static double Strength(string method, params (string Item, string Amount)[] with)
    {
        var (path, text) = with.Length == 0 ? Drink("", "", method) : Drink(with[0].Item, with[0].Amount, method);
        var result = Checker.Profile(Books.Input((path, text)));
        return result.Profiles.Of(result.Book.Drinks[0]).Get(Fact.Abv).Value;
    }

    private static (string Path, string Text) Drink(string item, string amount, string method) => ("ebb.drink.json",
        $$"""{ "name": "Ebb", "ingredients": [{ "item": "bourbon", "amount": "60 ml" }{{(item.Length == 0 ? "" : $$""", { "item": "{{item}}", "amount": "{{amount}}" }""")}}], "method": [{{method}}], "glass": "rocks" }""");
}
