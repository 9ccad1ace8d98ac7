using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tests.Reading;

/// <summary>Files that no bar writes on purpose: each gives a finding of the right kind, and no exception.</summary>
public class HostileFileTests
{
    public static TheoryData<string, ReadingProblemKind> Files()
    {
        var files = new TheoryData<string, ReadingProblemKind>();
        foreach (var (name, (_, kind)) in Hostile) files.Add(name, kind);
        return files;
    }

    private static readonly Dictionary<string, (byte[] Text, ReadingProblemKind Kind)> Hostile = new(StringComparer.Ordinal)
    {
        ["empty"] = ([], ReadingProblemKind.Syntax),
        ["blank"] = (Utf8(" \r\n\t "), ReadingProblemKind.Syntax),
        ["only a byte order mark"] = ([0xEF, 0xBB, 0xBF], ReadingProblemKind.Syntax),
        ["cut short"] = (Utf8(Samples.Drink)[..200], ReadingProblemKind.Syntax),
        ["cut in a character"] = (Utf8("{ \"name\": \"caf\u00E9\" }")[..15], ReadingProblemKind.Encoding),
        ["binary"] = ([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13], ReadingProblemKind.Encoding),
        ["UTF-16"] = ([0xFF, 0xFE, .. Encoding.Unicode.GetBytes("{ }")], ReadingProblemKind.Encoding),
        ["UTF-16 without a mark"] = (Encoding.Unicode.GetBytes("{ \"name\": \"x\" }"), ReadingProblemKind.Encoding),
        ["Latin-1"] = (Encoding.Latin1.GetBytes("{ \"name\": \"café\", \"ingredients\": [ { \"item\": \"gin\", "
            + "\"amount\": \"1 g\" } ] }"), ReadingProblemKind.Encoding),
        ["overlong UTF-8"] = ([.. Utf8("{ \"name\": \""), 0xC0, 0xAF, .. Utf8("\" }")], ReadingProblemKind.Encoding),
        ["deep lists"] = (Utf8("{ \"name\": " + new string('[', 100_000) + new string(']', 100_000) + " }"), ReadingProblemKind.TooDeep),
        ["deep and cut"] = (Utf8(new string('[', 100_000)), ReadingProblemKind.TooDeep),
        ["huge number"] = (Utf8("{ \"name\": \"x\", \"serves\": 1e999 }"), ReadingProblemKind.NumberOutOfRange),
        ["endless digits"] = (Utf8("{ \"name\": \"x\", \"serves\": " + new string('9', 500_000) + " }"), ReadingProblemKind.NumberOutOfRange),
        ["duplicate names"] = (Utf8("{ \"name\": \"x\", \"name\": \"y\" }"), ReadingProblemKind.DuplicateProperty),
        ["duplicate names by escape"] = (Utf8("{ \"name\": \"x\", \"n\\u0061me\": \"y\" }"), ReadingProblemKind.DuplicateProperty),
        ["many duplicates"] = (Utf8("{ " + string.Join(", ", Enumerable.Repeat("\"name\": \"x\"", 100_000)) + " }"), ReadingProblemKind.DuplicateProperty),
        ["lone surrogate"] = (Utf8("{ \"name\": \"\\ud83c\" }"), ReadingProblemKind.Encoding),
        ["surrogates the wrong way round"] = (Utf8("{ \"name\": \"\\udf4b\\ud83c\" }"), ReadingProblemKind.Encoding),
        ["lone surrogate in a name"] = (Utf8("{ \"\\ud83c\": 1 }"), ReadingProblemKind.Encoding),
        ["10 MB"] = (Utf8("{ \"name\": \"" + new string('x', 10_000_000) + "\" }"), ReadingProblemKind.TooLarge),
        ["a list"] = (Utf8("[ 1, 2 ]"), ReadingProblemKind.Syntax),
        ["null"] = (Utf8("null"), ReadingProblemKind.Syntax),
        ["an id that climbs"] = (Utf8("{ \"name\": \"x\", \"ingredients\": [ { \"item\": \"../../etc/passwd\", "
            + "\"amount\": \"1 g\" } ] }"), ReadingProblemKind.UnreadableValue),
        ["control characters"] = (Utf8("{ \"name\": \"a\u0001b\" }"), ReadingProblemKind.Syntax),
        ["a web page"] = (Utf8("<!DOCTYPE html><html></html>"), ReadingProblemKind.Syntax),
        ["100,000 unknown names"] = (Utf8("{ " + string.Join(
            ", ", Enumerable.Range(0, 100_000).Select(i => $"\"p{i}\": 1")) + " }"), ReadingProblemKind.UnknownProperty),
        ["100,000 lines without an item"] = (Utf8("{ \"name\": \"x\", \"ingredients\": [ " + string.Join(", ", Enumerable.Repeat("{}", 100_000)) + " ] }"), ReadingProblemKind.MissingProperty),
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void A_hostile_file_is_a_finding(string name, ReadingProblemKind kind)
    {
        var (text, _) = Hostile[name];
        foreach (var of in Enum.GetValues<FileKind>())
        {
            var file = BookReader.Read(new SourceFile("x.drink.json", text), of, Measures.Default);
            if (of == FileKind.Drink) Assert.Contains(file.Problems, p => p.Kind == kind);
            Assert.NotEmpty(file.Problems);
            Assert.InRange(file.Problems.Count, 1, JsonTree.MostProblems + 20);
            Assert.All(file.Problems, p =>
            {
                Assert.InRange(p.Span.Start, 0, text.Length);
                Assert.InRange(p.Span.End, p.Span.Start, text.Length);
                Assert.True(p.Message.EndsWith('.') && p.Message.Length < 400 && p.Advice.EndsWith('.'), p.Message + p.Advice);
            });
        }
    }

    [Theory]
    [InlineData("Low Tide.drink.json", "low-tide")]
    [InlineData("..drink.json", null)]
    [InlineData("low_tide.drink.json", "low-tide")]
    [InlineData("a/b/Über.drink.json", "ber")]
    public void A_file_name_that_makes_no_id_is_a_finding(string path, string? better)
    {
        var file = BookReader.Read(Samples.File(Samples.Drink, path), FileKind.Drink, Measures.Default);
        var problem = Assert.Single(file.Problems);
        Assert.Equal(ReadingProblemKind.BadId, problem.Kind);
        if (better is not null) Assert.Contains($"`{better}.drink.json`", problem.Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bar.json", FileKind.Bar, "bar")]
    [InlineData("x/bar.json", FileKind.Bar, "bar")]
    [InlineData("specs/low-tide.drink.json", FileKind.Drink, "low-tide")]
    [InlineData("a.b.prep.json", FileKind.Prep, "a.b")]
    [InlineData("x\\gin.ingredient.json", FileKind.Ingredient, "gin")]
    [InlineData("tonight.menu.json", FileKind.Menu, "tonight")]
    [InlineData("fridge.stock.json", FileKind.Stock, "fridge")]
    [InlineData("autumn.prices.json", FileKind.Prices, "autumn")]
    [InlineData("package.json", null, "package")]
    [InlineData("crowbar.json", null, "crowbar")]
    public void A_path_tells_kind_and_id(string path, FileKind? kind, string id) => Assert.Equal((kind, id), (FileKinds.Of(path), FileKinds.IdOf(path)));

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
