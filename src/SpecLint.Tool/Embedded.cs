using System.Reflection;
using System.Text;

namespace SpecLint.Tool;

/// <summary>What the tool carries with it: the pages of the rules, the schemas, the demo book.</summary>
internal static class Embedded
{
    private static readonly Assembly Assembly = typeof(Embedded).Assembly;

    /// <summary>The page of a rule in Markdown; <see langword="null"/> where there is none.</summary>
    public static string? PageOf(string ruleId) => TryRead($"rules-docs/{ruleId}.md", out byte[] page) ? Encoding.UTF8.GetString(page) : null;

    /// <summary>Paths beneath a folder, sorted, and the names of their resources.</summary>
    public static IReadOnlyList<(string Path, string Resource)> Beneath(string folder) =>
        [.. Assembly.GetManifestResourceNames().Where(n => n.StartsWith(folder, StringComparison.Ordinal))
            .Select(n => (n[folder.Length..].Replace('\\', '/'), n)).OrderBy(p => p.Item1, StringComparer.Ordinal)];

    /// <summary>The bytes of a resource.</summary>
    public static byte[] Read(string resource) =>
        TryRead(resource, out byte[] bytes) ? bytes : throw new InvalidOperationException($"The resource {resource} is missing from the build.");

    private static bool TryRead(string resource, out byte[] bytes)
    {
        using var stream = Assembly.GetManifestResourceStream(resource);
        if (stream is null)
        {
            bytes = [];
            return false;
        }

        bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return true;
    }
}
