using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

public class BookReaderTests
{
    [Theory]
    [InlineData(FileKind.Drink)]
    [InlineData(FileKind.Prep)]
    [InlineData(FileKind.Ingredient)]
    [InlineData(FileKind.Menu)]
    [InlineData(FileKind.Stock)]
    [InlineData(FileKind.Prices)]
    [InlineData(FileKind.Bar)]
    public void The_examples_of_the_format_have_no_problem(FileKind kind) =>
        Assert.Equal("", Samples.List(Samples.Read(kind, Samples.Of(kind)).Problems));

    [Fact]
    public void A_drink_is_bound_with_its_places()
    {
        var drink = Samples.ReadDrink(Samples.Drink);
        Assert.Equal("sample", drink.Id);
        Assert.Equal("Low Tide", drink.Name.Value);
        Assert.Equal("\"Low Tide\"", drink.Source.TextOf(drink.Name.Span));
        Assert.Equal("\"name\"", drink.Source.TextOf(drink.Name.Name));
        Assert.Equal(4, drink.Ingredients.Count);
        var line = drink.Ingredients[3];
        Assert.Equal((4, "saline-20", LineRole.Part), (line.Number, line.Item.Value, line.Role));
        Assert.Equal((2.0, "drop"), (line.Amount.Value.Value, line.Amount.Value.Unit.Name));
        Assert.Equal("\"2 drops\"", drink.Source.TextOf(line.Amount.Span));
        Assert.Equal("{ \"item\": \"saline-20\", \"amount\": \"2 drops\" }", drink.Source.TextOf(line.Span));
        Assert.Equal(12, drink.Method[0].For.Value.Base);
        Assert.Equal("cubed", drink.Method[0].Ice.Value.Id);
        Assert.Equal(LineRole.Garnish, drink.Garnish[0].Role);
        Assert.True(drink.Declares!.Allergens.IsGiven);
        Assert.Empty(drink.Declares.Allergens.Value);
        Assert.Equal((15.0, Dimension.PercentByVolume), (drink.Declares.Abv.Value.Base, drink.Declares.Abv.Value.Dimension));
        Assert.Equal(1, drink.Serves.Value);
    }

    [Fact]
    public void A_preparation_is_bound()
    {
        var prep = (Prep)Samples.Read(FileKind.Prep, Samples.Prep);
        Assert.Equal("acid-adjusted-juice", prep.Family.Value.Id);
        Assert.Equal(475, prep.Yield.Value.Base);
        Assert.Equal(7, prep.Target!.Acid.Value.Base);
        Assert.Equal("lime-juice", prep.Target.StandsInFor.Value);
        Assert.Equal(2.4, prep.Measured!.Ph.Value.Base);
        Assert.Equal(Dimension.Brix, prep.Measured.Brix.Value.Dimension);
        Assert.Equal(CalendarDate.Of(2026, 11, 20), prep.Measured.On.Value);
        Assert.Equal(2 * 86400, prep.Keep!.For.Value.Base);
        Assert.Equal("cucumber-pulp", prep.ByProducts[0].Id.Value);
    }

    [Fact]
    public void Values_of_an_ingredient_are_in_base_units_with_mark_and_source()
    {
        var lime = (Ingredient)Samples.Read(FileKind.Ingredient, Samples.Ingredient);
        Assert.Equal((2.35, 2.2, 2.5, Dimension.Number, Mark.Read, "a table"), Facts(lime, "ph"));
        Assert.Equal((4.5, 4, 5, Dimension.Mass, Mark.Memory, "the notebook"), Facts(lime, "acids.citric"));
        Assert.Equal((0.11, 0.11, 0.11, Dimension.Mass, Mark.Memory, "the notebook"), Facts(lime, "potassium"));
        Assert.Equal((3 * 86400, 3 * 86400, 3 * 86400, Dimension.Duration, Mark.Memory, "the notebook"), Facts(lime, "life.opened"));
        Assert.Equal("wheat", lime.Allergens!.Exempt[0].Allergen);
        Assert.Equal("not analysed", lime.Open["acids.tartaric"]);
        Assert.Equal(2, lime.Notes.Count);

        static (double, double, double, Dimension, Mark, string?) Facts(Ingredient ingredient, string path)
        {
            var v = ingredient.Values[path];
            return (Math.Round(v.Typical, 9), Math.Round(v.Low, 9), Math.Round(v.High, 9), v.Dimension, v.Mark, v.Source);
        }
    }

    [Fact]
    public void A_plain_value_of_a_file_without_a_mark_is_the_houses_own()
    {
        var own = (Ingredient)Samples.Read(FileKind.Ingredient, """{ "name": "House gin", "like": "gin", "strength": "80 proof" }""");
        Assert.Empty(own.Problems);
        Assert.Equal(
            (40, Dimension.PercentByVolume, Mark.House),
            (own.Values["strength"].Typical, own.Values["strength"].Dimension, own.Values["strength"].Mark));
    }

