using System.CommandLine;

namespace SpecLint.Tool.Verbs;

/// <summary><c>start</c>: writes the demo book and the schemas into a folder.</summary>
internal sealed class StartVerb : Verb
{
    private readonly Argument<string> folder = new("FOLDER") { Description = "Folder to write the book into; made where it does not exist." };

    public override string Name => "start";

    public override string Description => "Writes a demo book of an invented bar, with the schemas for an editor, into a folder. Existing files are never overwritten.";

    public override IReadOnlyList<string> Examples => ["speclint start my-bar"];

    public override void Define(Command command) => command.Arguments.Add(folder);

    public override int Run(ParseResult parsed, Host host)
    {
        string named = parsed.GetValue(folder)!;
        string root = host.FullPath(named);
        if (File.Exists(root)) throw new UsageException($"{named} is a file.");
        var files = Embedded.Beneath("demo/").Concat(Embedded.Beneath("schemas/").Select(s => (Path: "schemas/" + s.Path, s.Resource))).ToList();
        var standing = files.Where(f => File.Exists(Path.Combine(root, f.Path)) || Directory.Exists(Path.Combine(root, f.Path))).ToList();
        if (standing.Count > 0)
            throw new UsageException($"{named} already holds {standing[0].Path}{(standing.Count > 1 ? $" and {standing.Count - 1} more of the files" : "")}; nothing was written.");
        try
        {
            foreach (var (path, resource) in files)
            {
                string full = Path.Combine(root, path);
                Directory.CreateDirectory(Path.GetDirectoryName(full)!);
                using var stream = new FileStream(full, FileMode.CreateNew, FileAccess.Write);
                stream.Write(Embedded.Read(resource));
            }
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the book cannot be written into {named}: {IoFault.Reason(e)}.", e);
        }

        ResultOutput.DeliverText(host, null, writer =>
        {
            writer.WriteLine($"Wrote a book of {files.Count} files into {Reports.DisplayText.Escape(named)}.");
            writer.WriteLine("The bar is invented, and a third of its recipes carry a mistake on purpose.");
            writer.WriteLine($"Next: speclint check {Reports.DisplayText.Escape(named)}");
        });
        return ExitStatus.Clean;
    }
}
