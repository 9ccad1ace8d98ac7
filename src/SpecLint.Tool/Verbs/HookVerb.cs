using System.CommandLine;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Verbs;

/// <summary><c>hook</c>: what a hook of git runs before a commit or a push, over all books of the repository.</summary>
internal sealed class HookVerb : Verb
{
    /// <summary>Set by pre-commit where it runs over a range of commits: the first of them.</summary>
    private const string FromVariable = "PRE_COMMIT_FROM_REF";

    private readonly Argument<string[]> files = new("FILE")
    {
        Description = "Files that the hook was given. Those of a book that has not changed are checked as they are, as in a "
            + "run over all files.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<bool> all = new("--all") { Description = "Show every finding, not only what is new." };
    private readonly Option<string?> since = new("--since")
    {
        Description = $"Revision to compare with; default: HEAD, or {FromVariable} where pre-commit sets it.",
        HelpName = "REVISION",
    };
    private readonly Option<string> failAt = new("--fail-at")
    {
        Description = "Lowest level at which findings make the exit status 1.",
        HelpName = "error|warning|note|never",
        DefaultValueFactory = _ => "error",
    };
    private readonly Option<CalendarDate?> on = CommonOptions.On();

    public HookVerb() => failAt.TakesOneOf("error", "warning", "note", "never");

    public override string Name => "hook";

    public override string Description =>
        "Checks all books of the repository before a commit, and shows what the commit brings: also through a syrup that other drinks "
            + "use, or a file that is gone. Before the first commit everything is new.";

    public override IReadOnlyList<string> Examples => ["speclint hook", "speclint hook --all --fail-at warning", "speclint hook --since main"];

    public override void Define(Command command)
    {
        command.Arguments.Add(files);
        foreach (var option in new Option[] { all, since, failAt, on }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string top = GitBook.TopOf(host.CurrentDirectory) ?? throw new UsageException("the current folder is in no git repository.");
        string[] named = [.. (parsed.GetValue(files) ?? []).Select(host.FullPath)];
        string? from = parsed.GetValue(since) ?? host.Variable(FromVariable);
        if (from is null or "" && GitBook.HasNoCommit(top)) from = null;
        else if (from is null or "") from = "HEAD";
        int status = ExitStatus.Clean;
        var books = BookFolder.BooksBelow(top, within: true);
        foreach (string root in books.Count == 0 ? [top] : books)
            status = Math.Max(status, Check(parsed, host, root, parsed.GetValue(all) ? null : from, named));
        return status;
    }

    /// <summary>Checks one book; against nothing where there is no revision.</summary>
    private int Check(ParseResult parsed, Host host, string root, string? from, string[] named)
    {
        var folder = BookFolder.Open(host, [root]);
        if (!folder.HasFilesToCheck) return ExitStatus.Clean;
        var before = from is null ? null : GitBook.Read(root, from);
        if (before is not null && IsSame(before, folder.Files))
        {
            // Nothing of it is committed. A hook that still names files of it runs over all files.
            if (!named.Any(f => f.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal))) return ExitStatus.Clean;
            before = null;
        }

        var input = folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host), threads: 0);
        var remarks = new List<string>();
        CheckResult result;
        if (before is null)
        {
            result = Checker.Check(input);
        }
        else
        {
            (var known, result) = TwoStates.Check(input, before);
            (result, string old) = SinceRevision.Only(result, known, "before this change");
            if (old.Length > 0) remarks.Add(old + " speclint check shows all.");
        }

        var content = ReportContent.Of(result, includes: null, remarks, null, isPart: before is not null);
        if (folder.BarIsUnreadable)
        {
            Shell.Say(host, $"{folder.DisplayPrefix}{BookFiles.BarFile} cannot be read, so the settings of the bar are not known.");
            return ExitStatus.Usage;
        }

        if (content.Highest > Level.None)
        {
            var text = new TextReportOptions
            {
                PathPrefix = folder.DisplayPrefix,
                Colour = CommonOptions.WantsColour("auto", null, host),
                Columns = host.ColumnsFor(null),
            };
            ResultOutput.DeliverText(host, null, writer => TextReport.Write(writer, content, text));
        }

        return Settings.TryLevel(parsed.GetValue(failAt)!, out var threshold) && content.Highest >= threshold
            ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private static bool IsSame(IReadOnlyList<SourceFile> before, IReadOnlyList<SourceFile> now) =>
        before.Count == now.Count
            && before.Zip(now).All(static p => p.First.Path == p.Second.Path && p.First.Utf8.Span.SequenceEqual(p.Second.Utf8.Span));
}
