using SpecLint.Live;

namespace SpecLint.Tool;

/// <summary>A book on disk that is checked again whenever its files change.</summary>
internal static class Watch
{
    private static readonly TimeSpan Settled = TimeSpan.FromMilliseconds(80);

    /// <summary>Checks, shows, waits for a change, and again, until waiting ends.</summary>
    /// <param name="host">The world.</param>
    /// <param name="folder">The book.</param>
    /// <param name="input">What to check of it.</param>
    /// <param name="show">Shows a result.</param>
    /// <param name="reopen">Reads the book anew.</param>
    public static void Run(Host host, BookFolder folder, BookInput input, Action<BookFolder, CheckResult> show, Func<BookFolder> reopen)
    {
        var live = new LiveBook(input);
        show(folder, live.Result());
        while (host.WaitForChange(folder.Root))
        {
            BookFolder now;
            try
            {
                now = reopen();
            }
            catch (UsageException fault)
            {
                // A file is half written, or gone for a moment; the next change will tell.
                Shell.Say(host, fault.Message);
                continue;
            }

            var changes = FileState.Between(folder.Files, now.Files);
            folder = now;
            if (changes.Count == 0) continue;
            live.Take(changes);
            Shell.Say(host, $"{string.Join(", ", changes.Take(3).Select(c => c.Path))}"
                + $"{(changes.Count > 3 ? $" and {changes.Count - 3} more" : "")} changed");
            show(folder, live.Result());
        }
    }

    /// <summary>Waits until a file in a folder, or below, changes, and the changes have settled.</summary>
    /// <returns>Always; the user ends the wait with the process.</returns>
    public static bool ForChange(string root)
    {
        using var watcher = new FileSystemWatcher(root)
        {
            IncludeSubdirectories = true,
            NotifyFilter = NotifyFilters.FileName | NotifyFilters.DirectoryName | NotifyFilters.LastWrite,
        };
        watcher.WaitForChanged(WatcherChangeTypes.All);
        while (!watcher.WaitForChanged(WatcherChangeTypes.All, Settled).TimedOut)
        {
        }

        return true;
    }
}
