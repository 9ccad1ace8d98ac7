using System.Text;
using Microsoft.Win32.SafeHandles;

namespace SpecLint.Tool;

/// <summary>Standard error without the console's own stream, which may not be there.</summary>
internal static class LastWords
{
    private const int StandardError = 2;

    /// <summary>Says a sentence, if anybody can hear it.</summary>
    public static void Say(string sentence)
    {
        if (OperatingSystem.IsWindows()) return;
        try
        {
            using var handle = new SafeFileHandle(StandardError, ownsHandle: false);
            byte[] said = Encoding.UTF8.GetBytes(sentence + "\n");
            if (EndOf(handle) is { } end) RandomAccess.Write(handle, said, end);
            else Pipe(handle, said);
        }
        catch (Exception e) when (IoFault.Is(e) || e is NotSupportedException)
        {
            // Said to nobody.
        }
    }

    /// <summary>The end of a file; <see langword="null"/> of a pipe or a terminal, which has no places.</summary>
    private static long? EndOf(SafeFileHandle handle)
    {
        try
        {
            return RandomAccess.GetLength(handle);
        }
        catch (NotSupportedException)
        {
            return null;
        }
    }

    private static void Pipe(SafeFileHandle handle, byte[] said)
    {
        using var pipe = new FileStream(handle, FileAccess.Write, bufferSize: 0);
        pipe.Write(said, 0, said.Length);
    }
}
