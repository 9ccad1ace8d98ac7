using System.Collections;
using System.Reflection;
using Microsoft.Build.Framework;
using Microsoft.Build.Utilities;
using SpecLint.Rules;

namespace SpecLint.Analyzers.Tests;

/// <summary>The task in a build engine that drops warnings by their codes, as MSBuild does with those of NoWarn.</summary>
public sealed class BuildTaskTests : IDisposable
{
    private const string GarlicOil = """{ "name": "Garlic oil", "family": "infusion", "ingredients": [ { "item": "olive-oil", "amount": "500 g" }, { "item": "garlic", "amount": "50 g" } ], "method": [ { "do": "steep", "for": "24 h" } ], "keep": { "at": "20 °C", "in": "bottle", "for": "30 d" } }""";
    private const string NutMilk = """{ "name": "Nut milk", "family": "other", "ingredients": [ { "item": "almond", "amount": "100 g" }, { "item": "water", "amount": "400 g" } ], "method": [ { "do": "blend" } ], "keep": { "at": "4 °C", "in": "bottle", "for": "10 d" } }""";

    private readonly string folder = Directory.CreateTempSubdirectory("speclint-task-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>NoWarn gives neither a reason nor a day: each finding of a rule that guards against harm is printed all the same.</summary>
    [Theory]
    [InlineData("bar.json", "")]
    [InlineData("bar.json", ".globalconfig")]
    public void NoWarn_silences_no_rule_that_guards_against_harm(string bar, string config)
    {
        Write(bar, SmallBook.Bar);
        Write("garlic-oil.prep.json", GarlicOil);
        Write("nut-milk.prep.json", NutMilk);
        var all = RuleRegistry.All.Select(r => r.Info.Id).ToList();
        string levels = config.Length == 0
            ? ""
            : Write(config, "is_global = true\n" + string.Join('\n', all.Select(id => $"dotnet_diagnostic.{id}.severity = none")));
        string[] plain = Harm(Run("", ""));
        Assert.Contains(plain, f => f.StartsWith("warning", StringComparison.Ordinal));
        Assert.Contains(plain, f => f.StartsWith("error", StringComparison.Ordinal));
        Assert.Equal(plain, Harm(Run(string.Join(';', all), levels)));
        Assert.Equal(plain, Harm(Run(string.Join(',', all).ToLowerInvariant(), levels)));
    }

    /// <summary>A reason and a day in the book put it aside, and another rule is silenced by the build alone.</summary>
    [Fact]
    public void A_reason_and_a_day_put_it_aside()
    {
        Write("bar.json", SmallBook.Bar);
        Write("nut-milk.prep.json", NutMilk);
        string[] plain = Harm(Run("", ""));
        string id = plain.First(f => f.StartsWith("warning", StringComparison.Ordinal)).Split(' ')[1];
        Write("bar.json", SmallBook.Bar.Replace("\"name\"", $$"""
            "rules": { "{{id}}": { "level": "none", "because": "the kitchen's plan covers it", "until": "2027-03-01" } }, "name"
            """, StringComparison.Ordinal));
        Assert.DoesNotContain(Harm(Run("", "")), f => f.Contains(id, StringComparison.Ordinal));
    }

    private string Write(string name, string text)
    {
        string path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private List<string> Run(string noWarn, string levels)
    {
        var engine = new Engine(noWarn.Split([';', ','], StringSplitOptions.RemoveEmptyEntries));
        var task = (Microsoft.Build.Utilities.Task)Activator.CreateInstance(TaskType.Value)!;
        task.BuildEngine = engine;
        Set(task, "Files", Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal).Select(f => new TaskItem(f)).ToArray<ITaskItem>());
        Set(task, "LevelFiles", levels.Length == 0 ? Array.Empty<ITaskItem>() : [new TaskItem(levels)]);
        Set(task, "On", SmallBook.Day);
        Set(task, "ProjectFolder", folder + Path.DirectorySeparatorChar);
        Set(task, "NoWarn", noWarn);
        task.Execute();
        return engine.Printed;
    }

    private static readonly Lazy<Type> TaskType = new(static () => OwnFolder.Load("SpecLint.Build", "SpecLint.Build.SpecLintCheck"));

    private static void Set(object task, string property, object value) =>
        task.GetType().GetProperty(property, BindingFlags.Public | BindingFlags.Instance)!.SetValue(task, value);

    /// <summary>Level and id of each finding of a rule that guards against harm.</summary>
    private static string[] Harm(List<string> printed) =>
        [.. RuleRegistry.All.Where(r => r.Info.Safety)
            .SelectMany(r => printed.Where(p => p.Contains(r.Info.Id, StringComparison.Ordinal))
                .Select(p => $"{p.Split(' ')[0]} {r.Info.Id}"))
            .Order(StringComparer.Ordinal)];

    private sealed class Engine(string[] dropped) : IBuildEngine
    {
        public List<string> Printed { get; } = [];

        public bool ContinueOnError => false;

        public int LineNumberOfTaskNode => 0;

        public int ColumnNumberOfTaskNode => 0;

        public string ProjectFileOfTaskNode => "";

        public void LogErrorEvent(BuildErrorEventArgs e) => Printed.Add($"error {e.Code} {e.Message}");

        public void LogWarningEvent(BuildWarningEventArgs e)
        {
            if (e.Code is null || !dropped.Contains(e.Code, StringComparer.OrdinalIgnoreCase)) Printed.Add($"warning {e.Code} {e.Message}");
        }

        public void LogMessageEvent(BuildMessageEventArgs e)
        {
        }

        public void LogCustomEvent(CustomBuildEventArgs e)
        {
        }

        public bool BuildProjectFile(
            string projectFileName, string[] targetNames, IDictionary globalProperties, IDictionary targetOutputs) =>
                throw new NotSupportedException();
    }
}
