using System.Text.RegularExpressions;

namespace SpecLint.Tests.Rules;

/// <summary>An example of a rule's page: a small book, and the findings expected on its lines.</summary>
/// <param name="Page">Id of the rule.</param>
/// <param name="Line">Line of the page on which it starts.</param>
/// <param name="Clean">Whether it is marked clean.</param>
/// <param name="Files">Paths and texts.</param>
/// <param name="Expected">Path, line and rule of each finding expected.</param>
internal sealed record PageExample(
    string Page, int Line, bool Clean, IReadOnlyList<(string Path, string Text)> Files,
    IReadOnlyList<(string Path, int Line, string Rule)> Expected);

/// <summary>
/// A rule's page. Examples are fenced blocks whose first words are <c>jsonc clean</c> or <c>jsonc finding</c>. A line
/// <c>// == sour.drink.json</c> starts a file; a comment <c>// finds SL3001</c> marks the line on which a finding is expected
/// (several ids may follow, parted by blanks).
/// </summary>
internal sealed partial class RulePage
{
    private RulePage(string id, string text)
    {
        Id = id;
        Text = text;
        Examples = ReadExamples(id, text);
    }

    /// <summary>Headings that every page has, in order.</summary>
    public static readonly string[] Headings = ["## What it checks", "## Why", "## Source", "## How to put it right", "## When to accept it", "## Examples"];

    public string Id { get; }

    public string Text { get; }

    public IReadOnlyList<PageExample> Examples { get; }

    public static IReadOnlyList<RulePage> All { get; } =
        [.. Directory.GetFiles(Repository.At("rules-docs"), "SL*.md").OrderBy(f => f, StringComparer.Ordinal)
            .Select(f => new RulePage(Path.GetFileNameWithoutExtension(f), File.ReadAllText(f)))];

    private static List<PageExample> ReadExamples(string id, string text)
    {
        var examples = new List<PageExample>();
        string[] lines = text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            var fence = Fence().Match(lines[i].TrimEnd());
            if (!fence.Success) continue;
            var files = new List<(string, string)>();
            var expected = new List<(string, int, string)>();
            string path = "";
            var body = new List<string>();
            int start = i + 1;
            for (i++; i < lines.Length && !lines[i].StartsWith("```", StringComparison.Ordinal); i++)
            {
                var file = FileMark().Match(lines[i].TrimEnd());
                if (file.Success)
                {
                    Close();
                    path = file.Groups[1].Value;
                    continue;
                }

                body.Add(lines[i]);
                var mark = FindingMark().Match(lines[i]);
                if (!mark.Success) continue;
                foreach (string rule in mark.Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)) expected.Add((path, body.Count, rule));
            }

            Close();
            examples.Add(new PageExample(id, start, fence.Groups[1].Value == "clean", files, expected));

            void Close()
            {
                if (path.Length > 0) files.Add((path, string.Join('\n', body) + "\n"));
                body.Clear();
            }
        }

        return examples;
    }

    [GeneratedRegex("^```jsonc (clean|finding)$")]
    private static partial Regex Fence();

    [GeneratedRegex(@"^// == (\S+)$")]
    private static partial Regex FileMark();

    [GeneratedRegex(@"// finds ((?:SL\d{4} ?)+)")]
    private static partial Regex FindingMark();
}
