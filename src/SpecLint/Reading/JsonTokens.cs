namespace SpecLint.Reading;

/// <summary>The kinds of token of a JSON text with comments.</summary>
internal enum JsonTokenKind
{
    /// <summary>A text, a number or a word.</summary>
    Value,

    /// <summary><c>{</c> or <c>[</c>.</summary>
    Open,

    /// <summary><c>}</c> or <c>]</c>.</summary>
    Close,

    /// <summary>A comma.</summary>
    Comma,

    /// <summary>A colon.</summary>
    Colon,

    /// <summary>A comment to the end of its line.</summary>
    LineComment,

    /// <summary>A comment between marks.</summary>
    BlockComment,
}

/// <summary>A token.</summary>
/// <param name="Number">Its number in the text, from 0.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Text">As it is written; of a line comment without the blanks at its end.</param>
/// <param name="LinesBefore">Line ends between it and the token before.</param>
internal readonly record struct JsonToken(int Number, JsonTokenKind Kind, string Text, int LinesBefore)
{
    /// <summary>Whether it is a comment.</summary>
    public bool IsComment => Kind is JsonTokenKind.LineComment or JsonTokenKind.BlockComment;
}

/// <summary>The tokens of a text, which together with the blanks between them are the whole of it.</summary>
internal static class JsonTokens
{
    /// <summary>The tokens; <see langword="null"/> where the text holds something that is none.</summary>
    public static List<JsonToken>? Of(SourceFile source)
    {
        var tokens = new List<JsonToken>();
        var text = source.Utf8.Span;
        int at = source.ByteOrderMarkLength, lines = 0;
        while (at < text.Length)
        {
            byte c = text[at];
            if (c is (byte)' ' or (byte)'\t' or (byte)'\n' or (byte)'\r')
            {
                if (c == (byte)'\n' || (c == (byte)'\r' && (at + 1 >= text.Length || text[at + 1] != (byte)'\n'))) lines++;
                at++;
                continue;
            }

            var (kind, length) = Read(text.Slice(at));
            if (length <= 0) return null;
            string written = Utf8Text.Decode(text.Slice(at, length));
            tokens.Add(new JsonToken(tokens.Count, kind, kind == JsonTokenKind.LineComment ? written.TrimEnd() : written, lines));
            at += length;
            lines = 0;
        }

        return tokens;
    }

    private static (JsonTokenKind Kind, int Length) Read(ReadOnlySpan<byte> text)
    {
        switch (text[0])
        {
            case (byte)'{' or (byte)'[': return (JsonTokenKind.Open, 1);
            case (byte)'}' or (byte)']': return (JsonTokenKind.Close, 1);
            case (byte)',': return (JsonTokenKind.Comma, 1);
            case (byte)':': return (JsonTokenKind.Colon, 1);
            case (byte)'"':
                for (int i = 1; i < text.Length; i++)
                {
                    if (text[i] == (byte)'\\') i++;
                    else if (text[i] == (byte)'"') return (JsonTokenKind.Value, i + 1);
                }

                return (JsonTokenKind.Value, -1);
            case (byte)'/' when text.Length > 1 && text[1] == (byte)'/':
                int line = text.IndexOfAny((byte)'\n', (byte)'\r');
                return (JsonTokenKind.LineComment, line < 0 ? text.Length : line);
            case (byte)'/' when text.Length > 1 && text[1] == (byte)'*':
                int end = text.Slice(2).IndexOf("*/"u8);
                return (JsonTokenKind.BlockComment, end < 0 ? -1 : end + 4);
            case (byte)'/': return (JsonTokenKind.Value, -1);
            default:
                int length = 0;
                while (length < text.Length
                    && text[length] is not ((byte)' ' or (byte)'\t' or (byte)'\n' or (byte)'\r' or (byte)',' or (byte)':' or (byte)'{'
                        or (byte)'}' or (byte)'[' or (byte)']' or (byte)'"' or (byte)'/')) length++;
                return (JsonTokenKind.Value, length);
        }
    }
}
