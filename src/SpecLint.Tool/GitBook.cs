using System.Diagnostics;
using System.Globalization;
using System.Text;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool;

/// <summary>A book as a revision of its git repository holds it, read through git's own commands; no checkout is touched.</summary>
internal static class GitBook
{
    /// <summary>Mode of an object that is a link: its text is where it leads to.</summary>
    private const string Link = "120000";

    /// <summary>Reads the files of a book at a revision.</summary>
    /// <param name="root">Full path of the root of the book in the checkout.</param>
    /// <param name="revision">A branch, tag or commit.</param>
    /// <returns>The files, by path; none where the revision holds no book there.</returns>
    /// <exception cref="UsageException">git is missing, the folder is in no repository, or there is no such revision.</exception>
    public static IReadOnlyList<SourceFile> Read(string root, string revision)
    {
        string prefix = Text(Run(root, "rev-parse", "--show-prefix")).TrimEnd('\n');
        string commit = CommitOf(root, revision);
        var tree = ReadTree(root, commit, prefix);
        using var objects = new Objects(root);
        Bar? bar = null;
        if (tree.TryGetValue(BookFiles.BarFile, out var barEntry))
            bar = BookReader.Read(new SourceFile(BookFiles.BarFile, objects.Read(barEntry.Id)), FileKind.Bar, Measures.Default) as Bar;
        return [.. BookFiles.Choose(tree.Where(static e => e.Value.Mode != Link).Select(static e => e.Key), bar)
            .Select(p => new SourceFile(p, objects.Read(tree[p].Id)))];
    }

    /// <summary>Whether a folder is in a repository that has no commit yet.</summary>
    /// <exception cref="UsageException">git is missing.</exception>
    public static bool HasNoCommit(string root) =>
        TryRun(root, out _, out _, "rev-parse", "--is-inside-work-tree") == 0
            && TryRun(root, out _, out _, "rev-parse", "--verify", "--quiet", "HEAD") != 0;

    /// <summary>Full path of the top of the repository that a folder is in; <see langword="null"/> where it is in none.</summary>
    /// <exception cref="UsageException">git is missing.</exception>
    public static string? TopOf(string folder) =>
        TryRun(folder, out byte[] output, out _, "rev-parse", "--show-toplevel") == 0 ? Text(output).TrimEnd('\n', '\r') : null;

    /// <summary>The commit that a revision names.</summary>
    private static string CommitOf(string root, string revision)
    {
        if (revision.Length > 0
            && revision[0] != '-'
            && TryRun(root, out byte[] output, out _, "rev-parse", "--verify", "--quiet", revision + "^{commit}") == 0)
            return Text(output).Trim();
        throw new UsageException($"{revision} is neither a folder nor a revision that git knows here; a shallow clone holds only the "
            + $"last ones, fetch the others first.");
    }

    /// <summary>All files beneath a folder, by path relative to it: kind of entry and object id.</summary>
    private static Dictionary<string, (string Mode, string Id)> ReadTree(string root, string commit, string prefix)
    {
        byte[] listing = prefix.Length == 0
            ? Run(root, "ls-tree", "-r", "-z", "--full-tree", commit)
            : Run(root, "ls-tree", "-r", "-z", "--full-tree", commit, "--", ":(literal)" + prefix);
        return ParseTree(listing, prefix);
    }

    /// <summary>Reads a listing of <c>git ls-tree -r -z</c>: mode, kind, object, tab, path.</summary>
    /// <param name="listing">What git wrote.</param>
    /// <param name="prefix">The way to the folder, with <c>/</c> at its end; what lies elsewhere is left out.</param>
    internal static Dictionary<string, (string Mode, string Id)> ParseTree(byte[] listing, string prefix)
    {
        var tree = new Dictionary<string, (string, string)>(StringComparer.Ordinal);
        foreach (string entry in Text(listing).Split('\0', StringSplitOptions.RemoveEmptyEntries))
        {
            int tab = entry.IndexOf('\t', StringComparison.Ordinal);
            string[] words = entry[..Math.Max(tab, 0)].Split(' ');
            if (words.Length != 3) throw new UsageException("git lists the revision in a way that cannot be read.");
            string path = entry[(tab + 1)..];
            if (words[1] == "blob" && path.StartsWith(prefix, StringComparison.Ordinal)) tree[path[prefix.Length..]] = (words[0], words[2]);
        }

        return tree;
    }

