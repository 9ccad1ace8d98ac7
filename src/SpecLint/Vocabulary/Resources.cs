namespace SpecLint.Vocabulary;

/// <summary>The data embedded in this assembly.</summary>
internal static class Resources
{
    private static readonly System.Reflection.Assembly Assembly = typeof(Resources).Assembly;

    /// <summary>Names of all resources.</summary>
    public static string[] Names => Assembly.GetManifestResourceNames();

    /// <summary>A resource where it lies in memory, which it never leaves.</summary>
    /// <exception cref="InvalidOperationException">There is no such resource: a fault of the build.</exception>
    public static unsafe ReadOnlySpan<byte> View(string name) =>
        Assembly.GetManifestResourceStream(name) is UnmanagedMemoryStream stream
            ? new ReadOnlySpan<byte>(stream.PositionPointer, checked((int)stream.Length))
            : Read(name);

    /// <summary>The bytes of a resource.</summary>
    /// <exception cref="InvalidOperationException">There is no such resource: a fault of the build.</exception>
    public static byte[] Read(string name)
    {
        using var stream = Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The resource {name} is missing from the build.");
        byte[] bytes = new byte[stream.Length];
        int read = 0;
        while (read < bytes.Length)
        {
            int n = stream.Read(bytes, read, bytes.Length - read);
            if (n == 0) break;
            read += n;
        }

        return bytes;
    }
}
