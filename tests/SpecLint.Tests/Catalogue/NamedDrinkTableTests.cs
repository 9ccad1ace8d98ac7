using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Tests.OfficialDrinks;
using SpecLint.Tests.Published;

namespace SpecLint.Tests.BuiltIn;

/// <summary>What drinks of a name are made with, held against the official list (International Bartenders Association, 2025) and the public lists.</summary>
public sealed class NamedDrinkTableTests
{
    private const string Official = "official list of the trade, 2025";

    [Fact]
    public void Every_part_is_in_the_catalogue()
    {
        foreach (var part in NamedDrinkTable.All.SelectMany(d => d.Parts))
            Assert.True(BuiltInCatalogue.Ids.Any(i => NamedDrinkTable.Holds(part, i)), part.What);
    }

    [Fact]
    public void A_row_that_rests_on_the_official_list_is_in_it()
    {
        var names = OfficialBook.Drinks.Select(d => NamedDrinkTable.Find(NamedDrinkTable.Plain(d.Name), out _)).ToHashSet();
        Assert.Equal([], NamedDrinkTable.All.Where(d => d.Source == Official && !names.Contains(d)).Select(d => d.Names[0]));
    }

    [Fact]
    public void No_drink_of_the_official_list_lacks_what_it_is_made_with()
    {
        var found = Checker.Check(OfficialBook.WithoutStyles).Findings.Flat().Where(f => f.Rule.Id == "SL3031").Select(f => f.Message);
        Assert.Equal([], found);
    }

    /// <summary>Of the public lists' drinks with such a name, at most one in fifty of all lacks it.</summary>
    [Fact]
    public void Few_drinks_of_public_lists_do()
    {
        var found = PublishedDrinks.Lists.SelectMany(l => Checker.Check(l).Findings.Flat())
            .Where(f => f.Rule.Id == "SL3031")
            .Select(f => $"{f.Subject}: {f.Message}")
            .ToList();
        Assert.True(found.Count * 100 <= PublishedDrinks.Files.Count, string.Join("\n", found));
    }

    [Theory]
    [InlineData("Harbour Mojito", "mojito")]
    [InlineData("Piña Colada", "pina colada")]
    [InlineData("Not a Mojito", null)]
    [InlineData("Mojito Fizz", null)]
    [InlineData("Colada", "pina colada")]
    public void A_name_is_one_where_it_ends_with_it(string name, string? known) =>
        Assert.Equal(known, NamedDrinkTable.Find(NamedDrinkTable.Plain(name), out _)?.Names[0]);
}
