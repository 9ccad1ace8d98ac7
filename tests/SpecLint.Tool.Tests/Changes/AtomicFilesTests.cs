using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>Files are written whole, never over somebody else's, and what a killed run left goes with the next one.</summary>
public class AtomicFilesTests
{
    [Fact]
    public void What_a_killed_run_left_goes_with_the_next_run_in_the_folder()
    {
        using var folder = new TestFolder();
        folder.Write(".a.drink.json.abcdefgh.ijk.speclint.tmp", "half");
        folder.Write(".b.drink.json.abcdefgh.ijk.speclint.tmp", "");
        folder.Write(".somebody-elses.tmp", "kept");
        new AtomicFiles().Write(folder["c.txt"], static s => s.Write("new"u8));
        Assert.Equal([".somebody-elses.tmp", "c.txt"], Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_another_run_is_writing_stays()
    {
        using var folder = new TestFolder();
        string other = folder[".a.drink.json.abcdefgh.ijk.speclint.tmp"];
        using (new FileStream(
            other, FileMode.CreateNew, FileAccess.Write, FileShare.None)) new AtomicFiles().Write(folder["c.txt"], static s => s.Write("new"u8));
        Assert.True(File.Exists(other));
    }

    [Fact]
    public void A_file_that_stands_is_never_written_over()
    {
        using var folder = new TestFolder();
        folder.Write("a.drink.json", "theirs");
        var files = new AtomicFiles();
        Assert.Throws<IOException>(() => files.Create(folder["a.drink.json"], "ours"u8.ToArray()));
        Assert.Equal("theirs", File.ReadAllText(folder["a.drink.json"]));
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Of_several_files_all_are_written_or_none()
    {
        using var folder = new TestFolder();
        folder.Write("deep/b.txt", "theirs");
        var files = new AtomicFiles();
        Assert.Throws<IOException>(() => files.Create([(folder["new/folder/a.txt"], () => "a"u8.ToArray()), (folder["deep/b.txt"], () => "b"u8.ToArray())]));
        Assert.False(Directory.Exists(folder["new"]));
        Assert.Equal("theirs", File.ReadAllText(folder["deep/b.txt"]));
    }

    [Fact]
    public void A_book_that_a_killed_run_has_begun_is_completed()
    {
        using var folder = new TestFolder();
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        string whole = folder.Snapshot();
        File.Delete(folder["book/bar.json"]);
        File.Delete(folder["book/low-tide.drink.json"]);
        folder.Write("book/.bar.json.abcdefgh.ijk.speclint.tmp", "half");
        Assert.Equal(0, ToolRun.In(folder.Path, "start", "book").Status);
        Assert.Equal(whole, folder.Snapshot());

        // A file that is not the one that would be written is somebody's work.
        File.Delete(folder["book/bar.json"]);
        folder.Write("book/low-tide.drink.json", "{}");
        var run = ToolRun.In(folder.Path, "start", "book");
        Assert.Equal(2, run.Status);
        Assert.Contains("already holds low-tide.drink.json", run.Error, StringComparison.Ordinal);
    }
}
