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
        var ordered = edits.Select((e, i) => (Edit: e, Index: i)).OrderBy(e => e.Edit.Place.Span.Start).ThenBy(e => e.Edit.Place.Span.Length).ThenBy(e => e.Index).Select(e => e.Edit).ToList();
        var text = file.Utf8.Span;
        bool carriageReturns = EndsLinesWithCarriageReturn(text);
        using var made = new MemoryStream(text.Length + 64);
        int at = 0;
        foreach (var edit in ordered)
        {
            var span = edit.Place.Span;
            if (!edit.Place.File.Utf8.Equals(file.Utf8) && !edit.Place.File.Utf8.Span.SequenceEqual(text)) throw new ArgumentException($"An edit is of another text than that of {file.Path}.", nameof(edits));
            if (span.Start < at || span.Length < 0 || span.End > text.Length) throw new ArgumentException($"Edits of {file.Path} overlap or lie outside it.", nameof(edits));
            Write(made, text.Slice(at, span.Start - at));
            byte[] put = Encoding.UTF8.GetBytes(carriageReturns ? WithCarriageReturns(edit.NewText) : edit.NewText);
            made.Write(put, 0, put.Length);
            at = span.End;
        }

        Write(made, text.Slice(at));
        return made.ToArray();
    }

    private static void Write(MemoryStream to, ReadOnlySpan<byte> bytes)
    {
        byte[] copy = bytes.ToArray();
        to.Write(copy, 0, copy.Length);
    }

    private static bool EndsLinesWithCarriageReturn(ReadOnlySpan<byte> text)
    {
        int end = text.IndexOf((byte)'\n');
        return end > 0 && text[end - 1] == (byte)'\r';
    }

    private static string WithCarriageReturns(string text) => text.Replace("\r\n", "\n").Replace("\n", "\r\n");
}
