namespace SpecLint.Tool;

/// <summary>
/// Writes files whole: whoever reads one, also after the process was killed or the disk was full, finds the old text or the new
/// one. The text goes to a temporary file in the same folder, is flushed to the disk, and takes the place of the old one by its name.
/// What a killed run left behind is removed by the next run that writes into the same folder.
/// </summary>
internal sealed class AtomicFiles
{
    /// <summary>Ends the names of temporary files, so that no run takes one for a file of a book.</summary>
    public const string Ending = ".speclint.tmp";

    private readonly HashSet<string> swept = new(StringComparer.Ordinal);

    /// <summary>What became of a file.</summary>
    public enum Outcome
    {
        /// <summary>It holds the new text.</summary>
        Written,

        /// <summary>It is not what was read, and was left alone.</summary>
        ChangedMeanwhile,
    }

    /// <summary>Whether a file holds these bytes.</summary>
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

    /// <summary>Puts a new text in the place of an old one. Permissions are kept; where the file is a link, what it leads to is replaced.</summary>
    /// <param name="path">Full path.</param>
    /// <param name="before">The bytes that were read: a file that holds others is left alone.</param>
    /// <param name="after">The bytes to write.</param>
    /// <exception cref="IOException">It cannot be written; the old text stands.</exception>
    /// <exception cref="UnauthorizedAccessException">The right to write it is missing; the old text stands.</exception>
    public Outcome Replace(string path, ReadOnlyMemory<byte> before, ReadOnlyMemory<byte> after)
    {
        string target = EndOf(path);
        return Put(target, stream => stream.Write(after.Span), over: true, () => IsStill(target, before.Span))
            ? Outcome.Written
            : Outcome.ChangedMeanwhile;
    }

    /// <summary>Writes a file, in the place of one that may stand there.</summary>
    /// <param name="path">Full path; where it is a link, what it leads to is replaced.</param>
    /// <param name="write">Writes its text.</param>
    /// <inheritdoc cref="Replace" path="/exception"/>
    public void Write(string path, Action<Stream> write) => Put(EndOf(path), write, over: true);

    /// <summary>Writes a file that is not there yet; folders on the way are made.</summary>
    /// <param name="path">Full path.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <exception cref="IOException">It stands already, or cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The right to write it is missing.</exception>
    public void Create(string path, byte[] bytes) => Create([(path, () => bytes)]);

    /// <summary>Writes files that are not there yet, all of them or none; folders on the way are made.</summary>
    /// <param name="files">Full paths and bytes.</param>
    /// <inheritdoc cref="Create(string, byte[])" path="/exception"/>
    public void Create(IEnumerable<(string Path, Func<byte[]> Bytes)> files)
    {
        var made = new Stack<string>();
        try
        {
            foreach (var (path, bytes) in files)
            {
                MakeFolder(Path.GetDirectoryName(path)!, made);
                byte[] text = bytes();
                Put(path, stream => stream.Write(text), over: false);
                made.Push(path);
            }
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            while (made.TryPop(out string? path)) Undo(path);
            throw;
        }
    }

    private static void MakeFolder(string folder, Stack<string> made)
    {
        var missing = new Stack<string>();
        for (string? at = folder; at is not null && !Directory.Exists(at); at = Path.GetDirectoryName(at)) missing.Push(at);
        while (missing.TryPop(out string? at))
        {
            Directory.CreateDirectory(at);
            made.Push(at);
        }
    }

    /// <summary>Takes back a file or folder of this run; a folder into which somebody else has written stays.</summary>
    private static void Undo(string path)
    {
        try
        {
            if (Directory.Exists(path)) Directory.Delete(path);
            else File.Delete(path);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // What stopped the run is told; that something stays behind follows from it.
        }
    }

    /// <summary>Full path of the file that a path leads to.</summary>
    private static string EndOf(string path) =>
        new FileInfo(path).LinkTarget is null ? path : File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;

    /// <summary>Writes a temporary file and lets it take the name of the target.</summary>
    /// <param name="target">Full path, not a link.</param>
    /// <param name="write">Writes the text.</param>
    /// <param name="over">Whether to replace a file that has the name; else it must be free.</param>
    /// <param name="isWanted">Asked at the last moment.</param>
    /// <returns>Whether the target holds the text; <see langword="false"/> where it was not wanted any more.</returns>
    private bool Put(string target, Action<Stream> write, bool over, Func<bool>? isWanted = null)
    {
        string folder = Path.GetDirectoryName(target)!;
        if (!Directory.Exists(folder)) throw new IOException("its folder does not exist");
        Sweep(folder);
        string temporary = Path.Combine(folder, $".{Path.GetFileName(target)}.{Path.GetRandomFileName()}{Ending}");
        bool isRenamed = false, isUnix = !OperatingSystem.IsWindows();
        try
        {
            var options = new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                Share = FileShare.None,
                BufferSize = 1 << 16,
            };
            UnixFileMode? rights = over && !OperatingSystem.IsWindows() && File.Exists(target) ? File.GetUnixFileMode(target) : null;
            if (!OperatingSystem.IsWindows() && rights is not null) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using (var stream = new FileStream(temporary, options))
            {
                write(stream);
                stream.Flush();
                if (!OperatingSystem.IsWindows() && rights is { } kept) File.SetUnixFileMode(stream.SafeFileHandle, kept);
                stream.Flush(flushToDisk: true);
                if (isWanted is not null && !isWanted()) return false;

                // As long as it is open it is locked, so that no other run takes it for one that was left behind.
                if (isUnix) isRenamed = FileNames.Give(temporary, target, over);
            }

            if (!isUnix) isRenamed = FileNames.Give(temporary, target, over);
            return true;
        }
        finally
        {
            if (!isRenamed) Undo(temporary);
        }
    }

    /// <summary>Removes what killed runs left in a folder; what a run that goes on has open stays.</summary>
    private void Sweep(string folder)
    {
        if (!swept.Add(folder)) return;
        try
        {
            foreach (string left in Directory.EnumerateFiles(folder, ".*" + Ending))
            {
                try
                {
                    if ((File.GetAttributes(left) & FileAttributes.ReparsePoint) != 0) continue;
                    using (new FileStream(left, FileMode.Open, FileAccess.ReadWrite, FileShare.Delete, bufferSize: 0)) File.Delete(left);
                }
                catch (Exception e) when (IoFault.Is(e))
                {
                    // Open elsewhere, or somebody else's.
                }
            }
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // The folder can be written to but not listed.
        }
    }
}
