using System.Diagnostics;
using System.Globalization;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Faults;

/// <summary>Tries one write path after another at each of its system calls, with each way of failing that fits the call.</summary>
internal sealed class Trial(Shim shim)
{
    private const int MostShown = 12;

    // errno of Linux.
    private static readonly (string Name, int Number) Io = ("EIO", 5), Access = ("EACCES", 13), NoSpace = ("ENOSPC", 28), Interrupted = ("EINTR", 4),
        ReadOnly =
            ("EROFS", 30), OtherDevice =
                ("EXDEV", 18), TooMany = ("EMFILE", 24), Quota = ("EDQUOT", 122), Locked = ("EAGAIN", 11), NotPermitted = ("EPERM", 1);

    private int shown;

    /// <summary>Number of fault points: system calls with the ways in which each was made to fail.</summary>
    public int Points { get; private set; }

    public int Paths { get; private set; }

    /// <summary>Number of calls at which the process was ended.</summary>
    public int Deaths { get; private set; }

    public int Runs { get; private set; }

    public int Broken { get; private set; }

    /// <summary>Tries a write path.</summary>
    public void Try(WritePath path)
    {
        using var folder = new WorkFolder();
        var before = folder.Fill(path.Files);
        ToolRun whole = default!;
        shim.Watch(folder.Path, 0, FaultMode.Count, 0, () => whole = path.Run(folder.Path));
        string[] kinds = shim.Kinds();
        var after = folder.Read();
        if (whole.Status > 1 || Same(before, after))
        {
            Fail(path, "without a fault", $"status {whole.Status}, {whole.Error}", "nothing is written");
            return;
        }

        int points = Points, broken = Broken;
        shown = 0;
        for (int n = 1; n <= kinds.Length; n++)
        {
            foreach (var (mode, error) in FaultsOf(kinds[n - 1]))
            {
                Points++;
                folder.Fill(path.Files);
                var run = whole;
                var (_, hits) = shim.Watch(folder.Path, n, mode, error.Number, () => run = path.Run(folder.Path));
                Runs++;
                string what = $"call {n} ({kinds[n - 1]}), {mode} {error.Name}";
                if (hits == 0 && kinds[n - 1] != "write") Fail(path, what, "the call was not made to fail", "");
                Judge(path, what, run, whole.Status, folder.Read(), before, after);
                Next(path, what, folder, before, after);
            }
        }

        for (int n = 1; path.Dies && n <= kinds.Length; n++) Die(path, n, kinds[n - 1], folder, before, after);
        Paths++;
        Console.WriteLine($"{path.Name}: {kinds.Length} calls, {Points - points} fault points, {Broken - broken} broken");
    }

    private static IEnumerable<(FaultMode Mode, (string Name, int Number) Error)> FaultsOf(string kind)
    {
        (string, int)[] once = kind switch
        {
            "open" => [Io, Access, TooMany, Interrupted],
            "read" or "list" => [Io, Interrupted],
            "create" or "open to write" => [NoSpace, Io, Access, ReadOnly, TooMany, Interrupted],
            "write" => [NoSpace, Io, Quota, Interrupted],
            "flush" or "close" => [Io, NoSpace, Interrupted],
            "rename" or "link" => [OtherDevice, NoSpace, Io, Access, NotPermitted, Interrupted],
            "lock" => [Locked, Io, Interrupted],
            "rights" => [NotPermitted, Io, ReadOnly],
            _ => [NoSpace, Io, Access],
        };
        foreach (var error in once) yield return (FaultMode.Once, error);
        yield return (FaultMode.FromThenOn, Io);
        if (kind == "write") yield return (FaultMode.ShortWrite, NoSpace);
    }

