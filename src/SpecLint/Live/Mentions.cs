using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Live;

/// <summary>The ids that a file mentions anywhere, whatever for.</summary>
internal static class Mentions
{
    /// <summary>
    /// Every text of a file that could be an id, each once. What a recipe comes to can depend on another file only through an id
    /// in its own text or in that of a file that it mentions: the rules need not say which of them matter.
    /// </summary>
    public static string[] In(SourceFile source)
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        var tree = JsonTreeReader.Lend(source, []);
        for (int i = 0; i < tree.Count; i++)
        {
            var node = tree[i];
            if (node.Kind != JsonKind.String) continue;
            if (!node.IsEscaped && FileKinds.IsId(node.RawText)) found.Add(StringPool.Get(node.RawText));
            else if (node.IsEscaped && node.GetString() is var text && FileKinds.IsId(text)) found.Add(text);
        }

        JsonTreeReader.TakeBack(tree);
        return [.. found];
    }
}
