using System.Text;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reports;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

public sealed class ComparisonTests
{
    private const string Syrup = """
        { "name": "House syrup", "family": "syrup",
          "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ],
          "method": [ { "do": "stir", "until": "dissolved" } ], "yield": "1000 g",
          "keep": { "at": "4 °C", "in": "bottle", "for": "7 d" }, "declares": { "allergens": [] } }
        """;

    private const string Base = """
        { "name": "Sour base", "family": "batch",
          "ingredients": [ { "item": "house-syrup", "amount": "200 ml" }, { "item": "lime-juice", "amount": "225 ml" } ],
          "method": [ { "do": "stir" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" }, "declares": { "allergens": [] } }
        """;

    private const string Drink = """
        { "name": "Groundswell",
          "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "sour-base", "amount": "42.5 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "glass": "coupe", "declares": { "allergens": [] } }
        """;

    private const string Other = """
        { "name": "Ebb",
          "ingredients": [ { "item": "gin", "amount": "60 ml" } ],
          "method": [ { "do": "stir", "ice": "cubed", "for": "30 s" }, { "do": "strain" } ], "glass": "coupe", "declares": { "allergens": [] } }
        """;

    [Fact]
    public void A_change_of_a_shared_syrup_reaches_every_recipe_that_uses_it()
    {
        var comparison = Compare(Syrup, Syrup.Replace("\"500 g\" }, { \"item\": \"water\"", "\"750 g\" }, { \"item\": \"water\"", StringComparison.Ordinal));
        Assert.Equal(["groundswell", "house-syrup", "sour-base"], comparison.Recipes.Select(r => r.Id).Order());
        var drink = comparison.Recipes.Single(r => r.Id == "groundswell");
        Assert.Equal(["house-syrup"], drink.Through);
        Assert.False(drink.FileChanged);
        var sugar = drink.Facts.Single(f => f.Fact == Fact.Sugar);
        Assert.True(sugar.After!.Value.Value > sugar.Before!.Value.Value);
        Assert.Equal(comparison.Recipes.OrderByDescending(r => r.Size).Select(r => r.Id), comparison.Recipes.Select(r => r.Id));
    }

