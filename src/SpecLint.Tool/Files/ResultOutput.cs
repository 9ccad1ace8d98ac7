using System.Diagnostics.CodeAnalysis;
using SpecLint.Book;

namespace SpecLint.Tool;

/// <summary>Delivers a result to standard output or to a file, there whole or not at all.</summary>
internal static class ResultOutput
{
    /// <summary>Writes a result.</summary>
    /// <param name="host">The world.</param>
    /// <param name="path">The file of <c>--output</c>; <see langword="null"/> for standard output.</param>
    /// <param name="write">Writes it.</param>
    public static void Deliver(Host host, string? path, Action<Stream> write)
    {
        if (path is null)
        {
            try
            {
                using var buffer = new BufferedStream(new Kept(host.Output), 1 << 16);
                WriteThrough(buffer, write);
            }
            catch (IOException e)
            {
                throw new UsageException($"the result cannot be written to standard output: {IoFault.Reason(e)}. "
                    + "What was written is not complete.", e);
            }

            return;
        }

        string full = host.FullPath(path);
        if (FileKinds.Of(full.Replace('\\', '/')) is not null)
            throw new UsageException($"the result is not written to {path}: that is the name of a file of a book.");
        if (Directory.Exists(full)) throw new UsageException($"the result is not written to {path}: that is a folder.");
        try
        {
            if (IsStreamOnly(full, out var stream))
            {
                using (stream) write(stream);
                return;
            }

            host.Files.Write(full, write);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the result cannot be written to {path}: {IoFault.Reason(e)}.", e);
        }
    }

    /// <summary>Writes text to standard output or a file.</summary>
    public static void DeliverText(Host host, string? path, Action<TextWriter> write) => Deliver(host, path, stream =>
    {
        using var writer = Host.WriterTo(stream);
        write(writer);
    });

    /// <summary>Whether a path is a pipe or a device: it is written to, where a file would be replaced.</summary>
    private static bool IsStreamOnly(string full, [NotNullWhen(true)] out FileStream? stream)
    {
        stream = null;
        if (!File.Exists(full)) return false;
        var opened = new FileStream(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 1 << 16);
        if (opened.CanSeek && !full.StartsWith("/dev/", StringComparison.Ordinal))
        {
            opened.Dispose();
            return false;
        }

        stream = opened;
        return true;
    }

    private static void WriteThrough(BufferedStream buffer, Action<Stream> write)
    {
        try
        {
            write(buffer);
            buffer.Flush();
        }
        catch (IOException) when (buffer.UnderlyingStream is Kept { IsClosedByReader: true })
        {
            // The reader (head, less) has seen enough; the status still tells.
        }
    }

    /// <summary>A stream that stays open, and remembers when its reader went away.</summary>
    private sealed class Kept(Stream inner) : Stream
    {
        public bool IsClosedByReader { get; private set; }

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
            if (!IsClosedByReader) inner.Flush();
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count)
        {
            if (IsClosedByReader) return;
            try
            {
                inner.Write(buffer, offset, count);
            }
            catch (IOException e) when (IoFault.ReaderIsGone(e))
            {
                IsClosedByReader = true;
                throw;
            }
        }
    }
}
