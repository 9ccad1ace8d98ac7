using System.Text.RegularExpressions;
using SpecLint.Tests.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.BuiltIn;

/// <summary>
/// What is said to be law names the act, the provision and the day it was read. The acts stand in rules-docs/sources.md with what
/// is in force; a row of a table or a page that cites another is a fault here.
/// </summary>
public sealed partial class LawSourceTests
{
    private static readonly string[] LawTables = ["allergens", "hazards", "labelling", "names", "standard-drinks", "keeping-tables"];

    private const string ReadOn = "When each act was read: ";

    private sealed record Act(string Cited, string InForce, string Read);

    private static readonly Lazy<IReadOnlyList<Act>> Acts = new(() =>
        [.. File.ReadLines(Repository.At("rules-docs", "sources.md")).SkipWhile(l => l != "## Laws and codes").Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(2)
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries)).Select(c => new Act(c[1], c[3], c[4]))]);

    [Fact]
    public void Every_row_of_law_names_an_act_of_the_list_and_its_provision()
    {
        var faults = new List<string>();
        foreach (var (place, source, _) in Sources().Where(s => IsLaw(s.Source)))
        {
            foreach (string act in ActsIn(source).Where(a => Find(a) is null)) faults.Add($"{place}: {act} is not in the list of laws");
            if (!Provision().IsMatch(source)) faults.Add($"{place}: no article, annex or section in \"{source}\"");
        }

        None(faults);
    }

    /// <summary>Its own day, else that of the act in the list; what has neither says that it is recalled, and its mark with it.</summary>
    [Fact]
    public void Every_row_of_law_has_the_day_it_was_read_or_says_that_it_was_not()
    {
        var faults = new List<string>();
        foreach (var (place, source, mark) in Sources().Where(s => IsLaw(s.Source)))
        {
            bool dated = Day().IsMatch(source) || ActsIn(source).Any(a => Find(a) is { } act && Day().IsMatch(act.Read));
            if (mark == "read" && !dated) faults.Add($"{place}: marked read, without a day: \"{source}\"");
            if (mark == "memory" && !Recalled().IsMatch(source)) faults.Add($"{place}: from memory, and the source does not say so: \"{source}\"");
        }

        None(faults);
    }

    /// <summary>A page cites acts of the list; one that was replaced only together with a word on that.</summary>
    [Fact]
    public void Every_page_cites_acts_of_the_list()
    {
        var faults = new List<string>();
        foreach (var page in RulePage.All)
        {
            int from = page.Text.IndexOf("## Source", StringComparison.Ordinal), to = page.Text.IndexOf("## How to put it right", StringComparison.Ordinal);
            string source = page.Text[from..to];
            foreach (string cited in ActsIn(source).Distinct(StringComparer.Ordinal))
            {
                if (Find(cited) is not { } act) faults.Add($"{page.Id}: {cited} is not in the list of laws");
                else if (act.InForce.StartsWith("replaced", StringComparison.Ordinal) && !Replaced().IsMatch(source))
                    faults.Add($"{page.Id}: {cited} was replaced");
            }

            if (ActsIn(source).Any() && !Provision().IsMatch(source)) faults.Add($"{page.Id}: no article, annex or section");
        }

        None(faults);
    }

    /// <summary>
    /// The last line of a page's sources gives the day on which each act was read, from the list of laws. Where the text above it
    /// says that a provision is recalled, that stands.
    /// </summary>
    [Fact]
    public void Every_page_says_when_its_acts_were_read()
    {
        foreach (var page in RulePage.All.Where(p => p.Text.Contains("## Source", StringComparison.Ordinal)))
        {
            int from = page.Text.IndexOf("## Source", StringComparison.Ordinal), to = page.Text.IndexOf("## How to put it right", StringComparison.Ordinal);
            string[] written = [.. page.Text[from..to].TrimEnd().Split('\n').Where(l => !l.StartsWith(ReadOn, StringComparison.Ordinal))];
            string source = string.Join('\n', written).TrimEnd();
            var acts = ActsIn(source)
                .Select(Find)
                .OfType<Act>()
                .Select(a => a with { Cited = a.Cited is "Standard" or "Schedule" ? "Food Standards Code" : a.Cited })
                .DistinctBy(a => a.Cited)
                .ToList();
            string days = acts.Count == 0 ? "" : $"\n\n{ReadOn}{string.Join("; ", acts.Select(a => $"{a.Cited} {(a.Read == "no" ? "not read" : a.Read)}"))}.";
            Golden.Check(Repository.At("rules-docs", page.Id + ".md"), page.Text[..from] + source + days + "\n\n" + page.Text[to..]);
        }
    }

    /// <summary>What makes an error was read: over the examples of all pages, no error cites memory, press or a blog.</summary>
    [Fact]
    public void No_error_rests_on_what_was_not_read()
    {
        var faults = new List<string>();
        int errors = 0;
        foreach (var example in RulePage.All.SelectMany(p => p.Examples))
        {
            foreach (var finding in Books.Check([.. example.Files]).Findings
                .Where(f => f.Level == Level.Error && f.Rule.Id.StartsWith("SL", StringComparison.Ordinal)))
            {
                errors++;

                // The limit that is broken is what an error rests on; what only explains it is said to.
                string text = string.Join(' ', finding.Evidence.Where(e => e.Name is not ("fact" or "model")).Select(e => e.Source ?? ""));
                if (NotRead().IsMatch(text)) faults.Add($"{example.Page} line {example.Line}: {finding.Rule.Id}: {text}");
            }
        }

        Assert.True(errors > 100, $"only {errors} errors were looked at");
        None([.. faults.Distinct(StringComparer.Ordinal)]);
    }

    private static IEnumerable<(string Place, string Source, string Mark)> Sources()
    {
        foreach (string table in LawTables.Concat(Tables.NamesStartingWith("limits")))
        {
            using var document = Tables.Open(table);
            var found = new List<(string, string, string)>();
            Walk(table, document.Root, found);
            foreach (var one in found) yield return one;
        }
    }

    private static void Walk(string path, TableValue element, List<(string Place, string Source, string Mark)> found)
    {
        if (element.IsList)
        {
            foreach (var child in element.Items) Walk(path, child, found);
        }
        else if (element.IsObject)
        {
            string id = element.Text("id");
            string here = id.Length > 0 ? $"{path}/{id}" : path;
            if (element.Text("source") is { Length: > 0 } source) found.Add((here, source, element.Text("mark")));
            foreach (var property in element.Properties) Walk(here, property.Value, found);
        }
    }

    private static bool IsLaw(string source) => ActsIn(source).Any();

    private static IEnumerable<string> ActsIn(string text) => ActName().Matches(text).Select(m => m.Groups["n"].Success ? m.Groups["n"].Value : m.Value);

    private static Act? Find(string cited) => Acts.Value.FirstOrDefault(a => cited.Contains(a.Cited, StringComparison.Ordinal));

    private static void None(List<string> faults) => Assert.True(faults.Count == 0, string.Join('\n', faults.OrderBy(f => f, StringComparer.Ordinal)));

    [GeneratedRegex(
        @"\((?:EU|EC)\) (?:No )?(?<n>\d{2,4}/\d{2,4})|\b(?:Reg|Dir|Directive|Decision) (?<n>\d{2,4}/\d{2,4})|\b\d+ (?:CFR|USC)\b|\b\d+ FR \d+|CJEU|Food Code|\bStandard \d\.\d\.\d|Schedule \d+|Food and Drug Regulations|\bSI \d+/\d+|S\.I\. \d+/\d+|SR \(NI\) (?<n>\d+/\d+)|\bTTB\b|Warenwetbesluit|\bLIV\b|Food Labelling Standards|Law 199-g|Health and Safety Code|\bWAC\b|Order 1988|\bCPG\b|Food Safety and Hygiene|Food Information Regulations|Fruit Juices and Fruit Nectars")]
    private static partial Regex ActName();

    [GeneratedRegex(
        @"\bArt\b|Art\.|\bArts\b|[Aa]nnex|categor(?:y|ies)|\bcat\.|\bnote\b|\breg\b|\bpoints?\b|table|Table|\bpart \d|Division \d|[Ss]ubpart|Subchapter|\bC-\d+|\bitem|\d+\.\d+|\d-\d{3}|Schedule \d|schedule \d|Ruling|Circular|interpretation|list|199-g|114093|\bFR \d|\bSI \d|S\.I\.|Order 1988|Warenwet|USC \d")]
    private static partial Regex Provision();

    [GeneratedRegex(@"20\d\d-\d\d-\d\d")]
    private static partial Regex Day();

    [GeneratedRegex("recalled|from memory|as reported|as summarised|in a summary|practice|no legal basis")]
    private static partial Regex Recalled();

    [GeneratedRegex("repealed|replaced|assimilated|retained|same figures|now |to 2022")]
    private static partial Regex Replaced();

    [GeneratedRegex(@"as recalled|from memory|\bpress\b|\bblog|wikipedia", RegexOptions.IgnoreCase)]
    private static partial Regex NotRead();
}
