using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>
/// What a file says in values that could not be read: words where an id, an amount or a list belongs, and everything under a name
/// that no such file has. Nothing is computed from them, but somebody reads them, and a hazard or a claim in them is one.
/// </summary>
internal static class UnreadTexts
{
    /// <summary>Those of a recipe but what it declares, and the items of its lines, which are read as words anyway.</summary>
    public static IEnumerable<(Given<string> Text, string Path)> OfMethod(Recipe recipe) =>
        Of(recipe).Where(static t => !t.Path.StartsWith("declares", StringComparison.Ordinal) && !t.Path.EndsWith(".item", StringComparison.Ordinal));

    /// <summary>The texts, in the order of the file, each with its JSON path; none where the whole file was read.</summary>
    public static IEnumerable<(Given<string> Text, string Path)> Of(BookFile file) => file.HasProblems ? In(file) : [];

    private static IEnumerable<(Given<string> Text, string Path)> In(BookFile file)
    {
        var unread = new HashSet<TextSpan>();
        foreach (var problem in file.Problems)
        {
            if (problem.Kind is ReadingProblemKind.UnreadableValue or ReadingProblemKind.WrongType or ReadingProblemKind.UnknownProperty
                or ReadingProblemKind.MisplacedProperty or ReadingProblemKind.DuplicateProperty or ReadingProblemKind.UnitMissing)
                unread.Add(problem.Span);
        }

        if (unread.Count == 0 || file.Tree is not { } tree) yield break;
        var waiting = new Stack<(JsonNode Node, bool IsUnread)>();
        waiting.Push((tree.Root, false));
        while (waiting.Count > 0)
        {
            var (node, isUnread) = waiting.Pop();
            isUnread |= unread.Contains(node.Span) || (node.HasName && unread.Contains(node.NameSpan));
            if (node.Kind == JsonKind.String)
            {
                if (isUnread && node.GetString() is { Length: > 0 } text) yield return (new Given<string>(text, node.Span, node.NameSpan), node.Path);
                continue;
            }

            var children = new List<JsonNode>();
            for (var child = node.FirstChild; child.Exists; child = child.Next) children.Add(child);
            for (int i = children.Count - 1; i >= 0; i--) waiting.Push((children[i], isUnread));
        }
    }
}
