using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.Loader;
using SpecLint.Rules;

namespace SpecLint.Tool;

/// <summary>Assemblies with a house's own rules, loaded because an option names them and for no other reason.</summary>
internal static class HouseRuleFiles
{
    /// <summary>Set to false (as the native build does), the tool loads no code, and the parts that would are trimmed away.</summary>
    public const string Switch = "SpecLint.LoadsHouseRules";

    /// <summary>Whether this build of the tool can load code.</summary>
    [FeatureSwitchDefinition(Switch)]
    [FeatureGuard(typeof(RequiresUnreferencedCodeAttribute))]
    [FeatureGuard(typeof(RequiresDynamicCodeAttribute))]
#pragma warning disable IL4000 // The native build sets the switch to false when it is published, which the analyzer cannot see.
    private static bool LoadsCode => AppContext.TryGetSwitch(Switch, out bool given) ? given : RuntimeFeature.IsDynamicCodeSupported;
#pragma warning restore IL4000

    /// <summary>The rules of the named assemblies, in the order of their ids.</summary>
    /// <param name="host">The world.</param>
    /// <param name="paths">Assemblies as the option names them.</param>
    /// <exception cref="UsageException">This build cannot load code, or a file is none that holds rules, or an id is not free.</exception>
    public static IReadOnlyList<Rule> Load(Host host, IReadOnlyList<string> paths)
    {
        if (paths.Count == 0) return [];
        if (!LoadsCode)
        {
            throw new UsageException("--rules takes the portable build of the tool: this one is native and cannot load code. "
                + "A program of a few lines around the library can check a book by the house's own rules too.");
        }

        var rules = new List<Rule>();
        foreach (string path in paths) rules.AddRange(LoadFile(path, host.FullPath(path)));
        if (HouseRules.WhyNot(rules) is { } reason) throw new UsageException("--rules: " + reason);
        rules.Sort((a, b) => string.CompareOrdinal(a.Info.Id, b.Info.Id));
        return rules;
    }

    /// <summary>Does work in which a house's own rules run; where one of them falls over, that one is named.</summary>
    /// <exception cref="HouseRuleException">A rule of the house's own failed.</exception>
    public static T Run<T>(IReadOnlyList<Rule> rules, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (Culprit(rules, e) is { } culprit)
        {
            var cause = e.GetBaseException();
            throw new HouseRuleException(
                $"the house's own rule {culprit.Info.Id} ({culprit.GetType().FullName}) failed: "
                    + $"{cause.GetType().Name}, {cause.Message}", e);
        }
    }

    /// <summary>The house's own rule that a fault comes from; <see langword="null"/> where it comes from elsewhere.</summary>
    private static Rule? Culprit(IReadOnlyList<Rule> rules, Exception fault)
    {
        string trace = fault.ToString();
        return rules.FirstOrDefault(r => r.GetType().FullName is { } name && trace.Contains($" {name.Replace('+', '.')}.", StringComparison.Ordinal));
    }

    [RequiresUnreferencedCode("Rules of a house's own are found in an assembly that is not there when the tool is built.")]
    [RequiresDynamicCode("Rules of a house's own are compiled when they run.")]
    private static List<Rule> LoadFile(string path, string fullPath)
    {
        if (!File.Exists(fullPath)) throw new UsageException($"--rules: {path} does not exist.");
        var rules = new List<Rule>();
        try
        {
            foreach (var type in new HouseContext(fullPath).LoadFromAssemblyPath(fullPath).GetTypes())
            {
                if (type.IsAbstract || type.IsNested || !type.IsSubclassOf(typeof(Rule))) continue;
                if (type.GetConstructor(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic, []) is not { } make)
                    throw new UsageException($"--rules: the rule {type.FullName} of {path} has no constructor without parameters.");
                rules.Add((Rule)make.Invoke(null));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or BadImageFormatException)
        {
            throw new UsageException($"--rules: {path} cannot be loaded: {e.Message}", e);
        }
        catch (ReflectionTypeLoadException e)
        {
            throw new UsageException(
                $"--rules: {path} was built against another version of the library, or lacks an assembly beside it: "
                    + $"{e.LoaderExceptions.OfType<Exception>().FirstOrDefault()?.Message ?? e.Message}",
                e);
        }
        catch (TargetInvocationException e)
        {
            throw new UsageException($"--rules: a rule of {path} cannot be made: {(e.InnerException ?? e).Message}", e);
        }

        // Without a rule, the option would do nothing, and nobody would know.
        return rules.Count > 0
            ? rules
            : throw new UsageException($"--rules: {path} has no rule, that is, no class derived from {typeof(Rule).FullName}.");
    }

    /// <summary>The house's assembly and what lies beside it; the library is the tool's own, of whatever version, so that a rule is a rule.</summary>
    [RequiresUnreferencedCode("Loads assemblies by path.")]
    private sealed class HouseContext(string path) : AssemblyLoadContext("house rules")
    {
        private readonly AssemblyDependencyResolver resolver = new(path);

        [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "The class can only be made where code may be loaded.")]
        protected override Assembly? Load(AssemblyName assemblyName) =>
            assemblyName.Name == typeof(Rule).Assembly.GetName().Name ? typeof(Rule).Assembly
            : assemblyName.Name == typeof(Science.Component).Assembly.GetName().Name ? typeof(Science.Component).Assembly
            : resolver.ResolveAssemblyToPath(assemblyName) is { } found ? LoadFromAssemblyPath(found)
            : null;
    }
}
