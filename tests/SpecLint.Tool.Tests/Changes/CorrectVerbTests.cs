using System.Diagnostics;
using System.Text;
using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

public class CorrectVerbTests
{
    private const string Comma = """
        {
          "name": "Groundswell", // kept
          "ingredients": [
            { "item": "gin", "amount": "45 ml" },
            { "item": "lime-juice", "amount": "22,5 ml" },
            { "item": "simple-syrup", "amount": "20 ml" }
          ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
          "glass": "coupe",
          "declares": { "allergens": [] }
        }
        """;

    [Fact]
    public void A_preview_writes_nothing_and_shows_the_difference()
    {
        using var book = Book();
        string before = book.Snapshot();
        var run = ToolRun.In(book.Path, "correct", "--rule", "SL2001");
        Assert.Equal(1, run.Status);
        Assert.Contains(
            "-    { \"item\": \"lime-juice\", \"amount\": \"22,5 ml\" },\n+    { \"item\": \"lime-juice\", \"amount\": \"22.5 ml\" },\n",
            run.Output,
            StringComparison.Ordinal);
        Assert.Equal(before, book.Snapshot());
    }

    [Fact]
    public void The_difference_can_be_handed_to_patch()
    {
        using var book = Book();
        var run = ToolRun.In(book.Path, "correct", "--rule", "SL2001", "--output", "change.diff");
        Assert.Equal(1, run.Status);
        using var patch = Process.Start(new ProcessStartInfo(
            "git", ["apply", "--whitespace=nowarn", "change.diff"])
        { WorkingDirectory = book.Path, UseShellExecute = false })!;
        patch.WaitForExit();
        Assert.Equal(0, patch.ExitCode);
        Assert.Equal(Comma.Replace("22,5", "22.5", StringComparison.Ordinal), File.ReadAllText(book["groundswell.drink.json"]));
    }

    [Fact]
    public void Assured_corrections_are_written_and_the_rest_of_the_file_stays()
    {
        using var book = Book();
        var run = ToolRun.In(book.Path, "correct", "--apply", "assured");
        Assert.Equal(0, run.Status);
        Assert.Equal(Comma.Replace("22,5", "22.5", StringComparison.Ordinal), File.ReadAllText(book["groundswell.drink.json"]));
        Assert.Empty(Directory.GetFiles(book.Path, ".*"));
        var again = ToolRun.In(book.Path, "correct", "--apply", "assured");
        Assert.Equal(0, again.Status);
    }

    [Fact]
    public void A_proposed_correction_is_written_only_by_name()
    {
        using var book = Book();
        book.Write(
            "groundswell.drink.json",
            Comma.Replace("22,5", "22.5", StringComparison.Ordinal).Replace("lime-juice", "lime-jiuce", StringComparison.Ordinal));
        string before = book.Snapshot();
        Assert.Equal(0, ToolRun.In(book.Path, "correct", "--apply", "assured").Status);
        Assert.Equal(before, book.Snapshot());
        Assert.Equal(0, ToolRun.In(book.Path, "correct", "--apply", "unknown-reference", "--admit-new").Status);
        Assert.Contains("\"lime-juice\"", File.ReadAllText(book["groundswell.drink.json"]), StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_output_holds_what_became_of_each_correction()
    {
        using var book = Book();
        using var json = JsonDocument.Parse(ToolRun.In(book.Path, "correct", "--rule", "SL2001", "--format", "json").Bytes);
        var correction = Assert.Single(json.RootElement.GetProperty("corrections").EnumerateArray());
        Assert.Equal(
            ("SL2001", "assured", "made"),
            (correction.GetProperty("rule").GetString(), correction.GetProperty("grade").GetString(), correction.GetProperty("state").GetString()));
        Assert.Contains(
            "+    { \"item\": \"lime-juice\", \"amount\": \"22.5 ml\" }",
            json.RootElement.GetProperty("files")[0].GetProperty("diff").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public void Permissions_and_links_stay()
    {
        if (OperatingSystem.IsWindows()) return;
        using var book = Book();
        const UnixFileMode mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherExecute;
        File.Delete(book["groundswell.drink.json"]);
        book.Write("deep/real.drink.json", Comma);
        File.SetUnixFileMode(book["deep/real.drink.json"], mode);
        File.CreateSymbolicLink(book["linked.drink.json"], "deep/real.drink.json");
        Assert.Equal(0, ToolRun.In(book.Path, "correct", "--apply", "SL2001").Status);
        Assert.Equal(mode, File.GetUnixFileMode(book["deep/real.drink.json"]));
        Assert.Equal("deep/real.drink.json", new FileInfo(book["linked.drink.json"]).LinkTarget);
        Assert.Contains("22.5", File.ReadAllText(book["deep/real.drink.json"]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_changed_since_it_was_read_is_left_alone()
    {
        using var folder = new TestFolder();
        folder.Write("a.drink.json", "theirs");
        Assert.Equal(AtomicFiles.Outcome.ChangedMeanwhile, new AtomicFiles().Replace(folder["a.drink.json"], "old"u8.ToArray(), "new"u8.ToArray()));
        Assert.Equal("theirs", File.ReadAllText(folder["a.drink.json"]));
        Assert.Equal(AtomicFiles.Outcome.Written, new AtomicFiles().Replace(folder["a.drink.json"], "theirs"u8.ToArray(), "new"u8.ToArray()));
        Assert.Equal("new", File.ReadAllText(folder["a.drink.json"]));
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void A_folder_that_cannot_be_written_is_said_and_nothing_is_lost()
    {
        if (OperatingSystem.IsWindows() || Environment.UserName == "root") return;
        using var book = Book();
        var mode = File.GetUnixFileMode(book.Path);
        File.SetUnixFileMode(book.Path, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        try
        {
            var run = ToolRun.In(book.Path, "correct", "--apply", "SL2001");
            Assert.Equal(1, run.Status);
            Assert.Contains("cannot be written", run.Error, StringComparison.Ordinal);
            Assert.Equal(Comma, File.ReadAllText(book["groundswell.drink.json"]));
        }
        finally
        {
            File.SetUnixFileMode(book.Path, mode);
        }
    }

    [Theory]
    [InlineData("--apply", "SL0000")]
    [InlineData("--rule", "no-such-rule")]
    [InlineData("--apply", "assured", "--rule", "SL2001")]
    public void Wrong_usage_is_two(params string[] args)
    {
        using var book = Book();
        string before = book.Snapshot();
        Assert.Equal(2, ToolRun.In(book.Path, ["correct", .. args]).Status);
        Assert.Equal(before, book.Snapshot());
    }

    [Fact]
    public void The_demo_book_previews_its_corrections()
    {
        using var demo = new DemoBook();
        var run = ToolRun.In(demo.Path, "correct");
        Assert.Equal(1, run.Status);
        Assert.Contains("Proposed".ToLowerInvariant(), run.Output, StringComparison.Ordinal);
        Assert.Contains("\n--- a/", run.Output, StringComparison.Ordinal);
        Assert.Contains(" becomes ", run.Output, StringComparison.Ordinal);
    }

    private static TestFolder Book()
    {
        var folder = new TestFolder();
        folder.Write("bar.json", SmallBook.Bar);
        folder.Write("groundswell.drink.json", Encoding.UTF8.GetBytes(Comma));
        return folder;
    }
}
