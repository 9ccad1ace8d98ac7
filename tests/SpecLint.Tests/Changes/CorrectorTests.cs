using System.Text;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

public sealed class CorrectorTests
{
    private const string Drink = """
        {
          "name": "Groundswell", // kept
          "ingredients": [
            { "item": "gin", "amount": "45 ml" },
            { "item": "lime-jiuce", "amount": "22,5 ml" },
            { "item": "simple-syrup", "amount": "20 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe",
          "declares": { "allergens": [] }
        }
        """;

    [Fact]
    public void Assured_corrections_are_made_and_proposed_ones_are_not()
    {
        var result = Corrector.Apply(Books.Input(("groundswell.drink.json", Drink)), new CorrectionChoice { Assured = true });
        var outcome = Assert.Single(result.Outcomes);
        Assert.Equal(("SL2001", CorrectionState.Applied), (outcome.Finding.Rule.Id, outcome.State));
        Assert.Equal(Drink.Replace("22,5", "22.5", StringComparison.Ordinal), Encoding.UTF8.GetString(Assert.Single(result.Files).After.Utf8.Span));
    }

    [Fact]
    public void A_proposed_correction_is_made_by_the_name_of_its_rule()
    {
        var result = Corrector.Apply(Books.Input(("groundswell.drink.json", Drink)), new CorrectionChoice { Rules = ["SL9001"], AdmitNew = true });
        Assert.Equal(CorrectionState.Applied, Assert.Single(result.Outcomes).State);
        Assert.Contains(
            "\"lime-juice\", \"amount\": \"22,5 ml\"", Encoding.UTF8.GetString(Assert.Single(result.Files).After.Utf8.Span),
            StringComparison.Ordinal);
        var change = Assert.Single(result.Comparison.Recipes);
        Assert.Contains(change.Facts, f => f.Fact == Fact.Acid && f.Before is { IsKnown: false } && f.After is { IsKnown: true });
    }

    [Fact]
    public void A_correction_that_leaves_its_finding_is_rolled_back()
    {
        var result = Apply([new HouseRule("HR9991", "\"coupe\"", "\"coupe\" ")], ["HR9991"]);
        Assert.Equal(CorrectionState.NotGone, Assert.Single(result.Outcomes).State);
        Assert.Empty(result.Files);
    }

    [Fact]
    public void A_correction_that_brings_another_finding_is_rolled_back_unless_that_is_admitted()
    {
        var rule = new HouseRule("HR9991", "\"glass\"", "\"glas\"");
        var result = Apply([rule], ["HR9991"]);
        var outcome = Assert.Single(result.Outcomes);
        Assert.Equal(CorrectionState.BringsNew, outcome.State);
        Assert.Contains(outcome.Brought, f => f.Rule.Id == "SL1006");
        Assert.Empty(result.Files);

        var admitted = Apply([rule], ["HR9991"], admitNew: true);
        Assert.Equal(CorrectionState.Applied, Assert.Single(admitted.Outcomes).State);
        Assert.Contains(admitted.Outcomes[0].Brought, f => f.Rule.Id == "SL1006");
        Assert.Single(admitted.Files);
    }

    [Fact]
    public void A_bad_correction_does_not_hold_back_a_good_one()
    {
        var result = Apply([new HouseRule("HR9991", "\"glass\"", "\"glas\""), new HouseRule("HR9992", "45 ml", "50 ml")], ["HR9991", "HR9992"]);
        Assert.Equal([CorrectionState.Applied, CorrectionState.BringsNew], result.Outcomes.OrderByDescending(o => o.Finding.Rule.Id).Select(o => o.State));
        Assert.Contains("50 ml", Encoding.UTF8.GetString(Assert.Single(result.Files).After.Utf8.Span), StringComparison.Ordinal);
    }

    [Fact]
    public void Corrections_of_the_same_characters_are_made_one_after_the_other()
    {
        // The second finds its characters gone once the first has been made.
        var result = Apply([new HouseRule("HR9991", "45 ml", "50 ml"), new HouseRule("HR9992", "45", "40")], ["HR9991", "HR9992"]);
        Assert.Equal([CorrectionState.Applied, CorrectionState.RightAlready], result.Outcomes.Select(o => o.State));
    }

    [Fact]
    public void Only_what_is_named_is_corrected()
    {
        var files = new[] { ("a.drink.json", Drink), ("b.drink.json", Drink) };
        var result = Corrector.Apply(Books.Input(files), new CorrectionChoice { Assured = true, Includes = p => p == "b.drink.json" });
        Assert.Equal("b.drink.json", Assert.Single(result.Files).Before.Path);
        result = Corrector.Apply(Books.Input(files), new CorrectionChoice { Assured = true, Subjects = ["a"] });
        Assert.Equal("a.drink.json", Assert.Single(result.Files).Before.Path);
    }

    private static CorrectionResult Apply(IReadOnlyList<Rule> rules, string[] named, bool admitNew = false)
    {
        string clean = Drink.Replace("lime-jiuce", "lime-juice", StringComparison.Ordinal).Replace("22,5", "22.5", StringComparison.Ordinal);
        return Corrector.Apply(
            Books.Input(("groundswell.drink.json", clean)) with { HouseRules = rules, TriesCorrections = false },
            new CorrectionChoice { Rules = named, AdmitNew = admitNew });
    }

    /// <summary>Finds a text in a drink and proposes another in its place.</summary>
    private sealed class HouseRule(string id, string text, string replacement) : FileRule
    {
        public override RuleInfo Info { get; } = new(id, "house-" + id, "A text of the house", Level.Warning);

        public override void Check(FileContext context)
        {
            if (context.File is not SpecLint.Book.Drink) return;
            int at = context.File.Source.Utf8.Span.IndexOf(Encoding.UTF8.GetBytes(text));
            if (at < 0) return;
            var place = context.At(new TextSpan(at, Encoding.UTF8.GetByteCount(text)));
            context.Report(new Finding(Info)
            {
                Place = place,
                Subject = context.Id,
                Message = "The house would write it otherwise.",
                Corrections = [new Correction(CorrectionGrade.Proposed, "Write it as the house does.", [new TextEdit(place, replacement)])],
            });
        }
    }
}
