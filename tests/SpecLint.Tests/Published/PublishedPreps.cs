using SpecLint.Reading;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.Published;

/// <summary>The preparation formulas of the trade (<c>preps.csv</c>) as files.</summary>
internal static class PublishedPreps
{
    /// <summary>The files, one a formula.</summary>
    public static IReadOnlyList<SourceFile> Files { get; } =
        [.. Csv.Read(Repository.At("tests", "SpecLint.Tests", "Published", "preps.csv"))
            .Where(r => r.Length == 7 && r[0] != "id" && r[0][0] != '#')
            .Select(r => Books.File($"{r[0]}.prep.json", Text(r)))];

    private static string Text(string[] row)
    {
        var lines = row[3].Split("; ").Select(p => p.Split(' ', 2)).Select(p => $$"""{ "item": "{{p[0]}}", "amount": "{{p[1]}}" }""");
        var steps = row[4].Split("; ").Select(Step);
        string declares = row[6].Contains("\"declares\"", StringComparison.Ordinal) ? "" : ",\n  \"declares\": { \"allergens\": [] }";
        return $$"""
            {
              "name": "{{row[1]}}",
              "family": "{{row[2]}}",
              "ingredients": [
                {{string.Join(",\n    ", lines)}}
              ],
              "method": [
                {{string.Join(",\n    ", steps)}}
              ],
              "yield": "{{row[5]}}",
              {{(row[6].Length > 0 ? row[6] + ",\n  " : "")}}"keep": { "at": "{{(row[2] == "freezer-batch" ? "-18" : "4")}} °C", "in": "bottle", "for": "1 d" },
              "source": "the trade's formula"{{declares}}
            }
            """;
    }

    /// <summary>A step as the table writes it: <c>steep for 7 d</c>, <c>dry at 58 °C for 16 h until brittle</c>.</summary>
    private static string Step(string written)
    {
        string[] words = written.Split(' ');
        var text = new System.Text.StringBuilder($$"""{ "do": "{{words[0]}}" """);
        for (int i = 1; i < words.Length;)
        {
            int end = i + 1;
            while (end < words.Length && words[end] is not ("to" or "at" or "for" or "until")) end++;
            text.Append($", \"{words[i]}\": \"{string.Join(' ', words[(i + 1)..end])}\"");
            i = end;
        }

        return text.Append(" }").ToString();
    }
}