    [Fact]
    public void A_bar_is_bound_and_its_measures_hold()
    {
        var bar = (Bar)Samples.Read(FileKind.Bar, """
            { "name": "X", "measures": { "dash": "0.9 ml", "oz": "30 ml", "ladle": "45 ml", "pinch": "0.25 g" },
              "glasses": { "coupe": { "brim": "150 ml" } }, "vessels": { "keg": { "capacity": "9 l", "rating": "6 bar" } } }
            """);
        Assert.Equal("", Samples.List(bar.Problems));
        Assert.Equal(150, bar.Glasses["coupe"].Brim.Value.Base);
        Assert.Equal((9000, 6), (bar.Vessels["keg"].Capacity.Value.Base, bar.Vessels["keg"].Rating.Value.Base));
        var measures = Measures.For(bar?.Measures);
        var drink = (Drink)Samples.Read(
            FileKind.Drink,
            """
            { "name": "X", "ingredients": [ { "item": "a", "amount": "2 dashes" }, { "item": "b", "amount": "1 1/2 ounces" },
              { "item": "c", "amount": "2 ladles" }, { "item": "d", "amount": "pinch" }, { "item": "e", "amount": "1 oz US" } ] }
            """,
            measures);
        Assert.Equal("", Samples.List(drink.Problems));
        Assert.Equal([1.8, 45, 90, 0.25, 29.5735295625], drink.Ingredients.Select(l => l.Amount.Value.Base));
        Assert.Equal(Dimension.Mass, drink.Ingredients[3].Amount.Value.Dimension);
    }

    [Fact]
    public void All_structural_errors_are_reported_in_one_pass_in_words_of_the_recipe()
    {
        var drink = Samples.ReadDrink("""
            { "nmae": "Low Tide",
              "family": "syrup",
              "ingredients": [
                { "item": "gin", "amount": "45 mll" },
                { "item": "Lime Juice", "amount": 25 },
                { "item": "honey-syrup" },
                { "item": "saline-20", "amount": "0,5 ml" },
                "salt",
                { "item": "soda", "amount": "12 s", "role": "Top" }
              ],
              "method": [ { "do": "shake", "for": "12 s", "amonut": "1 ml" } ],
              "serves": 0,
              "declares": { "allergens": ["nuts", "milk"] },
              "date": "25.11.2026"
            }
            """);
        Assert.Equal(
            [
                "MissingProperty|`name` is missing.|Add it, for example `\"name\": \"Low Tide\"`.|",
                "UnknownProperty|`nmae` is not a property of a drink.|Write `name`, if that is meant.|\"name\"",
                "MisplacedProperty|`family` does not belong in a drink.|It is a property of a preparation: move it there, or take it out.|",
                "UnreadableValue|`amount` of ingredient 1 (gin): `45 mll` has the unknown unit `mll`.|The nearest unit is `ml`.|",
                "UnreadableValue|`item` of ingredient 2 (Lime Juice) is not an id: `Lime Juice`.|Use lower-case letters, digits and hyphens, as in `lime-juice`.|",
                "UnitMissing|`amount` of ingredient 2 (Lime Juice) is the number 25 without a unit.|Write an amount such as `45 ml`, "
                    + "`20 g` or `2 dashes`, in double quotes.|",
                "MissingProperty|`amount` of ingredient 3 (honey-syrup) is missing.|Add it, for example `\"amount\": \"45 ml\"`.|",
                "DecimalComma|`amount` of ingredient 4 (saline-20): `0,5 ml` has a comma where the decimal point belongs.|Write `0.5 ml`.|\"0.5 ml\"",
                "WrongType|Ingredient 5 is a text, not an ingredient line between { and }.|Write an ingredient line between { and }.|",
                "UnreadableValue|`amount` of ingredient 6 (soda): `12 s` is a length of time, not an amount such as `45 ml`, `20 g` or "
                    + "`2 dashes`.|Write an amount such as `45 ml`, `20 g` or `2 dashes`.|",
                "UnreadableValue|`role` of ingredient 6 (soda) is not a role that is known: `Top`.|The nearest is `top`.|\"top\"",
                "UnknownProperty|`amonut` of step 1 (shake) is not a property of a step.|Write `amount`, if that is meant.|\"amount\"",
                "NumberOutOfRange|`serves` is 0; it is above 0.|Look for a slip of the decimal point.|",
                "UnreadableValue|Item 1 of `allergens` of `declares` is not an allergen that is known: `nuts`.|Name each one: almond, "
                    + "hazelnut, walnut, cashew, pecan, brazil-nut, pistachio, macadamia.|",
                "UnreadableValue|`date` cannot be read: `25.11.2026`.|Write a date such as `2026-11-25`.|",
            ],
            drink.Problems.Select(p => $"{p.Kind}|{p.Message}|{p.Advice}|{p.Replacement}"));
        Assert.Equal("ingredients[Lime Juice].item", drink.Problems[4].Path);
        Assert.Equal("ingredients[honey-syrup].amount", drink.Problems[6].Path);
        Assert.Equal(0.5, drink.Ingredients[3].Amount.Value.Base);
        Assert.Equal(LineRole.Top, drink.Ingredients[4].Role);
        Assert.Equal(6, drink.Ingredients[4].Number);
    }

    [Fact]
    public void Every_entry_of_the_catalogue_is_read_without_a_problem()
    {
        string folder = Path.Combine(Repository.Root, "src", "SpecLint", "Catalogue", "Ingredients");
        var sources = Directory.GetFiles(folder, "*.ingredient.json", SearchOption.AllDirectories);
        Assert.Equal(sources.Select(s => FileKinds.IdOf(s)).Order(StringComparer.Ordinal), BuiltInCatalogue.Ids);
        foreach (string path in sources)
        {
            var entry = BuiltInCatalogue.SourceOf(FileKinds.IdOf(path))!;
            Assert.Equal(File.ReadAllText(path).TrimEnd(), entry.TextOf(new TextSpan(0, entry.Utf8.Length)).TrimEnd());
            var file = BookReader.Read(entry, FileKind.Ingredient, Measures.Default);
            Assert.True(file.Problems.Count == 0, path + "\n" + Samples.List(file.Problems));
        }
    }
}
