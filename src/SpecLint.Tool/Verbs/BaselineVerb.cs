using System.CommandLine;
using SpecLint.Book;
using SpecLint.Changes;
using SpecLint.Findings;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>baseline</c>: writes down the findings that a book starts with, and holds the book against them.</summary>
internal sealed class BaselineVerb : Verb
{
    /// <summary>Name of the file where none is given, in the root of the book.</summary>
    public const string DefaultFile = "speclint-baseline.json";

    private readonly Argument<string?> path = new("PATH")
    {
        Description = "Folder or file of the book; default: the current folder.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string?> file = new("--file")
    {
        Description = $"File of the baseline; default: {DefaultFile} in the root of the book.",
        HelpName = "FILE",
    };
    private readonly Option<bool> create = new("--create")
    {
        Description = "Write the file with every current finding; --because gives "
        + "the reason for keeping them."
    };
    private readonly Option<bool> refresh = new("--refresh") { Description = "Remove the findings that no longer exist." };
    private readonly Option<bool> admit = new("--admit")
    {
        Description = "With --refresh: also add new findings; --because gives the "
        + "reason for keeping them."
    };
    private readonly Option<string?> because = new("--because") { Description = "The reason for keeping the findings.", HelpName = "REASON" };
    private readonly Option<CalendarDate?> until = new("--until")
    {
        Description = "The last day of the entries, as YYYY-MM-DD. Findings of rules that guard against harm are only added with an end "
            + "date at most a year ahead.",
        HelpName = "DATE",
        CustomParser = result =>
        {
            var date = CalendarDate.Parse(result.Tokens[0].Value);
            if (date is null) result.AddError($"'{result.Tokens[0].Value}' is not a day written as YYYY-MM-DD.");
            return date;
        },
    };

    private readonly Option<string> failAt = new("--fail-at")
    {
        Description = "Lowest level at which new findings make the exit status 1.",
        HelpName = "error|warning|note|never",
        DefaultValueFactory = _ => "error",
    };

    private readonly Option<string[]> rules = CommonOptions.HouseRules();
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();

    public BaselineVerb() => failAt.TakesOneOf("error", "warning", "note", "never");

    public override string Name => "baseline";

    public override string Description =>
        "Records the findings that a book starts with, so that only new ones fail, and compares the book with them.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint baseline recipes --create --because \"as found, to be worked off\"",
        "speclint baseline recipes",
        "speclint baseline recipes --refresh",
        "speclint check recipes --baseline recipes/speclint-baseline.json",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(path);
        foreach (var option in new Option[] { file, create, refresh, admit, because, until, failAt, rules, output, on, threads })
            command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        bool creates = parsed.GetValue(create), refreshes = parsed.GetValue(refresh), admits = parsed.GetValue(admit);
        string? reason = parsed.GetValue(because);
        if (creates && (refreshes || admits))
            throw new UsageException("--create writes a new baseline, --refresh and --admit change one; give one of them.");
        if (admits && !refreshes) throw new UsageException("--admit goes with --refresh.");
        if ((creates || admits) && string.IsNullOrWhiteSpace(reason))
            throw new UsageException("--because is needed: a finding is not taken into a baseline without a reason.");
        if (!creates && !admits && (reason is not null || parsed.GetValue(until) is not null))
            throw new UsageException("--because and --until go with --create, or with --refresh --admit.");

        var houseRules = HouseRuleFiles.Load(host, parsed.GetValue(rules) ?? []);
        string? named = parsed.GetValue(path);
        int threadCount = parsed.GetValue(threads);
        var folder = BookFolder.Open(host, named is null ? [] : [named], threadCount);
        if (!folder.HasFilesToCheck) throw new UsageException($"no recipe was found in {named ?? "the current folder"}.");
        string at = parsed.GetValue(file) ?? Path.Combine(folder.DisplayPrefix, DefaultFile);
        var day = CommonOptions.DayOf(parsed.GetValue(on), folder, host);
        if (parsed.GetValue(until) is { } end && end < day) throw new UsageException($"--until {end} lies before the day of the run, {day}.");
        if (creates && File.Exists(host.FullPath(at))) throw new UsageException($"{at} is there already; --refresh changes it.");
        var baseline = creates ? new Baseline([]) : Read(host, at);
        var input = folder.ToInput(day, threadCount) with { HouseRules = houseRules };
        var result = HouseRuleFiles.Run(houseRules, () => Checker.Check(input));
        var match = baseline.Match(result);
        if (creates || refreshes)
        {
            var written = baseline.WithoutAbsent(match);
            IReadOnlyList<Finding> refused = [];
            int taken = 0;
            if (creates || admits)
            {
                written = written.With(match.New, reason!, parsed.GetValue(until), day, out refused);
                taken = match.New.Count - refused.Count;
            }

            ResultOutput.Deliver(host, at, written.Write);
            Shell.Say(
                host,
                $"{at}: {ReportWords.Count(taken, "finding", "findings")} added, {match.Absent.Count} removed, "
                    + $"{written.Entries.Count} in it.");
            if (refused.Count > 0)
                Shell.Say(
                    host,
                    $"{ReportWords.Count(refused.Count, "finding", "findings")} of rules that guard against harm "
                        + $"{(refused.Count == 1 ? "is" : "are")} not taken in without --until DATE, "
                        + $"{SettingAside.LatestEnd(day)} at the latest.");
            baseline = written;
            match = baseline.Match(result);
        }

        ResultOutput.DeliverText(host, parsed.GetValue(output), writer => WriteText(writer, match, folder.DisplayPrefix));
        return Settings.TryLevel(parsed.GetValue(failAt)!, out var threshold) && match.New.Any(f => f.Level >= threshold)
            ? ExitStatus.Findings
            : ExitStatus.Clean;
    }

