namespace SpecLint.Tool;

/// <summary>What a fault of a file or a stream means: decided here, for all verbs.</summary>
internal static class IoFault
{
    // errno EPIPE, and the Windows errors ERROR_BROKEN_PIPE and ERROR_NO_DATA.
    private const int BrokenPipe = 32, WindowsBrokenPipe = unchecked((int)0x8007006D), WindowsNoData = unchecked((int)0x800700E8);

    /// <summary>Whether an exception says that a file or stream could not be read or written, as opposed to a fault of the tool.</summary>
    public static bool Is(Exception e) => e is IOException or UnauthorizedAccessException;

    /// <summary>
    /// Whether a write failed because the reader of the pipe (head, less) has seen
    /// enough. Every other failure loses part of the result.
    /// </summary>
    public static bool ReaderIsGone(IOException e) => e.HResult is BrokenPipe or WindowsBrokenPipe or WindowsNoData;

    /// <summary>The reason, in words that can stand after a colon.</summary>
    public static string Reason(Exception e)
    {
        if (e is UnauthorizedAccessException) return "permission denied";

        // The path that follows is that of a temporary file as often as not; who says it names the file that is meant.
        int path = e.Message.IndexOf(" : '", StringComparison.Ordinal);
        return (path > 0 ? e.Message[..path] : e.Message).TrimEnd('.');
    }
}
