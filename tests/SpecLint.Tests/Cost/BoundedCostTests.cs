using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Cost;

/// <summary>
/// What a book costs grows with its lines, not with the ways through it. Counted is what is allocated on one thread, which
/// hangs on no clock: a walk of every way would not end at these sizes.
/// </summary>
public sealed class BoundedCostTests
{
    private const string Method = """[ { "do": "stir" } ]""";

    /// <summary>
    /// Bytes for reading, profile and all rules of a drink of four parts without a finding. Code that is not optimized puts numbers on
    /// the heap that optimized code keeps in registers.
    /// </summary>
#if DEBUG
    private const double MostBytesOfADrink = 80_000;
#else
    private const double MostBytesOfADrink = 14_000;
#endif

    [Fact]
    public void Preparations_that_list_all_later_ones_cost_as_much_as_they_have_lines()
    {
        // Twice the preparations are four times the lines.
        Allocated(Dense(10));
        double ratio = (double)Allocated(Dense(80)) / Allocated(Dense(40));
        Assert.InRange(ratio, 1, 5.5);
    }

    [Fact]
    public void Chains_cost_as_much_as_they_are_long()
    {
        Allocated(Chain(10));
        double ratio = (double)Allocated(Chain(600)) / Allocated(Chain(200));
        Assert.InRange(ratio, 1, 4);
    }

    [Fact]
    public void Lines_that_name_nothing_cost_as_much_as_there_are()
    {
        Allocated(Unknown(10));
        double ratio = (double)Allocated(Unknown(4000)) / Allocated(Unknown(1000));
        Assert.InRange(ratio, 1, 5.5);
    }

    /// <summary>A note of one clause, however often it names a food or says "add", and a bracket that is closed again and again.</summary>
    [Theory]
    [InlineData("milk ")]
    [InlineData("add milk ")]
    [InlineData("add foxglove ")]
    [InlineData("add something ")]
    [InlineData("5 ml milk ")]
    [InlineData("the the milk ")]
    [InlineData("no milk or ")]
    [InlineData("no milk, ")]
    [InlineData("eggs, ", "no milk, ", "or cream")]
    [InlineData("nuts? none! ")]
    public void A_note_costs_as_much_as_it_is_long(string words, string before = "", string behind = "")
    {
        Allocated(Noted(words, 10, before, behind));
        double ratio = (double)Allocated(Noted(words, 2000, before, behind)) / Allocated(Noted(words, 500, before, behind));
        Assert.InRange(ratio, 1, 5.5);
    }

    [Fact]
    public void An_unknown_name_in_each_of_many_recipes_costs_as_much_as_there_are()
    {
        // The names of the book are indexed once, not once for each of them.
        Allocated(UnknownInEach(10));
        double ratio = (double)Allocated(UnknownInEach(1000)) / Allocated(UnknownInEach(250));
        Assert.InRange(ratio, 1, 5.5);
    }

    /// <summary>Where a change is looked at, a reading is held against the one recipe that it was of: looks are counted, not time.</summary>
    [Fact]
    public void A_reading_asks_for_one_recipe_of_the_book_before()
    {
        var earlier = Checker.ReadBook(Measured(50, "10 g"));
        var now = Checker.ReadBook(Measured(50, "12 g"));
        foreach (var recipe in now.Recipes)
        {
            var looks = new HashSet<BookRead>();
            Assert.Equal("stayed as they were while amounts or method changed", BookReads.Noting(looks, () => Readings.WhyStale(recipe, now, earlier)));
            Assert.DoesNotContain(looks, l => l.Kind == BookReadKind.Files);
            Assert.InRange(looks.Count, 0, 4);
        }
    }

    /// <summary>What a clean drink of four parts takes is no matter of the machine, and grows with each check that makes something in vain.</summary>
    [Fact]
    public void A_clean_drink_takes_no_more_memory_than_it_needs()
    {
        Allocated(Sours(80));
        double each = (Allocated(Sours(80)) - Allocated(Sours(40))) / 40.0;
        Assert.InRange(each, 0, MostBytesOfADrink);
    }

