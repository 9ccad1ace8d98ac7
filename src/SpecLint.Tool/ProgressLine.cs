using System.Diagnostics;

namespace SpecLint.Tool;

/// <summary>How far a long run is, on one line of a terminal's standard error; nothing anywhere else.</summary>
internal sealed class ProgressLine(Host host, bool wanted, int total) : IDisposable
{
    private const int FirstAfterMilliseconds = 700;
    private const int EveryMilliseconds = 200;

    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly Lock gate = new();
    private long next = FirstAfterMilliseconds;
    private bool shown;

    /// <summary>What to call for each file; <see langword="null"/> where nothing is shown.</summary>
    public Action<int>? Report => wanted && host.ErrorIsTerminal ? Show : null;

    /// <summary>Takes the line away.</summary>
    public void Dispose()
    {
        if (shown) host.Error.Write("\r\u001b[K");
    }

    private void Show(int done)
    {
        if (clock.ElapsedMilliseconds < Interlocked.Read(ref next)) return;
        lock (gate)
        {
            if (clock.ElapsedMilliseconds < next) return;
            Interlocked.Exchange(ref next, clock.ElapsedMilliseconds + EveryMilliseconds);
            host.Error.Write($"\rread {done} of {total} files\u001b[K");
            shown = true;
        }
    }
}
