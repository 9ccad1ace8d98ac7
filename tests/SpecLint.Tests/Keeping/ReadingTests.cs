using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>A reading belongs to the recipe that was measured.</summary>
public sealed class ReadingTests
{
    private const string Cordial = """
        {
          "name": "Shore cordial",
          "family": "cordial",
          "ingredients": [
            { "item": "white-sugar", "amount": "500 g" },
            { "item": "cucumber-juice", "amount": "480 g" },
            { "item": "citric-acid", "amount": "12 g" },
            { "item": "shore-base", "amount": "10 g" }
          ],
          "method": [ { "do": "stir", "until": "dissolved", "for": "5 min" } ],
          "measured": { "ph": 2.4, "on": "2026-11-20"OF },
          "notes": "Juice with the skin.",
          "keep": { "at": "4 °C", "in": "bottle", "for": "7 d" }
        }
        """;

    private const string Base = """{ "name": "Shore base", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" } ], "method": [ { "do": "stir" } ] }""";

    public static TheoryData<string, string> Matters => new()
    {
        { "\"12 g\"", "\"3 g\"" },
        { "\"5 min\"", "\"6 min\"" },
        { "\"citric-acid\"", "\"malic-acid\"" },
        { "\"dissolved\"", "\"clear\"" },
        { "\"stir\"", "\"heat\"" },
        { "  \"keep\"", "  \"yield\": \"900 g\",\n  \"keep\"" },
        { "\"method\": [", "\"method\": [ { \"do\": \"strain\" }," },
    };

    public static TheoryData<string, string> DoesNotMatter => new()
    {
        { "Juice with the skin.", "Juice without it." },
        { "Shore cordial", "Cordial of the shore" },
        { "\"500 g\"", "\"0.5 kg\"" },
        { "\"5 min\"", "\"300 s\"" },
        { "\"7 d\"", "\"5 d\"" },
        { "{ \"item\": \"white-sugar\", \"amount\": \"500 g\" },", "{ \"item\": \"white-sugar\", \"amount\": \"250 g\" }, { \"item\": "
            + "\"white-sugar\", \"amount\": \"250 g\" }," },
        { "{ \"item\": \"citric-acid\", \"amount\": \"12 g\" },", "{ \"item\": \"citric-acid\", \"amount\": \"12 g\", \"note\": \"sifted\" }," },
    };

    [Fact]
    public void A_stamped_reading_counts_while_the_recipe_is_the_same()
    {
        var result = Check(Stamped());
        Assert.Equal("measured", result.Profiles.Of(result.Book.Preps.Single(p => p.Id == "shore-cordial")).Get(Fact.Ph).From);
        Assert.DoesNotContain(result.Findings.Flat(), f => f.Rule.Id == "SL5033");
    }

    [Theory]
    [MemberData(nameof(Matters))]
    public void A_change_of_amounts_or_method_voids_it(string from, string to)
    {
        string changed = Stamped().Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(Stamped(), changed);
        AssertVoid(Check(changed));
    }

    [Theory]
    [MemberData(nameof(DoesNotMatter))]
    public void A_change_that_cannot_matter_does_not(string from, string to)
    {
        string changed = Stamped().Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(Stamped(), changed);
        Assert.DoesNotContain(Check(changed).Findings.Flat(), f => f.Rule.Id == "SL5033");
    }

    [Fact]
    public void A_change_of_a_preparation_in_it_voids_it() =>
        AssertVoid(Check(Stamped(), Base.Replace("\"100 g\" }, {", "\"90 g\" }, {", StringComparison.Ordinal)));

    [Fact]
    public void The_order_of_lines_and_an_alias_do_not_matter()
    {
        var book = Check(Stamped()).Book;
        string fingerprint = RecipeFingerprint.Of(book.Preps.Single(p => p.Id == "shore-cordial"), book);
        string turned = Stamped()
            .Replace("{ \"item\": \"white-sugar\", \"amount\": \"500 g\" },", "", StringComparison.Ordinal)
            .Replace(
                "{ \"item\": \"shore-base\"", "{ \"item\": \"white-sugar\", \"amount\": \"500 g\" }, { \"item\": \"shore-base\"",
                StringComparison.Ordinal);
        var other = Check(turned).Book;
        Assert.Equal(fingerprint, RecipeFingerprint.Of(other.Preps.Single(p => p.Id == "shore-cordial"), other));
    }

    [Theory]
    [InlineData("\"date\": \"2026-11-21\",", "", true)]
    [InlineData("\"date\": \"2026-11-20\",", "", false)]
    [InlineData("\"revision\": 4,", ", \"revision\": 3", true)]
    [InlineData("\"revision\": 4,", ", \"revision\": 4", false)]
    public void Without_a_fingerprint_the_day_and_the_revision_decide(string recipe, string reading, bool isVoid)
    {
        var result = Check(Cordial.Replace("OF", reading, StringComparison.Ordinal).Replace("\"family\"", recipe + " \"family\"", StringComparison.Ordinal));
        Assert.Equal(isVoid, result.Findings.Flat().Any(f => f.Rule.Id == "SL5033"));
    }

    [Fact]
    public void Without_a_fingerprint_a_reading_that_stays_while_amounts_change_is_void()
    {
        string plain = Cordial.Replace("OF", "", StringComparison.Ordinal);
        var before = Check(plain);
        var input = Input(plain.Replace("\"12 g\"", "\"3 g\"", StringComparison.Ordinal), Base);
        AssertVoid(Checker.Check(input with { Earlier = before.Book }));
        var renewed = Input(plain.Replace("\"12 g\"", "\"3 g\"", StringComparison.Ordinal).Replace("2026-11-20", "2026-11-24", StringComparison.Ordinal), Base);
        Assert.DoesNotContain(Checker.Check(renewed with { Earlier = before.Book }).Findings.Flat(), f => f.Rule.Id == "SL5033");
        Assert.DoesNotContain(Checker.Check(Input(plain, Base) with { Earlier = before.Book }).Findings.Flat(), f => f.Rule.Id == "SL5033");
    }

    private static void AssertVoid(CheckResult result)
    {
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5033");
        Assert.NotEqual("measured", result.Profiles.Of(result.Book.Preps.Single(p => p.Id == "shore-cordial")).Get(Fact.Ph).From);
    }

    private static string Stamped()
    {
        string plain = Cordial.Replace("OF", "", StringComparison.Ordinal);
        var book = Check(plain).Book;
        return Cordial.Replace("OF", $", \"of\": \"{RecipeFingerprint.Of(book.Preps.Single(p => p.Id == "shore-cordial"), book)}\"", StringComparison.Ordinal);
    }

    private static BookInput Input(string cordial, string inner) => Books.Input(("shore-cordial.prep.json", cordial), ("shore-base.prep.json", inner));

    private static CheckResult Check(string cordial, string inner = Base) => Checker.Check(Input(cordial, inner));
}
