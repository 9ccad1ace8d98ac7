using System.Reflection;
using System.Runtime.Loader;

namespace SpecLint.RuleMutants;

/// <summary>A compiled library with the tests that were built against it, loaded beside the others.</summary>
internal sealed class Trial : AssemblyLoadContext
{
    private readonly Assembly library;
    private readonly Assembly tests;
    private readonly string folder;

    public Trial(byte[] library, string folder)
        : base("trial")
    {
        this.folder = folder;
        this.library = LoadFromStream(new MemoryStream(library));
        tests = LoadFromAssemblyPath(Path.Combine(folder, "SpecLint.Tests.dll"));
    }

    /// <summary>What each of many books comes to, one text a book.</summary>
    public string[] Corpus(int books) => (string[])tests.GetType("SpecLint.Tests.Properties.PropertyCorpus", throwOnError: true)!.GetMethod("Answers", BindingFlags.Static | BindingFlags.Public)!.Invoke(null, [books])!;

    /// <summary>Runs a test; why it fails, in one line, or <see langword="null"/> where it passes.</summary>
    public string? Run(string type, string test, object?[]? arguments = null)
    {
        var of = tests.GetType(type, throwOnError: true)!;
        try
        {
            of.GetMethod(test)!.Invoke(Activator.CreateInstance(of), arguments);
            return null;
        }
        catch (TargetInvocationException failed)
        {
            string[] lines = failed.InnerException!.Message.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            return string.Join(" | ", lines.Where(l => !l.StartsWith("//", StringComparison.Ordinal)).Skip(lines.Length > 2 ? 1 : 0).Take(2));
        }
    }

    /// <summary>Ids of the rule pages.</summary>
    public IEnumerable<string> Pages() => Directory.EnumerateFiles(Repository.At("rules-docs"), "SL*.md").Select(p => Path.GetFileNameWithoutExtension(p)).Order(StringComparer.Ordinal);

    protected override Assembly? Load(AssemblyName name)
    {
        if (name.Name == "SpecLint") return library;
        string path = Path.Combine(folder, name.Name + ".dll");
        return File.Exists(path) ? LoadFromAssemblyPath(path) : null;
    }
}
