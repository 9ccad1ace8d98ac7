using System.Globalization;
using System.Text;
using SpecLint.Benchmarks;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>A book checked in parts and combined is the book checked at once, byte for byte.</summary>
public class PartTests(DemoBook demo) : IClassFixture<DemoBook>
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(200)]
    public void Parts_of_the_demo_combine_to_the_whole(int count) => HoldsFor(demo.Path, count);

    [Fact]
    public void Parts_of_a_book_whose_findings_meet_combine_to_the_whole()
    {
        using var folder = Meeting();
        string whole = ToolRun.In(folder.Path, "check", "--format", "json").Output;
        foreach (string what in (string[])["\"follows\": [", "\"accepted\": {", "\"acceptedSafety\": 1", "\"lowered\": 1", "\"file\": \"bar.json\"", "\"file\": \"c/evening.menu.json\""]) Assert.Contains(what, whole, StringComparison.Ordinal);
        for (int count = 1; count <= 12; count++) HoldsFor(folder.Path, count);
    }

    [Fact]
    public void A_baseline_and_a_choice_of_rules_and_paths_go_with_parts()
    {
        using var folder = Meeting();
        ToolRun.In(folder.Path, "baseline", "--create", "--because", "as it was", "--file", "old.json");
        folder.Write("a/new.drink.json", """{ "name": "New", "ingredients": [ { "item": "gin", "amount": "900 ml" }, { "item": "nothing-known", "amount": "1 ml" } ], "method": [ { "do": "shake" } ], "glass": "coupe" }""");
        HoldsFor(folder.Path, 3, "--baseline", "old.json");
        HoldsFor(folder.Path, 3, "--baseline", "old.json", "--rule", "balance");
        HoldsFor(folder.Path, 3, "--not-rule", "SL9002");
        HoldsFor(folder.Path, 3, "a");
        HoldsFor(folder.Path, 3, "--rule", "balance", "a", "b");
    }

    [Fact]
    public void Parts_of_a_generated_book_combine_to_the_whole()
    {
        using var folder = new TestFolder();
        new BookGenerator(500, 20261125).WriteTo(folder.Path);
        HoldsFor(folder.Path, 4);
    }

    [LongTheory]
    [InlineData(10_000, 3)]
    [InlineData(100_000, 8)]
    public void Parts_of_a_large_book_combine_to_the_whole(int recipes, int count)
    {
        using var folder = new TestFolder();
        new BookGenerator(recipes, 20261125).WriteTo(folder.Path);
        HoldsFor(folder.Path, count);
    }

    [Fact]
    public void What_is_found_in_a_file_does_not_depend_on_which_others_are_checked()
    {
        using var meeting = Meeting();
        foreach (string root in (string[])[demo.Path, meeting.Path])
        {
            var files = FilesOf(root);
            var input = new BookInput(files, CalendarDate.Parse(ToolRun.Day)!.Value) { Threads = 1 };
            var whole = Checker.Check(input);
            foreach (var file in files)
            {
                bool IsIt(string path) => path == file.Path;
                string expected = Json(whole, IsIt), alone = Json(Checker.Check(input with { Only = IsIt }), IsIt);
                Assert.Equal(expected, alone);
            }
        }

        static string Json(CheckResult result, Func<string, bool> of)
        {
            using var stream = new MemoryStream();
            JsonReport.Write(stream, ReportContent.Of(result, of), "1.0.0");
            return Encoding.UTF8.GetString(stream.ToArray());
        }
    }

    [Fact]
    public void A_rule_about_a_file_reports_in_it_so_that_parts_can_be_checked_apart()
    {
        using var meeting = Meeting();
        using var generated = new TestFolder();
        new BookGenerator(200, 7).WriteTo(generated.Path);
        foreach (string root in (string[])[demo.Path, meeting.Path, generated.Path])
        {
            var (book, profiles) = Checker.Profile(new BookInput(FilesOf(root), CalendarDate.Parse(ToolRun.Day)!.Value));
            var rules = new Rules.RuleSet(Rules.RuleRegistry.All);
            foreach (var file in book.Files)
            {
                foreach (var finding in rules.CheckFile(book, profiles, file))
                {
                    Assert.Same(file.Source, finding.Place.File);
                    Assert.Equal(file.Id, finding.Subject);
                }
            }
        }
    }

    [Fact]
    public void Each_file_is_in_one_part_and_files_of_one_id_are_together()
    {
        string[] paths = [.. Enumerable.Range(0, 100).SelectMany(i => new[] { $"a/x{i}.drink.json", $"b/x{i}.prep.json" }), "bar.json"];
        for (int count = 1; count < 130; count += 7)
        {
            var parts = Enumerable.Range(1, count).Select(n => new BookPart(n, count).FilesOf(paths)).ToList();
            Assert.Equal(paths.Order(StringComparer.Ordinal), parts.SelectMany(p => p).Order(StringComparer.Ordinal));
            foreach (var part in parts)
                Assert.All(part.Where(p => p != "bar.json"), p => Assert.Contains(p[0] == 'a' ? $"b/{FileKinds.IdOf(p)}.prep.json" : $"a/{FileKinds.IdOf(p)}.drink.json", part));
        }
    }

    [Theory]
    [InlineData("0/4")]
    [InlineData("5/4")]
    [InlineData("1/0")]
    [InlineData("-1/4")]
    [InlineData("1/10001")]
    [InlineData("1/4/2")]
    [InlineData("4")]
    [InlineData("a/b")]
    [InlineData(" 1/4")]
    [InlineData("1/99999999999")]
    public void What_is_not_a_part_is_said(string part)
    {
        var run = ToolRun.In(demo.Path, "check", "--part", part);
        Assert.Equal(ExitStatus.Usage, run.Status);
        Assert.Contains("is not a part of a book", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_does_not_go_with_watching() =>
        Assert.Equal(ExitStatus.Usage, ToolRun.In(demo.Path, "check", "--part", "1/2", "--watch").Status);

    [Fact]
    public void Reports_that_are_not_the_parts_of_one_run_are_refused_with_the_reason()
    {
        using var folder = new TestFolder();
        Write("1.json", "1/3");
        Write("2.json", "2/3");
        Write("3.json", "3/3");
        Write("day.json", "3/3", "--on", "2026-11-26");
        Write("rules.json", "3/3", "--rule", "balance");
        Write("paths.json", "3/3", "low-tide.drink.json");
        Write("half.json", "2/2");
        folder.Write("whole.json", ToolRun.In(demo.Path, "check", "--format", "json").Bytes);
        byte[] third = File.ReadAllBytes(folder["3.json"]);
        folder.Write("cut.json", third[..(third.Length / 2)]);
        folder.Write("behind.json", [.. third, .. "{}"u8]);
        folder.Write("other.json", "{ \"a\": [1, 2] }");
        folder.Write("list.json", "[]");
        folder.Write("empty.json", "");
        folder.Write("findings.json", Encoding.UTF8.GetString(third).Replace("\"rule\"", "\"regel\"", StringComparison.Ordinal));

        Refuses("part 3/3 is missing", "1.json", "2.json");
        Refuses("are both part 2/3", "1.json", "2.json", "2.json");
        Refuses("is one of 3 parts, half.json one of 2", "1.json", "half.json");
        Refuses("are not of one run", "1.json", "2.json", "day.json");
        Refuses("are not of one run", "1.json", "2.json", "rules.json");
        Refuses("are not of one run", "1.json", "2.json", "paths.json");
        Refuses("whole.json cannot be combined: it is the report of a whole book", "whole.json");
        Refuses("cut.json cannot be combined", "1.json", "2.json", "cut.json");
        Refuses("behind.json cannot be combined", "1.json", "2.json", "behind.json");
        Refuses("other.json cannot be combined", "other.json");
        Refuses("list.json cannot be combined", "list.json");
        Refuses("empty.json cannot be combined", "empty.json");
        Refuses("findings.json cannot be combined: a finding in it has no rule", "1.json", "2.json", "findings.json");
        Refuses("no.json does not exist", "no.json");
        Refuses("is a folder", ".");

        void Write(string name, string part, params string[] more) =>
            folder.Write(name, ToolRun.In(demo.Path, ["check", "--part", part, "--format", "json", .. more]).Bytes);

        void Refuses(string reason, params string[] reports)
        {
            var run = ToolRun.In(folder.Path, ["combine", .. reports, "--output", "combined.json"]);
            Assert.Contains(reason, run.Error, StringComparison.Ordinal);
            Assert.Equal(ExitStatus.Usage, run.Status);
            Assert.False(File.Exists(folder["combined.json"]));
        }
    }

    [Fact]
    public void A_report_that_comes_byte_by_byte_is_combined_alike()
    {
        byte[] whole = ToolRun.In(demo.Path, "check", "--format", "json").Bytes;
        byte[][] parts = [.. Enumerable.Range(1, 3).Select(n => ToolRun.In(demo.Path, "check", "--part", $"{n}/3", "--format", "json").Bytes)];
        foreach (int most in (int[])[1, 7, 4096])
        {
            using var to = new MemoryStream();
            CombinedReport.Write([.. parts.Select((p, i) => ($"part {i}", (Stream)new Trickle(p, most)))], to);
            Assert.Equal(whole, to.ToArray());
        }
    }

    [Fact]
    public void The_exit_status_is_that_of_the_whole()
    {
        using var folder = new TestFolder();
        for (int n = 1; n <= 2; n++) folder.Write($"{n}.json", ToolRun.In(demo.Path, "check", "--part", $"{n}/2", "--format", "json").Bytes);
        Assert.Equal(ExitStatus.Findings, ToolRun.In(folder.Path, "combine", "1.json", "2.json").Status);
        Assert.Equal(ExitStatus.Clean, ToolRun.In(folder.Path, "combine", "1.json", "2.json", "--fail-at", "never").Status);
    }

    private static void HoldsFor(string book, int count, params string[] more)
    {
        using var folder = new TestFolder();
        var whole = ToolRun.In(book, ["check", "--format", "json", "--quiet", .. more]);
        var names = new List<string>();
        for (int n = 1; n <= count; n++)
        {
            string name = n.ToString(CultureInfo.InvariantCulture) + ".json";
            var part = ToolRun.In(book, ["check", "--part", $"{n}/{count}", "--format", "json", "--quiet", "--output", folder[name], .. more]);
            Assert.True(part.Status is ExitStatus.Clean or ExitStatus.Findings, part.Error);
            names.Insert(0, name);
        }

        var combined = ToolRun.In(folder.Path, ["combine", .. names]);
        Assert.Equal(whole.Status, combined.Status);
        Assert.True(whole.Bytes.AsSpan().SequenceEqual(combined.Bytes), $"{count} parts of {book} are not the whole.");
    }

    private static List<SourceFile> FilesOf(string root) =>
        [.. BookFiles.Read(Directory.EnumerateFiles(root, "*.json", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(root, f)), path => File.ReadAllBytes(Path.Combine(root, path)))];

    /// <summary>
    /// A book in which findings of several files have to do with each other: one id twice, acceptances (one of no use, one of harm),
    /// a level that the bar lowers, one cause with what follows from it, and a recipe that supersedes another.
    /// </summary>
    private static TestFolder Meeting()
    {
        var folder = new TestFolder();
        folder.Write("bar.json", """
            { "name": "The Saltmarsh Room", "jurisdictions": ["IE"],
              "rules": { "SL6001": { "level": "note", "because": "the house asks", "until": "2027-05-01" }, "SL3001": "none" },
              "accept": [ { "rule": "SL9009", "because": "of no use" } ] }
            """);
        const string sour = """
            { "name": "Half Tide", "style": "shaken-sour", "supersedes": "old-tide",
              "ingredients": [ { "item": "gin", "amount": "450 ml" }, { "item": "nobody-knows", "amount": "25 ml" }, { "item": "lemon-juice", "amount": "25 ml" }, { "item": "shore-syrup", "amount": "20 ml" } ],
              "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "glass": "small-coupe",
              "declares": { "allergens": [], "abv": "2 % v/v" } }
            """;
        folder.Write("a/half-tide.drink.json", sour);
        folder.Write("b/half-tide.drink.json", sour.Replace("450 ml", "45 ml", StringComparison.Ordinal).Replace("\"supersedes\"", "\"accept\": [ { \"rule\": \"SL9001\", \"because\": \"it comes\" }, { \"rule\": \"SL7001\", \"because\": \"known\", \"until\": \"2027-02-01\" } ], \"supersedes\"", StringComparison.Ordinal));
        folder.Write("b/half-tide.prep.json", """
            { "name": "Half tide", "family": "syrup", "ingredients": [ { "item": "sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" }, { "item": "half-tide", "amount": "10 g" } ],
              "method": [ { "do": "stir" } ], "keep": { "at": "20 °C", "for": "90 d" } }
            """);
        folder.Write("a/old-tide.drink.json", sour.Replace("\"supersedes\": \"old-tide\",", "", StringComparison.Ordinal).Replace("Half Tide", "Old Tide", StringComparison.Ordinal));
        folder.Write("a/shore-syrup.prep.json", """
            { "name": "Shore syrup", "family": "syrup", "ingredients": [ { "item": "sugar", "amount": "100 g" }, { "item": "water", "amount": "100 g" }, { "item": "foxglove", "amount": "1 g" } ],
              "method": [ { "do": "stir" } ], "keep": { "at": "20 °C", "for": "200 d" }, "accept": [ { "rule": "SL5013", "because": "it was tried", "until": "2027-03-01" } ] }
            """);
        folder.Write("c/evening.menu.json", """{ "name": "Evening", "drinks": [ { "drink": "old-tide", "words": "Gin, vegan, alcohol-free" }, { "drink": "half-tide" }, { "drink": "not-there" } ] }""");
        folder.Write("c/bar-fridge.stock.json", """{ "on": "2026-11-25", "lots": [ { "item": "shore-syrup", "made": "2026-01-01", "amount": "1 l", "at": "9 °C" }, { "item": "unknown-thing", "amount": "1 l" } ] }""");
        return folder;
    }

    /// <summary>A stream that gives a few bytes at a time, as a pipe may.</summary>
    private sealed class Trickle(byte[] bytes, int most) : MemoryStream(bytes, writable: false)
    {
        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, most));
    }
}
