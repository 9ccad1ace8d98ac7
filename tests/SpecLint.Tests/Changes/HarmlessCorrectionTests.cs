using System.Text;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Tests.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

/// <summary>Corrections do no harm.</summary>
public sealed class HarmlessCorrectionTests
{
    [Theory]
    [InlineData("malik", "1 g", "malic-acid")]
    [InlineData("galic-acid", "10 g", null)]
    [InlineData("saltmarsh", "25 ml", "saltmarsh-syrup")]
    [InlineData("syrup-of-the-shore", "25 ml", "saltmarsh-syrup")]
    [InlineData("lime-jiuce", "25 ml", "lime-juice")]
    [InlineData("campari", "30 ml", null)]
    [InlineData("soga", "30 ml", null)]
    [InlineData("rur", "30 ml", null)]
    public void An_id_is_suggested_only_within_the_same_kind_of_thing(string written, string amount, string? meant)
    {
        const string Syrup = """
            { "name": "Syrup of the shore", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ] }
            """;
        var finding = Books.Check(("low-tide.drink.json", Drink(written, amount)), ("saltmarsh-syrup.prep.json", Syrup)).Findings
            .Flat()
            .Where(f => f.Rule.Id == "SL9001")
            .ToList();
        Assert.Single(finding);
        var corrections = finding.SelectMany(f => f.Corrections).SelectMany(c => c.Edits).Select(e => e.NewText.Trim('"')).ToList();
        if (meant is null) Assert.Empty(corrections);
        else Assert.Contains(meant, corrections);
    }

    [Fact]
    public void No_single_letter_turns_an_item_into_one_that_hurts()
    {
        // Every word of the catalogue with a letter changed, dropped or doubled: no correction brings an allergen or a hazard.
        int tried = 0;
        foreach (string id in Catalogue.BuiltInCatalogue.Ids.Where((_, i) => i % 40 == 0))
        {
            foreach (string written in new[] { id[..^1], id + "x", id[..1] + id[2..], id.Replace('a', 'e') })
            {
                if (written.Length < 2 || Catalogue.BuiltInCatalogue.Find(written) is not null || written.EndsWith('-')) continue;
                var input = Books.Input(("low-tide.drink.json", Drink(written, "25 ml")));
                var result = Corrector.Apply(input, new CorrectionChoice { All = true, AdmitNew = true });
                AssertHarmless(result);
                tried++;
            }
        }

        Assert.True(tried > 60, $"only {tried} were tried");
    }

    [Fact]
    public void A_correction_that_would_bring_an_allergen_is_rolled_back_even_when_new_findings_are_admitted()
    {
        var result = Apply(new Renames("HR9991", "simple-syrup", "orgeat", CorrectionGrade.Proposed, keeps: false));
        var outcome = Assert.Single(result.Outcomes);
        Assert.Equal(CorrectionState.BringsHarm, outcome.State);
        Assert.Contains(outcome.Added, a => a.Contains("almond", StringComparison.Ordinal));
        Assert.Empty(result.Files);
    }

    [Fact]
    public void A_correction_that_only_says_what_is_true_stays_and_names_what_comes_to_light()
    {
        var result = Apply(new Renames("HR9991", "simple-syrup", "orgeat", CorrectionGrade.Proposed, keeps: true));
        var outcome = Assert.Single(result.Outcomes);
        Assert.Equal(CorrectionState.Applied, outcome.State);
        Assert.Contains(outcome.Added, a => a.Contains("almond", StringComparison.Ordinal));
    }

