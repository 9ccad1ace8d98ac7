using System.Text;
using CsCheck;
using SpecLint.Findings;
using SpecLint.Rules.Amounts;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Rules of the file and of amounts: what they must leave alone, and what their corrections do.</summary>
public sealed class AmountRulesTests
{
    /// <summary>The catalogue's own entries, read as files of a bar, are what the rules about ingredients call clean.</summary>
    [Fact]
    public void Rules_about_ingredients_are_silent_on_the_catalogue()
    {
        var sources = Directory.GetFiles(Repository.At("src", "SpecLint", "Catalogue", "Ingredients"), "*.ingredient.json", SearchOption.AllDirectories)
            .Select(f => Books.File("own/" + Path.GetFileName(f), File.ReadAllText(f))).Append(Books.File("bar.json", Books.PlainBar)).ToList();
        var result = Checker.Check(new BookInput(sources, Books.On));
        string[] rules = ["SL2016", "SL2024", "SL2025", "SL2026", "SL2027", "SL2028", "SL2029"];
        Assert.Equal([], result.Findings.Where(f => rules.Contains(f.Rule.Id)).Select(f => $"{f.Subject} {f.Rule.Id} {f.Message}"));
        Assert.True(result.Book.Ingredients.Count > 500);
    }

    /// <summary>Each correction of a page's example is valid JSON afterwards, and the finding is gone.</summary>
    [Fact]
    public void Corrections_put_their_finding_right()
    {
        int tried = 0;
        var failed = new List<string>();
        foreach (var page in RulePage.All.Where(p => p.Id[2] is '1' or '2'))
        {
            foreach (var example in page.Examples.Where(e => !e.Clean))
            {
                foreach (var finding in Books.Check([.. example.Files]).Findings.Where(f => f.Rule.Id == page.Id))
                {
                    foreach (var correction in finding.Corrections)
                    {
                        tried++;
                        var after = Books.Check([.. Apply(example.Files, correction)]);
                        var left = after.Findings.FirstOrDefault(f => f.Fingerprint == finding.Fingerprint || f.Rule.Id == "SL1001");
                        if (left is not null) failed.Add($"{page.Id}, line {example.Line}: {correction.Description} leaves {left.Message}");
                    }
                }
            }
        }

        Assert.Equal([], failed);
        Assert.True(tried > 50, $"only {tried} corrections");
    }

    /// <summary>An assured correction leaves the drink what it is: strength within what a jigger pours to.</summary>
    [Fact]
    public void Assured_corrections_leave_the_strength()
    {
        foreach (var page in RulePage.All.Where(p => p.Id[2] == '2'))
        {
            foreach (var example in page.Examples.Where(e => !e.Clean))
            {
                var before = Books.Check([.. example.Files]);
                foreach (var finding in before.Findings.Where(f => f.Rule.Id == page.Id))
                {
                    foreach (var correction in finding.Corrections.Where(c => c.Grade == CorrectionGrade.Assured))
                    {
                        var after = Books.Check([.. Apply(example.Files, correction)]);
                        foreach (var drink in before.Book.Drinks)
                        {
                            var a = before.Profiles.Of(drink).Get(SpecLint.Vocabulary.Fact.Abv);
                            var b = after.Profiles.Of(after.Book.Drinks.Single(d => d.Id == drink.Id)).Get(SpecLint.Vocabulary.Fact.Abv);
                            if (a.IsKnown) Assert.InRange(b.Value, a.Value * 0.95, a.Value * 1.05);
                        }
                    }
                }
            }
        }
    }

    /// <summary>An amount in running text is found where it stands, whatever stands around it.</summary>
    [Fact]
    public void Amounts_in_text_are_found() =>
        Gen.Select(Gen.Int[1, 999], Gen.Int[0, 4].Select(i => new[] { "ml", "g", "oz", "cl", "dashes" }[i]), Gen.String[Gen.Char['a', 'z'], 0, 12])
            .Sample((number, unit, word) =>
            {
                string text = $"{word} take {number} {unit} of lime juice.";
                Assert.True(AmountsInText.Next(text, 0, out var found));
                Assert.Equal(number, found.Amount.Value);
                Assert.True(AmountsInText.Names(text, found.End, "lime-juice"));
            });

    /// <summary>Durations, temperatures, years and versions are no amounts of anything.</summary>
    [Theory]
    [InlineData("shake 12 s, then 4 °C for 3 d")]
    [InlineData("since 2024, version 3.1, page 45")]
    [InlineData("at 60 °C for 20 min")]
    [InlineData("")]
    public void What_is_no_amount_is_left_alone(string text) => Assert.False(AmountsInText.Next(text, 0, out _));

    /// <summary>A bar that gives its measures a size has no question about them.</summary>
    [Fact]
    public void House_measures_settle_ounces_spoons_and_tops()
    {
        const string Bar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "measures": { "oz": "30 ml", "tbsp": "15 ml", "top": "90 ml" } }""";
        const string Drink = """
            { "name": "Low Tide",
              "ingredients": [ { "item": "gin", "amount": "1 1/2 oz" }, { "item": "absinthe", "amount": "1 tbsp" }, { "item": "soda-water", "amount": "top" } ],
              "method": [ { "do": "build", "ice": "cubed" }, { "do": "top", "items": [ "soda-water" ] } ] }
            """;
        string[] rules = ["SL2009", "SL2010", "SL2030"];
        Assert.DoesNotContain(Books.Check(("bar.json", Bar), ("low-tide.drink.json", Drink)).Findings, f => rules.Contains(f.Rule.Id));
        Assert.Equal(rules, Books.Check(("low-tide.drink.json", Drink)).Findings.Select(f => f.Rule.Id).Where(rules.Contains).Order());
    }

    private static IEnumerable<(string Path, string Text)> Apply(IReadOnlyList<(string Path, string Text)> files, Correction correction)
    {
        var all = files.Any(f => f.Path == "bar.json") ? files : [.. files, ("bar.json", Books.PlainBar)];
        foreach (var (path, text) in all)
        {
            byte[] bytes = Encoding.UTF8.GetBytes(text);
            foreach (var edit in correction.Edits.Where(e => e.Place.File.Path == path).OrderByDescending(e => e.Place.Span.Start))
                bytes = [.. bytes[..edit.Place.Span.Start], .. Encoding.UTF8.GetBytes(edit.NewText), .. bytes[edit.Place.Span.End..]];
            yield return (path, Encoding.UTF8.GetString(bytes));
        }
    }
}