    [Fact]
    public void Letting_go_of_profiles_changes_no_finding()
    {
        var book = Books.Input(
            ("low-tide.drink.json", Drink("""{ "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "25 ml" }, { "item": "ginger-syrup", "amount": "15 ml" }""")),
            ("high-tide.drink.json", Drink("""{ "item": "gin", "amount": "45 ml" }, { "item": "lime-juice", "amount": "25 ml" }, { "item": "ginger-syrup", "amount": "15 ml" }""")),
            ("tide-batch.prep.json", """{ "name": "Tide batch", "family": "batch", "batchOf": "low-tide", "ingredients": [ { "item": "gin", "amount": "450 ml" }, { "item": "lime-juice", "amount": "100 ml" } ], "method": [ { "do": "stir" } ] }"""),
            ("tonight.menu.json", """{ "name": "Tonight", "drinks": [ { "drink": "low-tide", "words": "Gin, lime, no ginger" } ] }"""));
        CheckResult kept = Checker.Check(book), let = Checker.Check(book with { KeepsProfiles = false });
        Assert.Equal(Told(kept), Told(let));

        // On one thread each drink is worked out in the room of the one before.
        Assert.Equal(Told(kept), Told(Checker.Check(book with { KeepsProfiles = false, Threads = 1 })));
        Assert.Contains(Told(let), f => f.StartsWith("SL3018", StringComparison.Ordinal));

        // What is made anew is the same.
        foreach (var drink in let.Book.Drinks)
            Assert.Equal(kept.Profiles.Of(kept.Book.Drinks.Single(d => d.Id == drink.Id)).Get(Fact.Abv), let.Profiles.Of(drink).Get(Fact.Abv));

        static List<string> Told(CheckResult result) => [.. result.Findings.Flat().Select(f => $"{f.Rule.Id} {f.Place.File.Path} {f.Message}")];
    }

    [Fact]
    public void An_allergen_and_a_hazard_are_found_through_every_way_at_once()
    {
        var result = Checker.Check(Dense(60));
        var profile = result.Profiles.Of(result.Book.Preps.Single(p => p.Id == "p000"));
        Assert.Contains(profile.Allergens.Origins, o => o is { Token: "celery", Certain: true });
        Assert.True(profile.Allergens.Origins.Count < 60 * 60);
        Assert.Contains(profile.HazardLoads, l => l.Id == "nutmeg");
        Assert.True(profile.HazardLoads.Count < 60 * 60);
    }

    /// <summary>The mass that comes by many ways is the sum of all ways: two halves of one half and of a whole are three quarters.</summary>
    [Fact]
    public void The_mass_of_a_hazard_is_summed_over_all_ways()
    {
        var result = Books.Check(
            ("a.prep.json", Prep("A", """{ "item": "nutmeg", "amount": "10 g" }, { "item": "water", "amount": "90 g" }""")),
            ("b.prep.json", Prep("B", """{ "item": "a", "amount": "50 g" }, { "item": "water", "amount": "50 g" }""")),
            ("c.prep.json", Prep("C", """{ "item": "a", "amount": "50 g" }, { "item": "b", "amount": "50 g" }""")),
            ("d.prep.json", Prep("D", """{ "item": "c", "amount": "100 g" }, { "item": "water", "amount": "100 g" }""")));
        var load = Assert.Single(result.Profiles.Of(result.Book.Preps.Single(p => p.Id == "d")).HazardLoads);
        Assert.Equal(7.5, load.Grams, 6);
    }

    [Fact]
    public void What_is_nested_too_deep_is_told_and_counts_as_not_known()
    {
        var result = Checker.Check(Chain(ProfileSet.DeepestNesting + 3));
        var deep = result.Findings.SelectMany(f => f.Folded.Prepend(f)).Where(f => f.Rule.Id == "SL9025").Select(f => f.Subject).ToList();
        Assert.Equal(["p0000", "p0001"], deep.Order(StringComparer.Ordinal));
        var whole = result.Profiles.Of(result.Book.Preps.Single(p => p.Id == "p0000"));
        Assert.NotEmpty(whole.Allergens.Unknown);
        Assert.Equal(Unknowns.Composition, whole.Unknown & Unknowns.Composition);

        // One level less is followed to the end.
        var edge = result.Profiles.Of(result.Book.Preps.Single(p => p.Id == "p0002"));
        Assert.Contains(edge.Allergens.Origins, o => o.Token == "celery");
    }

