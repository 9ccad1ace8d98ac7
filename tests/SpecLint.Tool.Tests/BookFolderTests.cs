using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class BookFolderTests
{
    [Fact]
    public void The_nearest_bar_upward_marks_the_book()
    {
        using var book = SmallBook.WithBroken();
        book.Write("drinks/ebb.drink.json", SmallBook.Broken);
        Assert.Equal(["drinks/ebb.drink.json"], Files(ToolRun.In(book["drinks"], "check", "--format", "json")));
        Assert.Equal(["drinks/ebb.drink.json", "mudflat.drink.json"], Files(ToolRun.In(book.Path, "check", "drinks", ".", "--format", "json")));
    }

    [Fact]
    public void A_book_below_is_found_when_it_is_the_only_one()
    {
        using var book = SmallBook.WithBroken();
        using var above = new TestFolder();
        above.Write("bars/one/bar.json", SmallBook.Bar);
        above.Write("bars/one/ebb.drink.json", SmallBook.Broken);
        Assert.Equal(["ebb.drink.json"], Files(ToolRun.In(above.Path, "check", "--format", "json")));
        above.Write("bars/two/bar.json", SmallBook.Bar);
        var run = ToolRun.In(above.Path, "check");
        Assert.Equal(2, run.Status);
        Assert.Contains("bars/one, bars/two", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, ToolRun.In(above.Path, "check", "bars/one", "bars/two").Status);
    }

    [Fact]
    public void A_book_within_a_book_is_left_out_and_named()
    {
        using var book = SmallBook.WithBroken();
        book.Write("pop-up/bar.json", SmallBook.Bar);
        book.Write("pop-up/ebb.drink.json", SmallBook.Broken);
        var run = ToolRun.In(book.Path, "check", "--format", "json");
        Assert.Equal(["mudflat.drink.json"], Files(run));
        Assert.Contains("pop-up/ is a book of its own", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_bar_says_which_files_to_read_and_which_to_leave_out()
    {
        using var book = SmallBook.WithBroken();
        book.Write("bar.json", """{ "name": "The Saltmarsh Room", "files": ["drinks/**/*.drink.json"], "leaveOut": ["**/old/**"] }""");
        book.Write("drinks/ebb.drink.json", SmallBook.Broken);
        book.Write("drinks/old/flow.drink.json", SmallBook.Broken);
        Assert.Equal(["drinks/ebb.drink.json"], Files(ToolRun.In(book.Path, "check", "--format", "json")));
    }

    [Fact]
    public void Hidden_folders_are_not_read()
    {
        using var book = SmallBook.WithBroken();
        book.Write(".cache/ebb.drink.json", SmallBook.Broken);
        book.Write("node_modules/x/ebb.drink.json", SmallBook.Broken);
        Assert.Equal(["mudflat.drink.json"], Files(ToolRun.In(book.Path, "check", "--format", "json")));
    }

    [Fact]
    public void Links_that_leave_the_book_are_not_followed()
    {
        if (OperatingSystem.IsWindows()) return;
        using var outside = new TestFolder();
        outside.Write("secret.drink.json", SmallBook.Broken);
        using var book = SmallBook.WithBroken();
        File.CreateSymbolicLink(book["out.drink.json"], outside["secret.drink.json"]);
        File.CreateSymbolicLink(book["gone.drink.json"], book["nowhere.drink.json"]);
        File.CreateSymbolicLink(book["self.drink.json"], book["self.drink.json"]);
        File.CreateSymbolicLink(book["in.drink.json"], "mudflat.drink.json");
        Directory.CreateSymbolicLink(book["away"], outside.Path);
        Directory.CreateSymbolicLink(book["loop"], book.Path);
        File.CreateSymbolicLink(book["through.drink.json"], "away/secret.drink.json");
        Assert.Equal(["in.drink.json", "mudflat.drink.json"], Files(ToolRun.In(book.Path, "check", "--format", "json")));
    }

    [Fact]
    public void The_size_of_what_a_link_leads_to_counts()
    {
        if (OperatingSystem.IsWindows()) return;
        using var book = SmallBook.WithBroken();
        book.Write("pool.txt", new string(' ', 5 * 1024 * 1024));
        File.CreateSymbolicLink(book["pool.drink.json"], "pool.txt");
        using var json = JsonDocument.Parse(ToolRun.In(book.Path, "check", "--format", "json").Bytes);
        string? found = json.RootElement.GetProperty("findings")
            .EnumerateArray()
            .Where(f => f.GetProperty("file").GetString() == "pool.drink.json")
            .Select(f => f.GetProperty("message").GetString())
            .FirstOrDefault();
        Assert.Equal("The file is larger than 4 MiB and is not read.", found);
    }

    [Fact]
    public void A_result_is_written_whole_or_not_at_all()
    {
        using var book = SmallBook.WithBroken();
        var run = ToolRun.In(book.Path, "check", "--format", "json", "--output", "out.json");
        Assert.Equal(1, run.Status);
        Assert.Empty(run.Output);
        Assert.Equal(ToolRun.In(book.Path, "check", "--format", "json").Bytes, File.ReadAllBytes(book["out.json"]));
        Assert.Equal(2, ToolRun.In(book.Path, "check", "--output", "no/such/folder/out.txt").Status);
        Assert.Equal(2, ToolRun.In(book.Path, "check", "--output", "mudflat.drink.json").Status);
        Assert.Equal(SmallBook.Broken, File.ReadAllText(book["mudflat.drink.json"]));
        Assert.Equal(
            ["bar.json", "mudflat.drink.json", "out.json"],
            Directory.EnumerateFiles(book.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    private static List<string> Files(ToolRun run)
    {
        using var json = JsonDocument.Parse(run.Bytes);
        return [.. json.RootElement.GetProperty("findings").EnumerateArray()
            .Where(f => f.GetProperty("rule").GetString() == "SL9001").Select(f => f.GetProperty("file").GetString()!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }
}
