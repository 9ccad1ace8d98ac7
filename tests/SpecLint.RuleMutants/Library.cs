using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace SpecLint.RuleMutants;

/// <summary>The sources of the library as a compilation, from which mutants are compiled in memory.</summary>
internal sealed class Library
{
    private static readonly CSharpParseOptions Parse = new(LanguageVersion.Preview, preprocessorSymbols: ["NET", "NET10_0", "NET10_0_OR_GREATER", "NET9_0_OR_GREATER", "NET8_0_OR_GREATER", "NET7_0_OR_GREATER", "NET6_0_OR_GREATER", "NET5_0_OR_GREATER", "NETCOREAPP"]);

    private readonly string folder = Repository.At("src", "SpecLint");
    private readonly string configuration;
    private readonly CSharpCompilation compilation;
    private readonly Dictionary<string, SyntaxTree> trees = new(StringComparer.Ordinal);

    public Library(string configuration)
    {
        this.configuration = configuration;
        string generated = Path.Combine(folder, "obj", configuration, "net10.0");
        var files = Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(f => Path.GetRelativePath(folder, f).Split(Path.DirectorySeparatorChar)[0] is not ("obj" or "bin"))
            .Concat(Directory.EnumerateFiles(generated, "*.cs")).Order(StringComparer.Ordinal);
        foreach (string file in files) trees.Add(file, CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(file), System.Text.Encoding.UTF8), Parse, file));
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(p => Path.GetFileName(p).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(p) is "mscorlib.dll" or "netstandard.dll" or "Microsoft.CSharp.dll")
            .Append(Path.Combine(Tests, "SpecLint.Science.dll")).Select(p => (MetadataReference)MetadataReference.CreateFromFile(p));
        compilation = Generate(CSharpCompilation.Create("SpecLint", trees.Values, references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, allowUnsafe: true, nullableContextOptions: NullableContextOptions.Enable)));
    }

    /// <summary>Where the tests and what they run on are built.</summary>
    public string Tests => TestsOf(configuration);

    /// <summary>Where the tests and what they run on are built, of a configuration.</summary>
    public static string TestsOf(string configuration) => Repository.At("tests", "SpecLint.Tests", "bin", configuration, "net10.0");

    /// <summary>The mutations of every rule that guards against harm, of the verdict, and of what they rest on; in a fixed order.</summary>
    /// <param name="shift">Whether comparisons are shifted by the case in which both sides are the same; reversed otherwise.</param>
    public IReadOnlyList<Mutation> Mutations(bool shift)
    {
        string[] verdict =
        [
            "Service/Verdict.cs", "Service/Verdicts.cs", "Service/LotCheck.cs", "Service/LotLabel.cs",
            "Profile/KeepingLife.cs", "Profile/KeepingVerdict.cs", "Profile/LotLife.cs", "Profile/Storage.cs", "Profile/Perishables.cs", "Profile/HazardLoad.cs", "Profile/ReadingBounds.cs",
        ];
        var all = new List<Mutation>();
        foreach (var (file, tree) in trees.OrderBy(t => t.Key, StringComparer.Ordinal))
        {
            string path = Path.GetRelativePath(folder, file).Replace('\\', '/');
            if (!verdict.Contains(path) && !(path.StartsWith("Rules/", StringComparison.Ordinal) && tree.ToString().Contains("Safety = true", StringComparison.Ordinal))) continue;
            all.AddRange(Mutation.Of(path, tree, shift));
        }

        return all;
    }

    /// <summary>
    /// Compiles the library once with many mutations in it, each behind a switch: the environment variable of
    /// <see cref="Switch"/> chooses one by its number. One compilation for all takes the time of one.
    /// </summary>
    /// <param name="mutations">Mutations by number.</param>
    /// <param name="left">Numbers of those that cannot stand behind a switch.</param>
    /// <param name="isSweep">Whether the switch can be set while it runs, and tells which mutations were reached.</param>
    /// <returns>The assembly.</returns>
    public byte[] CompileSwitched(IReadOnlyDictionary<int, Mutation> mutations, out IReadOnlySet<int> left, bool isSweep = false)
    {
        var alone = new HashSet<int>();
        var waiting = mutations.Where(m => m.Value.Whole.Length > 0).OrderBy(m => m.Value.Path, StringComparer.Ordinal).ThenBy(m => m.Value.Whole.Start).ToList();
        alone.UnionWith(mutations.Keys.Except(waiting.Select(m => m.Key)));
        Mutation? before = null;
        foreach (var (number, mutation) in waiting.ToList())
        {
            if (before is not null && before.Path == mutation.Path && before.Whole.End > mutation.Whole.Start) alone.Add(number);
            else before = mutation;
        }

        while (true)
        {
            var with = compilation.AddSyntaxTrees(CSharpSyntaxTree.ParseText(SourceText.From(
                isSweep
                    ? $"namespace SpecLint; internal static class MutantSwitch {{ public static int On = -1; public static bool[] Reached = new bool[{mutations.Keys.Max() + 1}]; public static bool Is(int n) {{ Reached[n] = true; return On == n; }} }}"
                    : $"namespace SpecLint; internal static class MutantSwitch {{ private static readonly int On = int.TryParse(System.Environment.GetEnvironmentVariable(\"{Switch}\"), out int on) ? on : -1; public static bool Is(int n) => On == n; }}", System.Text.Encoding.UTF8), Parse, "MutantSwitch.cs"));
            var used = waiting.Where(m => !alone.Contains(m.Key)).ToList();
            foreach (var file in used.GroupBy(m => m.Value.Path, StringComparer.Ordinal))
            {
                var tree = trees[FileOf(file.Key)];
                var text = tree.GetText();
                with = with.ReplaceSyntaxTree(tree, tree.WithChangedText(text.WithChanges(file.Select(m => m.Value.Switched(text, m.Key)))));
            }

            if (Emit(with, out var errors) is { } assembly)
            {
                left = alone;
                return assembly;
            }

            // The lines are those of the sources: what the compiler refuses on one stands alone.
            int known = alone.Count;
            foreach (var error in errors)
            {
                int line = error.Location.GetLineSpan().StartLinePosition.Line + 1;
                string? path = error.Location.SourceTree?.FilePath;
                alone.UnionWith(used.Where(m => FileOf(m.Value.Path) == path && Math.Abs(m.Value.Line - line) <= 3).Select(m => m.Key));
            }

            if (alone.Count == known) throw new InvalidOperationException(string.Join("; ", errors.Take(5)));
        }
    }

    /// <summary>The environment variable that chooses a mutation of <see cref="CompileSwitched"/>.</summary>
    public const string Switch = "SPECLINT_MUTANT";

    /// <summary>Compiles the library with a mutation.</summary>
    /// <returns>The assembly; <see langword="null"/> where the compiler refuses it.</returns>
    public byte[]? Compile(Mutation mutation, out string? refused)
    {
        var tree = trees[FileOf(mutation.Path)];
        byte[]? assembly = Emit(compilation.ReplaceSyntaxTree(tree, tree.WithChangedText(mutation.Apply(tree.GetText()))), out var errors);
        refused = assembly is null ? string.Join("; ", errors.Take(5)) : null;
        return assembly;
    }

    private string FileOf(string path) => Path.Combine(folder, path.Replace('/', Path.DirectorySeparatorChar));

    private byte[]? Emit(CSharpCompilation of, out IReadOnlyList<Diagnostic> errors)
    {
        // The resources are those of the library as built: the catalogue and its tables.
        var built = Assembly.LoadFile(Path.Combine(Tests, "SpecLint.dll"));
        var resources = built.GetManifestResourceNames().Select(name => new ResourceDescription(name, () => built.GetManifestResourceStream(name)!, isPublic: true));
        using var stream = new MemoryStream();
        var result = of.Emit(stream, manifestResources: resources);
        errors = [.. result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)];
        return result.Success ? stream.ToArray() : null;
    }

    private CSharpCompilation Generate(CSharpCompilation of)
    {
        var authoring = Assembly.LoadFrom(Repository.At("src", "SpecLint.RuleAuthoring", "bin", configuration, "netstandard2.0", "SpecLint.RuleAuthoring.dll"));
        var generators = authoring.GetTypes().Where(t => !t.IsAbstract && typeof(IIncrementalGenerator).IsAssignableFrom(t)).Select(t => ((IIncrementalGenerator)Activator.CreateInstance(t)!).AsSourceGenerator());
        var pages = Directory.EnumerateFiles(Repository.At("rules-docs"), "SL*.md").Order(StringComparer.Ordinal).Select(p => (AdditionalText)new Page(p));
        CSharpGeneratorDriver.Create(generators, pages, Parse).RunGeneratorsAndUpdateCompilation(of, out var with, out _);
        return (CSharpCompilation)with;
    }

    private sealed class Page(string path) : AdditionalText
    {
        public override string Path => path;

        public override SourceText GetText(CancellationToken cancellationToken = default) => SourceText.From(File.ReadAllText(path));
    }
}
