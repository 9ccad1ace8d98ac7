using System.Text;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool;

/// <summary>What the tool asks of the world around it: its streams, its folder, the day.</summary>
internal sealed class Host
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Standard output: the result.</summary>
    public required Stream Output { get; init; }

    /// <summary>Standard input; only the editor's verb reads it.</summary>
    public Stream Input { get; init; } = Stream.Null;

    /// <summary>Standard error: everything else.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>The folder that relative paths start from.</summary>
    public required string CurrentDirectory { get; init; }

    /// <summary>The day of the run where <c>--on</c> names none.</summary>
    public required Func<CalendarDate> Today { get; init; }

    /// <summary>Variables of the environment.</summary>
    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>Whether standard output is a terminal.</summary>
    public bool OutputIsTerminal { get; init; }

    /// <summary>Columns of the terminal; 0 where there is none.</summary>
    public int TerminalColumns { get; init; }

    /// <summary>Columns of text for people: as wide as the terminal, from 60 to 120; 80 where the result goes elsewhere.</summary>
    public int ColumnsFor(string? outputFile) =>
        outputFile is not null || !OutputIsTerminal || TerminalColumns <= 0 ? DisplayText.Columns : Math.Clamp(TerminalColumns, 60, 120);

    /// <summary>Whether standard error is a terminal.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Writes files whole.</summary>
    public AtomicFiles Files { get; } = new();

    /// <summary>Folder of the bench as a page; empty or missing in a build that does not hold it.</summary>
    public string PageFolder { get; init; } = Path.Combine(AppContext.BaseDirectory, "page");

    /// <summary>Told how many files a run is about to read, before it reads them.</summary>
    public Action<int> Expect { get; init; } = static _ => { };

    /// <summary>Waits until files in a folder change; <see langword="false"/> where nobody waits any more.</summary>
    public Func<string, bool> WaitForChange { get; init; } = static _ => false;

    /// <summary>The world of this process.</summary>
    /// <exception cref="IOException">A stream cannot be opened.</exception>
    /// <exception cref="System.ComponentModel.Win32Exception">The console cannot be made ready.</exception>
    public static Host OfProcess()
    {
        var error = Console.OpenStandardError();

        // The console makes itself ready with the first bytes, and where it cannot, nothing could be said later.
        if (!OperatingSystem.IsWindows()) error.Write([]);
        return new()
        {
            Output = Console.OpenStandardOutput(),
            Input = Console.OpenStandardInput(),
            Error = new LenientWriter(new StreamWriter(error, Utf8) { AutoFlush = true }) { NewLine = "\n" },
            CurrentDirectory = Environment.CurrentDirectory,
            Today = static () =>
            {
                var now = DateTime.Now;
                return CalendarDate.Of(now.Year, now.Month, now.Day)!.Value;
            },
            Variable = Environment.GetEnvironmentVariable,
            OutputIsTerminal = !Console.IsOutputRedirected,
            TerminalColumns = Console.IsOutputRedirected ? 0 : WidthOfTerminal(),
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Expect = DemandMemory,
            WaitForChange = Watch.ForChange,
        };
    }

    private static int WidthOfTerminal()
    {
        try
        {
            return Console.WindowWidth;
        }
        catch (Exception e) when (e is IOException or PlatformNotSupportedException)
        {
            return 0;
        }
    }

    /// <summary>
    /// Where a limit on memory is met the runtime ends the process without a word, so it is said before. With more than a little memory
    /// the estimate is left alone: it errs by a half.
    /// </summary>
    private static void DemandMemory(int files)
    {
        const int leastBytes = 12_000_000, leastPerFile = 13_000;
        const long little = 1L << 30;
        long available = GC.GetGCMemoryInfo().TotalAvailableMemoryBytes, needed = leastBytes + ((long)files * leastPerFile);
        if (available is > 0 and < little && available < needed)
            throw new TooLittleMemoryException($"a book of {files} files needs about {needed >> 20} MiB, "
                + $"and this process may take {available >> 20} MiB");
    }

    /// <summary>A full path, seen from the current folder.</summary>
    public string FullPath(string path) => Path.GetFullPath(path, CurrentDirectory);

    /// <summary>A writer of text to a stream that stays open: UTF-8 without mark, LF.</summary>
    public static StreamWriter WriterTo(Stream stream) => new(stream, Utf8, bufferSize: 16384, leaveOpen: true) { NewLine = "\n" };
}
