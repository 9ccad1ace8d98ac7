namespace SpecLint.Tool;

/// <summary>Reads a file that somebody else may have prepared: bounded in size, never waiting for a pipe or a device.</summary>
internal static class InputFile
{
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
}
