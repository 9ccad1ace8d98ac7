using System.IO.Compression;
using System.Text;
using System.Text.Json;
using CsCheck;
using SpecLint.Reading;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Reading;

/// <summary>
/// The reader against JSONTestSuite (N. Seriot, Parsing JSON is a minefield, 2016; MIT, in <c>JSONTestSuite.zip</c>), each file by its
/// letter, and against System.Text.Json on generated and mutated documents.
/// </summary>
public sealed class JsonSuiteTests
{
    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = 1 << 20 };

    /// <summary>What the format of our files allows beyond RFC 8259: comments, and a comma behind the last one.</summary>
    private static readonly string[] AllowedHere =
    [
        "n_array_extra_comma.json",
        "n_array_number_and_comma.json",
        "n_object_trailing_comma.json",
        "n_object_trailing_comment.json",
        "n_object_trailing_comment_slash_open.json",
        "n_structure_object_with_comment.json",
    ];

    [Fact]
    public void Every_file_of_the_suite_is_read_as_its_letter_says()
    {
        var wrong = new List<string>();
        var allowed = new List<string>();
        int count = 0;
        foreach (var (name, bytes) in Files())
        {
            count++;
            bool accepted = Accepts(bytes);
            if (name[0] == 'y' && !accepted) wrong.Add(name);
            if (name[0] == 'n' && accepted) (IsOnlyLenient(bytes) ? allowed : wrong).Add(name);
        }

        Assert.Equal(318, count);
        Assert.Equal([], wrong);
        Assert.Equal(AllowedHere, allowed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_file_of_the_suite_is_checked_as_each_kind_of_file()
    {
        foreach (var (name, bytes) in Files())
        {
            foreach (string ending in new[] { ".drink.json", ".prep.json", ".ingredient.json", ".menu.json", ".stock.json", ".prices.json" })
            {
                var result = Checker.Check(new BookInput(
                    [Books.File("bar.json", Books.PlainBar), new SourceFile("a" + ending, bytes)], Books.On)
                { Threads = 1 });
                Assert.True(Accepts(bytes) || result.Findings.Any(f => f.Rule.Id is "SL1001" or "SL1002" or "SL1003" or "SL1004"), name + ending);
            }
        }
    }

    /// <summary>What a comment would hide from the reader beneath ours.</summary>
    [Theory]
    [InlineData("{ \"a\": 1 /* x */ \"b\": 2 }", false)]
    [InlineData("{ \"a\": 1 // x\n \"b\": 2 }", false)]
    [InlineData("[ 1 /* x */ 2 ]", false)]
    [InlineData("[ 1, /* , */, 2 ]", false)]
    [InlineData("[ 1, /* x */ , ]", false)]
    [InlineData("[ /* x */ , 1 ]", false)]
    [InlineData("[ /* x */ , ]", false)]
    [InlineData("{ \"a\": /* x */ , \"b\": 1 }", false)]
    [InlineData("{ \"a\": /* x */ , }", false)]
    [InlineData("{ \"a\": // x\n }", false)]
    [InlineData("{ \"a\": // x\n , }", false)]
    [InlineData("{ \"a\": /* x */ \"b\": 1 }", false)]
    [InlineData("{ \"a\" /* x */ , }", false)]
    [InlineData("{ \"a\" /* x */ }", false)]
    [InlineData("/* x */ , 1", false)]
    [InlineData("1 /* x */ ,", false)]
    [InlineData("{} /* x */ , /* y */", false)]
    [InlineData("{} /* x */ {}", false)]
    [InlineData("[ 1 /* , */ , /* , */ 2 /* , */ ]", true)]
    [InlineData("{ \"a\" /* between a name and its colon */ : 1 }", false)]
    [InlineData("{ \"a\": /* , */ 1 /* , */ } /* , */", true)]
    [InlineData("{ /* , */ \"a\": /* , */ 1 /* , */ , // ,\n }", true)]
    public void Commas_count_beside_comments(string text, bool reads)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        Assert.Equal(reads, JsonAgreement.Reads(bytes, JsonAgreement.Lenient));
        Assert.Equal(reads, Accepts(bytes));
    }

    [Fact]
    public void Generated_and_mutated_documents_are_read_as_System_Text_Json_reads_them() =>
        Gen.Int.Sample(seed =>
        {
            byte[] bytes = Document(new Random(seed));
            Assert.Null(JsonAgreement.Difference(bytes));
        }, iter: LongRun.Cases(3_000, 100_000));

    [Fact]
    public void Mutations_of_the_suite_are_read_as_System_Text_Json_reads_them()
    {
        byte[][] files = [.. Files().Select(f => f.Bytes).Where(b => b.Length < 2000)];
        Gen.Int.Sample(seed =>
        {
            var random = new Random(seed);
            Assert.Null(JsonAgreement.Difference(Mutated(files[random.Next(files.Length)], random)));
        }, iter: LongRun.Cases(3_000, 100_000));
    }

    private static IEnumerable<(string Name, byte[] Bytes)> Files()
    {
        using var zip = ZipFile.OpenRead(Repository.At("tests", "SpecLint.Tests", "Reading", "JSONTestSuite.zip"));
        foreach (var entry in zip.Entries.Where(e => e.Name.EndsWith(".json", StringComparison.Ordinal)))
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            yield return (entry.Name, bytes.ToArray());
        }
    }

    /// <summary>Whether the reader takes a text as JSON; names given twice and nesting beyond the limit of recipes are JSON all the same.</summary>
    private static bool Accepts(byte[] bytes)
    {
        var (tree, problems) = Samples.Parse(bytes);
        bool accepts = problems.TrueForAll(p => p.Kind is ReadingProblemKind.DuplicateProperty or ReadingProblemKind.TooDeep
            or ReadingProblemKind.NumberOutOfRange);
        Assert.True(!accepts || tree.IsWhole);
        return accepts;
    }

    private static bool IsOnlyLenient(byte[] bytes) => !JsonAgreement.Reads(bytes, Strict) && JsonAgreement.Reads(bytes, JsonAgreement.Lenient);

    /// <summary>A random document with comments, odd blanks, escapes and now and then a broken byte.</summary>
    private static byte[] Document(Random random)
    {
        var text = new StringBuilder();
        if (random.Next(20) == 0) text.Append('\uFEFF');
        Value(text, random, 0);
        Blank(text, random);
        byte[] bytes = Encoding.UTF8.GetBytes(text.ToString());
        return random.Next(3) == 0 ? Mutated(bytes, random) : bytes;
    }

    private static void Value(StringBuilder text, Random random, int depth)
    {
        Blank(text, random);
        switch (random.Next(depth > 5 ? 4 : 7))
        {
            case 0: text.Append(new[] { "true", "false", "null" }[random.Next(3)]); break;
            case 1: text.Append(new[] { "0", "-0", "1e5", "-12.75", "0.1E-3", "1e400", "123456789012345678901", "1.0", "4E+2" }[random.Next(9)]); break;
            case 2 or 3: Text(text, random); break;
            case 4 or 5:
                text.Append('{');
                for (int i = random.Next(4); i > 0; i--)
                {
                    Blank(text, random);
                    Text(text, random);
                    Blank(text, random);
                    text.Append(':');
                    Value(text, random, depth + 1);
                    Blank(text, random);
                    if (i > 1 || random.Next(6) == 0) text.Append(',');
                }

                Blank(text, random);
                text.Append('}');
                break;
            default:
                text.Append('[');
                for (int i = random.Next(4); i > 0; i--)
                {
                    Value(text, random, depth + 1);
                    Blank(text, random);
                    if (i > 1 || random.Next(6) == 0) text.Append(',');
                }

                Blank(text, random);
                text.Append(']');
                break;
        }
    }

    private static void Text(StringBuilder text, Random random)
    {
        string[] pieces = ["a", "é", "🍋", "\\n", "\\\"", "\\\\", "\\/", "\\u00e9", "\\ud83c\\udf4b", "\u2028", "/*", "//", " ", "name", "item"];
        text.Append('"');
        for (int i = random.Next(5); i > 0; i--) text.Append(pieces[random.Next(pieces.Length)]);
        text.Append('"');
    }

    private static void Blank(StringBuilder text, Random random)
    {
        if (random.Next(3) > 0) return;
        text.Append(new[] { " ", "\n", "\t", "\r\n", "/* x */", "// y\n", "/* \" { */ ", "  " }[random.Next(8)]);
    }

    private static byte[] Mutated(byte[] bytes, Random random)
    {
        var mutated = bytes.ToList();
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            int at = random.Next(mutated.Count + 1);
            switch (random.Next(4))
            {
                case 0: mutated.Insert(at, (byte)random.Next(256)); break;
                case 1: mutated.Insert(at, (byte)"{}[],:\"\\/*0-e. \n"[random.Next(16)]); break;
                case 2 when at < mutated.Count: mutated.RemoveAt(at); break;
                case 3 when at < mutated.Count: mutated[at] = (byte)random.Next(256); break;
            }
        }

        return [.. mutated];
    }
}
