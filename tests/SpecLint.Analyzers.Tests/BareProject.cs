using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using SpecLint.Vocabulary;

namespace SpecLint.Analyzers.Tests;

/// <summary>A project that holds only recipes.</summary>
public sealed partial class BareProject
{
    private readonly string folder;

    internal BareProject(PackedPackage package, string folder, string sdk = "Microsoft.NET.Sdk")
    {
        this.folder = folder;
        Directory.CreateDirectory(folder);
        Write("Book.csproj", $"""
            <Project Sdk="{sdk}">
              <PropertyGroup>
                <TargetFramework>net10.0</TargetFramework>
                <RestorePackagesPath>{Path.Combine(package.Folder, "restored")}</RestorePackagesPath>
                <SpecLintOn>{SmallBook.Day}</SpecLintOn>
                <ErrorLog>$(MSBuildProjectDirectory)/log.sarif,version=2.1</ErrorLog>
              </PropertyGroup>
              <ItemGroup>
                <PackageReference Include="SpecLint.Analyzers" Version="{package.Version}" PrivateAssets="all" />
              </ItemGroup>
            </Project>
            """);
        Write("NuGet.config", $"""
            <configuration>
              <packageSources>
                <clear />
                <add key="folder" value="{Path.Combine(package.Folder, "packages")}" />
              </packageSources>
            </configuration>
            """);
    }

    public void Write(string path, string text)
    {
        string full = Path.Combine(folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
    }

    /// <summary>The findings that the command writes about the book in the project's folder, in the form of a build's.</summary>
    public List<(string Id, string Path, int Line, int Column, Level Level)> SeenByCommand()
    {
        var (status, text) = PackedPackage.RunCommand(folder, "check", ".", "--on", SmallBook.Day, "--format", "sarif", "--output", "command.sarif", "--quiet");
        Assert.True(status is 0 or 1, text);
        return Results("command.sarif");
    }

    public void Delete(string path) => File.Delete(Path.Combine(folder, path));

    /// <summary>Builds; a compiler of its own, unless the lasting one is asked for.</summary>
    public BuildOutcome Build(params string[] further)
    {
        File.Delete(Path.Combine(folder, "log.sarif"));
        var (status, text) = PackedPackage.Run(folder, ["build", "--nologo", "-v", "m", "-p:UseSharedCompilation=false", .. further]);
        return new BuildOutcome(
            status,
            text,
            Printed(text),
            Results("log.sarif"),
            [.. PrintedLine()
                .Matches(SummaryStart().Split(text)[0])
                .Select(m => m.Value.Replace(folder, "", StringComparison.Ordinal).Trim())]);
    }

    private List<(string Id, string Path, int Line, int Column, Level Level)> Printed(string text)
    {
        var found = new HashSet<(string Id, string Path, int Line, int Column, Level Level)>();
        foreach (Match line in PrintedLine().Matches(text))
        {
            var level = line.Groups["level"].Value == "error" ? Level.Error : Level.Warning;
            found.Add((line.Groups["id"].Value, Relative(line.Groups["path"].Value), int.Parse(
                line.Groups["line"].Value, CultureInfo.InvariantCulture), int.Parse(
                    line.Groups["column"].Value, CultureInfo.InvariantCulture), level));
        }

        return [.. found.OrderBy(f => f.ToString(), StringComparer.Ordinal)];
    }

    /// <summary>What a SARIF log holds: the compiler's has notes too, which it does not print.</summary>
    private List<(string Id, string Path, int Line, int Column, Level Level)> Results(string name)
    {
        string log = Path.Combine(folder, name);
        if (!File.Exists(log)) return [];
        using var document = JsonDocument.Parse(File.ReadAllText(log));
        var found = new List<(string Id, string Path, int Line, int Column, Level Level)>();
        foreach (var result in document.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray())
        {
            string id = result.GetProperty("ruleId").GetString()!;
            if (!id.StartsWith("SL", StringComparison.Ordinal)) continue;
            var place = result.GetProperty("locations")[0].GetProperty("physicalLocation");
            var region = place.GetProperty("region");
            Assert.True(Book.Settings.TryLevel(result.GetProperty("level").GetString()!, out var level));

            // The compiler's addresses are absolute, the command's relative to the book.
            var address = new Uri(new Uri(folder + "/"), place.GetProperty("artifactLocation").GetProperty("uri").GetString()!);
            found.Add((id, Relative(address.LocalPath), region.GetProperty("startLine").GetInt32(), region.GetProperty("startColumn").GetInt32(), level));
        }

        return [.. found.OrderBy(f => f.ToString(), StringComparer.Ordinal)];
    }

    private string Relative(string path) => Path.GetRelativePath(folder, path).Replace('\\', '/');

    [GeneratedRegex(
        @"^\s*([\d:]+>)?(?<path>[^\r\n(]+)\((?<line>\d+),(?<column>\d+)\): (?<level>warning|error) (?<id>SL\d{4}):.*",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex PrintedLine();

    [GeneratedRegex(@"^Build (succeeded|FAILED)\.", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex SummaryStart();
}

/// <summary>What a build came to.</summary>
/// <param name="Status">Exit status.</param>
/// <param name="Text">All that was printed.</param>
/// <param name="Printed">Findings printed.</param>
/// <param name="Logged">Findings in the compiler's log.</param>
/// <param name="Lines">Each line that prints a finding, as often as it is printed before the summary repeats it, without the project's folder.</param>
public sealed record BuildOutcome(
    int Status,
    string Text,
    IReadOnlyList<(string Id, string Path, int Line, int Column, Level Level)> Printed,
    IReadOnlyList<(string Id, string Path, int Line, int Column, Level Level)> Logged,
    IReadOnlyList<string> Lines)
{
    /// <summary>The plug-in was loaded and did not fall over.</summary>
    public void AssertSound()
    {
        foreach (string fault in new[] { "AD0001", "CS8032", "MSB4018", "MSB4062" })
        {
            Assert.DoesNotContain("error " + fault, Text, StringComparison.Ordinal);
            Assert.DoesNotContain("warning " + fault, Text, StringComparison.Ordinal);
        }
    }
}
