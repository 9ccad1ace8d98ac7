using System.CommandLine;
using System.Text;
using SpecLint.Linking;
using SpecLint.RecipeText;
using SpecLint.Reports;

namespace SpecLint.Tool.Verbs;

/// <summary><c>write-up</c>: recipes that exist as text, line beside line with what was understood, and as files.</summary>
internal sealed class WriteUpVerb : Verb
{
    private readonly Argument<string> text = new("FILE")
    {
        Description = "Text with recipes: a name, lines such as `2 oz gin`, sentences of the method; "
            + "a blank line between recipes. - reads standard input.",
    };
    private readonly Option<bool> csv = new("--csv")
    {
        Description = "Read rows of a spreadsheet: the columns recipe, item, amount, and perhaps unit, garnish, glass, method. "
            + "A file that ends in .csv is read so without it.",
    };
    private readonly Option<string?> book = CommonOptions.Book();
    private readonly Option<bool> write = new("--write")
    {
        Description = "Write each recipe as a file of a drink or preparation into the book's folder. Existing files are never overwritten.",
    };
    private readonly Option<string?> output = CommonOptions.Output();

    public override string Name => "write-up";

    public override string Description =>
        "Reads recipes from a text: each line beside what is understood of it and how certain that is. Exit status 1 when a line is unclear.";

    public override IReadOnlyList<string> Examples =>
    [
        "speclint write-up drinks.txt --book recipes",
        "speclint write-up drinks.txt --book recipes --write",
        "speclint write-up drinks.csv --book recipes",
    ];

    public override void Define(Command command)
    {
        command.Arguments.Add(text);
        foreach (var option in new Option[] { csv, book, write, output }) command.Options.Add(option);
    }

    public override int Run(ParseResult parsed, Host host)
    {
        string named = parsed.GetValue(text)!;
        string written = InputFile.ReadText(named, host);
        if (parsed.GetValue(csv) || named.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
            written = RecipeRows.ToText(CsvFile.Read(written, named), named);
        string? at = parsed.GetValue(book);
        var folder = BookFolder.Open(host, at is null ? [] : [at]);
        var (linked, _) = Checker.Profile(folder.ToInput(folder.SetOn ?? host.Today(), 0));
        var recipes = new RecipeTextReader(linked).Read(written);
        if (recipes.Count == 0) throw new UsageException($"{named} holds no recipe.");
        if (parsed.GetValue(write)) WriteFiles(recipes, linked, folder.Root, host);
        ResultOutput.DeliverText(host, parsed.GetValue(output), writer => RecipeTextReport.Write(writer, recipes));
        return RecipeTextReport.OpenIn(recipes) == 0 ? ExitStatus.Clean : ExitStatus.Findings;
    }

    /// <summary>Writes all files or none: whatever stands in the way is named before the first is written.</summary>
    private static void WriteFiles(IReadOnlyList<WrittenRecipe> recipes, LinkedBook book, string root, Host host)
    {
        var files = recipes.Select(r => RecipeDraft.Of(r, StepReader.For(book), book.On)).ToList();
        foreach (string id in files.Select(f => f.Id))
        {
            if (id.Length == 0) throw new UsageException("a recipe of the text has no name to call its file by; nothing was written.");
            if (files.Count(f => f.Id == id) > 1) throw new UsageException($"two recipes of the text are called {id}; nothing was written.");
        }

        // What a run that was stopped has left is completed.
        var missing = files.Where(f => !Path.Exists(Path.Combine(root, f.FileName))).ToList();
        try
        {
            foreach (var draft in files.Except(missing))
            {
                if (missing.Count == 0 || !AtomicFiles.IsStill(Path.Combine(root, draft.FileName), Encoding.UTF8.GetBytes(draft.Text)))
                    throw new UsageException($"{draft.FileName} exists already; nothing was written.");
            }

            host.Files.Create(missing.Select(f => (Path.Combine(root, f.FileName), (Func<byte[]>)(() => Encoding.UTF8.GetBytes(f.Text)))));
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            throw new UsageException($"the files cannot be written: {IoFault.Reason(e)}.", e);
        }

        foreach (var draft in missing) Shell.Say(host, $"wrote {draft.FileName}.");
    }
}