    [Fact]
    public void A_chain_longer_than_the_stack_is_checked()
    {
        var result = Checker.Check(Chain(20_000) with { Threads = 1 });
        Assert.Contains(result.Findings, f => f.Rule.Id == "SL9025");
    }

    [Fact]
    public void Where_everything_is_made_of_everything_a_hundred_circles_are_told()
    {
        var files = Enumerable.Range(0, 60)
            .Select(i => ($"p{i:000}.prep.json", Prep(
                $"P{i}",
                string.Join(
                    ",", Enumerable.Range(0, 60).Where(j => j != i).Select(j => $$"""{ "item": "p{{j:000}}", "amount": "1 g" }""")))))
            .ToArray();
        Assert.Equal(100, Books.Check(files).Book.Cycles.Count);
    }

    [Fact]
    public void Reasons_do_not_double_with_each_level()
    {
        // No amount on any line: each level adds a reason of its own to those below.
        var files = Enumerable.Range(0, 60)
            .Select(i => ($"p{i:000}.prep.json", Prep(
                $"P{i}", string.Join(",", Enumerable.Range(i + 1, 60 - i).Select(j => $$"""{ "item": "p{{j:000}}" }""")))))
            .ToArray();
        var result = Books.Check(files);
        Assert.All(result.Book.Preps, p => Assert.InRange(result.Profiles.Of(p).UnknownBecause.Length, 0, 2000));
    }

    /// <summary>The index gives what comparing with every name gives.</summary>
    [Fact]
    public void An_index_of_names_finds_what_a_search_through_all_finds()
    {
        var random = new Random(20);
        string[] names = [.. Enumerable.Range(0, 600).Select(_ => Word(random))];
        var index = new NameIndex(names);
        for (int i = 0; i < 4000; i++)
        {
            string name = random.Next(3) == 0 ? Word(random) : Slipped(names[random.Next(names.Length)], random);
            Assert.Equal(NearestName.Slips(name, names), index.Slips(name));
        }

        Assert.True(index.Compared < 4000 * 600 / 10, $"compared {index.Compared}");
    }

    /// <summary>Condensed inputs give the range that all of them give.</summary>
    [Fact]
    public void Condensed_inputs_keep_the_variance()
    {
        var few = Checker.Check(Wide(120));
        var many = Checker.Check(Wide(600));
        var (low, high) = (few.Profiles.Of(few.Book.Drinks[0]).Get(Fact.MixVolume), many.Profiles.Of(many.Book.Drinks[0]).Get(Fact.MixVolume));

        // Five times as many independent amounts: the relative range falls by the root of five.
        double narrow = (high.High - high.Low) / high.Value, wide = (low.High - low.Low) / low.Value;
        Assert.Equal(Math.Sqrt(5), wide / narrow, 1);
    }

    private static BookInput Noted(string words, int times, string before, string behind) => Books.Input(("long.drink.json", $$"""
        {
          "name": "Long", "ingredients": [ { "item": "gin", "amount": "50 ml" } ],
          "method": [ { "do": "stir", "ice": "cubed", "note": "{{before}}{{string.Concat(Enumerable.Repeat(words, times))}}{{behind}}" } ]
        }
        """));

    private static BookInput Measured(int count, string acid) => Books.Input([.. Enumerable.Range(0, count).Select(i => ($"p{i:000}.prep.json", $$"""
        {
          "name": "P{{i}}", "ingredients": [ { "item": "water", "amount": "90 g" }, { "item": "citric-acid", "amount": "{{acid}}" } ],
          "method": [ { "do": "stir" } ], "measured": { "ph": 2.1, "on": "2026-11-20" }
        }
        """))]);

    private static string Word(Random random)
    {
        const string Letters = "aabcdeeiilmnoorst-";
        return new string([.. Enumerable.Range(0, random.Next(1, 18)).Select(_ => Letters[random.Next(Letters.Length)])]);
    }

