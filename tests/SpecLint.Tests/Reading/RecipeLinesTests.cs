using SpecLint.Linking;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Reading;

/// <summary>The walk through all lines of a recipe, and the lists that it walks.</summary>
public sealed class RecipeLinesTests
{
    [Theory]
    [InlineData("", "", "")]
    [InlineData("gin", "", "")]
    [InlineData("", "mint", "")]
    [InlineData("", "", "salt")]
    [InlineData("gin lime-juice", "", "salt")]
    [InlineData("gin", "mint lime-wheel", "salt")]
    public void Every_line_is_met_once_in_the_order_of_the_lists(string ingredients, string garnish, string rim)
    {
        var book = Checker.Profile(Books.Input(("ebb.drink.json", $$"""{ "name": "Ebb", "ingredients": [{{List(ingredients)}}], "garnish": [{{List(garnish)}}], "rim": [{{List(rim)}}] }"""))).Book;
        var lines = LinkedBook.LinesOf(book.Drinks[0]);
        var met = new List<string>();
        foreach (var line in lines) met.Add(line.Item.Value);
        Assert.Equal($"{ingredients} {garnish} {rim}".Split(' ', StringSplitOptions.RemoveEmptyEntries), met);
        Assert.Equal(met.Count, lines.Count);
    }

    [Fact]
    public void A_list_that_never_changes_holds_what_it_was_made_of()
    {
        var items = new List<string> { "a", "b" };
        var list = FixedList.Of(items);
        items.Add("c");
        Assert.Equal(["a", "b"], list);
        Assert.Equal("b", list[1]);
        Assert.Empty(FixedList.Of(new List<int>()));
        FixedList<int> made = [1, 2, 3];
        Assert.Equal(3, made.Count);
    }

    private static string List(string items) =>
        string.Join(", ", items.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(i => $$"""{ "item": "{{i}}", "amount": "10 ml" }"""));
}