    [Fact]
    public void Another_layout_moves_nothing_and_reaches_nobody()
    {
        var comparison = Compare(Syrup, Syrup.Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Empty(comparison.Recipes);
        comparison = Compare(Syrup, Syrup.Replace("500 g", "500.0 g", StringComparison.Ordinal));
        Assert.All(comparison.Recipes, r => Assert.Empty(r.Facts));
    }

    [Fact]
    public void An_allergen_that_comes_in_through_a_preparation_is_gained()
    {
        var comparison = Compare(Syrup, Syrup.Replace("\"water\", \"amount\": \"500 g\"", "\"whole-milk\", \"amount\": \"500 g\"", StringComparison.Ordinal));
        Assert.All(["house-syrup", "sour-base", "groundswell"], id => Assert.Equal(["milk"], comparison.Recipes.Single(r => r.Id == id).AllergensGained));
        Assert.True(comparison.Recipes[0].Size >= 1);
        var back = Compare(Syrup.Replace("\"water\", \"amount\": \"500 g\"", "\"whole-milk\", \"amount\": \"500 g\"", StringComparison.Ordinal), Syrup);
        Assert.Equal(["milk"], back.Recipes.Single(r => r.Id == "groundswell").AllergensLost);
    }

    [Fact]
    public void What_the_label_says_of_keeping_is_compared()
    {
        var change = Compare(Syrup, Syrup.Replace("7 d", "30 d", StringComparison.Ordinal)).Recipes.Single(r => r.Id == "house-syrup");
        Assert.Equal(("7 d at 4 °C", "30 d at 4 °C"), (change.KeepingBefore, change.KeepingAfter));
    }

    [Fact]
    public void A_recipe_that_came_or_went_is_said_so()
    {
        var with = Books.Check(("ebb.drink.json", Other), ("groundswell.drink.json", Drink), ("sour-base.prep.json", Base), ("house-syrup.prep.json", Syrup));
        var without = Books.Check(("groundswell.drink.json", Drink), ("sour-base.prep.json", Base), ("house-syrup.prep.json", Syrup));
        Assert.Equal(ChangeKind.Removed, Assert.Single(Comparison.Of(with, without).Recipes).Kind);
        Assert.Equal(ChangeKind.Added, Assert.Single(Comparison.Of(without, with).Recipes).Kind);
    }

    [Fact]
    public void Findings_are_new_gone_or_as_before_by_their_fingerprints()
    {
        string broken = Other.Replace("\"gin\"", "\"gni\"", StringComparison.Ordinal);
        var before = Books.Check(("ebb.drink.json", Other));
        var after = Books.Check(("ebb.drink.json", broken));
        var there = Comparison.Of(before, after);
        Assert.Contains(there.New, f => f.Rule.Id == "SL9001");
        Assert.Equal(there.New.Select(f => f.Fingerprint), Comparison.Of(after, before).Gone.Select(f => f.Fingerprint));
        var moved = Comparison.Of(after, Books.Check(("ebb.drink.json", "\n\n" + broken)));
        Assert.Empty(moved.New);
        Assert.Empty(moved.Gone);
        Assert.Equal(after.Findings.Flat().Count(), moved.Unchanged);
    }

    [Fact]
    public void A_limit_that_the_change_crosses_is_marked_in_the_table()
    {
        var before = Books.Check(("ebb.drink.json", Bitter("60 ml")));
        foreach (string amount in new[] { "250 ml", "5 ml" })
        {
            var comparison = Comparison.Of(before, Books.Check(("ebb.drink.json", Bitter(amount))));
            var crossed = comparison.Recipes.Single().Facts.Where(f => f.Crossed.Count > 0).ToArray();
            if (crossed.Length == 0) continue;
            using var text = new StringWriter();
            ComparisonReport.WriteMarkdown(text, comparison);
            Assert.Contains($"⚠ crosses a limit ({crossed[0].Crossed[0].Rule.Id}", text.ToString(), StringComparison.Ordinal);
            return;
        }

        Assert.Fail("neither a flood nor a trace of gin crosses a limit");

        static string Bitter(string amount) =>
            Other.Replace("60 ml", amount, StringComparison.Ordinal)
                .Replace("\"name\": \"Ebb\",", "\"name\": \"Ebb\", \"style\": \"stirred\",", StringComparison.Ordinal);
    }

    [Fact]
    public void Text_of_recipes_makes_no_markup_in_the_table()
    {
        const string hostile = "| <b>@somebody</b> [x](https://example.org) `#12` *a* \\n## no | www.example.org";
        var before = Books.Check(("ebb.drink.json", Other));
        var after = Books.Check(("ebb.drink.json", Other.Replace(
            "\"Ebb\"", $"\"{hostile.Replace("\\", "\\\\", StringComparison.Ordinal)}\"", StringComparison.Ordinal)
            .Replace("60 ml", "45 ml", StringComparison.Ordinal)));
        using var text = new StringWriter();
        ComparisonReport.WriteMarkdown(text, Comparison.Of(before, after));
        string row = text.ToString().Split('\n').Single(l => l.Contains("somebody", StringComparison.Ordinal));
        Assert.Equal(6, row.Replace("\\|", "", StringComparison.Ordinal).Count(c => c == '|'));
        foreach (string markup in new[] { "<b>", "@somebody", "](", " `", "#12", " *a*", "https://", "www.example" })
            Assert.DoesNotContain(
                markup,
                row.Replace("\\`", "", StringComparison.Ordinal).Replace("\\](", "", StringComparison.Ordinal),
                StringComparison.Ordinal);
    }

    [Fact]
    public void A_difference_in_the_unified_format_says_what_changed()
    {
        using var text = new StringWriter();
        var old = Books.File("a", string.Concat(Enumerable.Range(1, 20).Select(i => $"line {i}\n")));
        var now = Books.File(
            "a",
            Encoding.UTF8.GetString(old.Utf8.Span)
                .Replace("line 4\n", "line four\n", StringComparison.Ordinal)
                .Replace("line 15\n", "", StringComparison.Ordinal)[..^1]);
        UnifiedDiff.Write(text, "a", old, now);
        Assert.Equal(
            """
            --- a/a
            +++ b/a
            @@ -1,7 +1,7 @@
             line 1
             line 2
             line 3
            -line 4
            +line four
             line 5
             line 6
             line 7
            @@ -12,9 +12,8 @@
             line 12
             line 13
             line 14
            -line 15
             line 16
             line 17
             line 18
             line 19
            -line 20
            +line 20
            \ No newline at end of file

            """,
            text.ToString());
    }

    private static Comparison Compare(string before, string after) => Comparison.Of(Check(before), Check(after));

    private static CheckResult Check(string syrup) =>
        Books.Check(("house-syrup.prep.json", syrup), ("sour-base.prep.json", Base), ("groundswell.drink.json", Drink), ("ebb.drink.json", Other));
}
