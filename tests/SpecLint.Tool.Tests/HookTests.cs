using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>The hooks of the repository, run by git and by pre-commit themselves on throw-away repositories.</summary>
public sealed class HookTests : IDisposable
{
    private const string Good = """{ "name": "Dry Gin Highball", "ingredients": [ { "item": "gin", "amount": "45 ml" }, { "item": "soda-water", "amount": "120 ml" } ], "method": [ { "do": "build", "ice": "cubed" } ], "glass": "highball", "serves": 1 }""";

    private readonly TestFolder folder = new();

    public HookTests()
    {
        Directory.CreateDirectory(folder["home"]);
        Directory.CreateDirectory(folder["bin"]);
        string tool = folder["bin/speclint"];
        File.WriteAllText(tool, $"#!/bin/sh\nexec dotnet '{typeof(Shell).Assembly.Location}' \"$@\"\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(tool, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        Directory.CreateDirectory(folder["repo"]);
        Must("git", "init", "-q", "-b", "main");
        Write("bar.json", """{ "name": "The Saltmarsh Room", "jurisdictions": [ "IE" ] }""");
        Write("highball.drink.json", Good);
    }

    public void Dispose() => folder.Dispose();

    [PreCommitFact]
    public void The_first_commit_is_checked_as_a_whole()
    {
        UseHook("speclint");
        var clean = Commit();
        Assert.True(clean.Status == 0, clean.Text);
        Must("git", "update-ref", "-d", "HEAD");
        Write("odd.drink.json", Good.Replace("gin", "no-such-thing", StringComparison.Ordinal));
        var broken = Commit();
        Assert.Equal(1, broken.Status);
        Assert.Contains("odd.drink.json", broken.Text, StringComparison.Ordinal);
    }

    [PreCommitFact]
    public void A_commit_is_held_back_for_what_it_brings_and_not_for_what_was_there()
    {
        Write("old.drink.json", Good.Replace("gin", "no-such-thing", StringComparison.Ordinal));
        Assert.Equal(0, Commit().Status);
        UseHook("speclint");
        Write("README.txt", "words");
        var beside = Commit();
        Assert.True(beside.Status == 0, beside.Text);

        Write("new.drink.json", Good.Replace("soda-water", "nor-this", StringComparison.Ordinal));
        var broken = Commit();
        Assert.Equal(1, broken.Status);
        Assert.Contains("new.drink.json", broken.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("old.drink.json", broken.Text, StringComparison.Ordinal);
        Assert.Contains("there before this change", broken.Text, StringComparison.Ordinal);
    }

    [PreCommitFact]
    public void A_file_that_is_renamed_or_gone_is_missed_where_it_is_named()
    {
        Write(
            "plain.prep.json",
            """{ "name": "Plain syrup", "family": "syrup", "ingredients": [ { "item": "white-sugar", "amount": "500 g" }, { "item": "water", "amount": "500 g" } ], "yield": "1 kg" }""");
        Write("sweet.drink.json", Good.Replace("soda-water", "plain", StringComparison.Ordinal));
        Assert.Equal(0, Commit().Status);
        UseHook("speclint");
        Assert.Equal(0, Commit().Status);

        Must("git", "mv", "plain.prep.json", "plainer.prep.json");
        var renamed = Commit();
        Assert.Equal(1, renamed.Status);
        Assert.Contains("sweet.drink.json", renamed.Text, StringComparison.Ordinal);

        Must("git", "mv", "plainer.prep.json", "plain.prep.json");
        Must("git", "rm", "-q", "-f", "plain.prep.json");
        var gone = Commit();
        Assert.Equal(1, gone.Status);
        Assert.Contains("sweet.drink.json", gone.Text, StringComparison.Ordinal);
    }

    [PreCommitFact]
    public void All_files_and_the_hook_of_whole_books_show_what_is_committed_already()
    {
        Write("old.drink.json", Good.Replace("gin", "no-such-thing", StringComparison.Ordinal));
        UseHook("speclint", "speclint-all");
        Must("git", "add", "-A");
        Must("git", "commit", "-q", "--no-verify", "-m", "as found");
        Assert.Equal(1, Run("pre-commit", "run", "--all-files", "speclint").Status);
        Assert.Equal(1, Run("pre-commit", "run", "speclint-all").Status);
        Assert.Equal(0, Run("pre-commit", "run", "speclint").Status);
    }

    [PreCommitFact]
    public void Every_book_of_the_repository_is_looked_at()
    {
        foreach (string file in new[] { "bar.json", "highball.drink.json" })
        {
            string text = File.ReadAllText(folder["repo/" + file]);
            File.Delete(folder["repo/" + file]);
            foreach (string bar in new[] { "upstairs", "cellar", "cellar/annexe" }) Write($"{bar}/{file}", text);
        }

        Assert.Equal(0, Commit().Status);
        UseHook("speclint");
        foreach (string bar in new[] { "upstairs", "cellar/annexe" })
            Write($"{bar}/new.drink.json", Good.Replace("gin", "no-such-thing", StringComparison.Ordinal));
        var run = Commit();
        Assert.Equal(1, run.Status);
        Assert.Contains("upstairs/new.drink.json", run.Text, StringComparison.Ordinal);
        Assert.Contains("cellar/annexe/new.drink.json", run.Text, StringComparison.Ordinal);
    }

    [PreCommitFact]
    public void A_range_of_commits_is_compared_with_its_first()
    {
        Assert.Equal(0, Commit().Status);
        UseHook("speclint");
        Write("new.drink.json", Good.Replace("gin", "no-such-thing", StringComparison.Ordinal));
        Must("git", "add", "-A");
        Must("git", "commit", "-q", "--no-verify", "-m", "unseen");
        Assert.Equal(0, Run("pre-commit", "run", "speclint").Status);
        Assert.Equal(1, Run("pre-commit", "run", "speclint", "--from-ref", "HEAD~1", "--to-ref", "HEAD").Status);
    }

    private void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(folder["repo/" + path])!);
        File.WriteAllText(folder["repo/" + path], text);
    }

