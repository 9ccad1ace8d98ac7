namespace SpecLint.Tests.Vocabulary;

public class PluralsTests
{
    /// <summary>Spelling of plurals: Quirk, Greenbaum, Leech, Svartvik, A Comprehensive Grammar of the English Language, 1985, §5.80–5.84.</summary>
    [Theory]
    [InlineData("leaves", "leaf")]
    [InlineData("halves", "half")]
    [InlineData("olives", "olive")]
    [InlineData("chives", "chive")]
    [InlineData("berries", "berry")]
    [InlineData("Cherries", "Cherry")]
    [InlineData("peaches", "peach")]
    [InlineData("mangoes", "mango")]
    [InlineData("glasses", "glass")]
    [InlineData("limes", "lime")]
    [InlineData("cress", "cress")]
    [InlineData("hibiscus", "hibiscus")]
    [InlineData("oleander", "oleander")]
    [InlineData("ice", "ice")]
    public void Names_lose_their_plural(string plural, string singular) => Assert.Equal(singular, Plurals.Singular(plural));
}
