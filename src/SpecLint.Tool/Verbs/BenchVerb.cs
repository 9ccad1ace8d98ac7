using System.CommandLine;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>bench</c>: writes the bench, a page for a browser, into a folder.</summary>
internal sealed class BenchVerb : Verb
{
    private readonly Argument<string> folder = new("FOLDER")
    {
        Description = "Folder to write the page into; made where it does not "
        + "exist. One that holds files is left alone."
    };

    public override string Name => "bench";

    public override string Description =>
        "Writes the bench into a folder: a page for a browser, on which a recipe is typed and worked out. It works without a network.";

    public override IReadOnlyList<string> Examples => ["speclint bench my-bench"];

    public override void Define(Command command) => command.Arguments.Add(folder);

    public override int Run(ParseResult parsed, Host host)
    {
        string named = parsed.GetValue(folder)!, root = host.FullPath(named);
        if (!File.Exists(Path.Combine(host.PageFolder, "index.html")))
            throw new UsageException("this build of the tool does not hold the page: the portable tool does, each release has it as "
                + "speclint-bench-VERSION.zip, and in a clone of the project `bash .ci/page FOLDER` writes it.");
        string shown = DisplayText.Escape(named);
        try
        {
            var page = Directory.EnumerateFiles(host.PageFolder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                .ToDictionary(f => Path.Combine(root, Path.GetRelativePath(host.PageFolder, f)), StringComparer.Ordinal);

            // What a killed run has left is completed.
            var missing = page.Where(f => !File.Exists(f.Key)).ToList();
            bool isFree = missing.Count > 0
                && !File.Exists(root)
                && (!Directory.Exists(root) || Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories)
                .All(f => f.EndsWith(AtomicFiles.Ending, StringComparison.Ordinal)
                    || (page.TryGetValue(f, out string? own) && AtomicFiles.IsStill(f, File.ReadAllBytes(own)))));
            if (!isFree) throw new UsageException($"{shown} is not an empty folder; nothing was written.");
            host.Files.Create(missing.Select(f => (f.Key, (Func<byte[]>)(() => File.ReadAllBytes(f.Value)))));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the page cannot be written into {shown}: {IoFault.Reason(e)}.", e);
        }

        ResultOutput.DeliverText(host, null, writer =>
        {
            writer.WriteLine($"Wrote the bench into {shown}.");
            writer.WriteLine("A browser opens it from a web server, not from the file: any server of static files will do,");
            writer.WriteLine($"e.g. python3 -m http.server --bind 127.0.0.1 --directory {shown} 8000, and then http://127.0.0.1:8000/ in a browser.");
            writer.WriteLine("After the first visit it also opens without the server.");
        });
        return ExitStatus.Clean;
    }
}