    /// <summary>Installs hooks of this project's own file, as somebody who names this repository would.</summary>
    private void UseHook(params string[] ids)
    {
        Directory.CreateDirectory(folder["hooks"]);
        File.Copy(Path.Combine(Repository.Root, ".pre-commit-hooks.yaml"), folder["hooks/.pre-commit-hooks.yaml"]);
        RunIn("hooks", "git", "init", "-q", "-b", "main");
        RunIn("hooks", "git", "add", "-A");
        Assert.Equal(0, RunIn("hooks", "git", "commit", "-q", "-m", "hooks").Status);
        string revision = RunIn("hooks", "git", "rev-parse", "HEAD").Text.Trim();
        Write(".pre-commit-config.yaml", $"repos:\n- repo: {folder["hooks"]}\n  rev: {revision}\n  hooks:\n{string.Concat(ids.Select(i => $"  - id: {i}\n"))}");
        Must("pre-commit", "install");
    }

    private ProgramRun Commit()
    {
        Must("git", "add", "-A");
        return Run("git", "commit", "-q", "--allow-empty", "-m", "a change");
    }

    private void Must(string program, params string[] args)
    {
        var run = Run(program, args);
        Assert.True(run.Status == 0, run.Text);
    }

    private ProgramRun Run(string program, params string[] args) => RunIn("repo", program, args);

    private ProgramRun RunIn(string where, string program, params string[] args)
    {
        const string Name = "Noor Kessel", Address = "noor@saltmarsh.example";
        return Programs.Run(
            folder[where],
            program,
            args,
            ("PATH", folder["bin"] + Path.PathSeparator + Environment.GetEnvironmentVariable("PATH")),
            ("HOME", folder["home"]),
            ("PRE_COMMIT_HOME", folder["home/pre-commit"]),
            ("GIT_AUTHOR_NAME", Name),
            ("GIT_AUTHOR_EMAIL", Address),
            ("GIT_COMMITTER_NAME", Name),
            ("GIT_COMMITTER_EMAIL", Address));
    }

    /// <summary>A long fact that needs pre-commit; skipped, and said to be so, where it is not installed.</summary>
    private sealed class PreCommitFactAttribute : LongFactAttribute
    {
        public PreCommitFactAttribute()
        {
            if (Skip is not null) return;
            bool isThere = !OperatingSystem.IsWindows() && Programs.Has("pre-commit");
            if (!isThere) Skip = "pre-commit is not installed.";
        }
    }
}
