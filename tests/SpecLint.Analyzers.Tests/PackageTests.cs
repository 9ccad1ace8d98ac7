using System.Globalization;
using SpecLint.Rules;
using SpecLint.Vocabulary;
using Xunit.Abstractions;

namespace SpecLint.Analyzers.Tests;

/// <summary>The package as a team would use it: restored from a folder into a project, built by the SDK.</summary>
public sealed class PackageTests(PackedPackage package, ITestOutputHelper output) : IClassFixture<PackedPackage>
{
    private const int Recipes = 1000;

    [Fact]
    public void The_package_holds_one_plugin_and_one_task_and_asks_for_no_other_package()
    {
        var names = package.Names();
        string[] assemblies =
        [
            "analyzers/dotnet/cs/SpecLint.Analyzers.dll", "analyzers/dotnet/cs/SpecLint.Science.dll", "analyzers/dotnet/cs/SpecLint.dll",
            "tasks/netstandard2.0/SpecLint.Build.dll", "tasks/netstandard2.0/SpecLint.Science.dll", "tasks/netstandard2.0/SpecLint.dll",
        ];
        Assert.Equal(assemblies, names.Where(n => n.EndsWith(".dll", StringComparison.Ordinal)));
        Assert.Contains("build/SpecLint.Analyzers.props", names);
        string specification = package.Read("SpecLint.Analyzers.nuspec");
        Assert.Contains("<developmentDependency>true</developmentDependency>", specification, StringComparison.Ordinal);
        Assert.DoesNotContain("<dependency ", specification, StringComparison.Ordinal);
        Assert.Equal(RuleRegistry.All.Select(r => $"rules-docs/{r.Info.Id}.md"), names.Where(n => n.StartsWith("rules-docs/", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_shipped_levels_name_every_rule_with_its_own_level()
    {
        string levels = package.Read("build/SpecLint.globalconfig");
        Assert.StartsWith("is_global = true\nglobal_level = -1\n", levels.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        foreach (var rule in RuleRegistry.All)
            Assert.Contains(
                $"# {rule.Info.Id}: {rule.Info.Level.ToString().ToLowerInvariant()}\ndotnet_diagnostic.{rule.Info.Id}.severity = default\n",
                levels.ReplaceLineEndings("\n"),
                StringComparison.Ordinal);
    }

    [Fact]
    public void A_bare_project_prints_what_the_command_finds_and_follows_changes()
    {
        var project = package.NewProject("bare");
        foreach (var (path, text) in SmallBook.Files) project.Write(path, text);
        project.Write("bin/old.drink.json", SmallBook.Drink);

        var first = project.Build();
        first.AssertSound();
        output.WriteLine(first.Text);
        var expected = SmallBook.Expected(SmallBook.Files);
        Assert.Equal(expected, first.Logged);

        // To the command, the output of a build is a folder like others.
        project.Delete("bin/old.drink.json");
        Assert.Equal(project.SeenByCommand(), first.Logged);
        Assert.Equal(expected.Where(f => f.Level >= Level.Warning), first.Printed);
        Assert.Equal(expected.Exists(f => f.Level == Level.Error) ? 1 : 0, first.Status);

        // Edited: reported anew, without what was put right.
        project.Write("drinks/cafe-brule.drink.json", SmallBook.BetterDrink);
        var second = project.Build();
        second.AssertSound();
        var better = SmallBook.Expected(SmallBook.Files[0], ("drinks/cafe-brule.drink.json", SmallBook.BetterDrink), SmallBook.Files[2]);
        Assert.NotEqual(expected, better);
        Assert.Equal(better, second.Logged);
        Assert.Equal(project.SeenByCommand(), second.Logged);
    }

    [Fact]
    public void Without_a_compiler_a_task_prints_the_same_lines()
    {
        var compiled = package.NewProject("compiled");
        var bare = package.NewProjectWithoutCompiler("uncompiled");
        foreach (var project in new[] { compiled, bare })
        {
            foreach (var (path, text) in SmallBook.Files) project.Write(path, text);
            project.Write(
                "drinks/better.drink.json",
                SmallBook.BetterDrink.Replace("60 ml", "55 ml", StringComparison.Ordinal)
                    .Replace("Café", "Caffè", StringComparison.Ordinal));
        }

        var byCompiler = compiled.Build();
        byCompiler.AssertSound();
        var byTask = bare.Build();
        byTask.AssertSound();
        output.WriteLine(byTask.Text);
        Assert.True(byTask.Printed.Count >= 2);
        Assert.Equal(byCompiler.Status, byTask.Status);
        Assert.Equal(bare.SeenByCommand().Where(f => f.Level >= Level.Warning), byTask.Printed);

        // The very same lines, message and all, and each of them once: neither reports what the other has reported.
        Assert.Equal(byCompiler.Lines.Select(WithoutProject).Order(StringComparer.Ordinal), byTask.Lines.Select(WithoutProject).Order(StringComparer.Ordinal));
        Assert.Equal(byTask.Printed.Count, byTask.Lines.Count);
        Assert.Equal(byCompiler.Printed.Count, byCompiler.Lines.Count);
    }

    [LongFact]
    public void Without_a_compiler_an_unchanged_book_is_left_alone_and_a_changed_one_is_not()
    {
        var project = package.NewProjectWithoutCompiler("again");
        project.Write("bar.json", SmallBook.Bar);
        project.Write("a.drink.json", SmallBook.Drink.Replace(", \"colour\": \"réd\"", "", StringComparison.Ordinal));
        var first = project.Build();
        first.AssertSound();
        Assert.Equal(0, first.Status);
        Assert.Contains(first.Printed, f => f.Id == "SL3016");

        var unchanged = project.Build("--no-restore", "-v", "d");
        Assert.Contains("Skipping target \"SpecLintCheck\"", unchanged.Text, StringComparison.Ordinal);
        Assert.Empty(unchanged.Printed);

        // Another day, another file, a file less, another level: each is checked anew.
        Assert.Contains(project.Build("--no-restore", "-p:SpecLintOn=2026-11-26").Printed, f => f.Id == "SL3016");
        Assert.Contains(project.Build("--no-restore").Printed, f => f.Id == "SL3016");
        project.Write("b.drink.json", SmallBook.BetterDrink);
        Assert.Contains(project.Build("--no-restore").Printed, f => f.Id == "SL3016");
        project.Delete("b.drink.json");
        Assert.Contains(project.Build("--no-restore").Printed, f => f.Id == "SL3016");
        project.Write(".globalconfig", "is_global = true\ndotnet_diagnostic.SL3016.severity = error\n");
        var error = project.Build("--no-restore");
        Assert.Equal(1, error.Status);
        Assert.Contains(error.Printed, f => f.Id == "SL3016" && f.Level == Level.Error);

        // An error is reported until it is put right.
        Assert.Equal(1, project.Build("--no-restore").Status);
        project.Write(".globalconfig", "is_global = true\ndotnet_diagnostic.SL3016.severity = none\n");
        var none = project.Build("--no-restore");
        Assert.Equal(0, none.Status);
        Assert.DoesNotContain("SL3016", none.Text, StringComparison.Ordinal);

        // The command line stands over files.
        Assert.Equal(1, project.Build("--no-restore", "-p:WarningsAsErrors=SL3016").Status);
        project.Delete(".globalconfig");
        Assert.DoesNotContain("SL3016", project.Build("--no-restore", "-p:NoWarn=SL3016").Text, StringComparison.Ordinal);
        Assert.Empty(project.Build("--no-restore", "-p:RunAnalyzers=false").Printed);
    }

    [LongFact]
    public void Levels_of_a_globalconfig_fail_the_build_or_silence_a_rule()
    {
        var project = package.NewProject("levels");
        project.Write("bar.json", SmallBook.Bar);
        project.Write("a.drink.json", SmallBook.Drink.Replace(", \"colour\": \"réd\"", "", StringComparison.Ordinal));
        var plain = project.Build();
        plain.AssertSound();
        Assert.Equal(0, plain.Status);
        Assert.Contains(plain.Printed, f => f.Id == "SL3016" && f.Level == Level.Warning);

        project.Write(".globalconfig", "is_global = true\ndotnet_diagnostic.SL3016.severity = error\n");
        var error = project.Build();
        error.AssertSound();
        Assert.Equal(1, error.Status);
        Assert.Contains(error.Printed, f => f.Id == "SL3016" && f.Level == Level.Error);

        project.Write(".globalconfig", "is_global = true\ndotnet_diagnostic.SL3016.severity = none\n");
        var none = project.Build();
        none.AssertSound();
        Assert.Equal(0, none.Status);
        Assert.DoesNotContain("SL3016", none.Text, StringComparison.Ordinal);

        // The bar's own file has its say where no .globalconfig speaks, and none where one does.
        project.Delete(".globalconfig");
        project.Write("bar.json", SmallBook.Bar.Replace("\"name\"", "\"rules\": { \"SL3016\": \"error\" }, \"name\"", StringComparison.Ordinal));
        Assert.Contains(project.Build().Printed, f => f.Id == "SL3016" && f.Level == Level.Error);
        project.Write(".globalconfig", "is_global = true\ndotnet_diagnostic.SL3016.severity = warning\n");
        var both = project.Build();
        Assert.Equal(0, both.Status);
        Assert.Contains(both.Printed, f => f.Id == "SL3016" && f.Level == Level.Warning);
    }

    [LongFact]
    public void A_thousand_recipes_are_each_checked_and_left_alone_while_unchanged()
    {
        var project = package.NewProject("thousand");
        WriteThousand(project);
        var first = project.Build();
        first.AssertSound();
        Assert.Equal(Recipes, first.Printed.Where(f => f.Id == "SL3016").Select(f => f.Path).Distinct().Count());
        Assert.Empty(project.Build("--no-restore").Printed);
    }

    [LongFact]
    public void Without_a_compiler_a_thousand_recipes_are_each_checked_and_left_alone_while_unchanged()
    {
        var project = package.NewProjectWithoutCompiler("thousand-uncompiled");
        WriteThousand(project);
        var first = project.Build();
        first.AssertSound();
        Assert.Equal(Recipes, first.Printed.Where(f => f.Id == "SL3016").Select(f => f.Path).Distinct().Count());
        var again = project.Build("--no-restore", "-v", "d");
        Assert.Contains("Skipping target \"SpecLintCheck\"", again.Text, StringComparison.Ordinal);
        Assert.Empty(again.Printed);
    }

    private static void WriteThousand(BareProject project)
    {
        project.Write("bar.json", SmallBook.Bar);
        string drink = SmallBook.Drink.Replace(", \"colour\": \"réd\"", "", StringComparison.Ordinal);
        for (int i = 0; i < Recipes; i++)
        {
            // Every drink differs a little: the same one twice is a finding of its own.
            string own = drink.Replace(
                "60 ml", string.Create(CultureInfo.InvariantCulture, $"{40 + (i * 0.02):0.00} ml"), StringComparison.Ordinal)
                .Replace("Café", $"Café {i}", StringComparison.Ordinal);
            project.Write($"drinks/drink-{i:0000}.drink.json", own);
        }
    }

    /// <summary>Without the name of the project, which MSBuild prints behind each line.</summary>
    private static string WithoutProject(string line) => line[..line.LastIndexOf(" [", StringComparison.Ordinal)];
}
