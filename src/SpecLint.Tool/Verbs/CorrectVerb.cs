using System.CommandLine;
using SpecLint.Changes;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Rules;

namespace SpecLint.Tool.Verbs;

/// <summary><c>correct</c>: shows corrections with the facts before and after, and writes those that are named.</summary>
internal sealed class CorrectVerb : Verb
{
    /// <summary>What <c>--apply</c> takes for all assured corrections.</summary>
    private const string Assured = "assured";

    private readonly Argument<string[]> paths = new("PATH")
    {
        Description = "Folder of a book, or files of it to correct; default: the current folder.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private readonly Option<string[]> apply = new("--apply")
    {
        Description = "Write the corrections of a rule, including proposed ones; 'assured' writes every assured correction. "
            + "May be given several times.",
        HelpName = "RULE|assured",
    };

    private readonly Option<string[]> rules = new("--rule")
    {
        Description = "Show only the corrections of a rule. May be given several times.",
        HelpName = "RULE",
    };
    private readonly Option<string[]> house = CommonOptions.HouseRules();
    private readonly Option<bool> admitNew = new("--admit-new")
    {
        Description = "Keep a correction even if it causes new findings; they are listed.",
    };
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string> units = CommonOptions.Units();
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<bool> quiet = CommonOptions.Quiet();
    private readonly Option<string> colour = CommonOptions.Colour();

    public override string Name => "correct";

    public override string Description =>
        "Shows what corrections would change, with the facts before and after; with --apply writes them. A correction stays only where "
            + "its finding is gone and no other has come.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint correct recipes",
        "speclint correct recipes --apply assured",
        "speclint correct recipes/low-tide.drink.json --apply SL3001",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(paths);
        foreach (var option in new Option[] { apply, rules, admitNew, house, format, units, output, on, threads, quiet, colour })
            command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var applied = parsed.GetValue(apply) ?? [];
        var shown = parsed.GetValue(rules) ?? [];
        if (applied.Length > 0 && shown.Length > 0)
            throw new UsageException("--rule narrows what is shown, --apply what is written; give one of them.");
        var houseRules = HouseRuleFiles.Load(host, parsed.GetValue(house) ?? []);
        foreach (string rule in applied.Concat(shown)) Known(rule, houseRules);
        var named = parsed.GetValue(paths) ?? [];
        int threadCount = parsed.GetValue(threads);
        var folder = BookFolder.Open(host, named, threadCount);
        if (!folder.HasFilesToCheck)
            throw new UsageException($"no recipe was found in {(named.Length == 0 ? "the current folder" : string.Join(", ", named))}.");
        var choice = new CorrectionChoice
        {
            All = applied.Length == 0 && shown.Length == 0,
            Assured = applied.Contains(Assured),
            Rules = [.. applied.Concat(shown).Where(r => r != Assured)],
            Includes = folder.Includes,
            AdmitNew = parsed.GetValue(admitNew),
        };
        var input = folder.ToInput(
            CommonOptions.DayOf(parsed.GetValue(on), folder, host, parsed.GetValue(quiet)), threadCount) with
        { HouseRules = houseRules };
        var result = HouseRuleFiles.Run(houseRules, () => Corrector.Apply(input, choice));

        // Before anything is written the result is delivered: what was done can then be read also where writing fails.
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json")
        {
            ResultOutput.Deliver(host, file, stream => CorrectionReport.WriteJson(stream, result));
        }
        else
        {
            bool inColour = CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host);
            var inUnits = CommonOptions.UnitsOf(parsed.GetValue(units));
            ResultOutput.DeliverText(host, file, writer => CorrectionReport.WriteText(writer, result, folder.DisplayPrefix, inColour, inUnits));
        }

        int made = result.Outcomes.Count(o => o.IsMade || o.State == CorrectionState.RightAlready);
        int back = result.Outcomes.Count - made;
        if (applied.Length == 0)
        {
            if (!parsed.GetValue(quiet))
            {
                Shell.Say(host, result.Outcomes.Count == 0
                    ? "there is nothing to correct."
                    : $"nothing is written. {ReportWords.Count(made, "correction", "corrections")} can be "
                        + $"made{(back > 0 ? $", {back} cannot" : "")}; --apply assured or --apply RULE writes.");
            }

            return result.Outcomes.Count == 0 ? ExitStatus.Clean : ExitStatus.Findings;
        }

        var (failed, isFault) = Write(host, folder, result);
        if (!parsed.GetValue(quiet))
        {
            Shell.Say(host, failed > 0
                ? $"{ReportWords.Count(result.Files.Count - failed, "file", "files")} of {result.Files.Count} written."
                : $"{ReportWords.Count(made, "correction", "corrections")} made in "
                    + $"{ReportWords.Count(result.Files.Count, "file", "files")}{(back > 0 ? $", {back} rolled back" : "")}.");
        }

        if (isFault) return ExitStatus.Usage;
        return back > 0 || failed > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }

    /// <summary>Writes the files; where one changed since it was read, none is written.</summary>
    /// <returns>Number of files that were not written, and whether one of them could not be.</returns>
    private static (int Failed, bool IsFault) Write(Host host, BookFolder folder, CorrectionResult result)
    {
        var changed = result.Files.Where(f => !IsStill(folder, f)).ToList();
        if (changed.Count > 0)
        {
            foreach (var file in changed) Changed(host, folder, file);
            return (result.Files.Count, false);
        }

        int failed = 0;
        bool isFault = false;
        foreach (var file in result.Files)
        {
            try
            {
                // A link to another file of the book: its text is written already.
                if (AtomicFiles.IsStill(PathOf(folder, file), file.After.Utf8.Span)) continue;
                if (host.Files.Replace(PathOf(folder, file), file.Before.Utf8, file.After.Utf8) == AtomicFiles.Outcome.Written) continue;
                Changed(host, folder, file);
            }
            catch (Exception e) when (IoFault.Is(e))
            {
                Shell.Say(host, $"{folder.DisplayPrefix}{file.Before.Path} cannot be written: {IoFault.Reason(e)}.");
                isFault = true;
            }

            failed++;
        }

        return (failed, isFault);
    }

    private static bool IsStill(BookFolder folder, CorrectedFile file)
    {
        try
        {
            return AtomicFiles.IsStill(PathOf(folder, file), file.Before.Utf8.Span);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{folder.DisplayPrefix}{file.Before.Path} cannot be read again, "
                + $"so nothing was written: {IoFault.Reason(e)}.", e);
        }
    }

    private static void Changed(Host host, BookFolder folder, CorrectedFile file) =>
        Shell.Say(host, $"{folder.DisplayPrefix}{file.Before.Path} has changed since it was read and is left as it is; run the command again.");

    private static string PathOf(BookFolder folder, CorrectedFile file) => Path.Combine(folder.Root, file.Before.Path);

    private static void Known(string rule, IReadOnlyList<Rule> houseRules)
    {
        if (rule == Assured || RuleRegistry.All.Concat(houseRules).Any(r => r.Info.Id == rule || r.Info.Name == rule)) return;
        throw new UsageException($"there is no rule {rule}; 'speclint rules' lists them.");
    }
}
