using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Service;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Keeping;

/// <summary>What is not written is not read as harmless: each thing left out, and the words that once passed in silence.</summary>
public sealed class SilenceTests
{
    private const string Ny = """{ "name": "The Saltmarsh Room", "jurisdictions": ["US-NY"] }""";

    /// <summary>A house syrup of which nobody knows how much sugar is in its water has no known water activity.</summary>
    [Theory]
    [InlineData("""{ "item": "marsh-nectar", "amount": "500 g" }, { "item": "water", "amount": "100 g" }""")]
    [InlineData("""{ "item": "white-sugar", "amount": "300 g" }, { "item": "water" }""")]
    public void A_syrup_of_unknown_water_activity_kept_warm(string lines)
    {
        var result = Books.Check(
            ("marsh-nectar.ingredient.json", """{ "name": "Marsh nectar", "kind": "syrup", "allergens": { "contains": [] } }"""),
            ("marsh-syrup.prep.json", Prep("syrup", lines, """{ "do": "stir" }""", """{ "at": "20 °C", "in": "bottle", "for": "60 d" }""")));
        AssertHarm(result, "marsh-syrup");
        Assert.NotEqual(Readiness.Ready, Verdicts.Of(result).Of(result.Book.Preps[0]).Answer);
    }

    /// <summary>Gas under pressure in a vessel whose rating nobody wrote, or above that of its type.</summary>
    [Theory]
    [InlineData("glass bottle", "6 bar")]
    [InlineData("soft-drink bottle", "12 bar")]
    [InlineData("wine bottle", "3 bar")]
    [InlineData("bottle", "6 bar")]
    [InlineData("", "6 bar")]
    public void Pressure_in_a_vessel_that_is_not_shown_to_bear_it(string vessel, string pressure)
    {
        string inside = vessel.Length == 0 ? "" : $"\"in\": \"{vessel}\", ";
        var result = Books.Check(("shore-fizz.prep.json", $$"""
            { "name": "Shore fizz", "family": "carbonated", "ingredients": [ { "item": "water", "amount": "1 kg" }, { "item": "white-sugar", "amount": "50 g" }, { "item": "citric-acid", "amount": "5 g" } ],
              "method": [ { "do": "stir" }, { "do": "carbonate" } ], "yield": "1 l", "target": { "pressure": "{{pressure}}" }, "keep": { "at": "4 °C", {{inside}}"for": "3 d" } }
            """));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL8022" && f.Level >= Level.Warning);
    }

    /// <summary>Poisons by their names, as an item that is in no file and as a file of the bar's own.</summary>
    [Theory]
    [InlineData("monkshood")]
    [InlineData("aconitum")]
    [InlineData("datura")]
    [InlineData("digitalis")]
    [InlineData("castor-bean")]
    public void A_poison_is_an_error_unresolved_and_as_an_own_file(string id)
    {
        string drink = Drink($$""", { "item": "{{id}}", "amount": "1 g" }""");
        Assert.Contains(Books.Check(("low-sour.drink.json", drink)).Findings.Flat(), f => f is { Rule.Id: "SL6001", Level: Level.Error });
        string own = $$"""{ "name": "{{id.Replace('-', ' ')}}", "kind": "herb", "allergens": { "contains": [] } }""";
        Assert.Contains(
            Books.Check(($"{id}.ingredient.json", own), ("low-sour.drink.json", drink)).Findings.Flat(),
            f => f is { Rule.Id: "SL6001", Level: Level.Error });
    }

    /// <summary>Dry ice and nitrogen in every place that a recipe can name them.</summary>
    [Theory]
    [InlineData("\"notes\": \"Serve over dry ice.\",", "")]
    [InlineData("", ", \"note\": \"a little liquid nitrogen in the tin\"")]
    [InlineData("", ", \"ice\": \"dry ice\"")]
    [InlineData("\"garnish\": [ { \"item\": \"dry-ice\", \"amount\": \"5 g\" } ],", "")]
    public void A_cryogen_is_found_wherever_it_is_named(string of, string step)
    {
        string drink = Drink("")
            .Replace("\"glass\"", of + " \"glass\"", StringComparison.Ordinal)
            .Replace("\"ice\": \"cubed\", \"for\": \"12 s\"", "\"ice\": \"cubed\", \"for\": \"12 s\"" + step, StringComparison.Ordinal);
        if (step.Contains("\"ice\"", StringComparison.Ordinal)) drink = drink.Replace("\"ice\": \"cubed\", ", "", StringComparison.Ordinal);
        Assert.Contains(Books.Check(("low-sour.drink.json", drink)).Findings.Flat(), f => f.Rule.Id == "SL6014" && f.Level >= Level.Warning);
    }

