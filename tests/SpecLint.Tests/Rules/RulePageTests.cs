using System.Text;
using System.Text.RegularExpressions;
using SpecLint.Findings;
using SpecLint.Rules;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Rules;

/// <summary>Pages and rules agree, and every example of every page does what the page says.</summary>
public sealed partial class RulePageTests
{
    /// <summary>
    /// SL1003 is about files of megabytes and SL9025 about a hundred files, which no page can hold; SL1028 needs the schema
    /// engine that the tool brings. Each has tests of its own.
    /// </summary>
    private static readonly HashSet<string> WithoutFindingExample = ["SL1003", "SL1028", "SL9025"];

    public static TheoryData<string> PageIds => [.. RulePage.All.Select(p => p.Id)];

    [Fact]
    public void Every_rule_has_a_page_and_every_page_a_rule()
    {
        var rules = RuleRegistry.All.Select(r => r.Info.Id).ToHashSet();
        var pages = RulePage.All.Select(p => p.Id).ToHashSet();
        Assert.Equal([], rules.Except(pages).OrderBy(i => i));
        Assert.Equal([], pages.Except(rules).OrderBy(i => i));
    }

    [Fact]
    public void Ids_and_names_are_used_once()
    {
        Assert.Equal([], RuleRegistry.All.GroupBy(r => r.Info.Id).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.Equal([], RuleRegistry.All.GroupBy(r => r.Info.Name).Where(g => g.Count() > 1).Select(g => g.Key));
    }

    [Theory]
    [MemberData(nameof(PageIds))]
    public void Page_has_its_headings_and_examples(string id)
    {
        var page = RulePage.All.Single(p => p.Id == id);
        var info = RuleRegistry.Find(id)!;
        int at = 0;
        foreach (string heading in RulePage.Headings)
        {
            int found = page.Text.IndexOf("\n" + heading + "\n", at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"{id}: the heading {heading} is missing or out of order");
            at = found;
        }

        Assert.StartsWith(
            $"# {id} {info.Name}\n\n{info.Title}.\n\nDefault level: {info.Level.ToString().ToLowerInvariant()}. {Sentence(info.Level)}",
            page.Text,
            StringComparison.Ordinal);
        Assert.True(page.Examples.Count(e => e.Clean) >= 2, $"{id}: two clean examples");
        Assert.True(page.Examples.Count(e => !e.Clean) >= 2 || WithoutFindingExample.Contains(id), $"{id}: two examples with a finding");
        Assert.All(
            page.Examples.Where(e => !e.Clean),
            e => Assert.True(e.Expected.Any(x => x.Rule == id), $"{id}, line {e.Line}: the example has no `// finds {id}`"));
    }

    /// <summary>What a level says: the sentence against which each rule's level was weighed.</summary>
    private static string Sentence(Level level) => level switch
    {
        Level.Error => "It must not be made, served or sold like this.",
        Level.Warning => "A head bartender would change it.",
        Level.Note => "Worth knowing.",
        _ => "Off until a house asks for it.",
    };

    [Theory]
    [MemberData(nameof(PageIds))]
    public void Examples_do_what_the_page_says(string id)
    {
        foreach (var example in RulePage.All.Single(p => p.Id == id).Examples)
        {
            var result = Books.Check([.. example.Files]);
            var found = Flat(result.Findings)
                .Select(f => $"{f.Place.File.Path}:{f.Place.Start.Line} {f.Rule.Id}")
                .OrderBy(f => f, StringComparer.Ordinal)
                .ToArray();
            var expected = example.Expected.Select(e => $"{e.Path}:{e.Line} {e.Rule}").OrderBy(f => f, StringComparer.Ordinal).ToArray();
            if (found.SequenceEqual(expected)) continue;
            var text = new StringBuilder($"{id}, example at line {example.Line} of its page\n");
            foreach (string missing in expected.Except(found)) text.Append("  expected and not found: ").AppendLine(missing);
            foreach (var surplus in Flat(result.Findings).Where(f => !expected.Contains($"{f.Place.File.Path}:{f.Place.Start.Line} {f.Rule.Id}")))
                text.Append($"  found and not expected: {surplus.Place.File.Path}:{surplus.Place.Start.Line} {surplus.Rule.Id} {surplus.Message}\n");
            if (expected.Except(found).Any() || found.Except(expected).Any() || found.Length != expected.Length) Assert.Fail(text.ToString());
        }
    }

    /// <summary>The index is made from the rules: a run on somebody's own machine writes it, and in continuous integration it is as committed.</summary>
    [Fact]
    public void Index_is_up_to_date() =>
        Golden.Check(Repository.At("rules-docs", "README.md"), Index(), write: Environment.GetEnvironmentVariable("CI") != "true");

    [Theory]
    [InlineData("README.md")]
    [InlineData("changes.md")]
    public void Lists_name_only_rules_that_exist(string file)
    {
        var ids = RuleId().Matches(File.ReadAllText(Repository.At("rules-docs", file))).Select(m => m.Value).Distinct().ToList();
        Assert.True(ids.Count > 50);
        Assert.Equal([], ids.Where(i => RuleRegistry.Find(i) is null));
    }

    [GeneratedRegex(@"\bSL\d{4}\b")]
    private static partial Regex RuleId();

    /// <summary>The table by symptom, which is written by hand: it stays as it is when the index is generated.</summary>
    private static string Symptoms()
    {
        const string start = "<!-- symptoms -->", end = "<!-- /symptoms -->";
        string text = File.ReadAllText(Repository.At("rules-docs", "README.md")).ReplaceLineEndings("\n");
        int from = text.IndexOf(start, StringComparison.Ordinal), to = text.IndexOf(end, StringComparison.Ordinal);
        Assert.True(from >= 0 && to > from, "rules-docs/README.md has no table by symptom");
        return text[from..(to + end.Length)];
    }

    private static IEnumerable<Finding> Flat(IEnumerable<Finding> findings) => findings.SelectMany(f => Flat(f.Folded).Prepend(f));

    private static string Index()
    {
        var text = new StringBuilder();
        text.Append("# Rules\n\nThe number's first digit is the family. The lists by family are generated from the rules. "
            + "[Changes](changes.md) lists what is new.\n\n");
        text.Append("Error: it must not be made, served or sold like this. Warning: a head bartender would change it. Note: worth knowing.\n\n");
        text.Append(Symptoms()).Append('\n');
        foreach (var family in RuleRegistry.All.GroupBy(r => r.Info.Family).OrderBy(g => g.Key))
        {
            text.Append($"\n## {(int)family.Key} {FamilyNames.Of(family.Key)}\n\n| rule | level | what is wrong |\n| --- | --- | --- |\n");
            foreach (var rule in family)
                text.Append($"| [{rule.Info.Id} {rule.Info.Name}]({rule.Info.Id}.md) | {rule.Info.Level.ToString().ToLowerInvariant()} "
                    + $"| {rule.Info.Title} |\n");
        }

        return text.ToString();
    }
}
