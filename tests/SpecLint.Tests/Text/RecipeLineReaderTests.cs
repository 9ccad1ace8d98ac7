using System.Globalization;
using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;
using SpecLint.RecipeText;
using Xunit.Abstractions;

namespace SpecLint.Tests.Text;

/// <summary>Lines of recipes as people write them.</summary>
public sealed class RecipeLineReaderTests(ITestOutputHelper output)
{
    private static readonly RecipeLineReader Reader = new(new NameResolver(), Measures.Default);

    [Theory]
    [InlineData("2 oz gin", "2 oz", "gin", Certainty.Certain)]
    [InlineData("¾ oz lemon juice", "¾ oz", "lemon-juice", Certainty.Certain)]
    [InlineData("1-1/2 oz Dark rum", "1-1/2 oz", "dark-rum", Certainty.Certain)]
    [InlineData("4cl Gin", "4 cl", "gin", Certainty.Certain)]
    [InlineData("45ml chilled organic lime juice", "45 ml", "lime-juice", Certainty.Likely)]
    [InlineData("3 dashes orange bitters", "3 dash", "orange-bitters", Certainty.Certain)]
    [InlineData("2 tblsp Grenadine", "2 tbsp", "grenadine", Certainty.Certain)]
    [InlineData("a dash of bitters", "1 dash", "aromatic-bitters", Certainty.Certain)]
    [InlineData("Splash of soda water", "1 splash", "soda-water", Certainty.Certain)]
    [InlineData("1 twist of lemon peel", "1 twist", "lemon-peel", Certainty.Certain)]
    [InlineData("2 egg whites", "2 piece", "egg-white", Certainty.Certain)]
    [InlineData("1 white of an egg", "1 piece", "egg-white", Certainty.Likely)]
    [InlineData("1 slice orange", "1 slice", "orange", Certainty.Certain)]
    [InlineData("6 mint leaves", "6 piece", "mint", Certainty.Certain)]
    [InlineData("Juice of 1/2 lime", "14 ml", "lime-juice", Certainty.Likely)]
    [InlineData("juice of a lemon", "44 ml", "lemon-juice", Certainty.Likely)]
    [InlineData("gin – 2 oz", "2 oz", "gin", Certainty.Certain)]
    [InlineData("• 25 ml simple syrup", "25 ml", "simple-syrup", Certainty.Certain)]
    [InlineData("20–25 ml lime juice", "20–25 ml", "lime-juice", Certainty.Certain)]
    [InlineData("Fill with soda water", "1 top", "soda-water", Certainty.Certain)]
    [InlineData("top up with ginger ale", "1 top", "ginger-ale", Certainty.Certain)]
    [InlineData("soda water to fill", "1 top", "soda-water", Certainty.Certain)]
    [InlineData("Add 250 ml orange juice", "250 ml", "orange-juice", Certainty.Certain)]
    [InlineData("1 oz Campari", "1 oz", "red-bitter-aperitif", Certainty.Likely)]
    [InlineData("1 shot of espresso (25 ml)", "25 ml", "espresso", Certainty.Likely)]
    [InlineData("A good measure (50ml) of vodka", "50 ml", "vodka", Certainty.Likely)]
    [InlineData("1 oz (30 ml) gin", "1 oz", "gin", Certainty.Certain)]
    public void A_line_is_read(string written, string amount, string item, Certainty certainty)
    {
        var line = Reader.Read(written);
        Assert.Equal(WrittenLineKind.Ingredient, line.Kind);
        Assert.Equal((amount, item, certainty), (line.Amount, line.Item.Id, line.Certainty));
        Assert.True(QuantityReader.TryRead(line.Amount, Measures.Default, out _, out var problem), problem.Message);
        Assert.Equal(certainty == Certainty.Certain, line.Because.Length == 0);
    }

    [Theory]
    [InlineData("2 oz rum")]
    [InlineData("sugar to taste")]
    [InlineData("1 oz grandmother's secret")]
    [InlineData("lemon")]
    [InlineData("3/4 oz simple syrup, 1/2 oz")]
    [InlineData("Fill up with Brandy; stir gently and serve with little Nutmeg on top")]
    [InlineData("2 750-ml bottles wine")]
    [InlineData("1 oz gin or vodka")]
    [InlineData("2 oz (30 ml) gin")]
    [InlineData("1 oz Chartreuse")]
    [InlineData("1/3 Italian vermouth")]
    [InlineData("1/2 lime juice")]
    public void What_is_open_is_said(string written)
    {
        var line = Reader.Read(written);
        Assert.Equal((WrittenLineKind.Ingredient, Certainty.Unclear), (line.Kind, line.Certainty));
        Assert.NotEqual("", line.Because);
    }

    [Theory]
    [InlineData("Shake with ice and strain into a chilled coupe.", WrittenLineKind.Method)]
    [InlineData("1. Muddle the mint with the sugar", WrittenLineKind.Method)]
    [InlineData("Stir.", WrittenLineKind.Method)]
    [InlineData("Ingredients:", WrittenLineKind.Heading)]
    [InlineData("# Low Tide", WrittenLineKind.Heading)]
    [InlineData("Dry gin", WrittenLineKind.Ingredient)]
    [InlineData("Garnish with a lime wheel", WrittenLineKind.Ingredient)]
    [InlineData("", WrittenLineKind.Blank)]
    public void Kinds_of_line_are_told_apart(string written, WrittenLineKind kind) => Assert.Equal(kind, Reader.Read(written).Kind);