    /// <summary>What a published list calls poisonous is an error, and what is only recalled a warning: no source, no error, and the other way round.</summary>
    [Theory]
    [InlineData("monkshood")]
    [InlineData("hemlock")]
    [InlineData("yew")]
    [InlineData("deadly-nightshade")]
    [InlineData("hydrangea")]
    public void The_deadliest_stand_no_lower_than_the_merely_harmful(string id) =>
        Assert.True(LevelOf("monkshood") == Level.Error
            && LevelOf(id) <= LevelOf("monkshood")
            && (LevelOf(id) == Level.Error || !HazardTable.Find(id)!.IsDeadly));

    /// <summary>Cream in every way of leaving something out: never fewer harm findings than with all of it, and never none.</summary>
    [Theory]
    [InlineData("\"at\": \"4 °C\", ")]
    [InlineData(", \"for\": \"3 d\"")]
    [InlineData("\"in\": \"jug\", ")]
    [InlineData(", \"keep\": { \"at\": \"4 °C\", \"in\": \"jug\", \"for\": \"3 d\" }")]
    public void What_is_left_out_of_keep_is_asked_for_or_bounded(string left)
    {
        string full = Prep(
            "cream",
            """{ "item": "double-cream", "amount": "500 g" }, { "item": "white-sugar", "amount": "40 g" }""",
            """{ "do": "stir" }""",
            """{ "at": "4 °C", "in": "jug", "for": "3 d" }""");
        string less = full.Replace(left, "", StringComparison.Ordinal);
        Assert.NotEqual(full, less);
        var result = Books.Check(("sweet-cream.prep.json", less));
        var verdict = Verdicts.Of(result).Of(result.Book.Preps[0]);
        Assert.True(verdict.Days <= 7, $"{verdict.Days} d");
        if (left.Contains("at", StringComparison.Ordinal)) AssertHarm(result, "sweet-cream");
    }

    /// <summary>
    /// A bottle that shuts is taken as shut, though `sealed` is not written; a step without a time and heat without a temperature are not
    /// short and hot.
    /// </summary>
    [Theory]
    [InlineData(
        "juice", """{ "item": "carrot-juice", "amount": "1 kg" }""", """{ "do": "strain" }""",
        """{ "at": "20 °C", "in": "swing-top bottle", "for": "10 d" }""")]
    [InlineData("juice", """{ "item": "carrot-juice", "amount": "1 kg" }""", """{ "do": "strain" }""", """{ "at": "20 °C", "in": "keg", "for": "10 d" }""")]
    [InlineData(
        "ferment",
        """{ "item": "pineapple", "amount": "1 kg" }, { "item": "water", "amount": "1 kg" }, { "item": "white-sugar", "amount": "150 g" }""",
        """{ "do": "ferment" }""", """{ "at": "20 °C", "in": "swing-top bottle", "for": "10 d" }""")]
    [InlineData(
        "other", """{ "item": "egg-yolk", "amount": "100 g" }, { "item": "whole-milk", "amount": "500 g" }""", """{ "do": "heat" }""",
        """{ "at": "4 °C", "in": "jar", "for": "3 d" }""")]
    [InlineData(
        "other", """{ "item": "whole-milk", "amount": "500 g" }, { "item": "black-tea-leaves", "amount": "20 g" }""",
        """{ "do": "steep" }, { "do": "strain" }""", """{ "at": "4 °C", "in": "jar" }""")]
    public void What_a_step_or_a_vessel_does_not_say_is_not_taken_as_harmless(string family, string lines, string method, string keep) =>
        AssertHarm(Books.Check(("house-base.prep.json", Prep(family, lines, method, keep))), "house-base");

    /// <summary>A stock file without a day, and a lot without its day or temperature, do not pass.</summary>
    [Theory]
    [InlineData("", """ "made": "2026-11-25", "at": "4 °C" """)]
    [InlineData("\"on\": \"2026-11-25\", ", """ "made": "2026-11-25" """)]
    [InlineData("\"on\": \"2026-11-25\", ", """ "at": "4 °C" """)]
    public void A_lot_that_leaves_out_its_day_or_temperature_is_not_ready(string on, string lot)
    {
        var result = Books.Check(
            ("sweet-cream.prep.json", Prep(
                "cream", """{ "item": "double-cream", "amount": "500 g" }""", """{ "do": "stir" }""",
                """{ "at": "4 °C", "in": "jug", "for": "3 d" }""")),
            ("fridge.stock.json", $$"""{ {{on}}"lots": [ { "item": "sweet-cream", {{lot}}, "amount": "300 g" } ] }"""));
        Assert.NotEqual(Readiness.Ready, LotCheck.Of(result.Book.Stocks[0].Lots[0], result.Book.Stocks[0], Verdicts.Of(result)).Readiness);
    }

