namespace SpecLint.Analyzers.Tests;

/// <summary>The packages as somebody uses them who has never seen the repository: fresh projects that reference packages and nothing else.</summary>
public sealed class FreshProjectTests : IClassFixture<FreshProjectTests.Packages>
{
    private readonly Packages packages;

    public FreshProjectTests(Packages packages) => this.packages = packages;

    // The program stands in the library's readme.
    [LongFact]
    public void A_fresh_program_on_the_library_finds_what_the_command_finds()
    {
        string folder = packages.NewFolder("program");
        foreach (var (path, text) in SmallBook.Files) Write(folder, "book/" + path, text);
        string readme = File.ReadAllText(Path.Combine(Repository.Root, "src", "SpecLint", "README.md")).ReplaceLineEndings("\n");
        string program = readme.Split("```csharp\n")[1].Split("```")[0];
        Write(folder, "Program.cs", program);
        WriteProject(folder, "Program.csproj", "<OutputType>Exe</OutputType><ImplicitUsings>enable</ImplicitUsings>", ("SpecLint", false));
        var run = Packages.Run(folder, "run", "--", "book");
        Assert.True(run.Status == 0, run.Text);
        var expected = SmallBook.Expected(SmallBook.Files);
        Assert.Equal(
            expected.Select(f => f.Path + ": " + f.Id).Order(StringComparer.Ordinal),
            run.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Where(l => l.Contains(": SL", StringComparison.Ordinal))
                .Select(l => l[..(l.IndexOf(": SL", StringComparison.Ordinal) + 8)])
                .Order(StringComparer.Ordinal));
    }

    [LongFact]
    public void A_fresh_rule_of_the_house_is_analysed_in_the_build_and_run_by_the_command()
    {
        string folder = packages.NewFolder("house");
        string example = Path.Combine(Repository.Root, "tests", "SpecLint.HouseRules.Example");
        foreach (string file in new[] { "HouseLimits.cs", "SweeterThanTheHousePours.cs", "rules-docs/HR3001.md" })
            Write(folder, file, File.ReadAllText(Path.Combine(example, file)));
        WriteProject(
            folder, "HouseRules.csproj", "<ImplicitUsings>enable</ImplicitUsings><Nullable>enable</Nullable>", ("SpecLint", false),
            ("SpecLint.RuleAuthoring", true));
        var sound = Packages.Run(folder, "build", "-v", "m");
        Assert.True(sound.Status == 0, sound.Text);
        Assert.DoesNotContain("SLA0", sound.Text, StringComparison.Ordinal);

        Write(folder, "book/bar.json", SmallBook.Bar);
        Write(
            folder,
            "book/sweet.drink.json",
            SmallBook.BetterDrink.Replace(
                "\"simple-syrup\", \"amount\": \"22.5 ml\"", "\"simple-syrup\", \"amount\": \"90 ml\"", StringComparison.Ordinal));
        string rules = Path.Combine(folder, "bin", "Debug", "net10.0", "HouseRules.dll");
        var check = PackedPackage.RunCommand(folder, "check", "book", "--on", SmallBook.Day, "--rules", rules);
        Assert.True(check.Status is 0 or 1, check.Text);
        Assert.Contains(
            "HR3001",
            PackedPackage.RunCommand(folder, "check", "book", "--on", SmallBook.Day, "--rules", rules, "--statistics").Text,
            StringComparison.Ordinal);

        // Without its page, the analyzers that came with the package say so.
        File.Delete(Path.Combine(folder, "rules-docs", "HR3001.md"));
        var pageless = Packages.Run(folder, "build", "-v", "m", "--no-incremental");
        Assert.Contains("SLA0", pageless.Text, StringComparison.Ordinal);
    }

