using System.CommandLine;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>check</c>: findings.</summary>
internal sealed class CheckVerb : Verb
{
    private readonly Argument<string[]> paths = new("PATH")
    {
        Description = "Folder of a book, or files of it; default: the current folder; - reads one file from standard input (see --as). "
            + "The whole book is always read; only findings of the named files are shown.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<string> format = CommonOptions.Format(
        "text", "line", "json", "sarif", "html", "github", "gitlab", "junit", "teamcity", "checkstyle");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string> failAt = CommonOptions.FailAt();

    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<bool> quiet = CommonOptions.Quiet();
    private readonly Option<string> colour = CommonOptions.Colour();
    private readonly Option<string?> pagesAt = new("--rule-pages")
    {
        Description = "Web address of the folder with the rule pages, for the links of a SARIF log.",
        HelpName = "ADDRESS",
    };

    private readonly Option<string?> baseline = new("--baseline")
    {
        Description = "File of a baseline: only findings that are not in it are shown and counted.",
        HelpName = "FILE",
    };

    private readonly Option<string?> since = new("--since")
    {
        Description = "Revision of the book's git repository: only findings that it does not have are shown and counted.",
        HelpName = "REVISION",
    };

    private readonly Option<string?> inputName = new("--as")
    {
        Description = "With - as PATH: the path of the file on standard input, such as drinks/low-tide.drink.json.",
        HelpName = "FILE",
    };
    private readonly Option<BookPart?> part = CommonOptions.Part();
    private readonly RuleChoice choice = new();
    private readonly Option<bool> statistics = new("--statistics")
    {
        Description = "Print how many findings each rule has, instead of the findings.",
    };
    private readonly Option<bool> watch = new("--watch")
    {
        Description = "Check again whenever a file of the book changes, until the command is ended.",
    };
    private readonly Option<string[]> rules = CommonOptions.HouseRules();

    private readonly Option<string?> meantFor = new("--for")
    {
        Description = "With --format sarif: who reads the log. code-scanning leaves out accepted findings, and findings beyond GitHub's limits.",
        HelpName = "code-scanning",
    };