    /// <summary>Less acid never takes the last finding away or lowers it, nor does more of it bring one.</summary>
    [Theory]
    [InlineData("strawberry", "vacuum bag, sealed", "21 d", "4 °C")]
    [InlineData("tomato", "jar", "5 d", "12 °C")]
    [InlineData("cucumber-juice", "bottle", "12 d", "4 °C")]
    public void Acid_works_one_way(string item, string vessel, string time, string at)
    {
        var levels = new List<Level>();
        foreach (string acid in new[] { "40 g", "20 g", "10 g", "5 g", "2 g", "1 g", "0.1 g" })
        {
            var result = Books.Check(("house-base.prep.json", Prep(
                "other",
                $$"""{ "item": "{{item}}", "amount": "500 g" }, { "item": "citric-acid", "amount": "{{acid}}" }""",
                """{ "do": "blend" }""",
                $$"""{ "at": "{{at}}", "in": "{{vessel}}", "for": "{{time}}" }""")));
            levels.Add(Harm(result, "house-base").Select(f => f.Level).DefaultIfEmpty(Level.None).Max());
        }

        Assert.Equal(levels.Order(), levels);
        Assert.True(levels[^1] >= Level.Warning);
    }

    /// <summary>
    /// Caffeine that cannot be worked out, beside alcohol, is not shown to be little; nothing is asked where there is no source of it, or
    /// where its sources are weighed and what is not is none.
    /// </summary>
    [Theory]
    [InlineData("""{ "item": "shore-brew", "amount": "60 ml" }""", true)]
    [InlineData("""{ "item": "steeped-brew", "amount": "60 ml" }""", true)]
    [InlineData("""{ "item": "other-brew", "amount": "60 ml" }""", true)]
    [InlineData("""{ "item": "espresso" }""", true)]
    [InlineData("""{ "item": "espresso", "amount": "30 ml" }""", false)]
    [InlineData("""{ "item": "espresso", "amount": "30 ml" }, { "item": "soda-water" }""", false)]
    [InlineData("""{ "item": "peppermint-tea", "amount": "60 ml" }""", false)]
    [InlineData("""{ "item": "mint-brew", "amount": "60 ml" }""", false)]
    [InlineData("""{ "item": "lime-juice" }""", false)]
    public void Unknown_caffeine_beside_alcohol(string line, bool found)
    {
        var result = Books.Check(
            ("shore-brew.ingredient.json", """{ "name": "Shore brew", "kind": "coffee", "state": "liquid", "density": "1.01 g/ml", "water": "98 g", "allergens": { "contains": [] } }"""),
            ("other-brew.ingredient.json", """{ "name": "Other brew", "like": "shore-brew" }"""),
            ("mint-brew.ingredient.json", """{ "name": "Mint brew", "like": "peppermint-tea" }"""),
            ("steeped-brew.prep.json", Prep(
                "other", """{ "item": "shore-brew", "amount": "100 g" }, { "item": "water", "amount": "100 g" }""", """{ "do": "stir" }""",
                """{ "at": "4 °C", "in": "jug", "for": "1 d" }""")),
            ("night-tide.drink.json", $$"""{ "name": "Night tide", "ingredients": [ { "item": "vodka", "amount": "50 ml" }, {{line}} ], "method": [ { "do": "build", "ice": "cubed" } ], "glass": "highball", "serves": 1 }"""));
        Assert.Equal(found, result.Findings.Flat().Any(f => f is { Rule.Id: "SL6020", Answer: Answer.NotShown, Level: Level.Warning }));
    }

    /// <summary>Celery is told of in New York too, whose list does not name it: a recipe that lists it has it as an allergen there.</summary>
    [Theory]
    [InlineData("Add celery syrup at the end.")]
    [InlineData("Finish with 10 g of celery.")]
    public void An_allergen_in_a_note_is_the_same_in_every_country(string note)
    {
        var result = Books.Check(
            ("bar.json", Ny),
            ("low-sour.drink.json", Drink("").Replace("\"glass\"", $"\"notes\": \"{note}\", \"glass\"", StringComparison.Ordinal)));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL7034" && f.Message.Contains("celery", StringComparison.Ordinal));
    }

