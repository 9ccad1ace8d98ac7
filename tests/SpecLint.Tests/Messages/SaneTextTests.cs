using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Messages;

/// <summary>What people read holds no number that is none, and what is written for them loses nothing of theirs.</summary>
public sealed class SaneTextTests
{
    private static readonly string[] NoNumbers = ["NaN", "Infinity", "∞", "countless", "unknown %", "unknown ml", "unknown g", "Write 0 "];
    private static readonly string[] Odd = ["0 ml", "0 g", "0.0000001 ml", "0.0000001 g", "1000000000 l", "0 dashes", "0–0 ml", "0 pieces", "0.00001 oz"];

    /// <summary>Every amount of a batch and of its drink, in turn, as nothing, next to nothing, and beyond all measure.</summary>
    [Fact]
    public void No_sentence_holds_a_number_that_is_none()
    {
        var found = new SortedSet<string>(StringComparer.Ordinal);
        string[] drink = ["45 ml", "25 ml", "15 ml", "2 dashes"], batch = ["450 ml", "250 ml", "150 ml", "20 dashes"];
        foreach (string odd in Odd)
        {
            for (int at = 0; at < 8; at++)
            {
                string[] inDrink = [.. drink], inBatch = [.. batch];
                if (at < 4) inDrink[at] = odd;
                else inBatch[at - 4] = odd;
                Check(Books.Check(("low-tide.drink.json", Drink(inDrink)), ("low-tide-batch.prep.json", Batch(inBatch))), $"{odd} at {at}", found);
            }

            Check(Books.Check(("low-tide.drink.json", Drink([odd, odd, odd, odd])), ("low-tide-batch.prep.json", Batch([odd, odd, odd, odd]))), $"{odd} everywhere", found);
        }

        Assert.Equal([], found);
    }

    [Theory]
    [InlineData("[]", "[\"celery\"]")]
    [InlineData("[ /* x */ ]", "[ /* x */ \"celery\" ]")]
    [InlineData("[ // x\n ]", "[ // x\n \"celery\" ]")]
    [InlineData("[ \"egg\" /* x */ ]", "[ \"egg\", \"celery\" /* x */ ]")]
    public void A_word_is_added_to_a_list_and_its_comments_stay(string before, string after)
    {
        var drink = Read($"{{ \"name\": \"D\", \"declares\": {{ \"allergens\": {before} }} }}");
        var edit = JsonEdits.AddToList(drink, drink.Declares!.Allergens, "celery");
        Assert.Equal($"{{ \"name\": \"D\", \"declares\": {{ \"allergens\": {after} }} }}", Applied(drink, edit));
    }

    /// <summary>Found by fuzzing: a file whose last list breaks off within its first word, as while it is typed.</summary>
    [Fact]
    public void A_list_that_breaks_off_is_added_to_without_a_fault()
    {
        var drink = Read("{ \"name\": \"D\", \"declares\": { \"allergens\": [\"fish");
        Assert.Contains("[\"celery\"]", Applied(drink, JsonEdits.AddToList(drink, drink.Declares!.Allergens, "celery")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[ \"egg\", /* of hens */ \"celery\" ]", 0, "[ /* of hens */ \"celery\" ]")]
    [InlineData("[ \"egg\" /* a, b */, \"celery\" ]", 1, "[ \"egg\" /* a, b */  ]")]
    [InlineData("[ \"egg\", // x\n \"celery\" ]", 1, "[ \"egg\" // x\n  ]")]
    [InlineData("[ \"egg\", \"celery\" ]", 0, "[ \"celery\" ]")]
    [InlineData("[ \"egg\", \"celery\" ]", 1, "[ \"egg\" ]")]
    public void A_word_is_taken_out_of_a_list_and_comments_stay(string before, int index, string after)
    {
        var drink = Read($"{{ \"name\": \"D\", \"declares\": {{ \"allergens\": {before} }} }}");
        var edit = JsonEdits.RemoveFromList(drink, drink.Declares!.Allergens.Value, index);
        Assert.Equal($"{{ \"name\": \"D\", \"declares\": {{ \"allergens\": {after} }} }}", Applied(drink, edit));
    }

    [Theory]
    [InlineData("{}", "{ \"allergens\": [] }")]
    [InlineData("{ /* none yet */ }", "{ /* none yet */ \"allergens\": [] }")]
    public void A_property_is_added_to_an_empty_object_and_its_comments_stay(string before, string after)
    {
        var drink = Read($"{{ \"name\": \"D\", \"declares\": {before} }}");
        var edit = JsonEdits.AddProperty(drink, "declares", "allergens", "[]")!;
        Assert.Equal($"{{ \"name\": \"D\", \"declares\": {after} }}", Applied(drink, edit));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_lot_that_names_a_drink_has_a_label_with_its_allergens(bool bought)
    {
        var result = Books.Check(
            ("flip.drink.json", """{ "name": "Flip", "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "egg-white", "amount": "20 ml" } ], "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ] }"""),
            ("fridge.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "flip", "made": "2026-11-24", "amount": "1 l" }, { "item": "flip", "opened": "2026-11-24", "amount": "1 l" } ] }"""));
        var labels = LotLabel.Of(Verdicts.Of(result), result.Book.Stocks[0], bought);
        Assert.NotEmpty(labels);
        Assert.All(labels, l => Assert.Contains("egg", l.Contains));
    }

    private static void Check(CheckResult result, string what, SortedSet<string> found)
    {
        foreach (var finding in result.Findings.Flat())
        {
            string[] texts = [finding.Message, finding.Advice, .. finding.Corrections.Select(c => c.Description), .. finding.Corrections.SelectMany(c => c.Edits.Select(e => e.NewText))];
            foreach (string text in texts)
            {
                if (Array.Exists(NoNumbers, w => text.Contains(w, StringComparison.Ordinal))) found.Add($"{finding.Rule.Id} {text} ({what})");
            }
        }
    }

    private static string Drink(string[] amounts) => $$"""
        { "name": "Low Tide", "ingredients": [ { "item": "gin", "amount": "{{amounts[0]}}" }, { "item": "lime-juice", "amount": "{{amounts[1]}}" }, { "item": "simple-syrup", "amount": "{{amounts[2]}}" },
          { "item": "angostura-bitters", "amount": "{{amounts[3]}}" } ], "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ] }
        """;

    private static string Batch(string[] amounts) => $$"""
        { "name": "Low Tide, batched", "family": "batch", "batchOf": "low-tide", "ingredients": [ { "item": "gin", "amount": "{{amounts[0]}}" }, { "item": "lime-juice", "amount": "{{amounts[1]}}" },
          { "item": "simple-syrup", "amount": "{{amounts[2]}}" }, { "item": "angostura-bitters", "amount": "{{amounts[3]}}" } ], "method": [ { "do": "stir" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" } }
        """;

    private static Drink Read(string text) => (Drink)BookReader.Read(Books.File("d.drink.json", text), FileKind.Drink, Measures.Default);

    private static string Applied(BookFile file, TextEdit edit) => System.Text.Encoding.UTF8.GetString(TextEdits.Apply(file.Source, [edit]));
}
