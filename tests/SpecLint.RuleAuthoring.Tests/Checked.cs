using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp.Testing;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Testing;

namespace SpecLint.RuleAuthoring.Tests;

/// <summary>Code with the expected diagnostics marked in it, beside the few types of the library that the analyzers look for.</summary>
internal static class Checked
{
    /// <summary>The library's types, as far as they matter.</summary>
    private const string Library = """
        global using SpecLint.Findings;

        namespace SpecLint.Vocabulary
        {
            public enum Fact { Abv, Sugar, Acid }
            public abstract class Word { public string Id { get; } public override string ToString() => Id; }
            public sealed class Verb : Word { public bool Boils { get; } public static Verb Of(string word) => null; }
        }

        namespace SpecLint.Book
        {
            public sealed class Step { public SpecLint.Vocabulary.Verb Verb { get; } public string Written { get; } }
        }

        namespace SpecLint.Profile
        {
            using SpecLint.Vocabulary;

            public readonly struct FactValue { public double Value => 0; }
            public sealed class RecipeProfile { public FactValue Get(Fact fact) => default; }
        }

        namespace SpecLint.Findings
        {
            using System.Collections.Generic;

            public enum RuleFamily { File = 1, Balance = 3 }

            public sealed class RuleInfo
            {
                public RuleInfo(string id, string title) { }
                public IReadOnlyList<SpecLint.Vocabulary.Fact> Needs { get; set; }
            }
        }

        namespace SpecLint.Rules
        {
            public sealed class RecipeContext
            {
                public SpecLint.Profile.FactValue Fact(SpecLint.Vocabulary.Fact fact) => default;
            }

            public sealed class RuleAttribute : System.Attribute
            {
                public RuleAttribute(string id) { }
                public SpecLint.Vocabulary.Fact[] Needs { get; set; }
            }

            public abstract class Rule
            {
                public virtual RuleInfo Info => null;
                protected void Report(string message) { }
            }
        }
        """;

    /// <summary>Runs an analyzer on code of the library itself.</summary>
    public static Task ByAsync<TAnalyzer>(string code, params string[] pages)
        where TAnalyzer : DiagnosticAnalyzer, new() => Make<TAnalyzer>(code, pages, own: true).RunAsync();

    /// <summary>Runs an analyzer on code of a house that uses the library.</summary>
    public static Task InAHouseByAsync<TAnalyzer>(string code, params string[] pages)
        where TAnalyzer : DiagnosticAnalyzer, new() => Make<TAnalyzer>(code, pages, own: false).RunAsync();

    /// <summary>Applies a code fix to code of the library, and holds what comes out against what is meant to.</summary>
    public static Task FixedByAsync<TAnalyzer, TFix>(string code, string meant)
        where TAnalyzer : DiagnosticAnalyzer, new()
        where TFix : CodeFixProvider, new()
    {
        var test = new CSharpCodeFixTest<TAnalyzer, TFix, DefaultVerifier>
        {
            // A diagnostic that is reported when the whole compilation is known is no worse for it.
            CodeFixTestBehaviors = CodeFixTestBehaviors.SkipLocalDiagnosticCheck,
        };
        SetUp(test, code, [], own: true);
        test.FixedState.Sources.Add(("Rules.cs", meant));
        test.FixedState.Sources.Add(("Library.cs", Library));
        return test.RunAsync();
    }

    private static CSharpAnalyzerTest<TAnalyzer, DefaultVerifier> Make<TAnalyzer>(string code, string[] pages, bool own)
        where TAnalyzer : DiagnosticAnalyzer, new()
    {
        var test = new CSharpAnalyzerTest<TAnalyzer, DefaultVerifier>();
        SetUp(test, code, pages, own);
        return test;
    }

    private static void SetUp(AnalyzerTest<DefaultVerifier> test, string code, string[] pages, bool own)
    {
        // The framework that runs the test is the reference: nothing is fetched.
        test.ReferenceAssemblies = new ReferenceAssemblies("net10.0");
        foreach (string path in ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator))
        {
            if (Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal))
                test.TestState.AdditionalReferences.Add(MetadataReference.CreateFromFile(path));
        }

        test.TestState.Sources.Add(("Rules.cs", code));
        if (own)
        {
            test.TestState.Sources.Add(("Library.cs", Library));
        }
        else
        {
            var library = new ProjectState("SpecLint", LanguageNames.CSharp, "/library/", "cs");
            library.Sources.Add(("Library.cs", Library));
            library.AdditionalReferences.AddRange(test.TestState.AdditionalReferences);
            test.TestState.AdditionalProjects.Add("SpecLint", library);
            test.TestState.AdditionalProjectReferences.Add("SpecLint");
        }

        foreach (string page in pages) test.TestState.AdditionalFiles.Add(($"rules-docs/{page}.md", "# " + page));
    }
}
