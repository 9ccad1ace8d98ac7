using System.ComponentModel;
using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using System.Text;

namespace SpecLint.Tool;

/// <summary>
/// Gives a file the name of another in one step of the system. <see cref="File.Move(string, string, bool)"/> copies where the step
/// fails, over the old text or beside somebody else's file, and what is interrupted then is half of each.
/// </summary>
internal static partial class FileNames
{
    // errno of Linux, macOS and the BSDs alike: EPERM, EINTR, EACCES, EEXIST.
    private const int NotPermitted = 1, Interrupted = 4, AccessDenied = 13, Exists = 17;

    // EINVAL, and ENOSYS of Linux and macOS: the system or the file system cannot rename to a free name only.
    private static readonly int[] NoFreeNames = [22, 38, 78];

    // EXDEV, EMLINK, ENOSYS, ENOTSUP of Linux and macOS: a file system without second names, as on a memory stick.
    private static readonly int[] NoSecondNames = [NotPermitted, 18, 31, 38, 78, 45, 95];

    /// <summary>Gives a temporary file the name of another.</summary>
    /// <param name="temporary">Full path of the file.</param>
    /// <param name="name">Full path that it gets, in the same folder.</param>
    /// <param name="over">Whether to replace the file that has the name; else it must be free.</param>
    /// <returns>Whether the temporary name is gone; it may stay as a second one.</returns>
    /// <exception cref="IOException">It cannot be done, and nothing has changed.</exception>
    /// <exception cref="UnauthorizedAccessException">The right to do it is missing, and nothing has changed.</exception>
    public static bool Give(string temporary, string name, bool over)
    {
        if (!OperatingSystem.IsWindows()) return OnUnix(temporary, name, over);
        OnWindows(temporary, name, over);
        return true;
    }

    [SupportedOSPlatform("windows")]
    private static void OnWindows(string temporary, string name, bool over)
    {
        if (over && File.Exists(name)) File.Replace(temporary, name, destinationBackupFileName: null);
        else File.Move(temporary, name);
    }

    [UnsupportedOSPlatform("windows")]
    private static bool OnUnix(string temporary, string name, bool over)
    {
        byte[] from = Terminated(temporary), to = Terminated(name);

        bool isSecond = false;
        int error = Try(over ? Rename : RenameToFree, from, to);
        if (!over && Array.IndexOf(NoFreeNames, error) >= 0)
        {
            // A second name never takes the place of a file either.
            error = Try(Link, from, to);
            isSecond = error == 0;
            if (Array.IndexOf(NoSecondNames, error) >= 0) error = Path.Exists(name) ? Exists : Try(Rename, from, to);
        }

        if (error == 0) return !isSecond;
        string reason = Marshal.GetPInvokeErrorMessage(error);
        if (error is NotPermitted or AccessDenied) throw new UnauthorizedAccessException(reason, new Win32Exception(error));
        throw new IOException(reason, error);
    }

    private static int Try(Func<byte[], byte[], int> step, byte[] from, byte[] to)
    {
        int error;
        do error = step(from, to) == 0 ? 0 : Marshal.GetLastPInvokeError();
        while (error == Interrupted);
        return error;
    }

    private static int RenameToFree(byte[] from, byte[] to)
    {
        const int currentFolder = -100, free = 1, notThere = 38;
        try
        {
            if (OperatingSystem.IsLinux()) return RenameAt(currentFolder, from, currentFolder, to, free);
        }
        catch (EntryPointNotFoundException)
        {
            // The C library is older than the call.
        }

        Marshal.SetLastPInvokeError(notThere);
        return -1;
    }

    private static byte[] Terminated(string path) => Encoding.UTF8.GetBytes(path + '\0');

    [LibraryImport("libc", EntryPoint = "rename", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Rename(byte[] from, byte[] to);

    [LibraryImport("libc", EntryPoint = "renameat2", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int RenameAt(int fromFolder, byte[] from, int toFolder, byte[] to, uint flags);

    [LibraryImport("libc", EntryPoint = "link", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Link(byte[] from, byte[] to);
}
