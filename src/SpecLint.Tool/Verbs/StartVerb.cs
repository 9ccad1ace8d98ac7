using System.CommandLine;
using System.Text;
using SpecLint.Binding;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>start</c>: writes the demo book or an empty one, with the schemas, into a folder.</summary>
internal sealed class StartVerb : Verb
{
    private const string EmptyBar = """
        {
          "$schema": "./schemas/bar.schema.json",
          "name": "Name of the bar",
          // "jurisdictions": [ "IE" ],  countries whose law holds (ISO 3166), or EU; until then the strictest holds
          // "measures": { "oz": "30 ml", "dash": "0.8 ml", "barspoon": "5 ml" },  what a trade measure is in this house
          // "limits": { "alcoholPerServe": "24 g" },  limits of the house
          "tools": {
            // "scale": "1 g", "jigger": "2.5 ml",  their steps: amounts are rounded to them
            // "fridge": "4 °C", "freezer": "-18 °C"  as measured
          },
          "glasses": {
            // "coupe": { "name": "Coupe", "brim": "190 ml", "washLine": "165 ml" }  filled with water and weighed
          }
        }

        """;

    private readonly Argument<string> folder = new("FOLDER")
    {
        Description = "Folder to write the book into; made where it does not "
        + "exist. In one that is a book already, only schemas that are missing are written."
    };
    private readonly Option<bool> empty = new("--empty") { Description = "Write a book without recipes, in place of the demo book." };

    public override string Name => "start";

    public override string Description =>
        "Writes a demo book of an invented bar, or an empty book, with the schemas for an editor, into a folder. Existing files "
            + "are never overwritten.";

    public override IReadOnlyList<string> Examples => ["speclint start demo", "speclint start my-bar --empty"];

    public override void Define(Command command)
    {
        command.Arguments.Add(folder);
        command.Options.Add(empty);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string named = parsed.GetValue(folder)!;
        string root = host.FullPath(named);
        if (File.Exists(root)) throw new UsageException($"{named} is a file.");
        bool isEmpty = parsed.GetValue(empty);
        var schemas = Embedded.Beneath("schemas/")
            .Select(s => (Path: "schemas/" + s.Path, Bytes: (Func<byte[]>)(() => Embedded.Read(s.Resource)))).ToList();
        string shown = DisplayText.Escape(named);
        if (File.Exists(Path.Combine(root, BookFiles.BarFile)))
        {
            int written = Write(host, named, root, [.. schemas.Where(s => !Stands(root, s.Path))]);
            ResultOutput.DeliverText(host, null, writer => writer.WriteLine(written == 0
                ? $"{shown} is a book already, with all schemas; nothing was written."
                : $"{shown} is a book already: wrote "
                    + $"{ReportWords.Count(written, "schema that was", "schemas that were")} missing, and nothing else."));
            return ExitStatus.Clean;
        }

        // The bar's own file, which makes it a book, comes last: what a killed run has left is completed by the next one.
        List<(string Path, Func<byte[]> Bytes)> files =
        [
            .. schemas,
            .. isEmpty ? [(BookFiles.BarFile, () => Encoding.UTF8.GetBytes(EmptyBar.ReplaceLineEndings("\n")))]
                : Embedded.Beneath("demo/")
                    .OrderBy(d => d.Path == BookFiles.BarFile)
                    .Select(d => (d.Path, (Func<byte[]>)(() => Embedded.Read(d.Resource)))),
        ];
        var standing = files.Where(f => Stands(root, f.Path)).ToList();
        var others = standing.Where(f => !Holds(named, root, f.Path, f.Bytes())).Select(f => f.Path).ToList();
        if (others.Count > 0)
            throw new UsageException($"{named} already holds {others[0]}"
                + $"{(others.Count > 1 ? $" and {others.Count - 1} more of the files" : "")}; nothing was written.");
        Write(host, named, root, [.. files.Except(standing)]);
        ResultOutput.DeliverText(host, null, writer =>
        {
            writer.WriteLine($"Wrote {(isEmpty ? "an empty book" : "a book")} of {files.Count} files into {shown}.");
            writer.WriteLine(isEmpty
                ? "Give bar.json the name of the bar, its country and its measures first."
                : "The bar is invented, and a third of its recipes carry a mistake on purpose.");
            writer.WriteLine(isEmpty ? $"Next: speclint new drink \"Name\" \"50 ml gin\" --book {shown}" : $"Next: speclint check {shown}");
        });
        return ExitStatus.Clean;
    }

    private static bool Stands(string root, string path) => File.Exists(Path.Combine(root, path)) || Directory.Exists(Path.Combine(root, path));

    private static bool Holds(string named, string root, string path, byte[] bytes)
    {
        try
        {
            return AtomicFiles.IsStill(Path.Combine(root, path), bytes);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"{named} already holds {path}, which cannot be read: {IoFault.Reason(e)}.", e);
        }
    }

    private static int Write(Host host, string named, string root, IReadOnlyList<(string Path, Func<byte[]> Bytes)> files)
    {
        try
        {
            host.Files.Create(files.Select(f => (Path.Combine(root, f.Path), f.Bytes)));
            return files.Count;
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the book cannot be written into {named}: {IoFault.Reason(e)}.", e);
        }
    }
}
