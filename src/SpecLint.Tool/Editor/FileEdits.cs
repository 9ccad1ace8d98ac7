using System.Text;
using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Tool.Editor;

/// <summary>Edits of a file that keep its layout.</summary>
internal static class FileEdits
{
    /// <summary>
    /// Adds an object to a list of the file, at its end; a list that is not there yet is added behind the last property.
    /// <see langword="null"/> where the file is not whole.
    /// </summary>
    public static TextEdit? AddToArray(BookFile file, string property, string json)
    {
        if (file.Tree is not { IsWhole: true, Root.Kind: JsonKind.Object } tree) return null;
        JsonNode last = default, list = default;
        foreach (var child in tree.Root.Properties)
        {
            last = child;
            if (child.Name == property) list = child;
        }

        if (!last.Exists) return null;
        if (!list.Exists)
            return new TextEdit(file.At(new TextSpan(last.Span.End, 0)), $",{GapBefore(file, last.NameSpan.Start)}\"{property}\": [{json}]");
        if (list.Kind != JsonKind.Array) return null;
        JsonNode lastItem = default;
        foreach (var item in list.Items) lastItem = item;
        if (!lastItem.Exists) return new TextEdit(file.At(new TextSpan(list.Span.End - 1, 0)), json);
        return new TextEdit(file.At(new TextSpan(lastItem.Span.End, 0)), $",{GapBefore(file, lastItem.Span.Start)}{json}");
    }

    /// <summary>The line break and blanks before a place, or one blank.</summary>
    private static string GapBefore(BookFile file, int at)
    {
        var text = file.Source.Utf8.Span;
        int from = at;
        while (from > 0 && text[from - 1] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n') from--;
        string gap = Encoding.UTF8.GetString(text[from..at]);
        int line = gap.LastIndexOf('\n');
        return line < 0 ? " " : (line > 0 && gap[line - 1] == '\r' ? "\r" : "") + gap[line..];
    }
}
