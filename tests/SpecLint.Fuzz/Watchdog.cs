using System.Diagnostics;

namespace SpecLint.Fuzz;

/// <summary>Ends the process with the input that it hangs on, and leaves the input that ends the process.</summary>
internal static class Watchdog
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private static string folder = "";
    private static volatile byte[]? current;
    private static volatile string name = "";
    private static long began;

    /// <summary>Starts to watch.</summary>
    /// <param name="crashes">Folder for the input.</param>
    public static void Start(string crashes)
    {
        folder = crashes;
        AppDomain.CurrentDomain.UnhandledException += static (_, _) => Leave("fatal");
        var thread = new Thread(Watch) { IsBackground = true };
        thread.Start();
    }

    /// <summary>An input is handed over.</summary>
    public static void Begin(string target, byte[] input)
    {
        name = target;
        current = input;
        Interlocked.Exchange(ref began, Stopwatch.GetTimestamp());
    }

    /// <summary>The target has come back.</summary>
    public static void End() => current = null;

    private static void Watch()
    {
        while (true)
        {
            Thread.Sleep(1_000);
            if (current is null || Stopwatch.GetElapsedTime(Interlocked.Read(ref began)) < Longest) continue;
            Leave("hang");
            Environment.FailFast($"{name} hangs.");
        }
    }

    private static void Leave(string how)
    {
        if (current is not { } input) return;
        Directory.CreateDirectory(folder);
        File.WriteAllBytes(Path.Combine(folder, $"{name}-{how}"), input);
    }
}
