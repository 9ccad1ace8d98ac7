using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Pages;

/// <summary>What a browser shows of the pages, counted against the JSON of the same commands.</summary>
public sealed class BrowserTests(Browser browser) : IClassFixture<Browser>
{
    [BrowserFact]
    public void Every_page_is_seen_in_both_schemes_and_widths()
    {
        Assert.Equal(8 * 2 * 3, browser.Seen.Count);
        foreach (var view in browser.Seen)
        {
            string picture = $"{Text(view, "page")}-{view.GetProperty("width").GetInt32()}-{Text(view, "scheme")}.png";
            Assert.True(new FileInfo(Path.Combine(Browser.Pictures, picture)) is { Exists: true, Length: > 1000 }, picture);
        }

        // Light and dark do differ, but for labels, which are paper.
        foreach (string page in new[] { "check", "evening" })
            Assert.Equal(2, Of(page).Select(v => Text(v, "paper")).Distinct().Count());
    }

    [BrowserFact]
    public void No_page_asks_for_anything_complains_or_scrolls_sideways() => Assert.All(browser.Seen, view =>
    {
        Assert.Empty(Texts(view, "messages"));
        Assert.Empty(Texts(view, "requests"));
        Assert.Empty(Texts(view, "deadLinks"));
        Assert.True(
            view.GetProperty("scrollWidth").GetDouble() <= view.GetProperty("width").GetDouble(),
            $"{Text(view, "page")} is {view.GetProperty("scrollWidth")} px wide at {view.GetProperty("width")}");
    });

    [BrowserFact]
    public void The_documents_show_the_pages_as_they_are()
    {
        Assert.NotEmpty(browser.Seen);
        Browser.Documented(("check-top.png", "check.png"), ("evening-top.png", "linecheck.png"), ("card-top.png", "card.png"));
    }

    /// <summary>An allergen out of sight is an allergen that nobody sees.</summary>
    [BrowserFact]
    public void No_column_of_allergens_is_out_of_sight_on_a_phone() =>
        Assert.All(browser.Seen.Where(v => v.GetProperty("width").GetInt32() < 700), view => Assert.Empty(Texts(view, "cut")));

    [BrowserFact]
    public void Axe_finds_nothing_against_it() => Assert.All(browser.Seen, view =>
    {
        Assert.True(view.GetProperty("checks").GetInt32() > 10);
        Assert.True(
            Texts(view, "violations").Count == 0,
            $"{Text(view, "page")} {Text(view, "scheme")} {view.GetProperty("width")}: {string.Join("\n", Texts(view, "violations"))}");
    });

    [BrowserFact]
    public void The_plots_of_a_check_hold_a_mark_for_every_recipe_that_has_both_facts()
    {
        using var profiles = JsonDocument.Parse(ToolRun.In(browser.Demo.Path, "profile", "--format", "json").Bytes);
        int Having(string kind, params string[] facts) => profiles.RootElement.EnumerateArray().Count(p =>
            p.GetProperty("kind").GetString() == kind && facts.All(f => p.GetProperty("facts").TryGetProperty(f, out _)));
        Assert.True(Having("drink", "abv") > 20);
        foreach (var view in Of("check"))
        {
            var marks = view.GetProperty("marks");
            Assert.Equal(Having("drink", "sugar", "acid"), marks.GetProperty("Sugar against acid").GetInt32());
            Assert.Equal(Having("drink", "servedVolume", "abv"), marks.GetProperty("Strength against volume in the glass").GetInt32());
            Assert.Equal(Having("prep", "ph", "waterActivity"), marks.GetProperty("pH against water activity of the preparations").GetInt32());
            Assert.Equal(3, marks.EnumerateObject().Count());
        }
    }

