using System.IO.Compression;
using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Pages;

/// <summary>The bench in a browser: what a person sees and does, and that it is the command's own.</summary>
public sealed class BenchPageTests(BenchPage page) : IClassFixture<BenchPage>
{
    [BrowserFact]
    public void The_outputs_are_those_of_the_command_byte_for_byte()
    {
        Assert.Equal(BenchPage.Generated + 1, Seen("outputs").GetInt32());
        Assert.All(page.Books, book =>
        {
            foreach (string verb in new[] { "check", "profile" })
            {
                byte[] expected = ToolRun.In(book.Folder, verb, "--format", "json", "--on", book.On).Bytes;
                Assert.True(
                    expected.AsSpan().SequenceEqual(page.Output(book.Name, verb)),
                    $"{book.Name} {verb}: {FirstDifference(expected, page.Output(book.Name, verb))}");
            }
        });
    }

    [BrowserFact]
    public void It_is_seen_at_three_widths_in_both_schemes_and_axe_finds_nothing_against_it()
    {
        var looks = Seen("looks").EnumerateArray().ToList();
        Assert.Equal(6, looks.Count);
        Assert.All(looks, look =>
        {
            int width = look.GetProperty("width").GetInt32();
            Assert.Empty(Texts(look, "violations"));
            Assert.True(look.GetProperty("checks").GetInt32() > 20);
            Assert.True(look.GetProperty("scrollWidth").GetInt32() <= width, $"{look.GetProperty("scrollWidth")} px wide at {width}");
            Assert.True(new FileInfo(Path.Combine(Browser.Pictures, $"bench-{width}-{Text(look, "scheme")}.png")) is { Exists: true, Length: > 10_000 });
        });
        Assert.Equal(2, looks.Select(l => Text(l, "paper")).Distinct().Count());
        Browser.Documented(("bench-top.png", "bench.png"));
    }

    [BrowserFact]
    public void Nothing_is_asked_of_another_address_and_nothing_complains()
    {
        Assert.NotEmpty(Text(page.Seen, "version"));
        Assert.Empty(Texts(page.Seen, "outside"));
        Assert.Empty(Texts(page.Seen, "messages"));
    }

    [BrowserFact]
    public void Published_recipes_are_understood_as_they_are_typed()
    {
        var published = Seen("published").EnumerateArray().ToList();
        Assert.Equal(BenchPage.Published.Select(p => p.Split('\n')[0]), published.Select(p => Text(p, "name")));

        // Some names mean several things: they are marked, and a choice decides.
        Assert.Equal(["sugar syrup (not known)", "triple sec (not known)"], published.SelectMany(p => Texts(p, "doubtful")));
        Assert.All(published, p =>
        {
            Assert.Empty(Texts(p, "left"));
            Assert.True(p.GetProperty("figures").TryGetProperty("strength", out _), Text(p, "name"));
            Assert.True(p.GetProperty("drawn").GetInt32() > 8);
        });
        Assert.Equal(["60 ml", "20 ml", "2 barspoons"], Texts(published[0], "amounts"));
    }

    [BrowserFact]
    public void A_juice_is_soured_and_a_strength_is_solved()
    {
        var solved = Seen("solved");
        Assert.Matches(@"\n1000 g orange juice\n\d+(\.\d+)? g citric acid\n\d+(\.\d+)? g malic acid\n", Text(solved, "sour"));
        Assert.Contains("Reached.", Text(solved, "answer"), StringComparison.Ordinal);
        Assert.Contains("\n25 ml lime juice\n", Text(solved, "text"), StringComparison.Ordinal);
        Assert.InRange(double.Parse(Text(solved, "strength").Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), 14.5, 15.5);
    }

