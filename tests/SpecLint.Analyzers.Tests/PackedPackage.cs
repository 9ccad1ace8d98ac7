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
        string project = Path.Combine(Repository.Root, "src", "SpecLint.Analyzers", "SpecLint.Analyzers.csproj");
        var (status, text) = Run(
            Folder, "pack", project, "--no-build", "-c", Configuration, "-o", Path.Combine(Folder, "packages"), $"-p:Version={Version}",
            "--nologo", "-v", "q");
        Assert.True(status == 0, text);
        File.Copy(Metadata("NoTargetsPackage"), Path.Combine(Folder, "packages", Path.GetFileName(Metadata("NoTargetsPackage"))));
    }

    public string Folder { get; }

    public string Version { get; } = "0.0.1-test";

    /// <summary>Names of the files in the package, but for NuGet's own.</summary>
    public IReadOnlyList<string> Names()
    {
        using var zip = ZipFile.OpenRead(Path.Combine(Folder, "packages", $"SpecLint.Analyzers.{Version}.nupkg"));
        return [.. zip.Entries.Select(e => e.FullName)
            .Where(n => !n.StartsWith("_rels/", StringComparison.Ordinal)
                && !n.StartsWith("package/", StringComparison.Ordinal)
                && n != "[Content_Types].xml")
            .Order(StringComparer.Ordinal)];
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
    public BareProject NewProjectWithoutCompiler(string name) =>
        new(this, Path.Combine(Folder, name), "Microsoft.Build.NoTargets/" + Metadata("NoTargetsVersion"));

    /// <summary>Runs the command, built beside this test, on a book.</summary>
    internal static ProgramRun RunCommand(string folder, params string[] args) =>
        Run(folder, ["exec", Path.Combine(Repository.Root, "src", "SpecLint.Tool", "bin", Configuration, "net10.0", "SpecLint.Tool.dll"), .. args]);

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    internal static ProgramRun Run(string folder, params string[] args) => Programs.Run(folder, "dotnet", args, ("MSBUILD_EXE_PATH", null));

    private static string Metadata(string key) =>
        typeof(PackedPackage).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == key).Value!;
}
