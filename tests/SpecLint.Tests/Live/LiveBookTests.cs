using System.Globalization;
using SpecLint.Changes;
using SpecLint.Live;
using SpecLint.Reading;
using SpecLint.Tests.Demo;
using SpecLint.Tests.Properties;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Live;

/// <summary>A live book says what a fresh check says, whatever happened to its files.</summary>
public sealed class LiveBookTests
{
    [Fact]
    public void After_every_random_edit_it_says_what_a_fresh_check_says()
    {
        int edits = PropertyRun.Cases(150, 10_000), seed = PropertyRun.Seed;
        var random = new Random(seed);
        var input = new BookInput([.. DemoBook.FileNames.Select(n => Books.File(n, DemoBook.Read(n)))], Books.On) { Threads = 1 };
        var book = new RandomEdits(seed, input.Files);
        var live = new LiveBook(input);
        for (int i = 0; i < edits; i++)
        {
            live.Take(book.Next());

            // An editor does not wait until all is checked before the next key.
            if (random.Next(3) == 0)
            {
                live.CheckSome([], 1 + random.Next(20));
                continue;
            }

            string where = $"edit {i} of seed {seed}: {book.Last}";
            var fresh = Checker.Check(input with { Files = [.. book.Files] });
            var ours = live.Result();
            Same(FindingText.Of(fresh), FindingText.Of(ours), where);
            int one = random.Next();
            Same(FactsOf(fresh, one), FactsOf(ours, one), where);
        }
    }

    [Fact]
    public void Against_an_earlier_state_it_says_what_two_fresh_checks_say()
    {
        int cases = PropertyRun.Cases(25, 1_500), seed = PropertyRun.Seed;
        var random = new Random(seed);
        var input = new BookInput([.. DemoBook.FileNames.Select(n => Books.File(n, DemoBook.Read(n)))], Books.On) { Threads = 1 };
        var book = new RandomEdits(seed, input.Files);
        for (int i = 0; i < cases; i++)
        {
            SourceFile[] before = [.. book.Files];
            for (int n = 1 + random.Next(4); n > 0; n--) book.Next();
            var now = input with { Files = [.. book.Files] };
            string where = $"case {i} of seed {seed}: {book.Last}";
            var earlier = Checker.Check(now with { Files = before });
            var fresh = Checker.Check(now with { Earlier = earlier.Book });
            var (known, ours) = TwoStates.Check(now, before);
            Same([.. earlier.Fingerprints().Order(StringComparer.Ordinal)], [.. known.Order(StringComparer.Ordinal)], where);
            Same(FindingText.Of(fresh), FindingText.Of(ours), where);
        }
    }

    private static void Same(List<string> expected, List<string> found, string where)
    {
        if (expected.SequenceEqual(found, StringComparer.Ordinal)) return;
        Assert.Fail($"{where}\nonly a fresh check says:\n{string.Join('\n', expected.Except(found, StringComparer.Ordinal).Take(5))}\nonly the live book says:\n{string.Join('\n', found.Except(expected, StringComparer.Ordinal).Take(5))}");
    }

    /// <summary>All facts of one recipe.</summary>
    private static List<string> FactsOf(CheckResult result, int number)
    {
        var recipes = result.Book.Recipes.ToList();
        if (recipes.Count == 0) return [];
        var recipe = recipes[number % recipes.Count];
        var profile = result.Profiles.Of(recipe);
        return [.. Enum.GetValues<Fact>()
            .Select(fact => profile.Get(fact))
            .Select((value, at) => string.Create(
                CultureInfo.InvariantCulture, $"{recipe.Source.Path} {(Fact)at} {value.Value:R} {value.Low:R} "
                    + $"{value.High:R} {value.From}"))];
    }
}