    private static string Slipped(string name, Random random)
    {
        var text = new System.Text.StringBuilder(name);
        int at = random.Next(text.Length);
        switch (random.Next(4))
        {
            case 0: text.Insert(at, 'x'); break;
            case 1: text.Remove(at, 1); break;
            case 2: text[at] = 'x'; break;
            default:
                if (at > 0) (text[at - 1], text[at]) = (text[at], text[at - 1]);
                break;
        }

        return text.ToString();
    }

    private static long Allocated(BookInput input)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        Checker.Check(input with { Threads = 1, KeepsProfiles = false });
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static BookInput Dense(int count)
    {
        return Books.Input([.. Enumerable.Range(0, count).Select(i => ($"p{i:000}.prep.json", Prep($"P{i}", string.Join(",", Enumerable.Range(i + 1, count - i - 1)
            .Select(j => $$"""{ "item": "p{{j:000}}", "amount": "10 ml" }""")
            .Append("""{ "item": "water", "amount": "100 g" }""")
            .Concat(i < count - 1 ? [] : ["""{ "item": "celery", "amount": "10 g" }, { "item": "nutmeg", "amount": "1 g" }"""])))))]);
    }

    private static BookInput Chain(int count) => Books.Input([.. Enumerable.Range(0, count).Select(i => ($"p{i:0000}.prep.json", Prep(
        $"P{i}", $$"""{ "item": "{{(i < count - 1 ? $"p{i + 1:0000}" : "celery")}}", "amount": "100 g" }, { "item": "water", "amount": "100 g" }""")))]);

    private static BookInput Wide(int count) => Books.Input([
        .. Enumerable.Range(0, count)
            .Select(i => ($"p{i:000}.prep.json", Prep(
                $"P{i}", """{ "item": "sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" }"""))),
        ("d.drink.json", Drink(string.Join(",", Enumerable.Range(0, count).Select(i => $$"""{ "item": "p{{i:000}}", "amount": "20 ml" }""")))),
    ]);

    private static BookInput Unknown(int count) => Books.Input(
        ("d.drink.json", Drink(string.Join(",", Enumerable.Range(0, count).Select(i => $$"""{ "item": "unknwn-thing-{{i}}", "amount": "20 ml" }""")))));

    private static BookInput UnknownInEach(int count) => Books.Input([.. Enumerable.Range(0, count).Select(i => ($"p{i:0000}.prep.json", Prep(
        $"P{i}", """{ "item": "unknwn-thing", "amount": "100 g" }, { "item": "water", "amount": "100 g" }""")))]);

    private static BookInput Sours(int count)
    {
        string[] spirits = ["gin", "vodka", "white-rum", "bourbon", "pisco", "blanco-tequila", "cognac", "rye-whiskey"];
        string[] garnishes = ["mint", "basil", "dill", "rosemary", "thyme", "lemon-peel", "orange-peel", "lime-peel", "cucumber", "lemon-wheel"];
        return Books.Input([.. Enumerable.Range(0, count).Select(i => ($"d{i:000}.drink.json", $$"""
            { "name": "Tide {{i}}", "style": "shaken-sour",
              "ingredients": [ { "item": "{{spirits[i % 8]}}", "amount": "60 ml" }, { "item": "lemon-juice", "amount": "22.5 ml" }, { "item": "simple-syrup", "amount": "22.5 ml" } ],
              "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "fine-strain" } ], "garnish": [ { "item": "{{garnishes[i / 8]}}", "amount": "1 piece" } ],
              "declares": { "allergens": [] } }
            """))]);
    }

    private static string Drink(string lines) =>
        $$"""{ "name": "D", "ingredients": [ {{lines}} ], "method": [ { "do": "shake", "ice": "cubed" }, { "do": "strain" } ] }""";

    private static string Prep(string name, string lines) =>
        $$"""{ "name": "{{name}}", "family": "other", "ingredients": [ {{lines}} ], "method": {{Method}}, "keep": { "at": "4 °C", "in": "bottle", "for": "2 d" } }""";
}
