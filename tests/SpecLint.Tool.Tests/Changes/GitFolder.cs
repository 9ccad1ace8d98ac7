using System.Diagnostics;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>A git repository with a book in it, for one test.</summary>
internal sealed class GitFolder : IDisposable
{
    private readonly TestFolder folder = new();

    public GitFolder()
    {
        Git("init", "--quiet", "--initial-branch=main");
        Git("config", "user.name", "Ife Adeyemi-Walsh");
        Git("config", "user.email", "ife@saltmarsh.example");
        Git("config", "commit.gpgsign", "false");
        Git("config", "core.autocrlf", "false");
    }

    public string Path => folder.Path;

    public string this[string relative] => folder[relative];

    public void Write(string relative, string text) => folder.Write(relative, text);

    public void Replace(string relative, string old, string now)
    {
        string text = File.ReadAllText(folder[relative]);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(folder[relative], text.Replace(old, now, StringComparison.Ordinal));
    }

    public void Commit(string message)
    {
        Git("add", "--all");
        Git("commit", "--quiet", "--message", message);
    }

    public string Git(params string[] args)
    {
        var start = new ProcessStartInfo("git", args)
        {
            WorkingDirectory = folder.Path,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["GIT_CONFIG_GLOBAL"] = OperatingSystem.IsWindows() ? "NUL" : "/dev/null";
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, string.Join(' ', args) + "\n" + error.Result);
        return output;
    }

    public void Dispose()
    {
        // git writes its objects read-only, which some systems do not delete.
        foreach (string file in Directory.EnumerateFiles(folder[".git"], "*", SearchOption.AllDirectories)) File.SetAttributes(file, FileAttributes.Normal);
        folder.Dispose();
    }
}