    private const long LargestBaseline = 256 << 20;

    /// <summary>Reads a baseline.</summary>
    /// <exception cref="UsageException">The file is missing or is not a baseline.</exception>
    internal static Baseline Read(Host host, string named)
    {
        string full = host.FullPath(named);
        if (!File.Exists(full)) throw new UsageException($"there is not a baseline {named}; 'speclint baseline --create' writes one.");
        try
        {
            return Baseline.Read(InputFile.Read(full, LargestBaseline)
                ?? throw new UsageException($"{named} is larger than {LargestBaseline >> 20} MiB; that is not a baseline."));
        }
        catch (FormatException e)
        {
            throw new UsageException($"{named} is not a baseline: {e.Message}.", e);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{named} cannot be read: {IoFault.Reason(e)}.", e);
        }
    }

    private static void WriteText(TextWriter to, BaselineMatch match, string prefix)
    {
        Section(
            "New:",
            match.New.Select(f =>
                $"{prefix}{f.Place.File.Path}:{f.Place.Start.Line}:{f.Place.Start.Column}: "
                + $"{ReportWords.Of(f.Level)} {f.Rule.Id}: {f.Message}"));
        Section("There no more; --refresh takes them out:", match.Absent.Select(e => $"{prefix}{e.File}: {e.Rule}: {e.Message}"));
        Section(
            "In the baseline, but ended, or without a reason or an end date that its rule asks for; they count as new:",
            match.Ended.Select(e => $"{prefix}{e.File}: {e.Rule}{(e.Until is { } day ? $", until {day}" : "")}: {e.Message}"));
        string safety = match.UnchangedSafety > 0 ? $" ({match.UnchangedSafety} of rules that guard against harm)" : "";
        foreach (string line in DisplayText.Wrap(
            $"{match.New.Count} new, {match.Unchanged.Count} unchanged{safety}, {match.Absent.Count} absent.", "", ""))
            to.WriteLine(line);

        void Section(string heading, IEnumerable<string> lines)
        {
            bool any = false;
            foreach (string text in lines)
            {
                if (!any)
                {
                    foreach (string line in DisplayText.Wrap(heading, "", "  ")) to.WriteLine(line);
                }

                any = true;
                foreach (string line in DisplayText.Wrap(DisplayText.Escape(text), "  ", "    ")) to.WriteLine(line);
            }

            if (any) to.WriteLine();
        }
    }
}
