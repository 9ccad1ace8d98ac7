using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using SpecLint.Rules;

namespace SpecLint.Tests.House;

/// <summary>What keeps the house readable and can be counted.</summary>
public sealed partial class SizeTests
{
    private const int MostParameters = 7;
    private const int MostLinesOfProfileClass = 300;
    private const int LongestLine = 160;

    [Fact]
    public void No_method_has_more_than_seven_parameters() =>
        Assert.Equal([], new[] { typeof(Checker).Assembly, typeof(SpecLint.Science.Component).Assembly }.SelectMany(a => a.GetTypes())
            .Where(t => !t.IsDefined(typeof(CompilerGeneratedAttribute), false))
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(m => m.GetParameters().Length > MostParameters
                && !m.IsDefined(typeof(CompilerGeneratedAttribute), false)
                && !m.Name.Contains('<', StringComparison.Ordinal))
            .Where(m => m.Name != "Deconstruct" && !typeof(Delegate).IsAssignableFrom(m.DeclaringType))
            .Select(m => $"{m.DeclaringType!.FullName}.{m.Name}: {m.GetParameters().Length}").Order(StringComparer.Ordinal));

    [Fact]
    public void No_class_of_the_profile_is_longer_than_three_hundred_lines()
    {
        var longer = new List<string>();
        foreach (string file in Directory.EnumerateFiles(Repository.At("src", "SpecLint", "Profile"), "*.cs"))
        {
            string[] lines = File.ReadAllLines(file);
            int start = -1;
            for (int i = 0; i < lines.Length; i++)
            {
                if (Type().IsMatch(lines[i])) start = i;
                if (lines[i] != "}" || start < 0) continue;
                if (i - start >= MostLinesOfProfileClass) longer.Add($"{Path.GetFileName(file)}: {i - start + 1} lines from line {start + 1}");
                start = -1;
            }
        }

        Assert.Equal([], longer);
    }

    [Fact]
    public void No_line_of_the_source_is_longer_than_a_hundred_and_sixty_characters() =>
        Assert.Equal([], Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin"))
            .SelectMany(f => File.ReadLines(f).Select((line, at) => (line, at, f)))
            .Where(l => l.line.Length > LongestLine)
            .Select(l => $"{Path.GetFileName(l.f)}:{l.at + 1}: {l.line.Length} characters").Order(StringComparer.Ordinal));

    [Fact]
    public void Every_rule_is_declared_above_its_class() =>
        Assert.Equal([], RuleRegistry.All.Where(r => r.GetType().GetCustomAttribute<RuleAttribute>() is null).Select(r => r.GetType().Name));

    [Fact]
    public void No_rule_repeats_what_the_context_knows() =>
        Assert.Equal([], Directory.EnumerateFiles(Repository.At("src", "SpecLint", "Rules"), "*.cs", SearchOption.AllDirectories)
            .Where(f => Repeated().IsMatch(File.ReadAllText(f))).Select(f => Path.GetFileName(f)));

    [GeneratedRegex(@"^(public|internal) .*\b(class|struct|record)\b")]
    private static partial Regex Type();

    [GeneratedRegex(@"Subject = context\.Id,|RuleInfo Info =>|readonly RuleInfo Rule\b")]
    private static partial Regex Repeated();
}
