using System.Text;
using CsCheck;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Tests.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Changes;

/// <summary>
/// Every correction of every rule: the broken examples of its page, laid out at random (line ends, indents, comments, a byte
/// order mark), are corrected; the finding is gone, and every byte that no edit names is the same.
/// </summary>
public sealed class CorrectionPropertyTests
{
    public static TheoryData<string> RulesWithCorrections =>
        [.. RulePage.All.Where(p => p.Examples.Any(e => !e.Clean && Findings(e, p.Id).Any(f => f.Corrections.Any(c => c.Edits.Count > 0))))
            .Select(p => p.Id)];

    [Theory]
    [MemberData(nameof(RulesWithCorrections))]
    public void A_correction_puts_its_finding_right_and_touches_nothing_else(string id)
    {
        var examples = RulePage.All.Single(p => p.Id == id).Examples.Where(e => !e.Clean).ToArray();
        Gen.Select(Gen.Int[0, examples.Length - 1], Gen.Int[0, 31], Gen.Int[0, 7]).Sample(
            (which, layout, nth) =>
            {
                var input = Books.Input([.. examples[which].Files.Select(f => (f.Path, LayOut(f.Text, layout)))]);
                var before = Checker.Check(input);
                var findings = before.Findings.Flat().Where(f => f.Rule.Id == id && f.Corrections.Any(c => c.Edits.Count > 0)).ToArray();
                if (findings.Length == 0) return;
                var finding = findings[nth % findings.Length];
                foreach (var correction in finding.Corrections.Where(c => c.Edits.Count > 0)) AssertPutsRight(input, finding, correction);
            },
            iter: 24);
    }

    [Fact]
    public void Many_rules_have_a_correction() =>
        Assert.True(RulesWithCorrections.Cast<object>().Count() >= 20, "fewer rules have corrections than there were");

    private static void AssertPutsRight(BookInput input, Finding finding, Correction correction)
    {
        var files = new List<SourceFile>();
        foreach (var file in input.Files)
        {
            var edits = correction.Edits.Where(e => e.Place.File.Path == file.Path).ToList();
            if (edits.Count == 0)
            {
                files.Add(file);
                continue;
            }

            byte[] made = TextEdits.Apply(file, edits);
            AssertUntouched(file.Utf8.Span, made, edits);
            files.Add(new SourceFile(file.Path, made));
        }

        var after = Checker.Check(input with { Files = files });
        var still = after.Findings.Flat().FirstOrDefault(f => f.Fingerprint == finding.Fingerprint);
        Assert.True(still is null, $"{finding.Rule.Id} in {finding.Place.File.Path}: after \"{correction.Description}\" it still says: {still?.Message}");
    }

    /// <summary>Between the edits, the old text and the new are the same bytes in the same order.</summary>
    private static void AssertUntouched(ReadOnlySpan<byte> old, ReadOnlySpan<byte> made, List<TextEdit> edits)
    {
        int at = 0, newAt = 0;
        foreach (var edit in edits.OrderBy(e => e.Place.Span.Start).ThenBy(e => e.Place.Span.Length))
        {
            int kept = edit.Place.Span.Start - at;
            Assert.True(old.Slice(at, kept).SequenceEqual(made.Slice(newAt, kept)), "bytes before an edit changed");
            at = edit.Place.Span.End;
            newAt += kept + Encoding.UTF8.GetByteCount(LineEnds(old, edit.NewText));
        }

        Assert.True(old[at..].SequenceEqual(made[newAt..]), "bytes behind the last edit changed");
    }

    private static string LineEnds(ReadOnlySpan<byte> text, string put) =>
        text.IndexOf("\r\n"u8) >= 0 ? put.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal) : put;

    /// <summary>The same text laid out otherwise: what a formatter, an editor or a person might leave.</summary>
    private static string LayOut(string text, int layout)
    {
        var lines = text.Split('\n').ToList();
        for (int i = 0; i < lines.Count; i++)
        {
            string line = lines[i];
            int indent = line.Length - line.TrimStart().Length;
            if ((layout & 1) != 0) line = new string('\t', indent / 2) + line[indent..];
            if ((layout & 2) != 0 && line.TrimEnd().EndsWith('{')) line += " // 🍋 é, a remark";
            if ((layout & 4) != 0 && line.Trim().Length == 0) line += "   ";
            lines[i] = line;
        }

        string made = string.Join((layout & 8) != 0 ? "\r\n" : "\n", lines);
        return (layout & 16) != 0 ? "/* kept in the fridge's folder */ " + made : made;
    }

    private static IEnumerable<Finding> Findings(PageExample example, string id) => Books.Check([.. example.Files]).Findings.Flat().Where(f => f.Rule.Id == id);
}
