using System.Text.Json;
using System.Text.RegularExpressions;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tests.Demo;

/// <summary>The demo book holds together by itself.</summary>
public sealed partial class DemoBookTests
{
    [Fact]
    public void Every_file_is_an_object_that_points_at_the_schema_of_its_kind()
    {
        foreach (var name in DemoBook.FileNames)
        {
            using var document = JsonDocument.Parse(DemoBook.Read(name));
            var kind = Assert.Single(DemoBook.Kinds, kind => name.EndsWith(kind.Ending, StringComparison.Ordinal));
            Assert.Equal(kind.Schema, document.RootElement.GetProperty("$schema").GetString());
        }
    }

    [Fact]
    public void Ids_are_well_formed_and_unique()
    {
        var ids = DemoBook.FileNames.Select(DemoBook.Id).ToList();
        Assert.All(ids, id => Assert.Matches(IdPattern(), id));
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void The_book_is_as_large_as_it_says_and_two_thirds_of_it_are_clean()
    {
        Assert.True(Count(".drink.json") >= 16);
        Assert.True(Count(".prep.json") >= 18);
        Assert.Equal(1, Count(".stock.json"));
        Assert.Contains("bar.json", DemoBook.FileNames);
        Assert.True(DemoBook.Expected.Count * 3 <= DemoBook.FileNames.Count);

        static int Count(string ending) => DemoBook.FileNames.Count(name => name.EndsWith(ending, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_family_of_preparations_that_a_bar_lives_on_is_there()
    {
        string[] wanted =
        [
            "acid-adjusted-juice", "acid-solution", "juice", "cordial", "syrup", "oleo-saccharum", "shrub", "saline", "infusion",
            "fat-wash", "milk-wash", "ferment", "flavoured-salt", "dried", "foam", "batch", "freezer-batch",
        ];
        var planted = DemoBook.Expected.Select(one => one.File).ToHashSet(StringComparer.Ordinal);
        var clean = DemoBook.FileNames
            .Where(name => name.EndsWith(".prep.json", StringComparison.Ordinal) && !planted.Contains(name))
            .Select(name =>
            {
                using var document = JsonDocument.Parse(DemoBook.Read(name));
                return document.RootElement.GetProperty("family").GetString()!;
            })
            .ToHashSet(StringComparer.Ordinal);
        Assert.Empty(wanted.Except(clean, StringComparer.Ordinal));
    }

    [Fact]
    public void What_is_planted_names_a_file_once_and_covers_the_nine_families()
    {
        Assert.All(DemoBook.Expected, one =>
        {
            Assert.Contains(one.File, DemoBook.FileNames);
            Assert.Equal(DemoBook.Id(one.File), one.Recipe);
            Assert.NotEmpty(one.Description);
        });
        Assert.Equal(DemoBook.Expected.Count, DemoBook.Expected.Select(one => one.File).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(Enumerable.Range(1, 9), DemoBook.Expected.Select(one => one.Family).Distinct().Order());
    }

    [Fact]
    public void The_book_does_not_tell_what_is_planted()
    {
        Assert.All(DemoBook.FileNames, name => Assert.DoesNotMatch(TellTale(), DemoBook.Read(name)));
    }

    [Fact]
    public void Menus_and_stock_name_what_the_book_holds()
    {
        var ids = DemoBook.FileNames.Select(DemoBook.Id).ToHashSet(StringComparer.Ordinal);
        var unknown = new List<string>();
        foreach (var name in DemoBook.FileNames.Where(name => name.EndsWith(".menu.json", StringComparison.Ordinal)))
        {
            using var document = JsonDocument.Parse(DemoBook.Read(name));
            unknown.AddRange(document.RootElement.GetProperty("drinks").EnumerateArray()
                .Select(entry => entry.GetProperty("drink").GetString()!)
                .Where(drink => !ids.Contains(drink))
                .Select(drink => name + ": " + drink));
        }

        Assert.Equal(["weekend.menu.json: spring-tyde"], unknown);
    }

    [Fact]
    public void Every_file_binds_and_only_the_misspelt_property_is_a_problem_of_reading()
    {
        var bar = Assert.IsType<Bar>(Bind("bar.json", Measures.Default));
        var measures = Measures.For(bar?.Measures);
        var problems = DemoBook.FileNames
            .Select(name => Bind(name, measures))
            .SelectMany(file => file.Problems.Select(problem => $"{file.Source.Path}: {problem.Kind} {problem.Path}: {problem.Message}"))
            .ToList();
        var only = Assert.Single(problems);
        Assert.StartsWith("oystercatcher.drink.json: UnknownProperty garnsih", only, StringComparison.Ordinal);

        static BookFile Bind(string name, Measures measures) =>
            BookReader.Read(new SourceFile(name, System.Text.Encoding.UTF8.GetBytes(DemoBook.Read(name))), KindOf(name), measures);

        static FileKind KindOf(string name) => FileKinds.Of(name)!.Value;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex IdPattern();

    [GeneratedRegex("todo|fixme|mistake|wrong|planted|typo|\\bbug\\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex TellTale();
}
