using System.CommandLine;
using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>settings</c>: every effective value and where it came from.</summary>
internal sealed class SettingsVerb : Verb
{
    private readonly Argument<string?> path = new("PATH")
    {
        Description = "Folder or file of the book; default: the current folder.",
        Arity = ArgumentArity.ZeroOrOne,
    };
    private readonly Option<string> format = CommonOptions.Format("text", "json");
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<CalendarDate?> on = CommonOptions.On();

    public override string Name => "settings";

    public override string Description => "Prints every setting in force for a book and where it came from.";

    public override IReadOnlyList<string> Examples => ["speclint settings recipes"];

    public override void Define(Command command)
    {
        command.Arguments.Add(path);
        command.Options.Add(format);
        command.Options.Add(output);
        command.Options.Add(on);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string? named = parsed.GetValue(path);
        var folder = BookFolder.Open(host, named is null ? [] : [named]);
        if (folder.BarIsUnreadable)
        {
            var problem = folder.Bar!.Problems[0];
            var start = folder.Bar.Source.PositionOf(problem.Span.Start);
            throw new UsageException($"{folder.DisplayPrefix}{BookFiles.BarFile}:{start.Line}:{start.Column}: {problem.Message}");
        }

        var settings = SettingsReport.Collect(
            new Settings(folder.Bar), BookFiles.DefaultPatterns, BookFiles.AlwaysLeftOut,
            CommonOptions.DayOf(parsed.GetValue(on), folder, host));
        string? file = parsed.GetValue(output);
        if (parsed.GetValue(format) == "json") ResultOutput.Deliver(host, file, stream => SettingsReport.WriteJson(stream, settings));
        else ResultOutput.DeliverText(host, file, writer => SettingsReport.WriteText(writer, settings));
        return ExitStatus.Clean;
    }
}
