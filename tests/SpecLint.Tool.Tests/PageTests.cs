using System.Text.RegularExpressions;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The pages: of a check, and of labels.</summary>
public sealed partial class PageTests : IClassFixture<DemoBook>
{
    private readonly DemoBook demo;

    public PageTests(DemoBook demo) => this.demo = demo;

    public static TheoryData<string> Hostile =>
    [
        "<script>alert(1)</script>",
        "\\\"><img src=x onerror=alert(1)>",
        "' onmouseover='alert(1)",
        "javascript:alert(1)",
        "</pre></style><style>*{display:none}</style>",
        "\\u202Egnp \\u2066x",
        "\\u001b[2J\\u0007\\u009b31m",
    ];

    [Fact]
    public void The_page_of_the_demo_book_holds_every_finding_and_every_link_leads_somewhere()
    {
        var run = ToolRun.In(demo.Path, "check", "--format", "html", "--quiet");
        Assert.Equal((1, ""), (run.Status, run.Error));
        var anchors = Ids().Matches(run.Output).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(anchors.Count, anchors.Distinct().Count());
        var links = Links().Matches(run.Output).Select(m => m.Groups[1].Value).ToList();
        Assert.NotEmpty(links);
        Assert.Empty(links.Except(anchors));
        Assert.DoesNotContain("<script", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("http", Comments().Replace(run.Output, "").Replace("http-equiv", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("aria-label=\"pH against water activity", run.Output, StringComparison.Ordinal);
        Assert.True(Marks().Count(run.Output) > 40);
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Text_of_a_recipe_stays_text(string hostile)
    {
        using var book = new TestFolder();
        book.Write("bar.json", $$"""{ "name": "{{hostile}}", "jurisdictions": ["IE"] }""");
        book.Write(
            "x.drink.json",
            $$"""{ "name": "{{hostile}}", "ingredients": [ { "item": "{{hostile}}", "amount": "5 ml" }, { "item": "marsh", "amount": "40 ml" } ], "method": [ { "do": "stir", "ice": "{{hostile}}" } ], "glass": "{{hostile}}" }""");
        book.Write(
            "marsh.prep.json",
            $$"""{ "name": "{{hostile}}", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" } ], "yield": "200 g", "keep": { "at": "4 °C", "in": "{{hostile}}" }, "declares": { "advisory": [ "{{hostile}}" ] } }""");
        book.Write(
            "f.stock.json",
            $$"""{ "on": "2026-11-25", "lots": [ { "item": "marsh", "made": "2026-11-24", "lot": "{{hostile}}", "by": "{{hostile}}", "amount": "1 l" } ] }""");
        var pages = new[] { ToolRun.In(book.Path, "check", "--format", "html"), ToolRun.In(book.Path, "labels"), ToolRun.In(book.Path, "labels", "--sheet", "roll") };
        Assert.Equal([1, 0, 0], pages.Select(p => p.Status));
        foreach (var page in pages)
        {
            Assert.DoesNotContain(page.Output, c => (char.IsControl(c) && c != '\n') || c is '\u202E' or '\u2066');
            foreach (string tag in new[] { "<script", "<img", "</pre></style>", "href=\"j", "' onmouseover" })
                Assert.DoesNotContain(tag, page.Output, StringComparison.Ordinal);
            Assert.Equal(1, Styles().Count(page.Output));
        }
    }

    [Fact]
    public void Labels_say_when_how_and_what_is_in_it()
    {
        var run = ToolRun.In(demo.Path, "labels", "--item", "almond-orgeat", "--on", "2026-11-25");
        Assert.Equal((0, ""), (run.Status, run.Error));
        foreach (string text in new[] { "Made Tue 2026-11-24", "Use by <strong>Thu 2026-11-26</strong>", "Keep at 4 °C", "<strong>ALMOND</strong>", "by NK" })
            Assert.Contains(text, run.Output, StringComparison.Ordinal);
        Assert.Single(Sections().Matches(run.Output));
    }

    [Fact]
    public void Honey_brings_the_text_for_infants_and_a_lot_past_its_day_says_so()
    {
        var run = ToolRun.In(demo.Path, "labels", "--item", "heather-honey-syrup", "--on", "2026-12-20", "--units", "us");
        Assert.Contains("infants", run.Output, StringComparison.Ordinal);
        Assert.Contains("NOT TO BE USED", run.Output, StringComparison.Ordinal);
        Assert.Contains("39 °F", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_just_made_is_labelled_without_a_stock_file()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "marsh.prep.json",
            """{ "name": "Marsh cordial", "family": "cordial", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" }, { "item": "citric-acid", "amount": "20 g" } ], "method": [ { "do": "stir" } ], "yield": "1020 g", "keep": { "at": "4 °C", "in": "bottle", "for": "5 d" }, "declares": { "allergens": [] } }""");
        var run = ToolRun.In(book.Path, "labels", "--made", "marsh=2024-02-26", "--by", "NK", "--copies", "3");
        Assert.Equal((1, "speclint: marsh: do not use it. its use-by was 2024-03-01 (its recipe).\n"), (run.Status, run.Error));
        Assert.Equal(3, Sections().Count(run.Output));
        foreach (string text in new[] { "Marsh cordial", "Made Mon 2024-02-26 · by NK", "Keep at 4 °C · bottle" })
            Assert.Contains(text, run.Output, StringComparison.Ordinal);

        // Day 1 is the day made, and 2024 has a 29th of February; on the day of the run it is long past.
        Assert.Contains("Use by <strong>Fri 2024-03-01</strong>", run.Output, StringComparison.Ordinal);
        Assert.Contains("NOT TO BE USED", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("NOT TO BE USED", ToolRun.In(book.Path, "labels", "--made", "marsh").Output, StringComparison.Ordinal);
        Assert.Contains("Made Wed 2026-11-25 · by ____", ToolRun.In(book.Path, "labels", "--made", "marsh").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_check_forbids_gets_a_label_that_forbids_it_and_the_verb_says_why()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        book.Write(
            "garlic-oil.prep.json",
            """{ "name": "Garlic oil", "family": "other", "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "60 g" } ], "method": [ { "do": "steep", "for": "24 h" } ], "yield": "500 g", "keep": { "at": "20 °C", "in": "bottle", "for": "30 d" }, "declares": { "allergens": [] } }""");
        var run = ToolRun.In(book.Path, "labels", "--made", "garlic-oil");
        Assert.Equal(1, run.Status);
        Assert.StartsWith("speclint: garlic-oil: do not use it. garlic-oil (SL50", run.Error, StringComparison.Ordinal);
        Assert.Contains("DO NOT USE – see check", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Use by", run.Output, StringComparison.Ordinal);
        var json = ToolRun.In(book.Path, "labels", "--made", "garlic-oil", "--format", "json");
        Assert.Equal(1, json.Status);
        Assert.DoesNotContain("useBy\"", json.Output, StringComparison.Ordinal);
        Assert.Contains("DO NOT USE", ToolRun.In(book.Path, "scale", "garlic-oil", "--to", "2 kg").Output, StringComparison.Ordinal);
        Assert.Contains("DO NOT USE", ToolRun.In(book.Path, "profile", "garlic-oil").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--made", "no-such-prep")]
    [InlineData("--made", "low-tide")]
    [InlineData("--made", "fogbank-gin=2026-11-25")]
    [InlineData("--made", "sour-cucumber=2026-02-30")]
    [InlineData("--made", "sour-cucumber", "--item", "sour-cucumber")]
    [InlineData("--by", "NK")]
    [InlineData("--copies", "0")]
    public void Wrong_use_of_labels_is_one_sentence_and_status_2(params string[] args)
    {
        var run = ToolRun.In(demo.Path, ["labels", .. args]);
        Assert.Equal(2, run.Status);
        Assert.NotEmpty(run.Error);
        Assert.Empty(run.Output);
    }

    [Theory]
    [InlineData("a4", "size:A4")]
    [InlineData("letter", "size:letter")]
    [InlineData("roll", "size:62mm")]
    public void Every_sheet_has_its_size(string sheet, string css)
    {
        var run = ToolRun.In(demo.Path, "labels", "--sheet", sheet);
        Assert.Contains(css, run.Output, StringComparison.Ordinal);
        Assert.True(Sections().Count(run.Output) > 15);
    }

    [Fact]
    public void No_label_stands_over_the_edge_of_its_page_or_over_another()
    {
        var stocks = SpecLint.Catalogue.LabelStock.All;
        Assert.True(stocks.Count(s => !s.IsRoll) >= 6 && stocks.Count(s => s.IsRoll) >= 2);
        Assert.All(stocks, s =>
        {
            var (x, y) = s.At(s.PerPage - 1);
            Assert.True(x + s.Width <= s.PageWidth + 0.01 && y + s.Height <= s.PageHeight + 0.01, s.Id);
            Assert.True(s.Columns == 1 || s.PitchX >= s.Width - 0.01, s.Id);
            Assert.True(s.Rows == 1 || s.PitchY >= s.Height - 0.01, s.Id);
        });
    }

    [Fact]
    public void Labels_start_where_the_sheet_is_used_up_to_and_say_what_they_are()
    {
        string all = ToolRun.In(demo.Path, "labels", "--item", "almond-orgeat", "--sheet", "letter-4x2", "--start-at", "4", "--copies", "8").Output;
        Assert.Equal(8, Sections().Count(all));
        Assert.Equal(2, all.Split("class=\"sheet\"").Length - 1);
        Assert.Contains("style=\"left:110.33mm;top:63.5mm", all[..all.IndexOf("</section>", StringComparison.Ordinal)], StringComparison.Ordinal);
        Assert.Equal(8, all.Split("Kitchen label, not for sale</p></section>").Length - 1);
        Assert.Equal(2, ToolRun.In(demo.Path, "labels", "--sheet", "letter-4x2", "--start-at", "11").Status);
        Assert.Equal(21, ToolRun.In(demo.Path, "labels", "--sheet", "a4-64x38", "--test-page").Output.Split("<section").Length - 1);
    }

    [Fact]
    public void A_label_that_does_not_fit_is_refused_not_cut()
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        string name = string.Join(" ", Enumerable.Repeat("Marsh cordial of the long summer", 14));
        book.Write(
            "marsh.prep.json",
            $$"""{ "name": "{{name}}", "family": "cordial", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ], "method": [ { "do": "stir" } ], "yield": "1000 g", "keep": { "at": "4 °C", "in": "bottle", "for": "5 d" }, "declares": { "allergens": [] } }""");
        var run = ToolRun.In(book.Path, "labels", "--made", "marsh", "--sheet", "a4-64x38");
        Assert.Equal((2, ""), (run.Status, run.Output));
        Assert.Contains("does not fit on a4-64x38", run.Error, StringComparison.Ordinal);
        Assert.Contains(name, ToolRun.In(book.Path, "labels", "--made", "marsh", "--sheet", "roll-102x152").Output, StringComparison.Ordinal);
    }

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();

    [GeneratedRegex("href=\"#([^\"]+)\"")]
    private static partial Regex Links();

    [GeneratedRegex("<p>[^<]*</p>|<td>[^<]*</td>|<li>[^<]*</li>|<p class=\"soft\">[^<]*</p>|<strong>[^<]*</strong>")]
    private static partial Regex Comments();

    [GeneratedRegex("<g class=\"mark\">")]
    private static partial Regex Marks();

    [GeneratedRegex("<section style=")]
    private static partial Regex Sections();

    [GeneratedRegex("<style>")]
    private static partial Regex Styles();
}
