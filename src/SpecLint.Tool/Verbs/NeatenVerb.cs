using System.CommandLine;
using SpecLint.Changes;
using SpecLint.Reading;

namespace SpecLint.Tool.Verbs;

/// <summary><c>neaten</c>: lays files out as the book's people write them.</summary>
internal sealed class NeatenVerb : Verb
{
    private readonly Argument<string[]> paths = new("PATH")
    {
        Description = "Folder of a book, or files of it; default: the current folder.",
        Arity = ArgumentArity.ZeroOrMore,
    };
    private readonly Option<bool> onlyTell = new("--only-tell")
    {
        Description = "Write nothing; list the files whose layout differs, "
        + "and exit with status 1 if there are any."
    };
    private readonly Option<string?> output = CommonOptions.Output();

    public override string Name => "neaten";

    public override string Description =>
        "Lays files out: two blanks a level, one line for each property and each line of a recipe. Values, numbers, comments and order "
            + "stay as they are written.";

    public override IReadOnlyList<string> Examples => ["speclint neaten recipes", "speclint neaten --only-tell"];

    public override void Define(Command command)
    {
        command.Arguments.Add(paths);
        command.Options.Add(onlyTell);
        command.Options.Add(output);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        var folder = BookFolder.Open(host, parsed.GetValue(paths) ?? []);
        var changed = new List<(SourceFile File, byte[] Laid)>();
        var broken = new List<string>();
        foreach (var file in folder.Files.Where(f => folder.Includes is null || folder.Includes(f.Path)))
        {
            byte[]? laid = JsonLayout.Of(file);
            if (laid is null) broken.Add(file.Path);
            else if (!file.Utf8.Span.SequenceEqual(laid)) changed.Add((file, laid));
        }

        bool tells = parsed.GetValue(onlyTell);
        ResultOutput.DeliverText(host, parsed.GetValue(output), writer =>
        {
            foreach (var (file, _) in changed) writer.WriteLine(Reports.DisplayText.Escape($"{folder.DisplayPrefix}{file.Path}"));
        });
        foreach (string path in broken) Shell.Say(host, $"{folder.DisplayPrefix}{path} cannot be read to its end, so its layout stays as it is.");
        if (!tells)
        {
            foreach (var (file, laid) in changed)
            {
                string shown = folder.DisplayPrefix + file.Path;
                try
                {
                    if (host.Files.Replace(Path.Combine(folder.Root, file.Path), file.Utf8, laid) == AtomicFiles.Outcome.Written) continue;
                    throw new UsageException($"{shown} was changed meanwhile, so it was not written.");
                }
                catch (Exception e) when (IoFault.Is(e))
                {
                    throw new UsageException($"{shown} cannot be written: {IoFault.Reason(e)}.", e);
                }
            }
        }

        if (broken.Count > 0) return ExitStatus.Usage;
        return tells && changed.Count > 0 ? ExitStatus.Findings : ExitStatus.Clean;
    }
}
