using System.CommandLine;
using SpecLint.Book;
using SpecLint.Reports;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Verbs;

/// <summary><c>combine</c>: the reports of the parts of a book as one.</summary>
internal sealed class CombineVerb : Verb
{
    private readonly Argument<string[]> reports = new("REPORT")
    {
        Description = "Reports of all parts, as check --part I/N --format json writes them, in any order.",
        Arity = ArgumentArity.OneOrMore,
    };
    private readonly Option<string?> output = CommonOptions.Output();
    private readonly Option<string> failAt = CommonOptions.FailAt();

    public override string Name => "combine";

    public override string Description =>
        "Combines the reports of the parts of a book to the report of the whole, byte for byte as one run writes it.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint check recipes --part 1/2 --format json --output part-1.json",
        "speclint check recipes --part 2/2 --format json --output part-2.json",
        "speclint combine part-1.json part-2.json --output findings.json",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(reports);
        command.Options.Add(output);
        command.Options.Add(failAt);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var opened = new List<(string Name, Stream Report)>();
        var highest = Level.None;
        try
        {
            foreach (string name in parsed.GetValue(reports)!) opened.Add((name, Open(host, name)));
            ResultOutput.Deliver(host, parsed.GetValue(output), stream => highest = CombinedReport.Write(opened, stream));
        }
        catch (FormatException e)
        {
            throw new UsageException(e.Message + ".", e);
        }
        finally
        {
            foreach (var (_, report) in opened) report.Dispose();
        }

        return Settings.TryLevel(parsed.GetValue(failAt)!, out var threshold) && highest >= threshold ? ExitStatus.Findings : ExitStatus.Clean;
    }

    private static FileStream Open(Host host, string name)
    {
        string full = host.FullPath(name);
        if (Directory.Exists(full)) throw new UsageException($"{name} is a folder; name the reports in it.");
        try
        {
            return new FileStream(full, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1);
        }
        catch (FileNotFoundException missing)
        {
            throw new UsageException($"{name} does not exist.", missing);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{name} cannot be read: {IoFault.Reason(e)}.", e);
        }
    }
}
