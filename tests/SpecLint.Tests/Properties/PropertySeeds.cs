using SpecLint.Rules;
using SpecLint.Tests.Rules;

namespace SpecLint.Tests.Properties;

/// <summary>
/// The books that properties start from: every example of the page of every rule that guards against harm, broken and clean,
/// each recipe of the demo with what goes into it, the hazardous preparations of <see cref="HazardousPreps"/>, the hazards that
/// something hides of <see cref="HiddenHazards"/>, and own files of every kind of <see cref="OwnFiles"/>.
/// </summary>
internal static class PropertySeeds
{
    public static IReadOnlyList<PropertyBook> All { get; } = [.. OfPages(), .. HazardousPreps.Books(), .. HiddenHazards.Books(), .. OwnFiles.Books(), .. OfDemo()];

    private static IEnumerable<PropertyBook> OfPages()
    {
        foreach (var page in RulePage.All.Where(p => RuleRegistry.Find(p.Id)!.Safety))
        {
            int number = 0;
            foreach (var example in page.Examples)
            {
                if (PropertyBook.Of($"{page.Id}, example {++number}", example.Files) is not { } book) continue;
                var marked = example.Expected.Where(e => RuleRegistry.Find(e.Rule)!.Safety).ToList();
                yield return book with
                {
                    IsWhole = true,
                    Expected = [.. marked.Select(e => (e.Rule, Level.None)).Distinct()],
                    Places = [.. marked.Select(e => $"{e.Rule} on {e.Path}").Order(StringComparer.Ordinal)],
                };
            }
        }
    }

    private static IEnumerable<PropertyBook> OfDemo()
    {
        string folder = Repository.At("src", "SpecLint.Tool", "Demo");
        var texts = Directory.GetFiles(folder, "*.json").OrderBy(f => f, StringComparer.Ordinal).ToDictionary(f => Path.GetFileName(f)!, File.ReadAllText, StringComparer.Ordinal);
        var whole = PropertyBook.Of("demo", texts.Select(t => (t.Key, t.Value)))!;
        var ids = texts.Keys.ToDictionary(p => p[..p.IndexOf('.', StringComparison.Ordinal)], StringComparer.Ordinal);
        foreach (string path in texts.Keys.Where(p => p.EndsWith(".drink.json", StringComparison.Ordinal) || p.EndsWith(".prep.json", StringComparison.Ordinal)))
        {
            var reached = new SortedSet<string>(StringComparer.Ordinal) { "bar.json" };
            var waiting = new Stack<string>([path]);
            while (waiting.Count > 0)
            {
                string next = waiting.Pop();
                if (!reached.Add(next)) continue;
                foreach (var (_, id) in PropertySteps.References(whole[next]!))
                {
                    if (ids.TryGetValue(id, out string? part)) waiting.Push(part);
                }

                // A by-product is left by another preparation of the book.
                foreach (string other in texts.Keys.Where(k => k.EndsWith(".prep.json", StringComparison.Ordinal) && !reached.Contains(k)))
                {
                    if (whole[other]!["byProducts"] is System.Text.Json.Nodes.JsonArray left && left.Any(l => PropertySteps.References(whole[next]!).Any(r => r.Id == (string?)l!["id"]))) waiting.Push(other);
                }
            }

            yield return PropertyBook.Of($"demo: {path}", reached.Select(p => (p, texts[p])))!;
        }
    }
}
