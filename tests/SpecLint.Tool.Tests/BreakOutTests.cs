using System.Text.RegularExpressions;
using System.Xml.Linq;
using Markdig;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>
/// Text of a recipe that tries to be something else stays text, in every output that people read: a terminal, a page, labels,
/// Markdown (rendered by Markdig, an implementation of CommonMark and its tables), annotations of GitHub, JUnit.
/// </summary>
public sealed partial class BreakOutTests
{
    /// <summary>As written in JSON.</summary>
    private static readonly string[] Hostile =
    [
        "<script>alert(1)</script>",
        "\\\"><img src=x onerror=alert(1)>",
        "' onmouseover='alert(1)",
        "[x](javascript:alert(1))",
        "javascript:alert(1)",
        "<javascript:alert(1)>",
        "![x](https://example.invalid/x.png)",
        "</td></tr></table><h1>x</h1>",
        "</pre></style><style>*{display:none}</style>",
        "x | y | z",
        "`x` **x** ~~x~~ $x$ :x: @somebody #12",
        "\\n::error::forged",
        "\\r\\n\\n# A heading\\n- [ ] a list",
        "\\u202Egnp \\u2066x\\u2069 \\u200B\\uFEFF",
        "\\u001b[2J\\u001b]0;title\\u0007\\u009b31m\\u0090q",
        "&lt;b&gt; &#60;script&#62;",
    ];

    public static TheoryData<string> All => [.. Hostile];

