using System.Text;
using SpecLint.Reading;

namespace SpecLint.Findings;

/// <summary>Applies edits to the bytes of a file: what no edit names stays as it is, byte for byte.</summary>
internal static class TextEdits
{
    /// <summary>
    /// Whether two edits of one file cannot both be made without one deciding what the other means: their bytes overlap, or
    /// one inserts at an end of the other.
    /// </summary>
    public static bool Conflict(TextEdit a, TextEdit b)
    {
        if (a.Place.File.Path != b.Place.File.Path) return false;
        var x = a.Place.Span;
        var y = b.Place.Span;
        return x.Length == 0 || y.Length == 0
            ? x.Start <= y.End && y.Start <= x.End
            : x.Start < y.End && y.Start < x.End;
    }

    /// <summary>Whether any edit of one correction conflicts with any of another.</summary>
    public static bool Conflict(Correction a, Correction b)
    {
        foreach (var x in a.Edits)
        {
            foreach (var y in b.Edits)
            {
                if (Conflict(x, y)) return true;
            }
        }

        return false;
    }

    /// <summary>Makes edits in a file.</summary>
    /// <param name="file">The file that the edits were made for.</param>
    /// <param name="edits">Edits of this file, in any order; insertions at one place keep their order.</param>
    /// <returns>
    /// The file's new text. Where the file ends its lines with CR LF, so do the lines that edits bring; a lone surrogate
    /// becomes U+FFFD.
    /// </returns>
    /// <exception cref="ArgumentException">Edits overlap, lie outside the file, or are of another file.</exception>
    public static byte[] Apply(SourceFile file, IEnumerable<TextEdit> edits)
    {
        var ordered = InOrder(edits);
        var text = file.Utf8.Span;
        bool carriageReturns = EndsLinesWithCarriageReturn(text);
        byte[][] put = new byte[ordered.Length][];
        int at = 0, length = text.Length;
        for (int i = 0; i < ordered.Length; i++)
        {
            var (place, words) = ordered[i];
            if (!place.File.Utf8.Equals(file.Utf8) && !place.File.Utf8.Span.SequenceEqual(text))
                throw new ArgumentException($"An edit is of another text than that of {file.Path}.", nameof(edits));
            if (place.Span.Start < at || place.Span.Length < 0 || place.Span.End > text.Length)
                throw new ArgumentException($"Edits of {file.Path} overlap or lie outside it.", nameof(edits));
            put[i] = Encoding.UTF8.GetBytes(carriageReturns ? WithCarriageReturns(words) : words);
            length += put[i].Length - place.Span.Length;
            at = place.Span.End;
        }

        byte[] made = new byte[length];
        int from = 0, to = 0;
        for (int i = 0; i < ordered.Length; i++)
        {
            var span = ordered[i].Place.Span;
            text.Slice(from, span.Start - from).CopyTo(made.AsSpan(to));
            to += span.Start - from;
            put[i].CopyTo(made, to);
            to += put[i].Length;
            from = span.End;
        }

        text.Slice(from).CopyTo(made.AsSpan(to));
        return made;
    }

    private static TextEdit[] InOrder(IEnumerable<TextEdit> edits)
    {
        TextEdit[] ordered = [.. edits];
        return ordered.Length < 2
            ? ordered
            : [.. ordered.Select((e, i) => (Edit: e, Index: i))
                .OrderBy(e => e.Edit.Place.Span.Start)
                .ThenBy(e => e.Edit.Place.Span.Length)
                .ThenBy(e => e.Index)
                .Select(e => e.Edit)];
    }

    private static bool EndsLinesWithCarriageReturn(ReadOnlySpan<byte> text)
    {
        int end = text.IndexOf((byte)'\n');
        return end > 0 && text[end - 1] == (byte)'\r';
    }

    private static string WithCarriageReturns(string text) => text.Replace("\r\n", "\n").Replace("\n", "\r\n");
}
