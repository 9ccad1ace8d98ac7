using SpecLint.Catalogue;
using SpecLint.Rules.Labels;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>The filter before the reading of claims lets every text through that the reading would find something in.</summary>
public sealed class ClaimFilterTests
{
    private static readonly string[] Pieces =
    [
        "free", "FREE", "from", "no", "No.", "zero", "non", "not", "never", "doesn't", "doesn’t", "cannot", "contain", "contains", "containing", "without", "sans", "any", "milk", "Nut", "nuts",
        "egg-", "gluten", "vegan", "Végan", "plant", "based", "low", "abv", "proof", "0", "gin", "lime", "Drink", "12", "tide", "of", "and", ",", ";", "(", ")", "&", "-", "’", "'", "alkoholfrei", "milkless", "Eggfree", "less", "none", "safe", "for", "friendly", "coeliacs", "allergy", "0.0", "%", "virgin", "(GF)", "halal", "unsweetened", "decaf", "freely", "notes", "nonsense",
    ];

    [Fact]
    public void No_text_with_a_claim_is_left_unread()
    {
        var book = Books.Check(("low-tide.drink.json", """{ "name": "Low Tide", "ingredients": [ { "item": "gin", "amount": "45 ml" } ] }""")).Book;
        var random = new Random(20);
        int found = 0, passed = 0;
        for (int i = 0; i < 20_000; i++)
        {
            string text = string.Join(random.Next(4) == 0 ? "" : " ", Enumerable.Range(0, random.Next(1, 6)).Select(_ => Pieces[random.Next(Pieces.Length)]));
            foreach (var where in new[] { ClaimPlace.Names, ClaimPlace.Anywhere })
            {
                bool claims = ClaimReader.Read(text, where, book).Count > 0, may = ClaimReader.MayHold(text);
                Assert.True(may || !claims, text);
                if (claims) found++;
                if (!may) passed++;
            }
        }

        Assert.InRange(found, 1000, 40_000);
        Assert.InRange(passed, 1000, 40_000);
    }

    [Theory]
    [InlineData("Spring Tide")]
    [InlineData("Drink 4711")]
    [InlineData("Gin, soured cucumber, honey")]
    [InlineData("Freely poured, notes of nonsense")]
    public void A_plain_text_is_not_read(string text) => Assert.False(ClaimReader.MayHold(text));
}
