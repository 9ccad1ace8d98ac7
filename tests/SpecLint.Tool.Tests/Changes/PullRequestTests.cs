using System.Globalization;
using System.Text.Json;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>A pull request from end to end: a repository with the demo book, a branch that changes one syrup.</summary>
public class PullRequestTests
{
    private const string Syrup = "house/the book/heather-honey-syrup.prep.json";

    [Fact]
    public void The_table_lists_every_recipe_that_uses_the_changed_syrup_with_its_new_figures()
    {
        using var repository = WithDemoBook();
        string book = repository["house/the book"];

        // What is measured would speak for the syrup, whatever its amounts say.
        string syrup = File.ReadAllText(repository[Syrup]);
        File.WriteAllLines(repository[Syrup], syrup.Split('\n').Where(l => !l.Contains("\"measured\"", StringComparison.Ordinal)));
        repository.Commit("Leave the readings of the honey syrup out");
        using var before = JsonDocument.Parse(ToolRun.In(repository.Path, "profile", "--book", "house/the book", "--format", "json").Bytes);
        repository.Git("checkout", "--quiet", "-b", "thinner-honey");
        repository.Replace(Syrup, "\"750 g\"", "\"500 g\"");
        repository.Replace(Syrup, "\"250 g\"", "\"500 g\"");
        repository.Commit("Thin the honey syrup");

        // Another branch is checked out: both revisions are read through git.
        repository.Git("checkout", "--quiet", "main");
        string status = repository.Git("status", "--porcelain");
        var run = ToolRun.In(repository.Path, "compare", "main", "thinner-honey", "--book", "house/the book", "--format", "markdown");
        Assert.Equal((0, ""), (run.Status, run.Error));
        Assert.Equal((status, "main\n"), (repository.Git("status", "--porcelain"), repository.Git("branch", "--show-current")));
        repository.Git("checkout", "--quiet", "thinner-honey");
        using var after = JsonDocument.Parse(ToolRun.In(repository.Path, "profile", "--book", "house/the book", "--format", "json").Bytes);

        var users = Directory.GetFiles(book, "*.json")
            .Where(f => File.ReadAllText(f).Contains("\"item\": \"heather-honey-syrup\"", StringComparison.Ordinal)
                && (f.EndsWith(".drink.json", StringComparison.Ordinal) || f.EndsWith(".prep.json", StringComparison.Ordinal)))
            .ToArray();
        Assert.True(users.Length >= 2, "the demo book has drinks with the honey syrup");
        string[] rows = [.. run.Output.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal))];
        foreach (string file in users)
        {
            using var recipe = JsonDocument.Parse(
                File.ReadAllText(file), new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            string name = recipe.RootElement.GetProperty("name").GetString()!;
            string row = Assert.Single(rows, r => r.StartsWith($"| {name} |", StringComparison.Ordinal));
            Assert.Contains("| heather-honey-syrup |", row, StringComparison.Ordinal);
            string id = System.IO.Path.GetFileName(file).Split('.')[0];
            Assert.Contains($"sugar {Shown(before, id, "sugar")}", row, StringComparison.Ordinal);
            Assert.Contains($"→ {Shown(after, id, "sugar")}", row, StringComparison.Ordinal);
            Assert.True(Value(after, id, "sugar") < Value(before, id, "sugar"));
            string was = Shown(before, id, "abv"), now = Shown(after, id, "abv");
            bool told = row.Contains($"strength {was}", StringComparison.Ordinal);

            // A change under a tenth may turn the last digit or not; what is told has both figures.
            if (Math.Abs(Value(after, id, "abv") - Value(before, id, "abv")) >= 0.1) Assert.True(told, row);
            Assert.Equal(told, row.Contains($"→ {now} % vol", StringComparison.Ordinal));
            if (was == now) Assert.False(told, row);
        }

        // And nobody who does not use it.
        Assert.Equal(users.Length + 1, rows.Length - 2);
        string changed = Assert.Single(rows, r => r.StartsWith("| Heather honey syrup 3:1 |", StringComparison.Ordinal));

        // By the balance of masses: honey of 750 g in 1000 g was 1.5 times the share of 500 g.
        double brixBefore = Value(before, "heather-honey-syrup", "sugar") / Value(before, "heather-honey-syrup", "density");
        double brixAfter = Value(after, "heather-honey-syrup", "sugar") / Value(after, "heather-honey-syrup", "density");
        Assert.Equal(1.5, brixBefore / brixAfter, 0.005);
        Assert.Contains("its own file", changed, StringComparison.Ordinal);
    }

    [Fact]
    public void Since_a_revision_only_what_the_change_brought_is_found()
    {
        using var repository = WithDemoBook();
        var all = ToolRun.In(repository["house"], "check", "the book", "--format", "json");
        Assert.Equal(1, all.Status);
        var none = ToolRun.In(repository["house"], "check", "the book", "--since", "HEAD");
        Assert.Equal(0, none.Status);
        Assert.Contains("were there at HEAD already", none.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);

        repository.Replace("house/the book/low-tide.drink.json", "\"heather-honey-syrup\"", "\"hether-honey-syrup\"");
        var run = ToolRun.In(repository["house"], "check", "the book", "--since", "main", "--format", "sarif");
        Assert.Equal(1, run.Status);
        using var log = JsonDocument.Parse(run.Bytes);
        SarifTests.AssertValid(log.RootElement);
        var results = log.RootElement.GetProperty("runs")[0]
            .GetProperty("results")
            .EnumerateArray()
            .Where(r => !r.TryGetProperty("suppressions", out _))
            .ToList();
        Assert.Contains(results, r => r.GetProperty("ruleId").GetString() == "SL9001");
        using var whole = JsonDocument.Parse(all.Bytes);
        Assert.True(results.Count < whole.RootElement.GetProperty("findings").GetArrayLength());
    }

    [Fact]
    public void What_a_schema_of_the_house_found_before_is_not_new()
    {
        using var repository = new GitFolder();
        repository.Write("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"], "schemas": { "drink": "house.schema.json" } }""");
        repository.Write("house.schema.json", """{ "required": ["author"] }""");
        repository.Write("ebb.drink.json", """{ "name": "Ebb", "ingredients": [ { "item": "gin", "amount": "50 ml" } ] }""");
        repository.Commit("Begin");
        Assert.Contains("SL1028", ToolRun.In(repository.Path, "check").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("SL1028", ToolRun.In(repository.Path, "check", "--since", "HEAD").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("SL1028", ToolRun.In(repository.Path, "compare", "HEAD", "--format", "json").Output, StringComparison.Ordinal);
        repository.Write("flow.drink.json", """{ "name": "Flow", "ingredients": [ { "item": "gin", "amount": "40 ml" } ] }""");
        Assert.Contains("SL1028", ToolRun.In(repository.Path, "check", "--since", "HEAD").Output, StringComparison.Ordinal);
        Assert.Contains("SL1028", ToolRun.In(repository.Path, "compare", "HEAD", "--format", "json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_working_folder_is_the_version_after_where_none_is_named()
    {
        using var repository = WithDemoBook();
        repository.Replace(Syrup, "\"750 g\"", "\"700 g\"");
        var run = ToolRun.In(repository["house/the book"], "compare", "HEAD", "--format", "json");
        using var json = JsonDocument.Parse(run.Bytes);
        Assert.Contains(json.RootElement.GetProperty("recipes").EnumerateArray(), r => r.GetProperty("id").GetString() == "low-tide");
    }

    [Fact]
    public void Two_folders_are_compared_without_git()
    {
        using var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "old").Status);
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "new").Status);
        var same = ToolRun.In(folder.Path, "compare", "old", "new");
        Assert.Equal(0, same.Status);
        Assert.StartsWith("The change reaches 0 recipes.", same.Output, StringComparison.Ordinal);
        File.WriteAllText(
            folder["new/low-tide.drink.json"],
            File.ReadAllText(folder["new/low-tide.drink.json"])
                .Replace("heather-honey-syrup", "hether-honey-syrup", StringComparison.Ordinal));
        Assert.Equal(0, ToolRun.In(folder.Path, "compare", "old", "new").Status);
        Assert.Equal(1, ToolRun.In(folder.Path, "compare", "old", "new", "--fail-at", "error").Status);
    }

    [Fact]
    public void A_revision_is_read_as_a_checkout_of_it_would_be()
    {
        using var repository = WithDemoBook();
        repository.Write("house/the book/.hidden/a.drink.json", SmallBook.Broken);
        repository.Write("house/the book/node_modules/a.drink.json", SmallBook.Broken);
        repository.Write("house/the book/other/bar.json", SmallBook.Bar);
        repository.Write("house/the book/other/b.drink.json", SmallBook.Broken);
        repository.Write("house/the book/more/cafe é.drink.json", SmallBook.Broken);
        repository.Commit("Add corners");
        var run = ToolRun.In(repository.Path, "compare", "house/the book", "HEAD", "--book", "house/the book");
        Assert.StartsWith("The change reaches 0 recipes.", run.Output, StringComparison.Ordinal);
        Assert.Equal(0, ToolRun.In(repository.Path, "check", "house/the book", "--since", "HEAD").Status);
        Assert.Equal(1, ToolRun.In(repository.Path, "check", "house/the book", "--since", "HEAD~1").Status);
    }

    [Theory]
    [InlineData("no-such-branch")]
    [InlineData("--output=stolen")]
    [InlineData("")]
    public void A_revision_that_git_does_not_know_is_wrong_usage(string revision)
    {
        using var repository = WithDemoBook();
        var run = ToolRun.In(repository.Path, "check", "house/the book", $"--since={revision}");
        Assert.Equal(2, run.Status);
        Assert.False(File.Exists(repository["stolen"]));
        Assert.Equal(2, ToolRun.In(repository.Path, "compare", "no-such-branch", "--book", "house/the book").Status);
    }

    private static GitFolder WithDemoBook()
    {
        var repository = new GitFolder();
        Assert.Equal(0, ToolRun.In(repository.Path, "start", "house/the book").Status);
        repository.Commit("Write the book");
        return repository;
    }

    private static JsonElement Fact(JsonDocument profiles, string id, string fact) =>
        profiles.RootElement.EnumerateArray().Single(p => p.GetProperty("id").GetString() == id).GetProperty("facts").GetProperty(fact);

    private static double Value(JsonDocument profiles, string id, string fact) => Fact(profiles, id, fact).GetProperty("value").GetDouble();

    /// <summary>A number as reports print it: three significant places or so.</summary>
    private static string Shown(JsonDocument profiles, string id, string fact)
    {
        double value = Value(profiles, id, fact);
        int decimals = value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3;
        return Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }
}