    [BrowserFact]
    public void Harm_comes_first_with_its_cautions_in_the_words_of_the_command()
    {
        var harm = Seen("harm");
        Assert.Contains("DO NOT USE", Text(harm, "stop"), StringComparison.Ordinal);
        Assert.InRange(harm.GetProperty("first").GetInt32(), 1, 3);
        var cautions = Texts(harm, "cautions");
        Assert.NotEmpty(cautions);
        Assert.Equal(cautions.Distinct(), cautions);
        using var book = new TestFolder();
        book.Write(
            "garlic-oil.prep.json",
            """{ "name": "Garlic oil", "family": "other", "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "60 g" } ], "method": [ { "do": "steep", "for": "24 h" } ], "yield": "500 g", "keep": { "at": "20 °C", "in": "bottle", "for": "30 d" } }""");
        book.Write("bar.json", """{ "name": "The bench" }""");
        using var command = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "json").Bytes);
        var said = command.RootElement.GetProperty("findings")
            .EnumerateArray()
            .Where(f => f.TryGetProperty("caution", out _))
            .Select(f => "Caution: " + Text(f, "caution"))
            .ToHashSet(StringComparer.Ordinal);
        Assert.Superset(cautions.ToHashSet(StringComparer.Ordinal), said);
        Assert.DoesNotMatch(@"(?i)\bsafe\b|allergen[- ]free", Text(harm, "whole"));
    }

    [BrowserFact]
    public void A_correction_shows_what_it_changes_and_is_taken()
    {
        var corrected = Seen("corrected");
        Assert.Contains("volume in the glass", Text(corrected, "trial"), StringComparison.Ordinal);
        Assert.DoesNotContain("90 ml gin", Text(corrected, "text"), StringComparison.Ordinal);
        Assert.StartsWith("Spring Tide\n", Text(corrected, "text"), StringComparison.Ordinal);
        Assert.True(Texts(corrected, "after").Count < Texts(corrected, "before").Count);
    }

    [BrowserFact]
    public void What_is_typed_outlives_a_reload_works_without_a_network_and_is_cleared_with_one_button()
    {
        var kept = Seen("kept");
        Assert.Contains("strength", Text(kept, "compared"), StringComparison.Ordinal);
        Assert.Contains("60 ml gin", Text(kept, "text"), StringComparison.Ordinal);
        var offline = kept.GetProperty("offline");
        Assert.True(offline.GetProperty("gone").GetBoolean());
        Assert.Contains("55 ml", Texts(offline, "amounts"));
        Assert.Contains("default-src 'none'", Text(offline, "policy"), StringComparison.Ordinal);
        Assert.Equal(("", 0), (Text(kept.GetProperty("left"), "text"), kept.GetProperty("left").GetProperty("local").GetInt32()));
    }

    [BrowserFact]
    public void A_card_and_a_label_are_printed_from_the_page()
    {
        var paper = Seen("paper");
        Assert.Contains("Ebb Tide", Text(paper, "card"), StringComparison.Ordinal);
        Assert.Contains("Method", Text(paper, "card"), StringComparison.Ordinal);
        Assert.Equal(1, paper.GetProperty("pages").GetInt32());
        Assert.Equal(BenchPage.Picture, Text(paper.GetProperty("coded"), "text"));
        Assert.Equal(1, paper.GetProperty("coded").GetProperty("pages").GetInt32());
        Assert.True(paper.GetProperty("back").GetBoolean());
        Assert.Contains("Saline 20 %", Text(paper, "label"), StringComparison.Ordinal);
        Assert.Contains("mm", Text(paper, "placed"), StringComparison.Ordinal);
    }

    [BrowserFact]
    public void A_book_is_opened_and_given_out_as_it_was()
    {
        var book = Seen("book");
        Assert.Contains("The whole book: ", Text(book, "found"), StringComparison.Ordinal);
        Assert.True(book.GetProperty("opened").GetBoolean());
        Assert.True(book.GetProperty("same").GetBoolean());
        Assert.Equal("low-tide.drink.json", Text(book, "savedAs"));
        string root = page.Books[0].Folder;
        using var zip = ZipFile.OpenRead(Text(book, "zip"));
        Assert.True(zip.Entries.Count > 60);
        Assert.Equal(zip.Entries.Select(e => e.FullName).Order(StringComparer.Ordinal), Texts(book, "listed").Order(StringComparer.Ordinal));
        Assert.All(zip.Entries, entry =>
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            Assert.Equal(
                File.ReadAllBytes(Directory.EnumerateFiles(root, Path.GetFileName(entry.FullName), SearchOption.AllDirectories).First()),
                bytes.ToArray());
        });
        File.Delete(Text(book, "zip"));
    }

    [BrowserFact]
    public void Each_target_is_solved_and_can_be_left()
    {
        var targets = Seen("targets");
        foreach (string name in new[] { "strength", "ratio", "glass", "like", "bottle" })
        {
            Assert.Contains("Reached", Text(targets.GetProperty(name), "answer"), StringComparison.Ordinal);
            Assert.True(targets.GetProperty(name).GetProperty("left").GetBoolean(), name);
        }

        // What is held stays: the juice of the drink, the juice that is soured.
        Assert.Contains(Texts(targets.GetProperty("strength"), "lines"), l => l.EndsWith("25 ml25 ml", StringComparison.Ordinal));
        Assert.Contains(Texts(targets.GetProperty("like"), "lines"), l => l.EndsWith("500 g500 g", StringComparison.Ordinal));
        Assert.Contains("first ice at", Texts(targets, "freezing"));
    }

    [BrowserFact]
    public void Each_preparation_is_written_and_a_reading_comes_back()
    {
        var made = Seen("preparations");
        string Written(string kind) => Text(made.GetProperty(kind), "text");
        Assert.Matches(@"\n500 g orange juice\n[\d.]+ g citric acid\n", Written("sour"));
        Assert.Contains("\nlike: lemon juice", Written("sour"), StringComparison.Ordinal);

        // 600 g of sugar in a syrup of 60 % by weight (°Brix is g of sucrose in 100 g, ICUMSA) takes 400 g of water; 2:1 takes 300 g.
        Assert.Matches(@"\n600 g white sugar\n(399\.\d|400(\.\d)?) g water\n", Written("brix"));
        Assert.Contains("\n600 g white sugar\n300 g water\n", Written("syrup"), StringComparison.Ordinal);
        Assert.Contains("\n20 g salt\n180 g water\n", Written("saline"), StringComparison.Ordinal);
        Assert.Matches(@"\nDehydrate at 57 °C until it weighs \d+ g\n", Written("dried"));
        Assert.Contains("\n1 l gin\n", Written("batch"), StringComparison.Ordinal);
        Assert.Matches(@"\n\d+ ml water\n", Written("batch"));
        Assert.Contains("Use within", Text(made.GetProperty("saline"), "numbers"), StringComparison.Ordinal);
        Assert.True(made.GetProperty("batch").GetProperty("figures").TryGetProperty("first ice at", out _));
        Assert.Matches(@"\nmeasured: pH 6\.8, 20\.1 °Bx, \d{4}-\d\d-\d\d, r1-[0-9a-f]+$", Text(made, "recorded"));
    }

    [BrowserFact]
    public void Prices_typed_at_the_bench_cost_what_the_command_says()
    {
        var costs = Seen("costs");
        Assert.Contains("4 prices count", Text(costs, "said"), StringComparison.Ordinal);
        Assert.Contains("no such thing: item: ", Text(costs, "said"), StringComparison.Ordinal);
        Assert.Contains("bench.prices.json", Texts(costs, "listed"));
        using var book = new TestFolder();
        book.Write("bar.json", Text(costs, "bar"));
        book.Write("bench.prices.json", Text(costs, "file"));
        book.Write("ebb-tide.drink.json", Text(costs, "drink"));
        var run = ToolRun.In(
            book.Path, "costs", "ebb-tide", "--format", "json", "--on",
            DateTime.UtcNow.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        using var said = JsonDocument.Parse(run.Output);
        var recipe = said.RootElement.GetProperty("recipes")[0];
        Assert.Contains("EUR", Text(costs, "cost"), StringComparison.Ordinal);
        Assert.Contains(recipe.GetProperty("lines").EnumerateArray(), l => Text(l, "item") == "gin" && l.TryGetProperty("cost", out _));
        var lines = Texts(costs, "lines");
        Assert.Equal(recipe.GetProperty("lines").GetArrayLength(), lines.Count);
        Assert.Contains("24.50 for 700 ml", lines[0], StringComparison.Ordinal);
    }

    [BrowserFact]
    public void The_page_of_a_rule_is_read_without_a_network()
    {
        var rule = Seen("rule");
        Assert.True(rule.GetProperty("gone").GetBoolean() && rule.GetProperty("closed").GetBoolean());
        Assert.Equal("SL8001 glass-overflows", Text(rule, "head"));
        Assert.Superset(new HashSet<string> { "What it checks", "Source", "How to put it right", "Examples" }, Texts(rule, "heads").ToHashSet());
        Assert.True(rule.GetProperty("code").GetInt32() > 1);
        Assert.Empty(Texts(rule, "violations"));
        Assert.Empty(Texts(rule, "odd"));
    }

    [BrowserFact]
    public void A_QR_code_holds_the_link_and_a_link_works_on_an_open_page()
    {
        var read = Seen("code").EnumerateArray().ToList();
        Assert.Equal(2, read.Count);
        Assert.All(read, r =>
        {
            Assert.True(r.GetProperty("address").GetBoolean());
            Assert.Equal(BenchPage.Picture, Text(r, "text"));
            Assert.Equal(BenchPage.Picture, Text(r, "kept"));
        });
    }

    [BrowserFact]
    public void A_folder_is_dropped_chosen_and_written_back()
    {
        var folder = Seen("folder");
        var files = page.Books[0].Folder;
        var expected = SpecLint.Binding.BookFiles.Choose(
            Directory.EnumerateFiles(files, "*.json", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(files, f).Replace('\\', '/')),
            null)
            .Order(StringComparer.Ordinal)
            .ToList();
        Assert.Equal(expected, Texts(folder, "dropped").Order(StringComparer.Ordinal));
        Assert.Equal(expected, Texts(folder, "chosen").Order(StringComparer.Ordinal));
        Assert.StartsWith($"{expected.Count} files were written", Text(folder, "saved"), StringComparison.Ordinal);
        Assert.StartsWith("0 files were written", Text(folder, "again"), StringComparison.Ordinal);
        Assert.True(folder.GetProperty("same").GetBoolean());
    }

    [BrowserFact]
    public void What_the_page_brings_along_is_what_its_authors_published()
    {
        _ = page.Seen;
        Assert.All(
            BenchPage.VendoredFiles,
            f => Assert.Equal(File.ReadAllBytes(page.Installed(f.Theirs)), File.ReadAllBytes(Path.Combine(page.Page, "vendor", f.Ours))));
    }

    [BrowserFact]
    public void Hostile_text_does_nothing_but_be_text()
    {
        var hostile = Seen("hostile");
        Assert.All(hostile.GetProperty("shown").EnumerateArray(), shown =>
        {
            Assert.False(shown.TryGetProperty("dialog", out _));
            Assert.Equal((0, 0), (shown.GetProperty("elements").GetInt32(), shown.GetProperty("handlers").GetInt32()));
            Assert.False(shown.GetProperty("controls").GetBoolean());
            Assert.False(shown.GetProperty("pwned").GetBoolean());
        });
        Assert.Contains("50 ml", Texts(hostile, "alive"));
        Assert.Equal("", Text(hostile, "linked"));
    }

    [BrowserFact]
    public void A_link_holds_the_recipe_and_sends_it_nowhere()
    {
        var linked = Seen("linked");
        Assert.True(linked.GetProperty("same").GetBoolean());
        Assert.False(linked.GetProperty("sent").GetBoolean());
    }

    [BrowserFact]
    public void Units_change_what_is_shown_and_not_what_is_typed()
    {
        var units = Seen("units");
        Assert.Contains(Texts(units, "amounts"), a => a.Contains(" oz", StringComparison.Ordinal));
        Assert.Contains(Texts(units, "figures"), f => f.Contains("°F", StringComparison.Ordinal));
        Assert.Equal(BenchPage.Picture, Text(units, "text"));
    }

    [BrowserFact]
    public void A_name_that_is_not_whole_yet_keeps_the_numbers_from_before_until_typing_rests()
    {
        var halfway = Seen("halfway");
        Assert.True(halfway.GetProperty("count").GetInt32() > 10);
        Assert.True(halfway.GetProperty("stale").GetBoolean());
        Assert.Equal("", Text(halfway, "rested"));
        Assert.Equal(["DO NOT SERVE"], Texts(halfway, "stop"));
    }

    [BrowserFact]
    public void A_choice_is_made_with_the_keyboard()
    {
        var keyboard = Seen("keyboard");
        Assert.True(keyboard.GetProperty("reached").GetBoolean(), string.Join("; ", Texts(keyboard, "names")));
        Assert.Contains("2 dashes orange bitters", Text(keyboard, "text"), StringComparison.Ordinal);
        Assert.Equal(1, keyboard.GetProperty("status").GetInt32());
    }

    [FirefoxFact]
    public void Firefox_shows_and_does_the_same()
    {
        Assert.StartsWith("firefox/", Text(page.SeenInFirefox, "version"), StringComparison.Ordinal);
        Assert.Empty(Texts(page.SeenInFirefox, "errors"));
        var published = Seen("published", page.SeenInFirefox).EnumerateArray().ToList();
        Assert.Equal(BenchPage.Published.Select(p => p.Split('\n')[0]), published.Select(p => Text(p, "name")));
        Assert.All(published, p =>
        {
            Assert.True(Texts(p, "doubtful").Count == 0 == Texts(p, "figures").Contains("strength"), Text(p, "name"));
        });
        Assert.True(Seen("keys", page.SeenInFirefox).GetBoolean());
        Assert.Matches(@"\n1000 g orange juice\n\d+(\.\d+)? g citric acid\n", Seen("sour", page.SeenInFirefox).GetString());
        Assert.Contains("DO NOT USE", Text(Seen("harm", page.SeenInFirefox), "stop"), StringComparison.Ordinal);
        Assert.NotEmpty(Texts(Seen("harm", page.SeenInFirefox), "cautions"));
        Assert.Contains("Spec card: Ebb Tide", Seen("card", page.SeenInFirefox).GetString(), StringComparison.Ordinal);
        var kept = Seen("kept", page.SeenInFirefox);
        Assert.Equal(BenchPage.Picture, Text(kept, "text"));
        Assert.True(kept.GetProperty("gone").GetBoolean());
        Assert.Contains("50 ml", Texts(kept, "amounts"));
        var book = Seen("book", page.SeenInFirefox);
        Assert.True(book.GetProperty("opened").GetBoolean() && book.GetProperty("saved").GetBoolean());
        Assert.All(Seen("hostile", page.SeenInFirefox).EnumerateArray(), shown =>
        {
            Assert.Equal(0, shown.GetProperty("elements").GetInt32());
            Assert.False(shown.GetProperty("pwned").GetBoolean());
        });
    }

    private JsonElement Seen(string what) => Seen(what, page.Seen);

    private static JsonElement Seen(string what, JsonElement all)
    {
        var seen = all.GetProperty(what);
        if (seen.ValueKind == JsonValueKind.Object && seen.TryGetProperty("failed", out var failed)) Assert.Fail(failed.GetString()!);
        return seen;
    }

    private static string FirstDifference(byte[] expected, byte[] actual)
    {
        int at = expected.AsSpan().CommonPrefixLength(actual), from = Math.Max(0, at - 120);
        return $"at byte {at}: {System.Text.Encoding.UTF8.GetString(expected.AsSpan(from, Math.Min(200, expected.Length - from)))} ≠ "
            + $"{System.Text.Encoding.UTF8.GetString(actual.AsSpan(from, Math.Min(200, Math.Max(0, actual.Length - from))))}";
    }

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private static List<string> Texts(JsonElement element, string name) => [.. element.GetProperty(name).EnumerateArray().Select(e => e.GetString()!)];
}
