namespace SpecLint.Vocabulary;

/// <summary>The data embedded in this assembly.</summary>
internal static class Resources
{
    private static readonly System.Reflection.Assembly Assembly = typeof(Resources).Assembly;

    /// <summary>Names of all resources.</summary>
    public static string[] Names => Assembly.GetManifestResourceNames();

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

/// <summary>A resource where it lies in memory, which it never leaves: it is looked for once, by its name among all others.</summary>
internal sealed unsafe class Resource
{
    private readonly byte* place;
    private readonly int length;
    private readonly byte[]? copy;

    private Resource(byte* place, int length, byte[]? copy)
    {
        this.place = place;
        this.length = length;
        this.copy = copy;
    }

    /// <summary>Bytes of which nobody changes any.</summary>
    internal Resource(byte[] bytes)
        : this(null, 0, bytes)
    {
    }

    /// <summary>Its bytes.</summary>
    public ReadOnlySpan<byte> Bytes => copy is null ? new ReadOnlySpan<byte>(place, length) : copy;

    /// <summary>Finds a resource.</summary>
    /// <exception cref="InvalidOperationException">There is no such resource: a fault of the build.</exception>
    public static Resource Find(string name) =>
        typeof(Resource).Assembly.GetManifestResourceStream(name) is UnmanagedMemoryStream stream
            ? new Resource(stream.PositionPointer, checked((int)stream.Length), null)
            : new Resource(Resources.Read(name));
}
