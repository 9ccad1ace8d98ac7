using System.Diagnostics;
using System.Runtime.InteropServices;
using SpecLint.Tool.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tool.Tests;

/// <summary>
/// Packs the tool, installs it from a folder as a user would, and runs it on its own demo book. Slow: it compiles the
/// whole product anew, the native one to machine code.
/// </summary>
public class PackingTests(ITestOutputHelper output)
{
    [NativeFact]
    public void The_native_tool_installs_from_a_folder_and_checks_the_demo_book() => InstallAndRun(runtimeIdentifiers: null);

    [LongFact]
    public void The_portable_tool_installs_from_a_folder_and_checks_the_demo_book() => InstallAndRun(runtimeIdentifiers: "any");

    private void InstallAndRun(string? runtimeIdentifiers)
    {
        using var folder = new TestFolder();
        string version = $"0.0.1-test.{Environment.ProcessId}.{Stopwatch.GetTimestamp()}";
        string project = Path.Combine(Repository.Root, "src", "SpecLint.Tool", "SpecLint.Tool.csproj");
        List<string> pack = ["pack", project, "-c", "Release", "-o", folder["packages"], "--artifacts-path", folder["artifacts"], $"-p:Version={version}", "--nologo", "-v", "q"];
        if (runtimeIdentifiers is not null) pack.Add($"-p:RuntimeIdentifiers={runtimeIdentifiers}");
        var packed = Programs.Run(Repository.Root, "dotnet", pack);
        Assert.True(packed.Status == 0, packed.Text);
        Assert.DoesNotContain("warning IL", packed.Text, StringComparison.Ordinal);

        // Into an empty folder, by a user who has installed nothing before, and where the system allows it without any network.
        string[] install = ["dotnet", "tool", "install", "SpecLint.Tool", "--tool-path", folder["tool"], "--version", version, "--source", folder["packages"], "--no-http-cache"];
        if (OperatingSystem.IsLinux() && Environment.UserName == "root" && Programs.Has("unshare")) install = ["unshare", "--net", .. install];
        Directory.CreateDirectory(folder["home"]);
        long start = Stopwatch.GetTimestamp();
        var installed = Programs.Run(folder.Path, install[0], install[1..], ("HOME", folder["home"]), ("DOTNET_CLI_HOME", folder["home"]), ("NUGET_PACKAGES", folder["home/packages"]), ("DOTNET_GENERATE_ASPNET_CERTIFICATE", "false"));
        Assert.True(installed.Status == 0, installed.Text);

        string tool = folder[OperatingSystem.IsWindows() ? "tool/speclint.exe" : "tool/speclint"];
        Assert.Equal(0, Programs.Run(folder.Path, tool, ["start", "book"]).Status);
        var check = Programs.Run(folder.Path, tool, ["check", "book", "--on", ToolRun.Day]);
        Assert.True(check.Status == 1, check.Text);
        output.WriteLine($"From an empty folder to the first finding in {Stopwatch.GetElapsedTime(start).TotalSeconds:0.0} s ({install[0]}).");
        Assert.Contains("book/", check.Text, StringComparison.Ordinal);

        // Native, portable and in this process: one code, the same bytes.
        Assert.Equal(ToolRun.In(folder.Path, "check", "book", "--on", ToolRun.Day).Output, check.Text);
        Assert.Equal(0, Programs.Run(folder.Path, tool, ["profile", "low-tide", "--book", "book", "--format", "json"]).Status);
        Assert.Equal(2, Programs.Run(folder.Path, tool, ["check", "nowhere"]).Status);

        // The house's own rules: loaded by the portable tool, and told why not by the native one.
        var house = Programs.Run(folder.Path, tool, ["check", "book", "--on", ToolRun.Day, "--rules", HouseRulesExample.Path]);
        if (runtimeIdentifiers == "any")
        {
            Assert.Equal(ToolRun.In(folder.Path, "check", "book", "--on", ToolRun.Day, "--rules", HouseRulesExample.Path).Output, house.Text);
        }
        else
        {
            Assert.Equal(2, house.Status);
            Assert.Contains("cannot load code", house.Text, StringComparison.Ordinal);
        }
    }

    /// <summary>A fact that needs linux-x64 and a C compiler to link with; skipped, and said to be so, where there is none.</summary>
    private sealed class NativeFactAttribute : LongFactAttribute
    {
        public NativeFactAttribute()
        {
            if (Skip is not null) return;
            bool rightPlace = OperatingSystem.IsLinux() && RuntimeInformation.ProcessArchitecture == Architecture.X64;
            bool hasLinker = Programs.Has("clang") || Programs.Has("gcc");
            if (!rightPlace) Skip = "The native tool is made for linux-x64.";
            else if (!hasLinker) Skip = "Linking the native tool needs clang or gcc.";
        }
    }
}