    [BrowserFact]
    public void The_plots_of_a_line_check_hold_its_drinks_and_its_dated_lots()
    {
        foreach (var (page, day) in new[] { ("evening", "2026-11-25"), ("days-later", "2026-11-28") })
        {
            using var check = JsonDocument.Parse(ToolRun.In(browser.Demo.Path, "linecheck", "evening", "--on", day, "--format", "json").Bytes);
            var drinks = check.RootElement.GetProperty("drinks").EnumerateArray().Select(d => d.GetProperty("id").GetString()!).ToArray();
            using var profiles = JsonDocument.Parse(ToolRun.In(browser.Demo.Path, ["profile", "--format", "json", .. drinks]).Bytes);
            int Having(params string[] facts) =>
                profiles.RootElement.EnumerateArray().Count(p => facts.All(f => p.GetProperty("facts").TryGetProperty(f, out _)));
            int dated = check.RootElement.GetProperty("lots")
                .EnumerateArray()
                .Count(l => l.TryGetProperty("useBy", out _) && (l.TryGetProperty("made", out _) || l.TryGetProperty("opened", out _)));
            Assert.True(dated > 20);
            foreach (var view in Of(page))
            {
                var marks = view.GetProperty("marks");
                Assert.Equal(Having("sugar", "acid"), marks.GetProperty("Sugar against acid").GetInt32());
                Assert.Equal(Having("servedVolume", "abv"), marks.GetProperty("Strength against volume in the glass").GetInt32());
                Assert.Equal(dated, marks.GetProperty("Life of the lots").GetInt32());
            }
        }
    }

    [BrowserFact]
    public void Every_plot_stays_in_its_frame_and_has_a_table_with_a_row_for_every_mark() => Assert.All(browser.Seen, view =>
    {
        Assert.Empty(Texts(view, "outside"));
        foreach (var plot in view.GetProperty("marks").EnumerateObject())
        {
            string caption = plot.Name.StartsWith("pH against", StringComparison.Ordinal)
                ? "pH and water activity of the preparations"
                : plot.Name == "Life of the lots" ? "Lots by use-by" : plot.Name;
            var table = view.GetProperty("tables").EnumerateArray().Single(t => t.GetProperty("caption").GetString() == caption);
            Assert.True(table.GetProperty("rows").GetInt32() >= plot.Value.GetInt32(), plot.Name);
        }
    });

    [BrowserFact]
    public void A_link_of_a_finding_jumps_to_its_line_in_its_recipe()
    {
        foreach (var view in Of("check"))
        {
            var jumps = view.GetProperty("jumps").EnumerateArray().ToList();
            Assert.Equal(3, jumps.Count);
            Assert.All(jumps, j => Assert.True(j.GetProperty("count").GetInt32() > 5 && j.GetProperty("inView").GetBoolean(), j.ToString()));
            Assert.StartsWith("#finding-", Text(jumps[0], "hash"), StringComparison.Ordinal);
            Assert.StartsWith("#line-", Text(jumps[1], "hash"), StringComparison.Ordinal);
            Assert.StartsWith("#finding-", Text(jumps[2], "hash"), StringComparison.Ordinal);

            // The line stands in the article of its file, and begins with its sign and number.
            string within = Text(jumps[1], "within");
            Assert.StartsWith("file-", within, StringComparison.Ordinal);
            string number = Text(jumps[1], "hash").Split('-')[^1];
            Assert.Equal($"#line-{within["file-".Length..]}-{number}", Text(jumps[1], "hash"));
            Assert.Matches($"^[✖▲●] *{number} ", Text(jumps[1], "text"));
        }
    }

    [BrowserFact]
    public void No_label_of_the_demo_book_outgrows_its_place_on_the_sheet()
    {
        foreach (var view in Of("labels").Concat(Of("labels-roll")))
        {
            var labels = view.GetProperty("sections").EnumerateArray().ToList();
            Assert.True(labels.Count > 15);
            if (view.GetProperty("width").GetInt32() == 320 && Text(view, "page") == "labels") continue;
            Assert.All(labels, l => Assert.Equal(l.GetProperty("least").GetDouble(), l.GetProperty("height").GetDouble(), 1.0));
        }
    }

    private IEnumerable<JsonElement> Of(string page) => browser.Seen.Where(v => Text(v, "page") == page);

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private static List<string> Texts(JsonElement element, string name) => [.. element.GetProperty(name).EnumerateArray().Select(t => t.GetString()!)];
}
