using System.Text;
using SpecLint.Rules;

namespace SpecLint.Tool.Editor;

/// <summary>
/// Addresses of the rule pages: on the web where the editor's settings name a folder, else in the user's cache, into which a page
/// is written when it is first linked to.
/// </summary>
internal sealed class RulePages(Host host)
{
    private readonly Dictionary<string, string?> known = new(StringComparer.Ordinal);
    private readonly string? cache = CacheOf(host);
    private Uri? web;

    /// <summary>Sets the folder on the web; <see langword="null"/> for none.</summary>
    public void SetWeb(Uri? folder)
    {
        web = folder;
        known.Clear();
    }

    /// <summary>The address of a rule's page; <see langword="null"/> where it has none.</summary>
    public string? Of(string ruleId)
    {
        if (!known.TryGetValue(ruleId, out string? address)) known.Add(ruleId, address = Find(ruleId));
        return address;
    }

    private string? Find(string ruleId)
    {
        if (RuleRegistry.Find(ruleId) is null) return null;
        if (web is not null) return new Uri(web, ruleId + ".md").AbsoluteUri;
        if (cache is null || Embedded.PageOf(ruleId) is not { } page) return null;
        string path = Path.Combine(cache, ruleId + ".md");
        try
        {
            if (!File.Exists(path)) host.Files.Create(path, Encoding.UTF8.GetBytes(page));
            return new Uri(path).AbsoluteUri;
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // A link is a comfort: without a cache there is none.
            return null;
        }
    }

    /// <summary>The user's cache (XDG Base Directory Specification 0.8; on Windows the local application data).</summary>
    private static string? CacheOf(Host host)
    {
        string? folder = host.Variable("XDG_CACHE_HOME") is { Length: > 0 } xdg && Path.IsPathRooted(xdg) ? xdg
            : host.Variable("LOCALAPPDATA") is { Length: > 0 } local ? local
            : host.Variable("HOME") is { Length: > 0 } home ? Path.Combine(home, ".cache")
            : null;
        return folder is null ? null : Path.Combine(folder, "speclint", Shell.Version, "rules-docs");
    }
}
