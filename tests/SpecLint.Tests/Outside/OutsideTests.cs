using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Findings;
using SpecLint.Rules;
using SpecLint.Tests.Published;
using SpecLint.Tests.Support;
using SpecLint.Tests.Text;
using Xunit.Abstractions;

namespace SpecLint.Tests.Outside;

/// <summary>
/// Mistakes that others made and published: reports of poison centres, recalls and warnings of food agencies, the law's own
/// examples (<c>cases.json</c>, each with its source), and slips of units in a public list. Half of them, by a hash of the
/// id, are sealed: they are run for the figure alone, and no rule is written while looking at them. Beside them stand slips
/// of the trade (<c>slips.json</c>) and ordinary recipes (<c>ordinary.json</c>): common practice, no source.
/// </summary>
public sealed class OutsideTests(ITestOutputHelper output)
{
    /// <summary>So many slips of units are drawn, by the hash of the drink.</summary>
    private const int Slips = 16;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    private static readonly List<Case> Cases = [.. Read("cases.json"), .. UnitSlips()];

    [Fact]
    public void Every_case_names_its_source_and_rules_that_exist()
    {
        Assert.True(Cases.Count >= 60, $"{Cases.Count} cases");
        Assert.All(Cases, c => Assert.NotEqual("", c.Source));
        Assert.Equal([], Cases.SelectMany(c => c.Rules).Distinct().Where(r => RuleRegistry.Find(r) is null));
        Assert.InRange(Cases.Count(c => c.IsSealed), Cases.Count / 3, 2 * Cases.Count / 3);
    }

    [Fact]
    public void The_open_half_is_named()
    {
        var open = Cases.FindAll(c => !c.IsSealed);
        var missed = open.Where(c => !IsNamed(c))
            .Select(c => $"{c.Id} ({string.Join(' ', c.Rules)}): {string.Join(", ", Checker.Check(c.Input).Findings.Flat().Select(f => f.Rule.Id).Distinct())}")
            .ToList();
        output.WriteLine($"open half: {open.Count - missed.Count} of {open.Count} named");
        foreach (string one in missed) output.WriteLine(one);
        Assert.True(missed.Count * 10 <= open.Count, string.Join("\n", missed));
    }

    /// <summary>Slips of the trade, written before it was known which rule would see them; all open, and none is a rule's own example.</summary>
    [Fact]
    public void Slips_of_the_trade_are_named()
    {
        var slips = Read("slips.json").ToList();
        Assert.All(slips, c => Assert.NotEqual("", c.Source));
        Assert.Equal([], slips.SelectMany(c => c.Rules).Distinct().Where(r => RuleRegistry.Find(r) is null));
        var missed = slips.Where(c => !IsNamed(c))
            .Select(c => $"{c.Id} ({string.Join(' ', c.Rules)}): {string.Join(", ", Checker.Check(c.Input).Findings.Flat().Select(f => f.Rule.Id).Distinct())}")
            .ToList();
        output.WriteLine($"slips: {slips.Count - missed.Count} of {slips.Count} named");
        foreach (string one in missed) output.WriteLine(one);
        Assert.True(missed.Count * 20 <= slips.Count, string.Join("\n", missed));
    }

    /// <summary>Ordinary drinks and preparations as a bar writes them: no error and no warning but those that are expected, each with the rule.</summary>
    [Fact]
    public void Ordinary_recipes_pass()
    {
        foreach (var one in Read("ordinary.json"))
        {
            var found = Checker.Check(one.Input).Findings
                .Flat()
                .Where(f => f.Level >= Level.Warning)
                .Select(f => $"{f.Subject} {f.Rule.Id}")
                .Distinct()
                .Order(StringComparer.Ordinal);
            Assert.Equal(one.Rules.Order(StringComparer.Ordinal), found);
        }
    }

    /// <summary>The figure and no more: what is missed here stays unread.</summary>
    [LongFact]
    public void The_sealed_half_is_run_for_the_figure()
    {
        var held = Cases.FindAll(c => c.IsSealed);
        output.WriteLine($"sealed half: {held.Count(IsNamed)} of {held.Count} named");
        Assert.NotEmpty(held);
    }

    private static bool IsNamed(Case one) => Checker.Check(one.Input).Findings.Flat().Any(f => one.Rules.Contains(f.Rule.Id));

    private static IEnumerable<Case> Read(string file)
    {
        foreach (var one in JsonNode.Parse(File.ReadAllText(Repository.At("tests", "SpecLint.Tests", "Outside", file)))!.AsArray().OfType<JsonObject>())
        {
            var files = one["files"]!.AsObject().Select(f => Books.File(f.Key, f.Value!.ToJsonString(Indented))).ToList();
            files.Add(Books.File("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{(string)one["bar"]!}}"] }"""));
            yield return new Case(
                (string)one["id"]!, (string)one["source"]!, [.. one["finds"]!.AsArray().Select(r => (string)r!)],
                new BookInput(files, Books.On));
        }
    }

    /// <summary>
    /// Lines of a public list that has lost its dashes, teaspoons and counts to ounces: bitters by the ounce, and sugar, spice,
    /// leaves or fruit in fluid ounces.
    /// </summary>
    private static IEnumerable<Case> UnitSlips()
    {
        var broken = PublishedLines.All.Where(l => l.List == "bar-guide" && l.Unit == "oz" && IsBroken(l))
            .Select(l => Catalogue.BuiltInCatalogue.Slug(l.Drink)).Distinct(StringComparer.Ordinal).OrderBy(Hash);
        int taken = 0;
        foreach (string drink in broken)
        {
            if (PublishedDrinks.Files.FirstOrDefault(f => f.Path == $"{drink}-of-bar-guide.drink.json") is not { } file || taken++ == Slips) continue;
            yield return new Case(
                "unit-slip-" + drink, "R for Data Science community, TidyTuesday 2020-05-26 (CC0), a bar guide's data set",
                ["SL2003", "SL2005", "SL2006", "SL2007", "SL2023"], new BookInput([PublishedDrinks.Bar, file], Books.On));
            if (taken == Slips) yield break;
        }
    }

    private static bool IsBroken(PublishedLine line)
    {
        string item = line.Item.ToLowerInvariant();
        return (item.Contains("bitters", StringComparison.Ordinal) && line.Amount is "1" or "2" or "3")
            || item is "powdered sugar" or "sugar" or "salt" or "pepper"
            || item.Contains("mint leaves", StringComparison.Ordinal)
            || item.EndsWith("wheel", StringComparison.Ordinal) && !item.Contains(',', StringComparison.Ordinal);
    }

    /// <summary>FNV-1a (Fowler, Noll, Vo), 32 bits: the same on every runtime.</summary>
    private static uint Hash(string text)
    {
        uint hash = 2166136261;
        foreach (byte b in Encoding.UTF8.GetBytes(text)) hash = (hash ^ b) * 16777619;
        return hash;
    }

    private sealed record Case(string Id, string Source, string[] Rules, BookInput Input)
    {
        public bool IsSealed => (Hash(Id) >> 8 & 1) == 1;
    }
}
