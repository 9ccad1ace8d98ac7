using SpecLint.Findings;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>A note that says that a thing is not in a drink adds nothing, however it says so; what is only near a denial stays named.</summary>
public sealed class DenialTests
{
    [Theory]
    [InlineData("We use no milk.")]
    [InlineData("No milk added.")]
    [InlineData("nuts? none!")]
    [InlineData("Nuts: none.")]
    [InlineData("Milk? Never.")]
    [InlineData("Milk? No!")]
    [InlineData("We never use milk or cream.")]
    [InlineData("There is no cream in this.")]
    [InlineData("Made without milk.")]
    [InlineData("Top with soda, no milk.")]
    [InlineData("Contains no milk, cream or nuts.")]
    [InlineData("Serve without cream or butter.")]
    [InlineData("Add no almond.")]
    [InlineData("Do not add cream or milk.")]
    [InlineData("Don’t top with cream.")]
    [InlineData("Neither milk nor cream.")]
    [InlineData("Neither cream nor almonds go in.")]
    [InlineData("Leave out the cream.")]
    [InlineData("Skip the almonds.")]
    [InlineData("Omit the whipped cream.")]
    [InlineData("Almonds are not used.")]
    [InlineData("Cream is left out.")]
    [InlineData("We don't serve it with milk.")]
    [InlineData("Hold the cream.")]
    [InlineData("No more cream.")]
    [InlineData("sin leche")]
    [InlineData("Sin leche ni nueces.")]
    [InlineData("Servir sans lait.")]
    [InlineData("ohne Milch")]
    [InlineData("Serve ohne Milch und Nüsse.")]
    [InlineData("senza latte")]
    [InlineData("Serve senza latte.")]
    [InlineData("sem leite")]
    [InlineData("zonder melk")]
    [InlineData("Keine Milch, keine Nüsse.")]
    public void A_denial_adds_nothing(string note) => Assert.DoesNotContain(Of(note), f => f.Rule.Id is "SL7034" or "SL7032");

    [Theory]
    [InlineData("Add milk.", "milk")]
    [InlineData("No ice. Add milk.", "milk")]
    [InlineData("No garnish; top with cream.", "cream")]
    [InlineData("Not too sweet, finish with cream.", "cream")]
    [InlineData("Don't forget to add the cream.", "cream")]
    [InlineData("Never serve without cream.", "cream")]
    [InlineData("No sugar but add milk.", "milk")]
    [InlineData("Nuts? None left, top with almonds.", "almond")]
    [InlineData("Without ice, with cream.", "cream")]
    [InlineData("Serve con leche.", "leche")]
    [InlineData("Top with lait.", "lait")]
    public void What_a_note_adds_beside_a_denial_is_found(string note, string names)
    {
        var told = Of(note).Where(f => f.Rule.Id == "SL7034").ToList();
        Assert.True(told.Exists(f => f.Message.Contains(names, StringComparison.Ordinal)), string.Join("; ", told.Select(f => f.Message)));
    }

    /// <summary>Said of a drink that holds it, in any of these words, it is a claim that does not hold.</summary>
    [Theory]
    [InlineData("We use no milk.")]
    [InlineData("Milk: none.")]
    [InlineData("sin leche")]
    [InlineData("sans lait")]
    [InlineData("ohne Milch")]
    [InlineData("senza latte")]
    [InlineData("sem leite")]
    [InlineData("zonder melk")]
    public void A_denial_of_what_is_in_it_is_a_false_claim(string note) =>
        Assert.Contains(Of(note, ", { \"item\": \"whole-milk\", \"amount\": \"20 ml\" }"), f => f.Rule.Id == "SL7016");

    private static IEnumerable<Finding> Of(string note, string more = "") => Books.Check(("low-tide.drink.json", $$"""
        { "name": "Low Tide", "notes": "{{note}}",
          "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "lemon-juice", "amount": "20 ml" }{{more}} ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "serves": 1 }
        """)).Findings.Flat();
}
