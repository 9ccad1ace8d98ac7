using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace SpecLint.RuleAuthoring.Tests;

public class GeneratorTests
{
    private const string Library = """
        namespace SpecLint.Vocabulary
        {
            public enum Fact { Abv, Sugar }
            public enum Level { Note, Warning }
        }
        namespace SpecLint.Findings
        {
            using System.Collections.Generic;
            public sealed record RuleInfo(string Id, string Name, string Title, SpecLint.Vocabulary.Level Level)
            {
                public IReadOnlyList<SpecLint.Vocabulary.Fact> Needs { get; init; } = [];
                public IReadOnlyList<string> Limits { get; init; } = [];
                public bool Safety { get; init; }
            }
        }
        namespace SpecLint.Catalogue
        {
            public sealed record Limit(string Id);
            public static class Limits { public static Limit Of(string id) => new(id); }
        }
        namespace SpecLint.Rules
        {
            using System;
            public abstract class Rule { public abstract SpecLint.Findings.RuleInfo Info { get; } }
            public sealed class RuleAttribute(string id, string name, string title, SpecLint.Vocabulary.Level level) : Attribute
            {
                public SpecLint.Vocabulary.Fact[] Needs { get; set; } = [];
                public bool Safety { get; set; }
            }
            [AttributeUsage(AttributeTargets.Class, AllowMultiple = true, Inherited = false)]
            public sealed class LimitAttribute(string id, string? member = null) : Attribute;
            [AttributeUsage(AttributeTargets.Class, AllowMultiple = true)]
            public sealed class LimitsOfAttribute(Type type, string member) : Attribute;
        }
        """;

    [Fact]
    public void A_declaration_becomes_the_rules_data_and_its_limits()
    {
        var rule = Made("""
            using System.Collections.Generic;
            using SpecLint.Findings;
            using SpecLint.Rules;
            using SpecLint.Vocabulary;

            public static class Shared { public static readonly string[] Ids = ["c", "a"]; }

            [Limit("d", "Fourth")]
            public abstract partial class Base : Rule;

            [Rule("HR3001", "too-much", "Too \"much\" of it", Level.Warning, Safety = true, Needs = [Fact.Sugar, Fact.Abv])]
            [Limit("a", "First")]
            [Limit("b")]
            [LimitsOf(typeof(Shared), nameof(Shared.Ids))]
            public sealed partial class TooMuch : Base { public static readonly string Early = First.Id + Rule.Id; public static string Fourths => Fourth.Id; }
            """);
        Assert.Equal("HR3001 too-much Too \"much\" of it Warning True", $"{rule.Id} {rule.Name} {rule.Title} {rule.Level} {rule.Safety}");
        Assert.Equal(["Sugar", "Abv"], ((System.Collections.IEnumerable)rule.Needs).Cast<object>().Select(f => f.ToString()));
        Assert.Equal(["a", "b", "c", "a", "d"], (IEnumerable<string>)rule.Limits);
    }

    [Fact]
    public void A_class_that_is_not_partial_does_not_compile() =>
        Assert.Contains(Compiled("""[SpecLint.Rules.Rule("HR3001", "a", "A", SpecLint.Vocabulary.Level.Note)] public sealed class A : SpecLint.Rules.Rule;""").Problems, static p => p.Id == "CS0260");

    private static dynamic Made(string code)
    {
        var (made, problems) = Compiled(code);
        Assert.Empty(problems);
        using var stream = new MemoryStream();
        Assert.True(made.Emit(stream).Success);
        var assembly = System.Reflection.Assembly.Load(stream.ToArray());
        var type = assembly.GetType("TooMuch")!;
        Assert.Equal("aHR3001", type.GetField("Early")!.GetValue(null));
        Assert.Equal("d", type.GetProperty("Fourths")!.GetValue(null));
        return ((dynamic)Activator.CreateInstance(type)!).Info;
    }

    private static (Compilation Made, IReadOnlyList<Diagnostic> Problems) Compiled(string code)
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(static p => Path.GetFileName(p).StartsWith("System.", StringComparison.Ordinal)).Select(static p => MetadataReference.CreateFromFile(p));
        var options = new CSharpParseOptions(LanguageVersion.Latest);
        var compilation = CSharpCompilation.Create(
            "House",
            [CSharpSyntaxTree.ParseText(code, options), CSharpSyntaxTree.ParseText(Library, options)],
            references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));
        CSharpGeneratorDriver.Create([new RuleDeclarationGenerator().AsSourceGenerator()], parseOptions: options).RunGeneratorsAndUpdateCompilation(compilation, out var made, out var warned);
        return (made, [.. warned, .. made.GetDiagnostics().Where(static d => d.Severity >= DiagnosticSeverity.Warning && !d.Id.StartsWith("CS9113", StringComparison.Ordinal))]);
    }
}
