using System.Text.Json;
using System.Text.Json.Nodes;
using SpecLint.Findings;
using SpecLint.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tests.Outside;

/// <summary>
/// Mistakes thought of as a bar trainer, an inspector, a typesetter, an American bartender or the user of a spreadsheet would
/// make them, before it was known which are named (<c>strangers.json</c>; common practice, no source): each a recipe as it
/// should be, and the same with the mistake. A mistake is named where the wrong recipe has a finding that the right one has
/// not, at least at the level that a head bartender expects. The sealed half is run for the figure alone.
/// </summary>
public sealed class StrangerTests(ITestOutputHelper output)
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    private static readonly List<Pair> Pairs = [.. Read()];

    [Fact]
    public void The_corpus_is_large_and_half_of_it_is_sealed()
    {
        Assert.True(Pairs.Count >= 80, $"{Pairs.Count} mistakes");
        Assert.InRange(Pairs.Count(p => p.IsSealed), Pairs.Count / 3, 2 * Pairs.Count / 3);
    }

    [Fact]
    public void The_open_half_is_named_at_the_level_that_a_head_bartender_expects()
    {
        var open = Pairs.FindAll(p => !p.IsSealed);
        var missed = open.FindAll(p => !p.IsNamed(p.Expected));
        Print("open", open);
        foreach (var pair in missed) output.WriteLine($"  missed: {pair.Id} ({pair.Expected}): {string.Join("; ", pair.New.Select(f => $"{f.Rule.Id} {f.Level}"))}");
        Assert.True(open.Count(p => !p.IsNamed(Level.Note)) * 10 <= open.Count, "named at all: " + string.Join(", ", missed.Select(p => p.Id)));
        Assert.True(missed.Count * 5 <= open.Count, "named at the level expected: " + string.Join(", ", missed.Select(p => p.Id)));
    }

    /// <summary>What is right has no error and no warning.</summary>
    [Fact]
    public void The_right_recipes_of_the_open_half_pass()
    {
        var found = Pairs.Where(p => !p.IsSealed).SelectMany(p => p.Right.Where(f => f.Level >= Level.Warning).Select(f => $"{p.Id}: {f.Rule.Id} {f.Message}")).ToList();
        foreach (string one in found) output.WriteLine(one);
        Assert.Empty(found);
    }

    /// <summary>The figure and no more: what is missed here stays unread.</summary>
    [LongFact]
    public void The_sealed_half_is_run_for_the_figure()
    {
        var held = Pairs.FindAll(p => p.IsSealed);
        Print("sealed", held);
        Assert.NotEmpty(held);
    }

    private void Print(string half, List<Pair> pairs)
    {
        output.WriteLine($"{half} half: {pairs.Count(p => p.IsNamed(Level.Note))} of {pairs.Count} named, {pairs.Count(p => p.IsNamed(p.Expected))} at the level expected");
        foreach (var group in pairs.GroupBy(p => p.Expected).OrderByDescending(g => g.Key))
            output.WriteLine($"  {group.Key}: {group.Count(p => p.IsNamed(Level.Note))} of {group.Count()} named, {group.Count(p => p.IsNamed(p.Expected))} at that level");
        output.WriteLine($"  right recipes with an error or a warning: {pairs.Count(p => p.Right.Exists(f => f.Level >= Level.Warning))} of {pairs.Count}");
    }

    private static IEnumerable<Pair> Read()
    {
        foreach (var one in JsonNode.Parse(File.ReadAllText(Repository.At("tests", "SpecLint.Tests", "Outside", "strangers.json")))!.AsArray().OfType<JsonObject>())
        {
            var right = one["right"]!.AsObject().ToDictionary(f => f.Key, f => f.Value!.ToJsonString(Indented), StringComparer.Ordinal);
            right.TryAdd("bar.json", $$"""{ "name": "The Saltmarsh Room", "jurisdictions": ["{{(string)one["bar"]!}}"] }""");
            var wrong = new Dictionary<string, string>(right, StringComparer.Ordinal);
            foreach (var file in one["wrong"]!.AsObject()) wrong[file.Key] = file.Value!.ToJsonString(Indented);
            yield return new Pair((string)one["id"]!, Enum.Parse<Level>((string)one["level"]!, ignoreCase: true), (bool)one["sealed"]!, Findings(right), Findings(wrong));
        }
    }

    private static List<Finding> Findings(Dictionary<string, string> files) =>
        [.. Checker.Check(new BookInput([.. files.Select(f => Books.File(f.Key, f.Value))], Books.On)).Findings.Flat()];

    private sealed record Pair(string Id, Level Expected, bool IsSealed, List<Finding> Right, List<Finding> Wrong)
    {
        /// <summary>What the wrong recipe has and the right one has not.</summary>
        public List<Finding> New { get; } = Wrong.FindAll(w => !Right.Exists(r => r.Rule.Id == w.Rule.Id && r.Subject == w.Subject && r.Level >= w.Level && r.Path == w.Path));

        public bool IsNamed(Level level) => New.Exists(f => f.Level >= level);
    }
}