    [Theory]
    [MemberData(nameof(All))]
    public void Nothing_steers_a_terminal(string hostile)
    {
        using var book = Book(hostile);
        foreach (string[] args in new string[][]
        {
            ["check"], ["profile"], ["linecheck", "t"], ["scale", "x", "--serves", "4"], ["correct"], ["settings"],
            ["compare", "before", "."], ["check", "--units", "us"], ["linecheck", "t", "--units", "us"],
        })
        {
            var run = ToolRun.In(book.Path, args);
            Assert.True(run.Status is 0 or 1, $"{string.Join(' ', args)}: {run.Status} {run.Error}");
            AssertPlain(run.Output);
            AssertPlain(run.Error);

            // With colour on, the only escapes are those of the tool itself.
            AssertPlain(Colours().Replace(ToolRun.With(book.Path, new RunOptions { Terminal = true }, args).Output, ""));
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Nothing_becomes_markup_of_a_page_or_a_label(string hostile)
    {
        using var book = Book(hostile);
        foreach (string[] args in new string[][]
        {
            ["check", "--format", "html"], ["linecheck", "t", "--format", "html"], ["linecheck", "t", "--format", "html", "--units", "us"],
            ["labels"], ["labels", "--sheet", "roll", "--bought"], ["labels", "--made", "marsh", "--by", Decoded(hostile)],
        })
        {
            var run = ToolRun.In(book.Path, args);
            Assert.True(run.Status is 0 or 1, $"{string.Join(' ', args)}: {run.Status} {run.Error}");
            AssertPlain(run.Output);
            foreach (Match tag in Tags().Matches(Head().Replace(run.Output, "")))
            {
                Assert.Contains(tag.Groups["name"].Value, Known);
                foreach (Match attribute in Attributes().Matches(tag.Groups["rest"].Value))
                {
                    Assert.Contains(attribute.Groups["name"].Value, KnownAttributes);
                    if (attribute.Groups["name"].Value == "href") Assert.Matches("^#(finding|line)-[a-z0-9_-]+$", attribute.Groups["value"].Value);
                    if (attribute.Groups["name"].Value == "style")
                        Assert.Matches("^((left|top|width|height):-?[0-9.]+mm;?)+(font-size:[0-9.]+pt)?$", attribute.Groups["value"].Value);
                    if (attribute.Groups["name"].Value == "id") Assert.Matches("^[a-z0-9_-]+$", attribute.Groups["value"].Value);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Nothing_becomes_markup_of_a_comment_on_a_pull_request(string hostile)
    {
        using var book = Book(hostile);
        var run = ToolRun.With(
            book.Path,
            new RunOptions { Variables = new Dictionary<string, string> { ["GITHUB_STEP_SUMMARY"] = book["summary.md"] } },
            "check",
            "--format",
            "github");
        Assert.True(run.Status is 0 or 1, run.Error);
        var compared = ToolRun.In(book.Path, "compare", "before", ".", "--format", "markdown");
        Assert.Equal((0, ""), (compared.Status, compared.Error));

        // What GitHub's dialect has beyond CommonMark.
        var pipeline = new MarkdownPipelineBuilder()
            .UsePipeTables()
            .UseAutoLinks()
            .UseEmphasisExtras()
            .UseTaskLists()
            .UseFootnotes()
            .UseMathematics()
            .UseAutoIdentifiers()
            .Build();
        foreach (string markdown in new[] { compared.Output, File.ReadAllText(book["summary.md"]) })
        {
            AssertPlain(markdown);
            string html = Markdown.ToHtml(markdown, pipeline);
            Assert.Contains("<table>", html, StringComparison.Ordinal);
            Assert.Single(Headings().Matches(html));
            foreach (Match tag in Tags().Matches(html))
            {
                Assert.Contains(tag.Groups["name"].Value, new[] { "h3", "p", "table", "thead", "tbody", "tr", "th", "td", "br", "strong", "ul", "li", "code" });
                Assert.Matches("^( id=\"[a-z0-9-]*\"| /)?$", tag.Groups["rest"].Value);
            }

            // A row has as many cells as its table has heads.
            foreach (string table in html.Split("<table>")[1..])
            {
                int heads = Regex.Count(table, "<th[ >]");
                Assert.All(Rows().Matches(table.Split("</table>")[0]).Skip(1), r => Assert.Equal(heads, Regex.Count(r.Value, "<td[ >]")));
            }
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Nothing_forges_an_annotation_or_breaks_a_log_of_tests(string hostile)
    {
        using var book = Book(hostile);
        string[] lines = ToolRun.In(book.Path, "check", "--format", "github").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        AssertPlain(string.Join('\n', lines));
        Assert.All(lines[..^1], l => Assert.Matches("^::(error|warning|notice) (file=[^:]*|title=SpecLint)::[^\\r]*$", l));
        Assert.Matches("^[0-9]+ errors?, [0-9]+ warnings?, [0-9]+ notes?", lines[^1]);
        var suites = XDocument.Parse(ToolRun.In(book.Path, "check", "--format", "junit").Output);
        Assert.All(
            suites.Descendants(),
            e => Assert.Contains(e.Name.LocalName, new[] { "testsuites", "testsuite", "testcase", "failure", "skipped", "system-out" }));
    }

    private static readonly string[] Known =
    [
        "html", "body", "main", "header", "footer", "section", "article", "h1", "h2", "h3", "p", "a", "span", "strong", "mark", "pre", "ul", "li", "div", "details", "summary",
        "table", "caption", "thead", "tbody", "tr", "th", "td", "svg", "g", "title", "path", "line", "circle", "rect", "text",
    ];

    private static readonly string[] KnownAttributes =
    [
        "lang", "style", "id", "class", "data-head", "href", "role", "tabindex", "aria-label", "scope", "viewBox", "d", "x", "y", "x1", "x2", "y1", "y2", "cx", "cy", "r", "width", "height",
        "fill", "fill-opacity", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray", "text-anchor", "font-style", "transform",
    ];

    private static TestFolder Book(string hostile)
    {
        var book = new TestFolder();
        foreach (var (folder, amount) in new[] { ("before/", "40 ml"), ("", "55 ml") })
        {
            book.Write(
                folder + "bar.json",
                $$"""{ "name": "{{hostile}}", "jurisdictions": ["IE"], "glasses": { "small": { "name": "{{hostile}}", "brim": "100 ml" } }, "notes": "{{hostile}}" }""");
            book.Write(folder + "x.drink.json", $$"""
                { "name": "{{hostile}}", "style": "{{hostile}}", "ingredients": [ { "item": "gin", "amount": "{{amount}}" }, { "item": "marsh", "amount": "40 ml", "note": "{{hostile}}" } ],
                  "method": [ { "do": "stir", "ice": "{{hostile}}", "until": "{{hostile}}" } ], "glass": "{{hostile}}", "garnish": [ { "item": "dill", "amount": "{{hostile}}" } ],
                  "declares": { "allergens": [ "{{hostile}}" ], "advisory": [ "{{hostile}}" ] }, "author": "{{hostile}}", "source": "{{hostile}}",
                  "accept": [ { "rule": "{{hostile}}", "because": "{{hostile}}" } ] }
                """);
            book.Write(
                folder + "y.drink.json",
                $$"""{ "name": "Y {{hostile}}", "ingredients": [ { "item": "{{hostile}}", "amount": "{{hostile}}" }, { "item": "marsh", "amount": "{{amount}}" } ], "{{hostile}}": 1 }""");
            book.Write(folder + "marsh.prep.json", $$"""
                { "name": "{{hostile}}", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "100 g" }, { "item": "water", "amount": "{{(folder.Length > 0 ? "100" : "160")}} g" } ],
                  "yield": "200 g", "keep": { "at": "4 °C", "in": "{{hostile}}", "claim": "{{hostile}}" }, "declares": { "advisory": [ "{{hostile}}" ] } }
                """);
        }

        book.Write(
            "t.menu.json",
            $$"""{ "name": "{{hostile}}", "drinks": [ { "drink": "x", "name": "{{hostile}}", "words": "{{hostile}}", "covers": 9 }, { "drink": "{{hostile}}" } ] }""");
        book.Write("f.stock.json", $$"""
            { "on": "2026-11-25", "lots": [
              { "item": "marsh", "made": "2026-11-24", "lot": "{{hostile}}", "by": "{{hostile}}", "in": "{{hostile}}", "amount": "1 l", "measured": { "ph": 3.1, "meter": "{{hostile}}" } },
              { "item": "gin", "opened": "2026-11-20", "lot": "{{hostile}}", "useBy": "2026-11-21", "amount": "1 l" }, { "item": "{{hostile}}" } ] }
            """);
        return book;
    }

    private static string Decoded(string json) => System.Text.Json.JsonSerializer.Deserialize<string>($"\"{json}\"")!;

    private static void AssertPlain(string text) =>
        Assert.DoesNotContain(
            text,
            c => (char.IsControl(c) && c != '\n')
                || c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\u200B' or '\uFEFF');

    [GeneratedRegex("\u001b\\[[0-9]+m")]
    private static partial Regex Colours();

    [GeneratedRegex("<!DOCTYPE html>|<head>.*</head>", RegexOptions.Singleline)]
    private static partial Regex Head();

    [GeneratedRegex("</?(?<name>[a-zA-Z!?][^\\s>/]*)(?<rest>[^>]*)>")]
    private static partial Regex Tags();

    [GeneratedRegex(" (?<name>[^\\s=\"']+)(=\"(?<value>[^\"]*)\")?")]
    private static partial Regex Attributes();

    [GeneratedRegex("<h[1-6]")]
    private static partial Regex Headings();

    [GeneratedRegex("<tr>.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex Rows();
}
