using System.Runtime.InteropServices;

namespace SpecLint.Faults;

/// <summary>How the call that is chosen fails.</summary>
internal enum FaultMode
{
    /// <summary>Calls are only counted.</summary>
    Count,

    /// <summary>One call fails.</summary>
    Once,

    /// <summary>It and all later ones fail, as when the disk is gone; nothing can be cleaned up then.</summary>
    FromThenOn,

    /// <summary>A write writes a part, and the next one fails.</summary>
    ShortWrite,
}

/// <summary>What <c>faults.c</c> offers; it is loaded before the C library, so that the calls of the runtime go through it.</summary>
internal sealed unsafe class Shim
{
    private readonly delegate* unmanaged<byte*, nint, int, int, void> arm;
    private readonly delegate* unmanaged<nint> disarm;
    private readonly delegate* unmanaged<nint> hits;
    private readonly delegate* unmanaged<nint, byte*> kind;

    /// <summary>Finds it in this process.</summary>
    /// <param name="path">Its file, which <c>LD_PRELOAD</c> has named.</param>
    public Shim(string path)
    {
        nint library = NativeLibrary.Load(path);
        arm = (delegate* unmanaged<byte*, nint, int, int, void>)NativeLibrary.GetExport(library, "faults_arm");
        disarm = (delegate* unmanaged<nint>)NativeLibrary.GetExport(library, "faults_disarm");
        hits = (delegate* unmanaged<nint>)NativeLibrary.GetExport(library, "faults_hits");
        kind = (delegate* unmanaged<nint, byte*>)NativeLibrary.GetExport(library, "faults_kind");
    }

    /// <summary>Watches a folder while something runs.</summary>
    /// <returns>The number of calls that touched the folder, and of those that failed.</returns>
    public (int Calls, int Hits) Watch(string folder, int nth, FaultMode mode, int error, Action run)
    {
        nint name = Marshal.StringToCoTaskMemUTF8(folder);
        arm((byte*)name, nth, (int)mode, error);
        try
        {
            run();
        }
        finally
        {
            Marshal.FreeCoTaskMem(name);
            LastCalls = (int)disarm();
        }

        return (LastCalls, (int)hits());
    }

    private int LastCalls { get; set; }

    /// <summary>What the calls of the last watch were, in turn.</summary>
    public string[] Kinds() => [.. Enumerable.Range(1, LastCalls).Select(i => Marshal.PtrToStringUTF8((nint)kind(i))!)];
}
