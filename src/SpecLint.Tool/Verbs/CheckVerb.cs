using System.CommandLine;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>check</c>: findings.</summary>
internal sealed class CheckVerb : Verb
{
    private readonly Argument<string[]> paths = new("PATH") { Description = "Folder of a book, or files of it; the current folder where none is given. The book is always read whole; findings are shown for what is named.", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<string> format = CommonOptions.Format("text", "json", "sarif");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> failAt = new("--fail-at")
    {
        Description = "Lowest level at which findings make the exit status 1.",
        HelpName = "error|warning|note|never",
        DefaultValueFactory = _ => "error",
    };

    private readonly Option<CalendarDate?> on = CommonOptions.On();
    private readonly Option<int> threads = CommonOptions.Threads();
    private readonly Option<bool> quiet = CommonOptions.Quiet();
    private readonly Option<string> colour = CommonOptions.Colour();
    private readonly Option<string?> pagesAt = new("--rule-pages")
    {
        Description = "Address of the folder of rule pages on the web, for the links of a SARIF log.",
        HelpName = "ADDRESS",
    };

    public CheckVerb()
    {
        failAt.AcceptOnlyFromAmong("error", "warning", "note", "never");
        pagesAt.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && AddressOf(result.Tokens[0].Value) is null) result.AddError("--rule-pages takes an address that begins with https:// or http://.");
        });
    }

    public override string Name => "check";

    public override string Description => "Recalculates the recipes of a book and prints what is wrong with them.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint check recipes",
        "speclint check recipes/low-tide.drink.json --fail-at warning",
        "speclint check . --format sarif --output speclint.sarif",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(paths);
        foreach (var option in new Option[] { format, output, failAt, on, threads, quiet, colour, pagesAt }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var named = parsed.GetValue(paths) ?? [];
        bool isQuiet = parsed.GetValue(quiet);
        int threadCount = parsed.GetValue(threads);
        var folder = BookFolder.Open(host, named, threadCount);
        if (!folder.HasFilesToCheck)
        {
            throw new UsageException($"no recipe was found in {(named.Length == 0 ? "the current folder" : string.Join(", ", named))}: "
                + "files of a book end in .drink.json, .prep.json, .ingredient.json, .menu.json or .stock.json.");
        }

        if (!isQuiet)
        {
            foreach (string other in folder.OtherBooks) Shell.Say(host, $"{folder.DisplayPrefix}{other} is a book of its own and is left out.");
        }

        CheckResult result;
        using (var progress = new ProgressLine(host, !isQuiet, folder.Files.Count))
        {
            result = Checker.Check(folder.ToInput(parsed.GetValue(on) ?? host.Today(), threadCount) with { Progress = progress.Report });
        }

        var content = ReportContent.Of(result, folder.Includes);
        string? file = parsed.GetValue(output);
        switch (parsed.GetValue(format))
        {
            case "json":
                ResultOutput.Deliver(host, file, stream => JsonReport.Write(stream, content, Shell.Version));
                break;
            case "sarif":
                string prefix = folder.RepositoryPrefix();
                var sarif = new SarifReportOptions
                {
                    Version = Shell.Version,
                    PathPrefix = prefix,
                    PageOf = Embedded.PageOf,
                    PagesAt = AddressOf(parsed.GetValue(pagesAt)),
                };
                ResultOutput.Deliver(host, file, stream => SarifReport.Write(stream, content, sarif));
                break;
            default:
                var text = new TextReportOptions
                {
                    PathPrefix = folder.DisplayPrefix,
                    Colour = CommonOptions.WantsColour(parsed.GetValue(colour)!, file, host),
                    Summary = !isQuiet,
                };
                ResultOutput.DeliverText(host, file, writer => TextReport.Write(writer, content, text));
                break;
        }

        if (folder.BarIsUnreadable)
        {
            Shell.Say(host, $"{folder.DisplayPrefix}{BookFolder.BarFile} cannot be read, so the settings of the bar are not known.");
            return ExitStatus.Usage;
        }

        return parsed.GetValue(failAt) is { } level && Settings.TryLevel(level, out var threshold) && content.Highest >= threshold
            ? ExitStatus.Findings
            : ExitStatus.Clean;
    }

    private static Uri? AddressOf(string? text) =>
        text is not null && Uri.TryCreate(text.EndsWith('/') ? text : text + "/", UriKind.Absolute, out var address) && address.Scheme is "https" or "http" ? address : null;
}
