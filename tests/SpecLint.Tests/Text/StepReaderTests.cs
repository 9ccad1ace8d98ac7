using SpecLint.Book;
using SpecLint.RecipeText;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Text;

/// <summary>Sentences of a method, and lines about the recipe as a whole.</summary>
public sealed class StepReaderTests
{
    [Theory]
    [InlineData("Shake with ice for 12 s, fine strain into a chilled coupe.", "shake ice=cubed for=12 s; fine-strain into=glass glass=coupe")]
    [InlineData("Stir over one large cube 30 seconds and strain into rocks glass", "stir ice=block for=30 seconds; strain into=glass glass=rocks")]
    [InlineData("Dry shake, then shake hard with cubed ice; strain over crushed ice", "dry-shake; shake-hard ice=cubed; strain ice=crushed")]
    [InlineData("1. Heat to 72 °C for 15 s", "heat to=72 °C for=15 s")]
    [InlineData("Stir until the sugar is dissolved", "stir until=the sugar is dissolved")]
    [InlineData("Build in a highball on the rocks", "build ice=cubed into=glass glass=highball")]
    [InlineData("Funnel into a clean bottle", "funnel into=clean bottle")]
    [InlineData("Shake without ice", "shake ice=none")]
    [InlineData("Dehydrate at 57 °C for 9 h", "dehydrate at=57 °C for=9 h")]
    public void A_sentence_becomes_steps(string sentence, string expected)
    {
        var steps = StepReader.For(null).Read(sentence, []);
        Assert.Equal(expected.Replace("shake-hard", "hard-shake", StringComparison.Ordinal), string.Join("; ", steps.Select(Words)));
    }

    [Fact]
    public void A_step_names_the_items_of_the_recipe_and_keeps_what_it_does_not_understand()
    {
        var lines = new RecipeTextReader().Read("Syrup\n500 g white sugar\n500 g water\n20 g orange peel")[0].Lines;
        var steps = StepReader.For(null).Read("Heat water to 60 °C, stir white sugar and water until dissolved, press the pulp by hand", lines);
        Assert.Equal(["heat", "stir", "press"], steps.Select(s => s.Verb.Id));
        Assert.Equal(["water"], steps[0].Items);
        Assert.Equal(["white-sugar", "water"], steps[1].Items);
        Assert.Equal(("", "press the pulp by hand"), (steps[1].Note, steps[2].Note));
    }

    [Theory]
    [InlineData("style: shaken sour", DetailKind.Style, "shaken-sour")]
    [InlineData("glass: coupe", DetailKind.Glass, "coupe")]
    [InlineData("Served in a highball glass", DetailKind.Glass, "highball")]
    [InlineData("family: acid-adjusted juice", DetailKind.Family, "acid-adjusted-juice")]
    [InlineData("like lime juice", DetailKind.StandsInFor, "lime-juice")]
    [InlineData("note: press the peel", DetailKind.Note, "press the peel")]
    [InlineData("Keep at 4 °C in a bottle for 2 d", DetailKind.Keep, "bottle")]
    public void A_line_about_the_whole_is_read(string line, DetailKind kind, string text)
    {
        var detail = new RecipeTextReader().Read("Name\n50 ml gin\n" + line)[0].Lines[^1].Detail;
        Assert.Equal((kind, text, ""), (detail!.Kind, detail.Text, detail.Because));
    }

    [Theory]
    [InlineData("Like a virgin")]
    [InlineData("keep shaking")]
    [InlineData("Note the colour")]
    [InlineData("Makes a good drink")]
    [InlineData("2 oz glass noodles")]
    public void What_only_looks_like_one_is_none(string line) =>
        Assert.All(new RecipeTextReader().Read("Name\n50 ml gin\n" + line)[0].Lines, l => Assert.Null(l.Detail));

    [Fact]
    public void A_preparation_in_lines_becomes_its_file()
    {
        const string text = "Soured orange\n1000 g orange juice\n32 g citric acid\n20 g malic acid\nStir until dissolved, fine strain "
            + "into a bottle\nfamily: acid-adjusted juice\nmakes 1040 g\nlike lime juice\nmeasured: pH 2.3, 14.5 °Bx, 2026-11-24\nkeep "
            + "at 4 °C in a bottle for 2 d\nallergens: none";
        var draft = RecipeDraft.Of(new RecipeTextReader().Read(text)[0], StepReader.For(null), Books.On);
        Assert.Equal(("soured-orange.prep.json", FileKind.Prep), (draft.FileName, draft.Kind));
        var result = Books.Check(("bar.json", Books.PlainBar), (draft.FileName, draft.Text));
        var prep = Assert.IsType<Prep>(result.Book.Files.Single(f => f.Id == "soured-orange"));
        Assert.Equal(
            ("lime-juice", 2.3, 4, "bottle", 2 * 86400.0),
            (prep.Target!.StandsInFor.Value, prep.AsMeasured!.Ph.Value.Base, prep.Keep!.At.Value.Base, prep.Keep.In.Value.Id, prep.Keep.For.Value.Base));
        Assert.DoesNotContain(result.Findings, f => f.Rule.Id.StartsWith("SL1", StringComparison.Ordinal) && f.Place.File.Path == draft.FileName);
        string[] rows = draft.Text.TrimEnd('\n').Split('\n');
        Assert.Equal(rows.Length, draft.Origins.Count);
        Assert.Equal(3, draft.Origins[Array.FindIndex(rows, r => r.Contains("citric-acid", StringComparison.Ordinal))]);
        Assert.Equal(10, draft.Origins[Array.FindIndex(rows, r => r.Contains("\"keep\"", StringComparison.Ordinal))]);
    }

    private static string Words(WrittenStep step)
    {
        string text = step.Verb.Id;
        foreach (var (name, value) in new[] { ("ice", step.Ice), ("at", step.At), ("to", step.To), ("for", step.For), ("until", step.Until), ("into", step.Into), ("glass", step.Glass), ("note", step.Note) })
            text += value.Length > 0 ? $" {name}={value}" : "";
        return text;
    }
}
