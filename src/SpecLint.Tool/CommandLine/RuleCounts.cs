using SpecLint.Reports;

namespace SpecLint.Tool;

/// <summary><c>--statistics</c>: how many findings each rule has, those that guard against harm first, then by level and number.</summary>
internal static class RuleCounts
{
    public static void Write(TextWriter to, ReportContent content)
    {
        var rows = RuleTally.Of(content);
        foreach (var row in rows)
        {
            string first = $"{row.Count,6}  {row.Rule.Id}  {ReportWords.Of(row.Level),-7}  ";
            string harm = row.Rule.Safety ? " (guards against harm)" : "";
            foreach (string line in DisplayText.Wrap(
                $"{row.Rule.Title}{harm}; in {ReportWords.Count(row.Files.Count, "file", "files")}.", first, new string(' ', first.Length)))
                to.Write(line + "\n");
        }

        to.Write($"{ReportWords.Count(rows.Sum(r => r.Count), "finding", "findings")} of "
            + $"{ReportWords.Count(rows.Count, "rule", "rules")} in {ReportWords.Count(content.Files, "file", "files")}.\n");
        foreach (string remark in content.Remarks) to.Write(remark + "\n");
    }
}