    public CheckVerb()
    {
        meantFor.MayTakeOneOf("code-scanning");
        pagesAt.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && AddressOf(result.Tokens[0].Value) is null)
                result.AddError("--rule-pages takes an address that begins with https:// or http://.");
        });
    }

    /// <summary>The word by which it is called.</summary>
    public const string Word = "check";

    public override string Name => Word;

    public override string Description => "Recalculates the recipes of a book and prints what is wrong with them.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint check recipes",
        "speclint check recipes/low-tide.drink.json --fail-at warning",
        "speclint check . --format sarif --output speclint.sarif",
        "speclint check . --since main",
        "speclint check . --rule keeping --rule hazards --statistics",
        "speclint check . --format html --output speclint.html",
        "speclint check . --watch",
        "speclint check . --part 1/4 --format json --output part-1.json",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(paths);
        Option[] options =
        [
            format, output, units, failAt, on, threads, quiet, colour, pagesAt, baseline, since, part, .. choice.Options,
            statistics, watch, rules, meantFor, inputName,
        ];
        foreach (var option in options) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var named = parsed.GetValue(paths) ?? [];
        string layout = parsed.GetValue(format)!;
        if (parsed.GetValue(meantFor) is not null && layout != "sarif") throw new UsageException("--for goes with --format sarif.");
        var entries = parsed.GetValue(baseline) is { } baselineFile ? BaselineVerb.Read(host, baselineFile) : null;
        var houseRules = HouseRuleFiles.Load(host, parsed.GetValue(rules) ?? []);
        bool isQuiet = parsed.GetValue(quiet);
        int threadCount = parsed.GetValue(threads);
        var folder = named is ["-"] ? WithStandardInput(parsed, host, threadCount) : BookFolder.Open(host, named, threadCount);
        if (named is not ["-"] && parsed.GetValue(inputName) is not null) throw new UsageException("--as goes with - as the only PATH.");
        if (!folder.HasFilesToCheck)
        {
            throw new UsageException($"no recipe was found in {(named.Length == 0 ? "the current folder" : string.Join(", ", named))}: "
                + "files of a book end in .drink.json, .prep.json, .ingredient.json, .menu.json, .stock.json or .prices.json.");
        }

        var asked = folder;
        if (parsed.GetValue(part) is { } wanted) folder = folder.Part(wanted);
        if (!isQuiet)
        {
            foreach (string other in folder.OtherBooks) Shell.Say(host, $"{folder.DisplayPrefix}{other} is a book of its own and is left out.");
        }

        var input = folder.ToInput(CommonOptions.DayOf(parsed.GetValue(on), folder, host, isQuiet), threadCount) with
        {
            HouseRules = houseRules,
            KeepsProfiles = layout == "html",
            Only = LooksAtOthers(parsed) ? null : folder.Includes,
        };
        if (parsed.GetValue(watch)) return WatchBook(parsed, host, folder, input);

        // By the rules and schemas of today: what they newly find in what is old is not new in the recipes.
        var before = parsed.GetValue(since) is { } from ? GitBook.Read(folder.Root, from) : null;
        HashSet<string> known = [];
        CheckResult result;
        using (var progress = new ProgressLine(host, !isQuiet, (before ?? folder.Files).Count))
        {
            var shown = input with { Progress = progress.Report };
            if (before is null) result = Check(shown);
            else (known, result) = HouseRuleFiles.Run(houseRules, () => TwoStates.Check(shown, before));
        }

        var remarks = new List<string>();
        bool isPart = parsed.GetValue(since) is not null;
        if (parsed.GetValue(since) is { } revision)
        {
            (result, string old) = SinceRevision.Only(result, known, "at " + revision);
            if (old.Length > 0) remarks.Add(old);
        }

        var match = entries?.Match(result);
        (result, string others) = choice.Apply(parsed, result, houseRules);
        if (others.Length > 0) remarks.Add(others);
        bool showsBaseline = layout == "sarif" && parsed.GetValue(meantFor) is null;
        if (match is not null && match.Remark.Length > 0) remarks.Add(match.Remark);
        var failing = ReportContent.Of(match is null ? result : result.Only(match.IsNew), folder.Includes, remarks, match, isPart);
        var content = showsBaseline ? ReportContent.Of(result, folder.Includes, remarks, match, isPart) : failing;
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(statistics))
        {
            if (layout != "text") throw new UsageException("--statistics goes with --format text.");
            ResultOutput.DeliverText(host, file, writer => RuleCounts.Write(writer, content));
            return StatusOf(parsed, host, folder, failing);
        }

        switch (layout)
        {
            case "line":
                ResultOutput.DeliverText(host, file, writer =>
                    LineReport.Write(writer, content, folder.DisplayPrefix, CommonOptions.UnitsOf(parsed.GetValue(units), result.Book)));
                break;
            case "gitlab":
                ResultOutput.Deliver(host, file, stream => CodeQualityReport.Write(stream, content, folder.RepositoryPrefix()));
                break;
            case "teamcity":
                ResultOutput.DeliverText(host, file, writer => TeamCityReport.Write(writer, content, folder.RepositoryPrefix()));
                break;
            case "checkstyle":
                ResultOutput.Deliver(host, file, stream => CheckstyleReport.Write(stream, content, folder.RepositoryPrefix()));
                break;
            case "github":
                string inRepository = folder.RepositoryPrefix();
                ResultOutput.DeliverText(host, file, writer => GitHubReport.WriteCommands(writer, content, inRepository));
                AppendSummary(host, content, inRepository);
                break;
            case "junit":
                ResultOutput.Deliver(host, file, stream =>
                    JUnitReport.Write(
                        stream, content,
                        result.Book.Files.Select(f => f.Source.Path).Where(p => folder.Includes is null || folder.Includes(p))));
                break;
            case "html":
                ResultOutput.DeliverText(host, file, writer =>
                    CheckPage.Write(writer, content, CommonOptions.UnitsOf(parsed.GetValue(units), result.Book), Shell.Version));
                break;
            case "json":
                ResultOutput.Deliver(host, file, stream => JsonReport.Write(stream, content, Shell.Version, PartOf(parsed, asked, input)));
                break;
            case "sarif":
                string prefix = folder.RepositoryPrefix();
                var sarif = new SarifReportOptions
                {
                    Version = Shell.Version,
                    PathPrefix = prefix,
                    HouseRules = houseRules,
                    PageOf = Embedded.PageOf,
                    PagesAt = AddressOf(parsed.GetValue(pagesAt)),
                    ForCodeScanning = parsed.GetValue(meantFor) is not null,
                    Baseline = match,
                };
                ResultOutput.Deliver(host, file, stream => SarifReport.Write(stream, content, sarif));
                break;
            default:
                var text = TextOptions(parsed, host, folder, result);
                ResultOutput.DeliverText(host, file, writer => TextReport.Write(writer, content, text));
                break;
        }

        return StatusOf(parsed, host, folder, failing);
    }

    /// <summary>Shows the findings, and again whenever a file changes.</summary>
    private int WatchBook(ParseResult parsed, Host host, BookFolder first, BookInput input)
    {
        string layout = parsed.GetValue(format)!;
        string[] named = parsed.GetValue(paths) ?? [];
        if (layout is not ("text" or "line")
            || named is ["-"]
            || parsed.GetValue(output) is not null
            || parsed.GetValue(since) is not null
            || parsed.GetValue(baseline) is not null
            || parsed.GetValue(part) is not null)
        {
            throw new UsageException("--watch goes with --format text or line, and not with -, --output, --part, --since or --baseline.");
        }

        int status = ExitStatus.Clean;
        Watch.Run(host, first, input, Show, () => BookFolder.Open(host, named, parsed.GetValue(threads)));
        return status;

        void Show(BookFolder folder, CheckResult result)
        {
            (result, string others) = choice.Apply(parsed, result, input.HouseRules);
            var content = ReportContent.Of(result, folder.Includes, others.Length > 0 ? [others] : []);
            var shown = CommonOptions.UnitsOf(parsed.GetValue(units), result.Book);
            if (host.OutputIsTerminal) ResultOutput.DeliverText(host, null, static writer => writer.Write("\u001b[2J\u001b[H"));
            if (layout == "line") ResultOutput.DeliverText(host, null, writer => LineReport.Write(writer, content, folder.DisplayPrefix, shown));
            else if (parsed.GetValue(statistics)) ResultOutput.DeliverText(host, null, writer => RuleCounts.Write(writer, content));
            else ResultOutput.DeliverText(host, null, writer => TextReport.Write(writer, content, TextOptions(parsed, host, folder, result)));
            status = StatusOf(parsed, host, folder, content);
        }
    }

    /// <summary>
    /// Whether the result depends on findings of files that are not asked for: their
    /// number is told, or they are held against others.
    /// </summary>
    private bool LooksAtOthers(ParseResult parsed) =>
        parsed.GetValue(baseline) is not null || parsed.GetValue(since) is not null || parsed.GetValue(watch) || choice.IsMade(parsed);

    /// <summary>What the report says of the part that it is about: by it <c>combine</c> knows what belongs together.</summary>
    private ReportPart? PartOf(ParseResult parsed, BookFolder asked, BookInput input)
    {
        if (parsed.GetValue(part) is not { } number) return null;

        // The rules that are shown, the files that were asked for: whatever differs between two parts makes them parts of different runs.
        var words = choice.Options.SelectMany(o => parsed.GetResult(o)?.Tokens.Select(t => o.Name + "=" + t.Value) ?? [])
            .Concat(input.HouseRules.Select(r => r.Info.Id))
            .Append($"{parsed.GetValue(baseline) is not null} {parsed.GetValue(since)}")
            .Concat(asked.Includes is { } includes ? asked.Files.Select(f => f.Path).Where(includes) : []);
        return new ReportPart(number, BookPart.Mark(asked.Files, $"{input.On}\n{string.Join("\n", words)}"));
    }

    private TextReportOptions TextOptions(ParseResult parsed, Host host, BookFolder folder, CheckResult result) => new()
    {
        PathPrefix = folder.DisplayPrefix,
        Colour = CommonOptions.WantsColour(parsed.GetValue(colour)!, parsed.GetValue(output), host),
        Summary = !parsed.GetValue(quiet),
        Columns = host.ColumnsFor(parsed.GetValue(output)),
        Units = CommonOptions.UnitsOf(parsed.GetValue(units), result.Book),
        Threads = parsed.GetValue(threads),
    };

    /// <summary>The book that <c>--as</c> names, with the text of standard input as that file: an editor checks what is not saved yet.</summary>
    private BookFolder WithStandardInput(ParseResult parsed, Host host, int threadCount)
    {
        string name = parsed.GetValue(inputName)
            ?? throw new UsageException("- reads one file from standard input; say with --as where it belongs, "
                + "as in --as drinks/low-tide.drink.json.");
        if (FileKinds.Of(name.Replace('\\', '/')) is null)
            throw new UsageException($"{name} is not the name of a file of a book: "
                + "those end in .drink.json, .prep.json, .ingredient.json, .menu.json, .stock.json or .prices.json.");
        string full = host.FullPath(name);
        string near = Path.GetDirectoryName(full)!;
        while (!Directory.Exists(near)) near = Path.GetDirectoryName(near)!;
        var folder = BookFolder.Open(host, [near], threadCount);
        using var text = new MemoryStream();
        host.Input.CopyTo(text);
        return folder.With(Path.GetRelativePath(folder.Root, full).Replace('\\', '/'), text.ToArray());
    }

    private int StatusOf(ParseResult parsed, Host host, BookFolder folder, ReportContent failing)
    {
        if (folder.BarIsUnreadable)
        {
            Shell.Say(host, $"{folder.DisplayPrefix}{BookFiles.BarFile} cannot be read, so the settings of the bar are not known.");
            return ExitStatus.Usage;
        }

        return parsed.GetValue(failAt) is { } level && Settings.TryLevel(level, out var threshold) && failing.Highest >= threshold
            ? ExitStatus.Findings
            : ExitStatus.Clean;
    }

    private static CheckResult Check(BookInput input) => HouseRuleFiles.Run(input.HouseRules, () => Checker.Check(input));

    /// <summary>Adds the full list to the summary of a step, where a runner has named a file for it.</summary>
    private static void AppendSummary(Host host, ReportContent content, string prefix)
    {
        if (host.Variable("GITHUB_STEP_SUMMARY") is not { Length: > 0 } summary) return;
        try
        {
            using var stream = new FileStream(host.FullPath(summary), FileMode.Append, FileAccess.Write);
            using var writer = Host.WriterTo(stream);
            GitHubReport.WriteSummary(writer, content, prefix);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            Shell.Say(host, $"the summary of the step cannot be written: {IoFault.Reason(e)}.");
        }
    }

    private static Uri? AddressOf(string? text) =>
        text is not null
            && Uri.TryCreate(text.EndsWith('/') ? text : text + "/", UriKind.Absolute, out var address)
            && address.Scheme is "https" or "http"
            ? address : null;
}
