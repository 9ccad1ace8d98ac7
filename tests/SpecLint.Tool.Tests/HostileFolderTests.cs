using System.Diagnostics;
using System.Text;
using SpecLint.Tool.Tests.Changes;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>Files that cannot be read, names that are not text, links and pipes: a sentence and status 2, never a gap in the book.</summary>
public class HostileFolderTests
{
    [UnixFact]
    public void A_full_disk_behind_standard_output_is_told()
    {
        using var book = SmallBook.WithBroken();
        var (status, _, error) = Shell(book.Path, "TOOL check --on 2026-11-25 > /dev/full");
        Assert.Equal(2, status);
        Assert.Contains("standard output", error, StringComparison.Ordinal);
        Assert.Contains("not complete", error, StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_reader_that_has_seen_enough_is_not_a_fault()
    {
        using var book = SmallBook.WithBroken();
        var (status, _, error) = Shell(book.Path, "set -o pipefail; TOOL rules SL5001 | true; exit ${PIPESTATUS[0]}");
        Assert.Equal(0, status);
        Assert.Empty(error);
    }

    [UnixFact]
    public void A_closed_standard_error_does_not_end_the_run()
    {
        using var book = SmallBook.WithBroken();
        var (status, output, _) = Shell(book.Path, "TOOL check nowhere 2>&-; echo status $?");
        Assert.Equal(0, status);
        Assert.Contains("status 2", output, StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_name_that_is_not_UTF8_is_told()
    {
        using var book = SmallBook.WithBroken();
        Shell(book.Path, """cp mudflat.drink.json "$(printf 'caf\351.drink.json')" """);
        var run = ToolRun.In(book.Path, "check");
        Assert.Equal(2, run.Status);
        Shell(book.Path, "rm caf*");
        Assert.Contains(@"caf\x??.drink.json is not UTF-8", run.Error, StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_pipe_behind_a_link_is_not_waited_for()
    {
        using var book = SmallBook.WithBroken();
        Process.Start("mkfifo", book["pipe"]).WaitForExit();
        File.CreateSymbolicLink(book["linked.drink.json"], "pipe");
        var run = ToolRun.In(book.Path, "check", "--format", "json");
        Assert.Equal(1, run.Status);
        Assert.Contains("linked.drink.json", run.Output, StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_bar_behind_a_link_out_of_the_book_is_refused()
    {
        using var outside = new TestFolder();
        outside.Write("bar.json", SmallBook.Bar);
        using var book = SmallBook.WithBroken();
        File.Delete(book["bar.json"]);
        File.CreateSymbolicLink(book["bar.json"], outside["bar.json"]);
        var run = ToolRun.In(book.Path, "check");
        Assert.Equal(2, run.Status);
        Assert.Contains("leads out of the book", run.Error, StringComparison.Ordinal);

        // Within the book a link is as good as the file.
        File.Delete(book["bar.json"]);
        book.Write("settings/house.json", SmallBook.Bar);
        File.CreateSymbolicLink(book["bar.json"], "settings/house.json");
        Assert.Equal(1, ToolRun.In(book.Path, "check").Status);
    }

    [UnixFact]
    public void A_schema_of_the_house_behind_a_link_out_of_the_book_is_refused()
    {
        using var outside = new TestFolder();
        outside.Write("drink.schema.json", "{}");
        using var book = SmallBook.WithBroken();
        book.Write("bar.json", """{ "name": "The Saltmarsh Room", "schemas": { "drink": "house.schema.json" } }""");
        File.CreateSymbolicLink(book["house.schema.json"], outside["drink.schema.json"]);
        var run = ToolRun.In(book.Path, "check");
        Assert.Equal(2, run.Status);
        Assert.Contains("outside the book", run.Error, StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_result_keeps_the_rights_of_the_file_it_replaces_and_follows_its_link()
    {
        if (OperatingSystem.IsWindows()) return;
        using var book = SmallBook.WithBroken();
        book.Write("kept/report.txt", "old");
        File.SetUnixFileMode(book["kept/report.txt"], UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.CreateSymbolicLink(book["out.txt"], "kept/report.txt");
        Assert.Equal(1, ToolRun.In(book.Path, "check", "--output", "out.txt").Status);
        Assert.Equal("kept/report.txt", new FileInfo(book["out.txt"]).LinkTarget);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(book["kept/report.txt"]));
        Assert.Contains("SL9001", File.ReadAllText(book["kept/report.txt"]), StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_result_is_written_into_a_pipe_not_over_it()
    {
        using var book = SmallBook.WithBroken();
        var (_, output, _) = Shell(book.Path, "mkfifo pipe; cat pipe & TOOL check --on 2026-11-25 --output pipe; wait; test -p pipe && echo still a pipe");
        Assert.Contains("SL9001", output, StringComparison.Ordinal);
        Assert.Contains("still a pipe", output, StringComparison.Ordinal);
    }

    [UnixFact]
    public void A_hostile_repository_runs_nothing()
    {
        // A partial clone whose settings name a program for fetching what is missing.
        using var made = new GitFolder();
        Assert.Equal(0, ToolRun.In(made.Path, "start", "book").Status);
        made.Commit("Write the book");
        foreach (string settings in new[]
        {
            "git config remote.origin.url ext::'touch% ran'; git config protocol.ext.allow always",
            "git config remote.origin.url file://$PWD/.git; git config remote.origin.uploadpack 'touch ran; false'; git config protocol.file.allow always",
            "git config remote.origin.url ssh://nowhere/x; git config core.sshCommand 'touch ran; false'",
            "git config core.fsmonitor 'touch ran'; git config core.pager 'touch ran'; git config diff.external 'touch ran'; git config "
                + "core.hooksPath .; git config credential.helper '!touch ran'",
        })
        {
            Shell(
                made.Path,
                $"git config remote.origin.promisor true; git config remote.origin.partialclonefilter blob:none; git config "
                    + $"extensions.partialClone origin; git config core.repositoryFormatVersion 1; {settings}");

            // An object is missing, so that git would like to fetch it.
            Shell(made.Path, "find .git/objects -type f | grep -v pack | tail -n 3 | while read f; do mv \"$f\" \"$f.gone\"; done");
            foreach (string[] args in new string[][] { ["check", "book", "--since", "HEAD"], ["compare", "HEAD", "--book", "book"] })
                Assert.True(ToolRun.In(made.Path, args).Status is 0 or 1 or 2);
            Assert.False(File.Exists(made["ran"]) || File.Exists(made["book/ran"]), settings);
        }
    }

    private static (int Status, string Output, string Error) Shell(string folder, string script)
    {
        string tool = $"dotnet '{Path.Combine(AppContext.BaseDirectory, "SpecLint.Tool.dll")}'";
        var start = new ProcessStartInfo("bash", ["-c", script.Replace("TOOL", tool, StringComparison.Ordinal)])
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }

    private sealed class UnixFactAttribute : FactAttribute
    {
        public UnixFactAttribute()
        {
            if (OperatingSystem.IsWindows()) Skip = "Pipes, rights and links of Unix.";
        }
    }
}
