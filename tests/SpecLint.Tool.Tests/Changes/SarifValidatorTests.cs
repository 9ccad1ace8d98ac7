using System.Runtime.InteropServices;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>
/// The logs held against the validator of the SARIF SDK (npm, @microsoft/sarif-multitool), with its rules for GitHub. Slow:
/// it is installed from the registry. Its exit status is 0 whatever it finds, so its words are read.
/// </summary>
public class SarifValidatorTests
{
    private const string Package = "@microsoft/sarif-multitool-linux@5.7.0";

    [LinuxWithNpmFact]
    public void The_validator_finds_no_error_in_a_log_of_check_and_of_check_since()
    {
        using var tools = new TestFolder();
        var installed = Programs.Run(tools.Path, "npm", ["install", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", tools.Path, Package]);
        Assert.True(installed.Status == 0, installed.Text);
        string validator = tools["node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool"];
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(validator, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        using var repository = new GitFolder();
        Assert.Equal(0, ToolRun.In(repository.Path, "start", "book").Status);
        repository.Commit("Write the book");
        repository.Replace("book/low-tide.drink.json", "\"heather-honey-syrup\"", "\"hether-honey-syrup\"");
        ToolRun.In(repository.Path, "check", "book", "--format", "sarif", "--output", "check.sarif");
        ToolRun.In(repository.Path, "check", "book", "--format", "sarif", "--since", "HEAD", "--output", "since.sarif");
        ToolRun.In(repository.Path, "check", "book", "--format", "sarif", "--for", "code-scanning", "--output", "scanning.sarif");
        ToolRun.In(repository.Path, "linecheck", "evening", "--book", "book", "--on", "2026-11-28", "--format", "sarif", "--output", "evening.sarif");
        foreach (string log in new[] { "check.sarif", "since.sarif", "scanning.sarif", "evening.sarif" })
        {
            var run = Programs.Run(repository.Path, validator, ["validate", log, "--rule-kind", "Sarif;Gh;Ghas"]);
            Assert.Contains("1 files scanned", run.Text, StringComparison.Ordinal);
            Assert.DoesNotContain(": error ", run.Text, StringComparison.Ordinal);
        }

        // The validator does find what is wrong.
        File.WriteAllText(
            repository["bad.sarif"],
            File.ReadAllText(repository["since.sarif"]).Replace("\"startLine\": ", "\"startLine\": -", StringComparison.Ordinal));
        Assert.Contains(
            ": error ",
            Programs.Run(repository.Path, validator, ["validate", "bad.sarif", "--rule-kind", "Sarif;Gh;Ghas"]).Text,
            StringComparison.Ordinal);
    }

    private sealed class LinuxWithNpmFactAttribute : LongFactAttribute
    {
        public LinuxWithNpmFactAttribute()
        {
            if (Skip is not null) return;
            bool npm = Programs.Has("npm");
            if (!OperatingSystem.IsLinux() || RuntimeInformation.ProcessArchitecture != Architecture.X64 || !npm) Skip = "needs npm on Linux x64";
        }
    }
}
