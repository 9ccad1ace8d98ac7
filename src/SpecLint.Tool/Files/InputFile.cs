using System.Text;

namespace SpecLint.Tool;

/// <summary>Reads a file that somebody else may have prepared: bounded in size, never waiting for a pipe or a device.</summary>
internal static class InputFile
{
    private const long LargestText = 1 << 20;

    /// <summary>The bytes of a file, also while an editor has it open for writing.</summary>
    /// <param name="path">Full path; where it is a link, what it leads to is read.</param>
    /// <param name="largest">The most bytes to read.</param>
    /// <returns>The bytes; <see langword="null"/> where there are more.</returns>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The right to read it is missing.</exception>
    public static byte[]? Read(string path, long largest) => Read(new FileInfo(path), largest);

    /// <inheritdoc cref="Read(string, long)"/>
    public static byte[]? Read(FileInfo file, long largest)
    {
        // The length of a link is that of its own text, so the file at its end is asked.
        if ((file.Attributes & FileAttributes.ReparsePoint) != 0 && file.ResolveLinkTarget(returnFinalTarget: true) is FileInfo target) file = target;
        long length = file.Length;
        if (length > largest) return null;

        // Pipes, sockets and devices have no length. Opening one could wait for ever, or never come to an end.
        if (length == 0) return [];
        using var handle = File.OpenHandle(file.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        length = RandomAccess.GetLength(handle);
        if (length > largest) return null;
        byte[] bytes = new byte[length];
        int read = 0;
        while (read < length)
        {
            int more = RandomAccess.Read(handle, bytes.AsSpan(read), read);
            if (more == 0) break;
            read += more;
        }

        return read == length ? bytes : bytes[..read];
    }

    /// <summary>The text of a file, or of standard input where it is called <c>-</c>; UTF-8.</summary>
    /// <exception cref="UsageException">It cannot be read, or is too large.</exception>
    public static string ReadText(string named, Host host)
    {
        byte[]? bytes;
        try
        {
            if (named == "-")
            {
                using var input = new MemoryStream();
                host.Input.CopyTo(input);
                bytes = input.Length > LargestText ? null : input.ToArray();
            }
            else
            {
                bytes = Read(host.FullPath(named), LargestText);
            }
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{named} cannot be read: {IoFault.Reason(e)}.", e);
        }

        return bytes is null ? throw new UsageException($"{named} is larger than 1 MiB.") : Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF');
    }
}
