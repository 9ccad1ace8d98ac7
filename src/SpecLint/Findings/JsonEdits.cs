using System.Text;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Findings;

/// <summary>Edits that keep the layout of a file.</summary>
internal static class JsonEdits
{
    /// <summary>
    /// Adds texts to a list, behind its last one. The edit replaces that last one (of an empty list the list), so that two
    /// edits of one list overlap and are never applied blindly together.
    /// </summary>
    public static TextEdit AddToList(BookFile file, Given<FixedList<Given<string>>> list, params string[] words)
    {
        string joined = string.Join(", ", words.Select(w => $"\"{w}\""));
        if (list.Value.Count == 0) return new TextEdit(file.At(list.Span), "[" + WithComments(file, list.Span, joined, "") + "]");
        var last = list.Value[list.Value.Count - 1].Span;
        string between = ", ";

        // The blanks before the last one are its layout; a caller may know the span of the list or only that of its first value.
        var bytes = file.Source.Utf8.Span;
        int from = last.Start;
        while (from > 0 && bytes[from - 1] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n') from--;
        string before = Text(file, from, last.Start);
        int line = before.LastIndexOf('\n');
        if (line >= 0) between = "," + before.Substring(line);
        return new TextEdit(file.At(last), Text(file, last.Start, last.End) + between + joined);
    }

    /// <summary>Takes one value out of a list, with the comma that parts it from its neighbour.</summary>
    public static TextEdit RemoveFromList(BookFile file, FixedList<Given<string>> list, int index)
    {
        if (list.Count == 1) return new TextEdit(file.At(list[0].Span), "");
        int start = index > 0 ? list[index - 1].Span.End : list[0].Span.Start;
        int end = index > 0 ? list[index].Span.End : list[1].Span.Start;

        // What stands between the two is the comma and, perhaps, somebody's comment.
        string between = index > 0 ? Text(file, start, list[index].Span.Start) : Text(file, list[index].Span.End, end);
        string kept = WithoutComma(between);
        return new TextEdit(file.At(new TextSpan(start, end - start)), string.IsNullOrWhiteSpace(kept) ? "" : index > 0 ? kept : kept.TrimStart(' '));
    }

    /// <summary>What goes between the brackets of something empty: its comments, and behind them what is added.</summary>
    private static string WithComments(BookFile file, TextSpan span, string added, string blank)
    {
        // Of a text that breaks off behind the first bracket there is no second one.
        string inside = Text(file, span.Start + 1, Math.Max(span.Start + 1, span.End - 1));
        return string.IsNullOrWhiteSpace(inside) ? blank + added + blank : $"{inside.TrimEnd(' ', '\t')} {added} ";
    }

    /// <summary>A text of blanks, comments and one comma without the comma.</summary>
    private static string WithoutComma(string between)
    {
        for (int i = 0; i < between.Length; i++)
        {
            if (between[i] == ',') return between.Remove(i, 1);
            if (between[i] != '/' || i + 1 == between.Length) continue;
            bool isBlock = between[i + 1] == '*';
            int end = isBlock ? between.IndexOf("*/", i + 2, StringComparison.Ordinal) : between.IndexOf('\n', i);
            if (end < 0) return between;
            i = isBlock ? end + 1 : end;
        }

        return between;
    }

    /// <summary>
    /// Adds a property at the end of an object, or gives the one that is there another value; <see langword="null"/> where the
    /// file is no object.
    /// </summary>
    /// <param name="file">The file.</param>
    /// <param name="inner">The object's name at the top level, or empty for the top level itself.</param>
    /// <param name="property">The property's name.</param>
    /// <param name="json">Its value, as JSON.</param>
    public static TextEdit? AddProperty(BookFile file, string inner, string property, string json)
    {
        if (file.Tree is null || !file.Tree.IsWhole || file.Tree.Root.Kind != JsonKind.Object) return null;
        var target = file.Tree.Root;
        if (inner.Length > 0 && (!target.TryGetProperty(Encoding.UTF8.GetBytes(inner), out target) || target.Kind != JsonKind.Object)) return null;
        return AddProperty(file, target, property, json);
    }

    /// <summary>Adds a property at the end of an object of a file, or gives the one that is there another value.</summary>
    /// <param name="file">The file.</param>
    /// <param name="target">The object.</param>
    /// <param name="property">The property's name.</param>
    /// <param name="json">Its value, as JSON.</param>
    public static TextEdit AddProperty(BookFile file, JsonNode target, string property, string json)
    {
        if (target.TryGetProperty(Encoding.UTF8.GetBytes(property), out var there)) return new TextEdit(file.At(there.Span), json);
        JsonNode last = default;
        foreach (var child in target.Properties) last = child;
        if (!last.Exists) return new TextEdit(file.At(target.Span), "{" + WithComments(file, target.Span, $"\"{property}\": {json}", " ") + "}");
        string before = Text(file, target.Span.Start + 1, last.NameSpan.Start);
        int line = before.LastIndexOf('\n');
        string gap = line >= 0 ? before.Substring(line) : " ";
        if (gap.Trim().Length > 0) gap = " ";
        return new TextEdit(file.At(new TextSpan(last.Span.End, 0)), $",{gap}\"{property}\": {json}");
    }

    private static string Text(BookFile file, int start, int end) => Utf8Text.Decode(file.Source.Utf8.Span.Slice(start, end - start));
}
