using System.Diagnostics;
using System.IO.Compression;
using System.Reflection;

namespace SpecLint.Analyzers.Tests;

/// <summary>The package, packed from what this test run was built from, in a folder to restore from.</summary>
public sealed class PackedPackage : IDisposable
{
#if DEBUG
    private const string Configuration = "Debug";
#else
    private const string Configuration = "Release";
#endif

    public PackedPackage()
    {
        Folder = Directory.CreateTempSubdirectory("speclint-build-").FullName;
        string project = Path.Combine(Root(), "src", "SpecLint.Analyzers", "SpecLint.Analyzers.csproj");
        var (status, text) = Run(Folder, "pack", project, "--no-build", "-c", Configuration, "-o", Path.Combine(Folder, "packages"), $"-p:Version={Version}", "--nologo", "-v", "q");
        Assert.True(status == 0, text);
        File.Copy(Metadata("NoTargetsPackage"), Path.Combine(Folder, "packages", Path.GetFileName(Metadata("NoTargetsPackage"))));
    }

    public string Folder { get; }

    public string Version { get; } = "0.0.1-test";

    /// <summary>Names of the files in the package, but for NuGet's own.</summary>
    public IReadOnlyList<string> Names()
    {
        using var zip = ZipFile.OpenRead(Path.Combine(Folder, "packages", $"SpecLint.Analyzers.{Version}.nupkg"));
        return [.. zip.Entries.Select(e => e.FullName).Where(n => !n.StartsWith("_rels/", StringComparison.Ordinal) && !n.StartsWith("package/", StringComparison.Ordinal) && n != "[Content_Types].xml").Order(StringComparer.Ordinal)];
    }

    public string Read(string name)
    {
        using var zip = ZipFile.OpenRead(Path.Combine(Folder, "packages", $"SpecLint.Analyzers.{Version}.nupkg"));
        using var reader = new StreamReader(zip.GetEntry(name)!.Open());
        return reader.ReadToEnd();
    }

    /// <summary>A fresh project, without a line of C#, that takes in the package from the folder and from nowhere else.</summary>
    public BareProject NewProject(string name) => new(this, Path.Combine(Folder, name));

    /// <summary>A fresh project in which no compiler runs.</summary>
    public BareProject NewProjectWithoutCompiler(string name) => new(this, Path.Combine(Folder, name), "Microsoft.Build.NoTargets/" + Metadata("NoTargetsVersion"));

    /// <summary>Runs the command, built beside this test, on a book.</summary>
    public static (int Status, string Text) RunCommand(string folder, params string[] args) =>
        Run(folder, ["exec", Path.Combine(Root(), "src", "SpecLint.Tool", "bin", Configuration, "net10.0", "SpecLint.Tool.dll"), .. args]);

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    internal static (int Status, string Text) Run(string folder, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", args) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = System.Text.Encoding.UTF8 };
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment.Remove("MSBUILD_EXE_PATH");
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.Result);
    }

    private static string Metadata(string key) =>
        typeof(PackedPackage).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == key).Value!;

    private static string Root()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "SpecLint.sln"))) folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The root of the project was not found.");
    }
}
