using System.Diagnostics;
using System.Globalization;

namespace SpecLint.Tool;

/// <summary>How far a long run is, on one line of a terminal's standard error; nothing anywhere else.</summary>
/// <param name="host">The world.</param>
/// <param name="wanted">Whether the user wants to see it.</param>
/// <param name="total">Number of files: each is read, and then each is checked.</param>
/// <param name="elapsed">The time since the run began; that of a clock where none is given.</param>
internal sealed class ProgressLine(Host host, bool wanted, int total, Func<TimeSpan>? elapsed = null) : IDisposable
{
    private const int FirstAfterMilliseconds = 700;
    private const int EveryMilliseconds = 200;

    private readonly Func<TimeSpan> elapsed = elapsed ?? SinceNow();
    private readonly Lock gate = new();
    private long next = FirstAfterMilliseconds;
    private double checkingSince;
    private bool shown;

    /// <summary>What to call for each step; <see langword="null"/> where nothing is shown.</summary>
    public Action<int>? Report => wanted && host.ErrorIsTerminal ? Show : null;

    /// <summary>Takes the line away.</summary>
    public void Dispose()
    {
        if (shown) host.Error.Write("\r\u001b[K");
    }

    private static Func<TimeSpan> SinceNow()
    {
        long start = Stopwatch.GetTimestamp();
        return () => Stopwatch.GetElapsedTime(start);
    }

    private void Show(int done)
    {
        double now = elapsed().TotalMilliseconds;
        if (done == total) checkingSince = now;
        if (now < Interlocked.Read(ref next)) return;
        lock (gate)
        {
            if (now < next) return;
            Interlocked.Exchange(ref next, (long)now + EveryMilliseconds);
            host.Error.Write($"\r{Line(done, now)}\u001b[K");
            shown = true;
        }
    }

    private string Line(int done, double now)
    {
        if (done <= total) return string.Create(CultureInfo.InvariantCulture, $"read {done} of {total} files");
        int check = done - total;

        // Of the first few files nothing can be said.
        double left = check * 20 < total ? double.NaN : (now - checkingSince) / check * (total - check) / 1000;
        string wait = double.IsNaN(left)
            ? ""
            : left < 1.5 ? ", a second left" : string.Create(CultureInfo.InvariantCulture, $", {Math.Ceiling(left):0} seconds left");
        return string.Create(CultureInfo.InvariantCulture, $"checked {check} of {total} files{wait}");
    }
}
