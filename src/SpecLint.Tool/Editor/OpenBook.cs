using System.Text;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Reports;
using SpecLint.Service;

namespace SpecLint.Tool.Editor;

/// <summary>A book whose files stand partly on disk and partly, unsaved, in the editor.</summary>
internal sealed class OpenBook
{
    private readonly Func<string, string> addressOf;

    private OpenBook(string root, CheckResult result, Func<string, string> addressOf)
    {
        Root = root;
        Result = result;
        this.addressOf = addressOf;
    }

    /// <summary>Full path of the root.</summary>
    public string Root { get; }

    /// <summary>What the check found.</summary>
    public CheckResult Result { get; }

    /// <summary>Reads and checks a book.</summary>
    /// <param name="host">The world.</param>
    /// <param name="root">Full path of its root.</param>
    /// <param name="unsaved">Texts in the editor by full path; they stand in place of what is on disk.</param>
    /// <param name="addressOf">The address of a full path, as the editor writes it.</param>
    /// <exception cref="UsageException">The book cannot be read.</exception>
    public static OpenBook Check(Host host, string root, IReadOnlyDictionary<string, string> unsaved, Func<string, string> addressOf)
    {
        var folder = BookFolder.RootAbove(root) is null ? BookFolder.OpenOneFolder(host, root) : BookFolder.Open(host, [root]);
        var files = folder.Files.ToDictionary(f => f.Path, StringComparer.Ordinal);
        foreach (var (path, text) in unsaved)
        {
            string relative = Path.GetRelativePath(folder.Root, path).Replace('\\', '/');
            if (relative.StartsWith("..", StringComparison.Ordinal) || FileKinds.Of(relative) is null) continue;

            // A file on disk that the book does not read was left out by the bar's own patterns.
            if (files.ContainsKey(relative) || !File.Exists(path)) files[relative] = new SourceFile(relative, Encoding.UTF8.GetBytes(text));
        }

        var input = folder.ToInput(folder.SetOn ?? host.Today(), threads: 0) with { Files = [.. files.Values.OrderBy(f => f.Path, StringComparer.Ordinal)] };
        return new OpenBook(folder.Root, Checker.Check(input), addressOf);
    }

    /// <summary>Full path of a file of the book.</summary>
    public string FullPath(SourceFile file) => Path.GetFullPath(file.Path, Root);

    /// <summary>Address of a file of the book, as the editor writes it.</summary>
    public string AddressOf(SourceFile file) => addressOf(FullPath(file));

    /// <summary>The file at a full path; <see langword="null"/> where the book has none.</summary>
    public BookFile? FileAt(string fullPath) => Result.Book.Files.FirstOrDefault(f => FullPath(f.Source) == fullPath);

    /// <summary>What is known at a position: of an item that a recipe names, or of the recipe itself at its name.</summary>
    /// <param name="file">The file.</param>
    /// <param name="at">The position.</param>
    /// <returns>Text for people and the place it is about; <see langword="null"/> where there is nothing to say.</returns>
    public (string Text, Place Place)? Explain(BookFile file, LinePosition at)
    {
        if (file is not Recipe recipe) return null;
        if (Holds(recipe.Source, recipe.Name.Span, recipe.Name.IsGiven, at) && Result.Book.Resolve(recipe.Id) is { } self)
            return (Profile(self), new Place(recipe.Source, recipe.Name.Span));
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (Holds(recipe.Source, line.Item.Span, line.Item.IsGiven, at) && Result.Book.Resolve(line.Item.Value) is { } item)
                return (Profile(item), new Place(recipe.Source, line.Item.Span));
        }

        return null;
    }

    /// <summary>Whether a place meets a range of positions.</summary>
    public static bool Meets(Place place, LinePosition from, LinePosition to) => Compare(place.Start, to) <= 0 && Compare(from, place.End) <= 0;

    private static bool Holds(SourceFile file, TextSpan span, bool isGiven, LinePosition at) => isGiven && Meets(new Place(file, span), at, at);

    private static int Compare(LinePosition a, LinePosition b) => a.Line != b.Line ? a.Line.CompareTo(b.Line) : a.Column.CompareTo(b.Column);

    private string Profile(Item item)
    {
        var text = new StringWriter { NewLine = "\n" };
        ProfileReport.WriteText(text, [item], Verdicts.Of(Result), DisplayUnits.Metric, colour: false);
        return text.ToString();
    }
}