    [Fact]
    public void A_true_earlier_use_by_date_is_kept_although_the_lot_then_proves_past_it()
    {
        const string Stock = """
            { "on": "2026-11-25", "lots": [ { "item": "cows-milk", "opened": "2026-11-10", "useBy": "2026-12-20", "at": "4 °C", "amount": "500 ml" } ] }
            """;
        string milk = Catalogue.BuiltInCatalogue.Ids.First(i => i == "whole-milk");
        var result = Corrector.Apply(
            Books.Input(("fridge.stock.json", Stock.Replace("cows-milk", milk, StringComparison.Ordinal))),
            new CorrectionChoice { Rules = ["SL5008"] });
        var outcome = Assert.Single(result.Outcomes);
        Assert.Equal(CorrectionState.Applied, outcome.State);
        Assert.Contains("\"useBy\": \"2026-11-14\"", Encoding.UTF8.GetString(Assert.Single(result.Files).After.Utf8.Span), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("60 oz", true)]
    [InlineData("600 ml", true)]
    [InlineData("20 oz", true)]
    [InlineData("45 cl", true)]
    [InlineData("450 cl", true)]
    [InlineData("5000 cl", false)]
    public void A_slip_is_proposed_only_where_it_is_under_the_limit(string amount, bool proposed)
    {
        var result = Books.Check(("low-tide.drink.json", Drink("gin", amount)));
        var finding = result.Findings.Flat().Single(f => f.Rule.Id == "SL2007");
        Assert.Equal(proposed, finding.Corrections.Count > 0);
        if (proposed)
            Assert.DoesNotContain(
                Corrector.Apply(
                    Books.Input(("low-tide.drink.json", Drink("gin", amount))),
                    new CorrectionChoice { Rules = ["SL2007"], AdmitNew = true }).After.Findings
                    .Flat(),
                f => f.Rule.Id == "SL2007");
    }

    [Fact]
    public void No_correction_of_a_rule_page_adds_an_allergen_a_hazard_or_a_harm_finding()
    {
        int applied = 0;
        foreach (var page in RulePage.All)
        {
            foreach (var example in page.Examples.Where(e => !e.Clean))
            {
                var result = Corrector.Apply(Books.Input([.. example.Files]), new CorrectionChoice { Rules = [page.Id], AdmitNew = true });
                AssertHarmless(result);
                applied += result.Outcomes.Count(o => o.IsMade);
            }
        }

        Assert.True(applied > 50, $"only {applied} corrections were made");
    }

    private static void AssertHarmless(CorrectionResult result)
    {
        foreach (var outcome in result.Outcomes.Where(o => o is { IsMade: true, Correction.KeepsTheThing: false }))
        {
            Assert.Empty(outcome.Added);
            Assert.DoesNotContain(outcome.Brought, f => f.Rule.Safety);
        }

        if (result.Outcomes.Any(o => o is { IsMade: true, Correction.KeepsTheThing: true })) return;
        var before = result.Before.Fingerprints();
        Assert.DoesNotContain(result.After.Findings.Flat(), f => f.Rule.Safety && !before.Contains(f.Fingerprint));
    }

    private static CorrectionResult Apply(Rule rule) => Corrector.Apply(
        Books.Input(("low-tide.drink.json", Drink("gin", "45 ml"))) with { HouseRules = [rule], TriesCorrections = false },
        new CorrectionChoice { Rules = [rule.Info.Id], AdmitNew = true });

    private static string Drink(string item, string amount) => $$"""
        {
          "name": "Low Tide",
          "ingredients": [
            { "item": "{{item}}", "amount": "{{amount}}" },
            { "item": "simple-syrup", "amount": "20 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe",
          "declares": { "allergens": [] }
        }
        """;

    /// <summary>Proposes another item in place of one.</summary>
    private sealed class Renames(string id, string from, string to, CorrectionGrade grade, bool keeps) : FileRule
    {
        public override RuleInfo Info { get; } = new(id, "house-" + id, "An item of the house", Level.Warning);

        public override void Check(FileContext context)
        {
            if (context.File is not SpecLint.Book.Drink) return;
            int at = context.File.Source.Utf8.Span.IndexOf(Encoding.UTF8.GetBytes(from));
            if (at < 0) return;
            var place = context.At(new TextSpan(at, from.Length));
            context.Report(new Finding(Info)
            {
                Place = place,
                Subject = context.Id,
                Message = "The house would pour another.",
                Corrections = [new Correction(grade, "Pour the other.", [new TextEdit(place, to)]) { KeepsTheThing = keeps }],
            });
        }
    }
}
