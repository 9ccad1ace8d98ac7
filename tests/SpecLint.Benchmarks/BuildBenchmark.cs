using System.Diagnostics;
using System.Globalization;

namespace SpecLint.Benchmarks;

/// <summary>
/// What the plug-in adds to a build: a project of generated recipes, built with the packed package and without it, from
/// scratch and unchanged. The quickest of several builds counts, since other work of the machine only ever adds time.
/// </summary>
internal static class BuildBenchmark
{
    private const string Version = "0.0.1-benchmark";

    public static int Run(string repository, int recipes, int rounds, ulong seed)
    {
        string folder = Directory.CreateTempSubdirectory("speclint-bench-").FullName;
        try
        {
            string packages = Path.Combine(folder, "packages");
            Dotnet(repository, "pack", "src/SpecLint.Analyzers/SpecLint.Analyzers.csproj", "-c", "Release", "-o", packages, $"-p:Version={Version}", "-v", "q");
            string book = Path.Combine(folder, "book");
            new BookGenerator(recipes, seed).WriteTo(book);
            File.WriteAllText(Path.Combine(book, "Book.csproj"), $"""
                <Project Sdk="Microsoft.NET.Sdk">
                  <PropertyGroup>
                    <TargetFramework>net10.0</TargetFramework>
                    <RestorePackagesPath>{Path.Combine(folder, "restored")}</RestorePackagesPath>
                    <SpecLintOn>2026-11-25</SpecLintOn>
                  </PropertyGroup>
                  <ItemGroup>
                    <PackageReference Include="SpecLint.Analyzers" Version="{Version}" PrivateAssets="all" />
                  </ItemGroup>
                </Project>
                """);
            File.WriteAllText(Path.Combine(book, "NuGet.config"), $"""
                <configuration>
                  <packageSources>
                    <clear />
                    <add key="folder" value="{packages}" />
                  </packageSources>
                </configuration>
                """);
            Dotnet(book, "restore", "-v", "q");
            string[] build = ["build", "--no-restore", "-v", "q", "-p:TreatWarningsAsErrors=false", "-p:WarningsNotAsErrors=%2A"];
            Compare("from scratch", [.. build, "--no-incremental"]);
            Compare("unchanged", build);
            return 0;

            void Compare(string what, string[] command)
            {
                double with = Quickest(book, rounds, command);
                double without = Quickest(book, rounds, [.. command, "-p:SpecLintFindFiles=false"]);
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {what,-14} {with,7:0.00} s with {recipes:N0} recipes, {without,7:0.00} s without: {with - without:0.00} s more"));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Seconds of the quickest build, after one that is not counted.</summary>
    private static double Quickest(string book, int rounds, string[] command)
    {
        Dotnet(book, command);
        double best = double.MaxValue;
        for (int i = 0; i < rounds; i++)
        {
            var clock = Stopwatch.StartNew();
            Dotnet(book, command);
            best = Math.Min(best, clock.Elapsed.TotalSeconds);
        }

        return best;
    }

    /// <summary>Runs the SDK; a build may end with findings of level error (status 1).</summary>
    private static void Dotnet(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", arguments)
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode > (arguments[0] == "build" ? 1 : 0))
            throw new InvalidOperationException($"dotnet {arguments[0]} ended with {process.ExitCode}: {output}{errors.Result}");
    }
}
