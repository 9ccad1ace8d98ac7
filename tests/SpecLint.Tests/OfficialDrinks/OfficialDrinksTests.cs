using System.Text;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.OfficialDrinks;

/// <summary>
/// The official drinks of the International Bartenders Association (2025; names and amounts) as a book: accepted drinks,
/// in which the rules must find next to nothing.
/// </summary>
public sealed class OfficialDrinksTests
{
    private static CheckResult Result => OfficialBook.Checked.Value;

    [Fact]
    public void The_table_is_whole()
    {
        Assert.Equal(44, OfficialBook.Drinks.Count);
        Assert.Equal(165, OfficialBook.Drinks.Sum(d => d.Lines.Count));
    }

    [Fact]
    public void Every_row_resolves_to_the_catalogue()
    {
        foreach (var drink in Result.Book.Drinks)
        {
            Assert.Empty(drink.Problems);
            foreach (var part in Result.Profiles.Of(drink).Parts)
            {
                Assert.True(part.Item is { IsBuiltIn: true }, $"{drink.Id}: {part.Line.Item.Value}");
                Assert.Equal(part.Line.Item.Value, part.Item!.Id);
            }
        }
    }

    [Fact]
    public void Every_drink_gets_strength_sugar_and_acid()
    {
        foreach (var drink in Result.Book.Drinks)
        {
            var profile = Result.Profiles.Of(drink);
            foreach (var fact in new[] { Fact.Abv, Fact.Sugar, Fact.Acid, Fact.ServedVolume, Fact.Alcohol })
            {
                var value = profile.Get(fact);
                Assert.True(value.IsKnown, $"{drink.Id}: {fact} is open: {value.OpenBecause}");
                Assert.True(value.Low <= value.Value && value.Value <= value.High, $"{drink.Id}: {fact} {value.Low} {value.Value} {value.High}");
            }
        }
    }

    [Fact]
    public void Computed_values_are_as_kept() =>
        Golden.Check(Repository.At("tests", "SpecLint.Tests", "OfficialDrinks", "computed.csv"), Table());

    [Fact]
    public void Findings_are_few_and_each_is_defended()
    {
        var warnings = Flat(Result.Findings).Where(f => f.Level >= Level.Warning).ToList();
        Assert.Equal([], warnings.Where(f => f.Level == Level.Error).Select(f => $"{f.Subject} {f.Rule.Id} {f.Message}"));
        Assert.True(
            warnings.Count <= OfficialBook.Drinks.Count / 5,
            $"{warnings.Count} warnings in {OfficialBook.Drinks.Count} "
                + $"drinks:\n{string.Join("\n", warnings.Select(f => $"{f.Subject} {f.Rule.Id} {f.Message}"))}");
        string[] defended = [.. File.ReadLines(Repository.At("tests", "SpecLint.Tests", "OfficialDrinks", "warnings.md"))
            .Where(l => l.StartsWith("- ", StringComparison.Ordinal)).Select(l => string.Join(' ', l[2..].Split(' ', 3).Take(2)).TrimEnd(':')).OrderBy(l => l, StringComparer.Ordinal)];
        Assert.Equal(defended, warnings.Select(f => $"{f.Subject} {f.Rule.Id}").OrderBy(l => l, StringComparer.Ordinal));
    }

    /// <summary>The list names raw egg white three times and warns nobody; a bar has to (warnings.md).</summary>
    [Fact]
    public void Raw_egg_without_a_word_to_the_guest_is_told()
    {
        var told = Flat(Checker.Check(OfficialBook.WithoutAdvice).Findings)
            .Where(f => f.Level >= Level.Warning)
            .Select(f => $"{f.Subject} {f.Rule.Id}")
            .OrderBy(l => l, StringComparer.Ordinal);
        Assert.Equal(["pina-colada SL7004", "ramos-fizz SL7026", "southside SL7026", "whiskey-sour SL7026"], told);
    }

    /// <summary>
    /// The published balance tables as recalled (D. Arnold, Liquid Intelligence, 2014, pp. 125–127): what the book prints for the
    /// equal parts bitter drink when it is stirred, 127 mL at 20.7 % vol with 9.4 g of sugar and 0.14 % acid, lies in the ranges.
    /// </summary>
    [Fact]
    public void A_stirred_drink_agrees_with_the_published_table()
    {
        var result = Books.Check(("redshank.drink.json", """
            { "name": "Redshank", "ingredients": [
              { "item": "gin", "amount": "30 ml" }, { "item": "red-bitter-aperitif", "amount": "30 ml" }, { "item": "sweet-vermouth", "amount": "30 ml" } ],
              "method": [ { "do": "stir", "ice": "cubed" }, { "do": "strain" } ] }
            """));
        var profile = result.Profiles.Of(result.Book.Drinks[0]);
        Holds(profile.Get(Fact.ServedVolume), 127);
        Holds(profile.Get(Fact.Abv), 20.7);
        Holds(profile.Get(Fact.Sugar), 9.4);
        Holds(profile.Get(Fact.Acid), 0.14);

        static void Holds(FactValue value, double published) => Assert.InRange(published, value.Low, value.High);
    }

    private static IEnumerable<Finding> Flat(IEnumerable<Finding> findings) => findings.SelectMany(f => Flat(f.Folded).Prepend(f));

    private static string Table()
    {
        var text = new StringBuilder("drink,style,servedVolume mL,abv % vol,sugar g/100 mL,acid g/100 mL,alcohol g\n");
        foreach (var drink in Result.Book.Drinks)
        {
            var profile = Result.Profiles.Of(drink);
            text.Append(drink.Id).Append(',').Append(drink.KnownStyle?.Id);
            foreach (var (fact, decimals) in new[] { (Fact.ServedVolume, 0), (Fact.Abv, 1), (Fact.Sugar, 1), (Fact.Acid, 2), (Fact.Alcohol, 1) })
            {
                var value = profile.Get(fact);
                text.Append(',')
                    .Append(Say.Number(value.Value, decimals))
                    .Append(" (")
                    .Append(Say.Number(value.Low, decimals))
                    .Append('–')
                    .Append(Say.Number(value.High, decimals))
                    .Append(')');
            }

            text.Append('\n');
        }

        return text.ToString();
    }
}