    private static string Text(byte[] bytes) => Encoding.UTF8.GetString(bytes);

    private static byte[] Run(string root, params string[] args)
    {
        int status = TryRun(root, out byte[] output, out string error, args);
        if (status == 0) return output;
        string reason = error.Split('\n', 2)[0].Trim();
        throw new UsageException($"git could not read the revision: {(reason.Length == 0 ? $"it ended with status {status}" : reason)}");
    }

    private static int TryRun(string root, out byte[] output, out string error, params string[] args)
    {
        using var git = Start(root, args);
        git.StandardInput.Close();
        var errors = git.StandardError.ReadToEndAsync();
        using var buffer = new MemoryStream();
        git.StandardOutput.BaseStream.CopyTo(buffer);
        git.WaitForExit();
        output = buffer.ToArray();
        error = errors.GetAwaiter().GetResult();
        return git.ExitCode;
    }

    private static Process Start(string root, params string[] args)
    {
        var start = new ProcessStartInfo("git")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            CreateNoWindow = true,
        };
        start.ArgumentList.Add("-C");
        start.ArgumentList.Add(root);
        foreach (string arg in args) start.ArgumentList.Add(arg);

        // Reading must not refresh the index, ask for a password, or fetch what a partial clone lacks: the settings of an unpacked
        // repository can name a program for that.
        start.Environment["GIT_NO_LAZY_FETCH"] = "1";
        start.Environment["GIT_ALLOW_PROTOCOL"] = "none";
        start.Environment["GIT_OPTIONAL_LOCKS"] = "0";
        start.Environment["GIT_TERMINAL_PROMPT"] = "0";
        start.Environment["LC_ALL"] = "C";

        // git sets these for its hooks, seen from the folder the hook runs in; the book's own folder decides here.
        foreach (string name in (ReadOnlySpan<string>)["GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX"])
        {
            if (start.Environment.TryGetValue(name, out string? path) && !Path.IsPathFullyQualified(path ?? "")) start.Environment.Remove(name);
        }

        try
        {
            return Process.Start(start) ?? throw new UsageException("git could not be started.");
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            throw new UsageException("git is not installed or not on the path; revisions are read through it.", e);
        }
    }

    /// <summary>One git process that hands out the contents of objects.</summary>
    private sealed class Objects : IDisposable
    {
        private readonly Process git;
        private readonly Stream output;
        private readonly byte[] one = new byte[1];

        public Objects(string root)
        {
            git = Start(root, "cat-file", "--batch");
            git.ErrorDataReceived += static (_, _) => { };
            git.BeginErrorReadLine();
            output = new BufferedStream(git.StandardOutput.BaseStream, 1 << 16);
        }

        /// <summary>The bytes of an object; one over 4 MiB is handed over as blanks of more than that, as a file of the checkout would be.</summary>
        public byte[] Read(string id)
        {
            git.StandardInput.BaseStream.Write(Encoding.ASCII.GetBytes(id + "\n"));
            git.StandardInput.BaseStream.Flush();
            string[] header = ReadLine().Split(' ');
            if (header.Length != 3 || !long.TryParse(header[2], NumberStyles.None, CultureInfo.InvariantCulture, out long size))
                throw new UsageException($"git could not hand out the object {id}: {string.Join(' ', header)}");
            if (size > BookFolder.LargestFile)
            {
                Skip(size);
                ReadByte();
                return BookFolder.TooLarge.Value;
            }

            byte[] bytes = new byte[size];
            output.ReadExactly(bytes);
            ReadByte();
            return bytes;
        }

        public void Dispose()
        {
            git.StandardInput.Close();
            git.WaitForExit();
            output.Dispose();
            git.Dispose();
        }

        private string ReadLine()
        {
            var line = new StringBuilder();
            for (int c = ReadByte(); c != '\n'; c = ReadByte())
            {
                if (c < 0) throw new UsageException("git ended before it had handed out all files of the revision.");
                line.Append((char)c);
            }

            return line.ToString();
        }

        private int ReadByte() => output.Read(one, 0, 1) == 0 ? -1 : one[0];

        private void Skip(long count)
        {
            byte[] waste = new byte[1 << 16];
            while (count > 0)
            {
                int read = output.Read(waste, 0, (int)Math.Min(waste.Length, count));
                if (read == 0) return;
                count -= read;
            }
        }
    }
}