    /// <summary>Every file is old or new; a run that says that all is well has written all; one that fails says so.</summary>
    private void Judge(
        WritePath path, string what, ToolRun run, int status, SortedDictionary<string, string> now, SortedDictionary<string, string> before,
        SortedDictionary<string, string> after)
    {
        if (run.Status is < 0 or > 2) Fail(path, what, $"status {run.Status}", run.Error);
        if (run.Status == 2 && run.Error.Length == 0) Fail(path, what, "status 2 and not a word", "");
        if (run.Error.Contains("   at ", StringComparison.Ordinal) || run.Error.Contains("fault of the tool", StringComparison.Ordinal))
            Fail(path, what, "a fault of the tool", run.Error);
        OldOrNew(path, what, run.Error, now, before, after);

        // The same status as without the fault, and not a word of it: then nothing may be missing.
        bool isTold = run.Status != status || run.Error.Contains("cannot", StringComparison.Ordinal);
        if (!isTold && !Same(Without(now), after)) Fail(path, what, $"status {run.Status}, but not all is written", run.Error);
    }

    /// <summary>The process ends at a call, as when it is killed or the machine stops.</summary>
    private void Die(WritePath path, int n, string kind, WorkFolder folder, SortedDictionary<string, string> before, SortedDictionary<string, string> after)
    {
        const int ended = 137;
        string what = $"call {n} ({kind}), ended";
        folder.Fill(path.Files);
        var start = new ProcessStartInfo("dotnet", [typeof(Trial).Assembly.Location, "once", path.Name, folder.Path]) { UseShellExecute = false };
        start.Environment["FAULTS_FOLDER"] = folder.Path;
        start.Environment["FAULTS_DIE_AT"] = n.ToString(CultureInfo.InvariantCulture);
        using (var process = Process.Start(start)!)
        {
            process.WaitForExit();
            if (process.ExitCode != ended) Fail(path, what, $"the process ended with {process.ExitCode}", "");
        }

        Points++;
        Deaths++;
        OldOrNew(path, what, "", folder.Read(), before, after);
        Next(path, what, folder, before, after);
    }

    /// <summary>The next run, without a fault, leaves no temporary file, and every file old or new.</summary>
    private void Next(WritePath path, string what, WorkFolder folder, SortedDictionary<string, string> before, SortedDictionary<string, string> after)
    {
        var next = path.Run(folder.Path);
        Runs++;
        var now = folder.Read();
        string[] left = [.. now.Keys.Where(IsTemporary)];
        if (left.Length > 0) Fail(path, what, $"the next run leaves {left[0]}", next.Error);
        foreach (string file in now.Keys.Union(before.Keys))
        {
            string? text = now.GetValueOrDefault(file);
            if (path.Repeats && text != after.GetValueOrDefault(file))
                Fail(path, what, $"after the next run {file} is not new", $"status {next.Status}; {next.Error}");
        }
    }

    private void OldOrNew(
        WritePath path, string what, string said, SortedDictionary<string, string> now, SortedDictionary<string, string> before,
        SortedDictionary<string, string> after)
    {
        foreach (string file in now.Keys.Union(before.Keys).Where(f => !IsTemporary(f)))
        {
            string? text = now.GetValueOrDefault(file);
            if (text != before.GetValueOrDefault(file) && text != after.GetValueOrDefault(file))
                Fail(path, what, $"{file} is neither old nor new", $"{text?.Length} bytes; {said}");
        }
    }

    private static bool IsTemporary(string path) => path.EndsWith(".tmp", StringComparison.Ordinal);

    private static SortedDictionary<string, string> Without(SortedDictionary<string, string> files)
    {
        var kept = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (path, text) in files.Where(f => !IsTemporary(f.Key))) kept.Add(path, text);
        return kept;
    }

    private static bool Same(SortedDictionary<string, string> a, SortedDictionary<string, string> b) => a.SequenceEqual(b);

    private void Fail(WritePath path, string what, string how, string more)
    {
        Broken++;
        if (++shown <= MostShown) Console.WriteLine($"  BROKEN {path.Name}, {what}: {how}. {more.ReplaceLineEndings(" ")}");
    }
}
