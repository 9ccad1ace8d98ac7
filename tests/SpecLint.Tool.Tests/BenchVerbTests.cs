using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The verb that writes the bench as a page; the page itself is tested in a browser.</summary>
public sealed class BenchVerbTests
{
    [Fact]
    public void The_page_is_written_into_a_folder_of_its_own_and_never_over_others()
    {
        using var folder = new TestFolder();
        folder.Write("built/index.html", "<!doctype html>");
        folder.Write("built/_framework/a.wasm", [0, 1, 2]);
        var options = new RunOptions { PageFolder = folder["built"] };
        var run = ToolRun.With(folder.Path, options, "bench", "to/the bench");
        Assert.Equal((0, ""), (run.Status, run.Error));
        Assert.Contains("http://127.0.0.1:8000/", run.Output, StringComparison.Ordinal);
        Assert.Equal([0, 1, 2], File.ReadAllBytes(folder["to/the bench/_framework/a.wasm"]));
        var again = ToolRun.With(folder.Path, options, "bench", "to/the bench");
        Assert.Equal((2, ""), (again.Status, again.Output));
        Assert.Contains("not an empty folder", again.Error, StringComparison.Ordinal);
        Assert.Equal(2, ToolRun.With(folder.Path, options, "bench", "built/index.html").Status);
    }

    [Fact]
    public void A_build_without_the_page_says_so()
    {
        using var folder = new TestFolder();
        var run = ToolRun.In(folder.Path, "bench", "there");
        Assert.Equal((2, ""), (run.Status, run.Output));
        Assert.Contains(".ci/page", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["there"]));
    }
}