    [LongTheory]
    [InlineData("Book.csproj", "Code.cs", "internal static class Code { public static int One => 1; }")]
    [InlineData("Book.fsproj", "Code.fs", "module Code\nlet one = 1\n")]
    [InlineData("Book.vbproj", "Code.vb", "Module Code\n  Public ReadOnly One As Integer = 1\nEnd Module\n")]
    public void A_fresh_project_of_each_language_prints_the_findings(string project, string file, string code)
    {
        string folder = packages.NewFolder(Path.GetExtension(project)[1..]);
        foreach (var (path, text) in SmallBook.Files) Write(folder, path, text);
        Write(folder, file, code);
        string compile = project.EndsWith(".fsproj", StringComparison.Ordinal) ? $"<ItemGroup><Compile Include=\"{file}\" /></ItemGroup>" : "";
        WriteProject(folder, project, $"<SpecLintOn>{SmallBook.Day}</SpecLintOn>", compile, ("SpecLint.Analyzers", true));
        var build = Packages.Run(folder, "build", "-v", "m");
        foreach (var finding in SmallBook.Expected(SmallBook.Files).Where(f => f.Level >= Vocabulary.Level.Warning))
            Assert.Contains(
                $"{finding.Path}({finding.Line},{finding.Column}): {finding.Level.ToString().ToLowerInvariant()} {finding.Id}:",
                build.Text.Replace('\\', '/'),
                StringComparison.Ordinal);
    }

    private void WriteProject(
        string folder, string name, string properties, params (string Id, bool Private)[] references) =>
            WriteProject(folder, name, properties, "", references);

    private void WriteProject(string folder, string name, string properties, string items, params (string Id, bool Private)[] references)
    {
        string list = string.Concat(references.Select(r => $"<PackageReference Include=\"{r.Id}\" Version=\"{packages.Version}\"{(r.Private ? " PrivateAssets=\"all\"" : "")} />"));
        Write(folder, name, $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><TargetFramework>net10.0</TargetFramework>{properties}<RestorePackagesPath>{packages.Folder}/restored</RestorePackagesPath></PropertyGroup>
              <ItemGroup>{list}</ItemGroup>
              {items}
            </Project>
            """);
    }

    private static void Write(string folder, string path, string text)
    {
        string full = Path.Combine(folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
    }

    /// <summary>All packages for programs, packed once into a folder that fresh projects restore from, beside the machine's own feeds.</summary>
    public sealed class Packages : IDisposable
    {
        private bool packed;

        public string Folder { get; } = Directory.CreateTempSubdirectory("speclint-fresh-").FullName;

        public string Version { get; } = $"0.0.1-fresh.{Environment.ProcessId}";

        public string NewFolder(string name)
        {
            Pack();
            string folder = Path.Combine(Folder, name);
            Directory.CreateDirectory(folder);
            return folder;
        }

        public void Dispose() => Directory.Delete(Folder, recursive: true);

        /// <summary>Runs the command line of .NET as outside continuous integration.</summary>
        internal static ProgramRun Run(string folder, string verb, params string[] args) =>
            Programs.Run(folder, "dotnet", [verb, .. args], ("MSBUILD_EXE_PATH", null), ("CI", null));

        private void Pack()
        {
            if (packed) return;
            packed = true;
            foreach (string project in new[] { "SpecLint.Science", "SpecLint", "SpecLint.RuleAuthoring", "SpecLint.Analyzers" })
            {
                var (status, text) = Run(
                    Repository.Root, "pack", Path.Combine("src", project, project + ".csproj"), "-c", "Release", "-o",
                    Path.Combine(Folder, "packages"), "--artifacts-path", Path.Combine(Folder, "artifacts"), $"-p:Version={Version}",
                    "--nologo", "-v", "q");
                Assert.True(status == 0, text);
            }

            File.WriteAllText(
                Path.Combine(Folder, "NuGet.config"),
                $"""<configuration><packageSources><add key="folder" value="{Path.Combine(Folder, "packages")}" /></packageSources></configuration>""");
        }
    }
}
