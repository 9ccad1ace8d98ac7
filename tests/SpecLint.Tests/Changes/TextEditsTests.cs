using System.Text;
using CsCheck;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

public sealed class TextEditsTests
{
    private static readonly Gen<string> Text = Gen.String[Gen.Char["ab{}\": é€\n"], 0, 60];

    [Fact]
    public void What_no_edit_names_stays_byte_for_byte() =>
        Gen.Select(Text, Gen.Int[0, 60].Array[0, 8], Gen.String[Gen.Char["xyü"], 0, 4].Array[8]).Sample((text, cuts, puts) =>
        {
            byte[] bytes = Encoding.UTF8.GetBytes(text);
            var file = new SourceFile("a.drink.json", bytes);

            // Each two cuts bound one edit; sorted, so that none overlaps another.
            int[] at = [.. cuts.Select(c => Math.Min(c, bytes.Length)).Order()];
            var edits = new List<TextEdit>();
            var expected = new List<byte>();
            int copied = 0;
            for (int i = 0; i + 1 < at.Length; i += 2)
            {
                edits.Add(new TextEdit(new Place(file, new TextSpan(at[i], at[i + 1] - at[i])), puts[i]));
                expected.AddRange(bytes[copied..at[i]]);
                expected.AddRange(Encoding.UTF8.GetBytes(puts[i]));
                copied = at[i + 1];
            }

            expected.AddRange(bytes[copied..]);
            Assert.Equal(expected, TextEdits.Apply(file, edits));
        });

    [Fact]
    public void Edits_that_overlap_or_lie_outside_are_refused()
    {
        var file = Books.File("a.drink.json", "0123456789");
        Assert.Throws<ArgumentException>(() => TextEdits.Apply(file, [Edit(file, 2, 4, "a"), Edit(file, 5, 2, "b")]));
        Assert.Throws<ArgumentException>(() => TextEdits.Apply(file, [Edit(file, 8, 4, "a")]));
        Assert.Throws<ArgumentException>(() => TextEdits.Apply(file, [Edit(Books.File("a.drink.json", "other"), 0, 1, "a")]));
    }

    [Theory]
    [InlineData(0, 4, 4, 2, false)]
    [InlineData(0, 5, 4, 2, true)]
    [InlineData(4, 0, 4, 0, true)]
    [InlineData(4, 0, 4, 2, true)]
    [InlineData(6, 0, 4, 2, true)]
    [InlineData(7, 0, 4, 2, false)]
    public void Two_edits_conflict_where_one_decides_what_the_other_means(int start, int length, int otherStart, int otherLength, bool conflict)
    {
        var file = Books.File("a.drink.json", "0123456789");
        var a = Edit(file, start, length, "x");
        var b = Edit(file, otherStart, otherLength, "y");
        Assert.Equal(conflict, TextEdits.Conflict(a, b));
        Assert.Equal(conflict, TextEdits.Conflict(b, a));
    }

    [Fact]
    public void Lines_that_an_edit_brings_end_as_those_of_the_file()
    {
        var file = Books.File("a.drink.json", "{\r\n}\r\n");
        Assert.Equal(
            "{\r\n  \"a\": 1,\r\n  \"b\": 2\r\n}\r\n",
            Encoding.UTF8.GetString(TextEdits.Apply(file, [Edit(file, 3, 0, "  \"a\": 1,\n  \"b\": 2\n")])));
    }

    private static TextEdit Edit(SourceFile file, int start, int length, string text) => new(new Place(file, new TextSpan(start, length)), text);
}
