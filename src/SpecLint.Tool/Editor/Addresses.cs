namespace SpecLint.Tool.Editor;

/// <summary>Addresses of documents as the editor writes them: what it once wrote it finds again.</summary>
internal sealed class Addresses
{
    private readonly Dictionary<string, string> written = new(StringComparer.Ordinal);

    /// <summary>The full path of an address; <see langword="null"/> where it is no file.</summary>
    public static string? PathOf(string address)
    {
        if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || !uri.IsFile
            || uri.LocalPath.Contains('\0', StringComparison.Ordinal)) return null;
        return Path.GetFullPath(uri.LocalPath);
    }

    /// <summary>Keeps how the editor writes a path.</summary>
    public void Keep(string path, string address) => written[path] = address;

    /// <summary>The address of a full path.</summary>
    public string Of(string path) => written.TryGetValue(path, out string? address) ? address : new Uri(path).AbsoluteUri;
}
