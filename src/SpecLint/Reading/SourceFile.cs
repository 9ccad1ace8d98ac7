namespace SpecLint.Reading;

/// <summary>The text of one file, as handed to the library.</summary>
public sealed class SourceFile
{
    /// <summary>Bytes of a block whose UTF-16 units are counted once, so that a file of one long line costs no more than another.</summary>
    private const int BlockLength = 1024;

    private int[]? lineStarts;
    private int[]? unitsBeforeBlock;

    /// <summary>A file's text.</summary>
    /// <param name="path">Path relative to the root of the book, with <c>/</c>.</param>
    /// <param name="utf8">Its bytes, a byte order mark included.</param>
    public SourceFile(string path, ReadOnlyMemory<byte> utf8)
    {
        Path = path;
        Utf8 = utf8;
    }

    /// <summary>Path relative to the root of the book, with <c>/</c>.</summary>
    public string Path { get; }

    /// <summary>The bytes as read.</summary>
    public ReadOnlyMemory<byte> Utf8 { get; }

    /// <summary>Length of the byte order mark, 0 or 3 bytes.</summary>
    public int ByteOrderMarkLength => HasByteOrderMark(Utf8.Span) ? 3 : 0;

    /// <summary>Number of lines.</summary>
    public int LineCount => (lineStarts ??= FindLineStarts(Utf8.Span)).Length;

    /// <summary>Line and column (from 1, UTF-16 units) of a byte offset; LF, CR LF and CR end a line.</summary>
    /// <param name="offset">Byte offset; clamped to the file.</param>
    public LinePosition PositionOf(int offset)
    {
        var text = Utf8.Span;
        offset = Math.Max(0, Math.Min(offset, text.Length));
        var starts = lineStarts ??= FindLineStarts(text);
        int line = Array.BinarySearch(starts, offset);
        if (line < 0) line = ~line - 1;
        int from = starts[line];
        if (line == 0) from = Math.Min(offset, ByteOrderMarkLength);
        int units = offset - from <= 2 * BlockLength ? Utf16Length(text.Slice(from, offset - from)) : UnitsBefore(offset) - UnitsBefore(from);
        return new LinePosition(line + 1, 1 + units);
    }

    /// <summary>The byte offset of a line and column; a line beyond the end is the end, a column beyond its line the end of the line.</summary>
    /// <param name="at">Line and column, from 1, the column in UTF-16 units; within a surrogate pair, the pair's start.</param>
    public int OffsetOf(LinePosition at)
    {
        if (at.Line < 1) return ByteOrderMarkLength;
        if (at.Line > LineCount) return Utf8.Length;
        var span = LineSpan(at.Line);
        var text = Utf8.Span.Slice(span.Start, span.Length);
        int units = at.Column - 1, offset = 0;
        while (units > 0 && offset < text.Length)
        {
            int length = Utf8Text.LengthOfCharacter(text, offset);
            units -= length == 4 ? 2 : 1;
            if (units < 0) break;
            offset += length;
        }

        return span.Start + offset;
    }

    /// <summary>The text of a span, invalid bytes replaced.</summary>
    public string TextOf(TextSpan span) => Utf8Text.Decode(Utf8.Span.Slice(span.Start, span.Length));

    /// <summary>The bytes of a line, without its end.</summary>
    /// <param name="line">Line number, from 1.</param>
    public TextSpan LineSpan(int line)
    {
        var text = Utf8.Span;
        var starts = lineStarts ??= FindLineStarts(text);
        int start = starts[line - 1];
        if (line == 1) start = Math.Min(ByteOrderMarkLength, text.Length);
        int end = line < starts.Length ? starts[line] : text.Length;
        while (end > start && (text[end - 1] == (byte)'\n' || text[end - 1] == (byte)'\r')) end--;
        return new TextSpan(start, end - start);
    }

    /// <summary>UTF-16 units of the text before a byte offset.</summary>
    private int UnitsBefore(int offset)
    {
        var text = Utf8.Span;
        var before = unitsBeforeBlock;
        if (before is null)
        {
            before = new int[(text.Length / BlockLength) + 1];
            for (int block = 1; block < before.Length; block++)
                before[block] = before[block - 1] + Utf16Length(text.Slice((block - 1) * BlockLength, BlockLength));
            unitsBeforeBlock = before;
        }

        int start = offset / BlockLength;
        return before[start] + Utf16Length(text.Slice(start * BlockLength, offset - (start * BlockLength)));
    }

    private static bool HasByteOrderMark(ReadOnlySpan<byte> text) =>
        text.Length >= 3 && text[0] == 0xEF && text[1] == 0xBB && text[2] == 0xBF;

    private static int[] FindLineStarts(ReadOnlySpan<byte> text)
    {
        int lines = 1;
        for (int start = NextLine(text, 0); start > 0; start = NextLine(text, start)) lines++;
        var starts = new int[lines];
        for (int line = 1; line < lines; line++) starts[line] = NextLine(text, starts[line - 1]);
        return starts;
    }

    /// <summary>Where the next line starts; -1 where there is none.</summary>
    private static int NextLine(ReadOnlySpan<byte> text, int from)
    {
        int end = text.Slice(from).IndexOfAny((byte)'\n', (byte)'\r');
        if (end < 0) return -1;
        end += from;
        return text[end] == (byte)'\r' && end + 1 < text.Length && text[end + 1] == (byte)'\n' ? end + 2 : end + 1;
    }

    private static int Utf16Length(ReadOnlySpan<byte> text)
    {
        int units = 0;
        foreach (byte b in text)
        {
            // Continuation bytes add nothing; a lead byte of four makes a surrogate pair.
            if ((b & 0xC0) == 0x80) continue;
            units += b >= 0xF0 ? 2 : 1;
        }

        return units;
    }
}