    [Fact]
    public void A_text_is_read_into_recipes()
    {
        var recipes = new RecipeTextReader().Read("""
            Low Tide
            2 oz gin, ¾ oz lemon juice, 2 dashes orange bitters
            top with soda water
            Shake all but the soda and strain.

            Salt Path
            Ingredients:
            60 ml bourbon
            1 barspoon honey syrup

            Stir on ice.
            Garnish: lemon twist
            """);
        Assert.Equal(["Low Tide", "Salt Path"], recipes.Select(r => r.Name));
        Assert.Equal(["gin", "lemon-juice", "orange-bitters", "soda-water"], recipes[0].Ingredients.Select(l => l.Item.Id));
        Assert.Equal(["Shake all but the soda and strain."], recipes[0].Method.Select(l => l.Written.Trim()));
        Assert.Equal(["bourbon", "honey-syrup-1-1", "lemon-peel"], recipes[1].Ingredients.Select(l => l.Item.Id));
        Assert.Equal([LineRole.Part, LineRole.Part, LineRole.Garnish], recipes[1].Ingredients.Select(l => l.Role));
        Assert.Equal(2, recipes[0].Lines[1].Number);
    }

    [Fact]
    public void Names_garnishes_floats_and_juice_are_read_as_their_recipe_lets_them()
    {
        var recipes = new RecipeTextReader().Read("""
            Slipway Sour (serves 2)
            4 fl oz pisco
            juice of 2 limes
            Aromatic bitters, to finish
            Shake with ice and fine strain into chilled coupes. Garnish with a blackberry and a slice of lemon.

            Hot Pier
            A good measure (50ml) of whisky
            2 tsp honey
            1/4 oz peated Scotch, to float
            Lightly muddle the honey with the whisky.
            Lemon twist
            """);
        Assert.Equal(["Slipway Sour", "Hot Pier"], recipes.Select(r => r.Name));
        Assert.Equal(2, recipes[0].Lines[0].Detail!.Count);
        Assert.Equal(["4 oz", "2 oz"], recipes[0].Ingredients.Where(l => l.Role == LineRole.Part).Select(l => l.Amount));
        Assert.Equal(["aromatic-bitters", "blackberry", "lemon-slice"], recipes[0].Ingredients.Where(l => l.Role == LineRole.Garnish).Select(l => l.ItemId));
        var steps = recipes.Select(r => r.Method.SelectMany(m => StepReader.For(null).Read(m.Written, r.Lines)).ToList()).ToList();
        Assert.Equal(("shake", "cubed", "fine-strain", "coupe"), (steps[0][0].Verb.Id, steps[0][0].Ice, steps[0][1].Verb.Id, steps[0][1].Glass));
        Assert.Equal(["50 ml", "2 tsp", "1/4 oz"], recipes[1].Ingredients.Where(l => l.Role is not LineRole.Garnish).Select(l => l.Amount));
        Assert.Equal(LineRole.Float, recipes[1].Ingredients.Single(l => l.ItemId == "scotch-peated").Role);
        Assert.Equal("lemon-peel", recipes[1].Ingredients.Single(l => l.Role == LineRole.Garnish).ItemId);
        Assert.Equal(("muddle", 2), (steps[1][0].Verb.Id, steps[1][0].Items.Count));
    }

    /// <summary>The lines of the published lists against the lists' own columns: at least 95 in 100 right, none silently wrong.</summary>
    [Theory]
    [InlineData("bar-guide")]
    [InlineData("public-collection")]
    public void Lines_of_published_lists_are_read(string list)
    {
        var lines = PublishedLines.All.Where(l => l.List == list && l.Item.Length > 0).ToList();
        var wrong = lines.Where(l => !IsRight(l, Reader.Read(l.Line))).ToList();
        var silent = wrong.Where(l => Reader.Read(l.Line).Certainty != Certainty.Unclear).Select(l => Told(l)).ToList();
        double right = 100.0 * (lines.Count - wrong.Count) / lines.Count;
        Assert.True(silent.Count == 0, $"{right:F1} % of {lines.Count}; silently wrong: {string.Join("; ", silent)}");
        output.WriteLine($"{list}: {right:F2} % of {lines.Count} lines read right, {wrong.Count} marked unclear, {silent.Count} silently wrong");
        Assert.True(right >= 95, $"{right:F1} % of {lines.Count}: {string.Join("; ", wrong.Take(40).Select(Told))}");
    }

    private static string Told(PublishedLine line)
    {
        var read = Reader.Read(line.Line);
        return $"{line.Line} as {read.Kind} [{read.NumberWritten}|{read.UnitWritten}|{read.ItemWritten}]";
    }

    /// <summary>Amount and words alike; which of the words is the unit only where the list's is one.</summary>
    private static bool IsRight(PublishedLine gold, WrittenLine read)
    {
        if (read.Kind != WrittenLineKind.Ingredient) return false;
        if (Number(gold.Amount) != Number(read.NumberWritten)) return false;
        string unit = Plain(gold.Unit), ours = Plain(read.UnitWritten);
        bool sameWords = Plain(gold.Unit + " " + gold.Item) == Plain(read.UnitWritten + " " + read.ItemWritten);
        return sameWords && (unit == ours || !Measures.Default.TryFind(unit.AsSpan(), out var word) || word.Unit.System == UnitSystem.Piece);
    }

    private static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Split([' ', '\u00A0'], StringSplitOptions.RemoveEmptyEntries));

    private static string Number(string text)
    {
        if (text.Trim() is "" or "a" or "an") return "";
        return QuantityReader.TryRead(text + " ml", Measures.Default, out var quantity, out _)
            ? string.Create(CultureInfo.InvariantCulture, $"{quantity.Low:R}-{quantity.High:R}")
            : "? " + text;
    }
}