    /// <summary>Spent bark still holds its alkaloids: nobody knows how much, so it counts whole.</summary>
    [Fact]
    public void Bark_as_a_by_product_is_what_bark_is()
    {
        static string Glass(string item) =>
            $$"""{ "name": "Fever glass", "ingredients": [ { "item": "gin", "amount": "40 ml" }, { "item": "{{item}}", "amount": "5 g" }, { "item": "soda-water", "amount": "100 ml" } ], "method": [ { "do": "build", "ice": "cubed" } ], "glass": "highball", "serves": 1 }""";
        const string Us = """{ "name": "Bar", "jurisdictions": ["US"] }""";
        const string Pressed = """{ "name": "Pressed bark", "ingredients": [ { "item": "cinchona-bark", "amount": "100 g" } ], "method": [ { "do": "strain" } ], "yield": "50 g", "keep": { "at": "4 °C", "in": "bottle", "for": "1 d" }, "byProducts": [ { "id": "rest-of-bark", "amount": "50 g" } ] }""";
        var open = Books.Check(("bar.json", Us), ("fever-glass.drink.json", Glass("cinchona-bark"))).Findings.Flat().Single(f => f.Rule.Id == "SL6006");
        Assert.Equal(Level.Error, open.Level);
        Assert.Equal(
            open.Level,
            Books.Check(
                ("bar.json", Us), ("pressed-bark.prep.json", Pressed), ("fever-glass.drink.json", Glass("rest-of-bark"))).Findings.Flat().Single(f => f.Rule.Id == "SL6006").Level);
    }

    /// <summary>A reading of pH that the acid cannot give clears nothing, and a reading taken before the acid was cut neither.</summary>
    [Fact]
    public void A_pH_that_cannot_be_is_not_believed()
    {
        var result = Books.Check(("sour-celery.prep.json", """{ "name": "Sour celery", "family": "acid-adjusted-juice", "ingredients": [ { "item": "celery-juice", "amount": "200 g" }, { "item": "citric-acid", "amount": "0.1 g" } ], "method": [ { "do": "stir" } ], "measured": { "ph": 2.4, "on": "2026-11-25" }, "keep": { "at": "4 °C", "in": "bottle", "for": "12 d" } }"""));
        Assert.Contains(result.Findings.Flat(), f => f.Rule.Id == "SL5038" && f.Level >= Level.Warning);
        Assert.NotEqual("measured", result.Profiles.Of(result.Book.Preps[0]).Get(Fact.Ph).From);
        Assert.NotEqual(Readiness.Ready, Verdicts.Of(result).Of(result.Book.Preps[0]).Answer);
    }

    /// <summary>°Brix read before sugar was taken out makes the sugar no higher, and a comparison says that the reading is void.</summary>
    [Fact]
    public void An_old_Brix_is_void_and_a_comparison_says_so()
    {
        static string Syrup(string sugar) =>
            $$"""{ "name": "Shore syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "{{sugar}}" }, { "item": "water", "amount": "500 g" } ], "method": [ { "do": "stir" } ], "measured": { "brix": 50, "on": "2026-11-20" }, "keep": { "at": "4 °C", "in": "bottle", "for": "7 d" } }""";
        BookInput before = Books.Input(("shore-syrup.prep.json", Syrup("500 g"))), after = Books.Input(("shore-syrup.prep.json", Syrup("300 g")));
        var was = Checker.Check(before);
        var now = Checker.Check(after with { Earlier = was.Book });
        Assert.Contains(now.Findings.Flat(), f => f.Rule.Id == "SL5033");
        double sugarBefore = was.Profiles.Of(was.Book.Preps[0]).Get(Fact.Sugar).Value, sugarNow = now.Profiles.Of(now.Book.Preps[0]).Get(Fact.Sugar).Value;
        Assert.True(sugarNow < sugarBefore, $"{sugarNow} against {sugarBefore}");
        Assert.NotEqual("measured", now.Profiles.Of(now.Book.Preps[0]).Get(Fact.Brix).From);
    }

    private static Level LevelOf(string id) => HazardTable.Find(id)!.Rules.Max(r => r.Level);

    private static string Drink(string line) => $$"""
        { "name": "Low sour", "ingredients": [ { "item": "gin", "amount": "50 ml" }, { "item": "lemon-juice", "amount": "25 ml" }, { "item": "simple-syrup", "amount": "20 ml" }{{line}} ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "glass": "coupe", "serves": 1 }
        """;

    private static string Prep(string family, string lines, string method, string keep) =>
        $$"""{ "name": "House base", "family": "{{family}}", "ingredients": [ {{lines}} ], "method": [ {{method}} ], "keep": {{keep}} }""";

    private static IEnumerable<Finding> Harm(CheckResult result, string subject) =>
        result.Findings.Flat().Where(f => f.Rule.Safety && f.Caution is not null && f.Level >= Level.Warning && f.Subject == subject);

    private static void AssertHarm(CheckResult result, string subject) =>
        Assert.True(
            Harm(result, subject).Any(),
            $"no harm finding on {subject}:\n{string.Join('\n', result.Findings.Flat().Select(f => $"{f.Level} {f.Rule.Id} {f.Subject} {f.Message}"))}");
}
