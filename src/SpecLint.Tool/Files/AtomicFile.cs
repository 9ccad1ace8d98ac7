namespace SpecLint.Tool;

/// <summary>Replaces a file whole: whoever reads it, also after the process was killed, finds the old text or the new one.</summary>
internal static class AtomicFile
{
    /// <summary>What became of a file.</summary>
    public enum Outcome
    {
        /// <summary>It holds the new text.</summary>
        Written,

        /// <summary>It is not what was read, and was left alone.</summary>
        ChangedMeanwhile,
    }

    /// <summary>Whether a file still holds the bytes that were read.</summary>
    public static bool IsStill(string path, ReadOnlySpan<byte> bytes)
    {
        try
        {
            // The length of a link is that of its own text.
            return File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }
    }

    /// <summary>
    /// Puts a new text in the place of an old one: a temporary file in the same folder, flushed to the disk, renamed over the
    /// old one. Permissions are kept; where the file is a link, what it leads to is replaced.
    /// </summary>
    /// <param name="path">Full path.</param>
    /// <param name="before">The bytes that were read: a file that holds others is left alone.</param>
    /// <param name="after">The bytes to write.</param>
    public static Outcome Replace(string path, ReadOnlySpan<byte> before, ReadOnlySpan<byte> after)
    {
        string target = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
        string folder = Path.GetDirectoryName(target)!;

        // The name ends so that no run takes it for a file of a book.
        string temporary = Path.Combine(folder, $".{Path.GetFileName(target)}.{Path.GetRandomFileName()}.tmp");
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None, BufferSize = 0 };
            UnixFileMode mode = 0;
            if (!OperatingSystem.IsWindows())
            {
                mode = File.GetUnixFileMode(target);
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using (var stream = new FileStream(temporary, options))
            {
                stream.Write(after);
                if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(stream.SafeFileHandle, mode);
                stream.Flush(flushToDisk: true);
            }

            if (!IsStill(target, before)) return Outcome.ChangedMeanwhile;
            if (OperatingSystem.IsWindows()) File.Replace(temporary, target, destinationBackupFileName: null);
            else File.Move(temporary, target, overwrite: true);
            return Outcome.Written;
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
