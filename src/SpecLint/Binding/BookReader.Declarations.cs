using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Binding;

/// <content>Recipes that are the same but for what they declare.</content>
public static partial class BookReader
{
    /// <summary>
    /// Reads the text of a recipe after an edit of what it declares. All else is not bound anew: it is the same, at the same place.
    /// </summary>
    /// <param name="recipe">The recipe before.</param>
    /// <param name="text">Its text after the edit.</param>
    /// <param name="measures">The units of the house.</param>
    /// <returns>
    /// The recipe; <see langword="null"/> where more than the declaration differs, where something stands behind it, whose place
    /// moves, or where anything was or is wrong with the text: then it has to be read whole.
    /// </returns>
    internal static Recipe? ReadDeclaring(Recipe recipe, SourceFile text, Measures measures)
    {
        if (recipe.Declares is not { } was || recipe.Problems.Count > 0) return null;
        ReadOnlySpan<byte> before = recipe.Source.Utf8.Span, after = text.Utf8.Span;
        int end = was.Span.End + after.Length - before.Length;
        if (end <= was.Span.Start || !IsEndOfObject(before.Slice(was.Span.End))) return null;
        if (!before.Slice(0, was.Span.Start).SequenceEqual(after.Slice(0, was.Span.Start))
            || !before.Slice(was.Span.End).SequenceEqual(after.Slice(end)))
            return null;
        var problems = new List<ReadingProblem>(0);

        // What stands around it was read once and was right: only the declaration is read, not the file.
        var tree = JsonTreeReader.Lend(text, new TextSpan(was.Span.Start, end - was.Span.Start), problems);
        var now = tree.Root.Kind == JsonKind.Object && tree.Root.Span.End == end
            ? BindDeclaration(new Binder(tree, recipe.Kind, measures, problems), tree.Root.Index)
            : null;
        JsonTreeReader.TakeBack(tree);
        return now is null || problems.Count > 0 ? null : recipe.Declaring(now, text, problems);
    }

    private static bool IsEndOfObject(ReadOnlySpan<byte> rest)
    {
        int closed = 0;
        foreach (byte b in rest)
        {
            if (b == (byte)'}') closed++;
            else if (b is not ((byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')) return false;
        }

        return closed == 1;
    }
}
