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
            long end;
            try
            {
                end = RandomAccess.GetLength(handle);
            }
            catch (NotSupportedException)
            {
                // A pipe or a terminal: it has no length, and no place in it.
                end = 0;
            }

            RandomAccess.Write(handle, Encoding.UTF8.GetBytes(sentence + "\n"), end);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // Said to nobody.
        }
    }
}
