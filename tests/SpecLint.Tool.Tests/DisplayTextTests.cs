using CsCheck;
using SpecLint.Reports;

namespace SpecLint.Tool.Tests;

public class DisplayTextTests
{
    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("crème fraîche 4 °C → 5", "crème fraîche 4 °C → 5")]
    [InlineData("a\u001b[31mred", "a\\u001B[31mred")]
    [InlineData("line\nbreak\r\t", "line\\nbreak\\r\\t")]
    [InlineData("gin\u202Ednuor", "gin\\u202Ednuor")]
    [InlineData("zero\u200Bwidth", "zero\\u200Bwidth")]
    [InlineData("bell\u0007 del\u007f c1\u009b", "bell\\u0007 del\\u007F c1\\u009B")]
    [InlineData("par\u2029agraph", "par\\u2029agraph")]
    [InlineData("\U0001F379 ok", "\U0001F379 ok")]
    public void Hostile_characters_are_shown_as_escapes(string text, string shown) => Assert.Equal(shown, DisplayText.Escape(text));

    [Fact]
    public void Lone_surrogates_are_shown_as_escapes()
    {
        Assert.Equal("lone \\uD83C here", DisplayText.Escape("lone \ud83c here"));
        Assert.Equal("lone \\uDF79", DisplayText.Escape("lone \udf79"));
    }

    [Fact]
    public void No_text_puts_a_control_character_on_a_terminal() =>
        Gen.String.Sample(text => DisplayText.Escape(text)
            .All(c => !char.IsControl(c)
                && c is not ('\u202A' or '\u202B' or '\u202D' or '\u202E' or '\u2066' or '\u2067' or '\u2068' or '\u2069')));

    [Fact]
    public void No_line_is_wider_than_eighty_columns_and_no_word_is_lost() =>
        Gen.String.Sample(text =>
        {
            string shown = DisplayText.Escape(text);
            var lines = DisplayText.Wrap(shown, "  - ", "    ").ToList();
            string kept = string.Concat(lines.Select((l, i) => l[4..].Replace(" ", "", StringComparison.Ordinal)));
            return lines.TrueForAll(l => DisplayText.Width(l) <= 80) && kept == shown.Replace(" ", "", StringComparison.Ordinal);
        });

    [Fact]
    public void A_number_stays_with_its_unit()
    {
        var lines = DisplayText.Wrap("take exactly 7.5 ml, and at -18 °C no more", "", "", 17).ToList();
        Assert.Equal(["take exactly", "7.5 ml, and at", "-18 °C no more"], lines);
    }

    [Fact]
    public void A_line_takes_what_still_fits_and_lines_that_are_written_are_those_that_are_given() =>
        Gen.OneOf(Gen.String[Gen.Char["ab  7 ml°柚\u0301"], 0, 60], Gen.Const("7.5 ml of it, aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa 3 g/l"))
            .Select(Gen.Int[8, 30])
            .Sample((text, columns) =>
            {
                var lines = DisplayText.Wrap(text, "- ", "  ", columns).ToList();
                using var written = new StringWriter();
                DisplayText.WriteWrapped(written, text, "- ", "  ", columns);

                // A word that has to be cut begins on a line of its own.
                bool isCut = text.Split(' ').Any(w => DisplayText.Width(w) > columns - 2);
                bool isFull = isCut || Enumerable.Range(1, Math.Max(0, lines.Count - 1)).All(i =>
                {
                    string[] next = lines[i][2..].Split(' ');
                    string begins = next.Length > 1 && char.IsAsciiDigit(next[0].LastOrDefault()) ? $"{next[0]} {next[1]}" : next[0];
                    return DisplayText.Width(lines[i - 1]) + 1 + DisplayText.Width(begins) > columns;
                });
                return isFull && written.ToString() == string.Concat(lines.Select(l => l + "\n"));
            });

    [Theory]
    [InlineData("abc", 3)]
    [InlineData("é", 1)]
    [InlineData("e\u0301", 1)]
    [InlineData("柚子", 4)]
    [InlineData("\U0001F379", 2)]
    public void Width_counts_columns(string text, int columns) => Assert.Equal(columns, DisplayText.Width(text));
}
