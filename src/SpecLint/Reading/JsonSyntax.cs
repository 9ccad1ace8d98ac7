namespace SpecLint.Reading;

/// <summary>Says in plain words where and why a text stops being JSON.</summary>
/// <remarks>
/// <c>Utf8JsonReader</c> refuses the text, but its sentences differ by version and speak of tokens. This walks on from the
/// last value that was read, over one step of the grammar (RFC 8259), and names what is in the way.
/// </remarks>
internal readonly ref struct JsonSyntax
{
    private readonly ReadOnlySpan<byte> text;

    public JsonSyntax(ReadOnlySpan<byte> text) => this.text = text;

    internal readonly record struct Found(int At, string Message, string Advice, bool Unclosed = false, int Related = -1);

    private static Found General => new(-1, "The text is no JSON from here on.", "Compare it with a line that is read.");

    public Found Explain(int from, int depth, bool inObject, bool isFirst, bool afterName, bool any)
    {
        int at = from;
        if (SkipBlanks(ref at) is { } bad) return bad;
        if (depth == 0)
        {
            if (!any) return ExplainValue(at, inObject: false, depth);
            return new Found(
                at, "The recipe ends before this: something follows its closing bracket.",
                "Take it out, or look for a bracket too many above it.");
        }

        if (afterName) return ExplainValue(at, inObject: true, depth);
        if (at >= text.Length) return NotClosed(inObject);
        if (!isFirst)
        {
            byte next = text[at];
            if (next == (byte)',')
            {
                at++;
                if (SkipBlanks(ref at) is { } worse) return worse;
                if (at >= text.Length) return NotClosed(inObject);
            }
            else if (next is (byte)'}' or (byte)']')
            {
                return WrongBracket(at, inObject);
            }
            else if (IsLetter(next) && from > 0 && text[from - 1] is >= (byte)'0' and <= (byte)'9')
            {
                return new Found(at, "A quantity without quotes.", "Put number and unit in double quotes, as in \"45 ml\".");
            }
            else if (next == (byte)'"' || IsValueStart(next))
            {
                return new Found(at, "A comma is missing before this.", "Put a comma behind the value before it.");
            }
            else
            {
                return Stray(at);
            }
        }

        if (text[at] == (byte)',') return new Found(at, "There is a comma too many here.", "Take one comma out.");
        return inObject ? ExplainName(at) : ExplainValue(at, inObject: false, depth);
    }

    private Found ExplainName(int at)
    {
        byte first = text[at];
        if (first == (byte)'"')
        {
            if (ExplainString(at, out int end) is { } bad) return bad;
            if (SkipBlanks(ref end) is { } worse) return worse;
            if (end >= text.Length) return NotClosed(inObject: true);
            return text[end] == (byte)':'
                ? General
                : new Found(end, "A colon is missing between a name and its value.", "Put a colon behind the name.");
        }

        if (first is (byte)'\'' or 0xE2) return new Found(at, "A name stands in straight double quotes.", "Write it as \"name\".");
        if (first is (byte)']' or (byte)'}') return WrongBracket(at, inObject: true);
        if (IsLetter(first)) return new Found(at, "A name without quotes.", "Put it in double quotes.");
        return first is (byte)'{' or (byte)'[' ? new Found(at, "A value without a name.", "Write its name and a colon before it.") : Stray(at);
    }

    private Found ExplainValue(int at, bool inObject, int depth)
    {
        if (at >= text.Length) return depth > 0 ? NotClosed(inObject) : General;
        byte first = text[at];
        switch (first)
        {
            case (byte)'"':
                return ExplainString(at, out _) ?? General;
            case (byte)'\'' or 0xE2:
                return new Found(at, "A text stands in straight double quotes.", "Write it as \"text\".");
            case (byte)',' or (byte)'}':
                return inObject
                    ? new Found(at, "A value is missing here.", "Write one behind the colon, or take the name out.")
                    : first == (byte)','
                        ? new Found(at, "There is a comma too many here.", "Take one comma out.")
                        : WrongBracket(at, inObject: false);
            case (byte)']':
                return inObject
                    ? new Found(at, "A value is missing here.", "Write one behind the colon, or take the name out.")
                    : WrongBracket(at, inObject: false);
            case (byte)'+' or (byte)'-' or (byte)'.' or (>= (byte)'0' and <= (byte)'9'):
                if (IsNumberToTheEnd(at)) return depth > 0 ? NotClosed(inObject) : General;
                return new Found(
                    at,
                    "This is not a JSON number.",
                    "Write a plain number such as 2.5; put a number with a unit in double quotes, as in \"45 ml\".");
        }

        if (IsLetter(first)) return new Found(at, "A text without quotes.", "Put it in double quotes; only true, false and null go without.");
        return Stray(at);
    }

    /// <summary>Whether a number is fine as far as the text goes.</summary>
    private bool IsNumberToTheEnd(int at)
    {
        var rest = text.Slice(at);
        return System.Buffers.Text.Utf8Parser.TryParse(rest, out double _, out int used) && used == rest.Length
            && rest[0] is not ((byte)'+' or (byte)'.')
            && (rest[0] != (byte)'0' || rest.Length == 1 || rest[1] is (byte)'.' or (byte)'e' or (byte)'E');
    }

    /// <summary>Walks over a string; answers what is wrong with it, if anything.</summary>
    private Found? ExplainString(int at, out int end)
    {
        for (end = at + 1; end < text.Length; end++)
        {
            byte b = text[end];
            if (b == (byte)'"')
            {
                end++;
                return null;
            }

            if (b is (byte)'\n' or (byte)'\r') return new Found(at, "A text is not closed on its line.", "Put a double quote at its end.");
            if (b < 0x20) return new Found(end, "A control character (a tab, perhaps) stands inside a text.", "Take it out, or write \\t for a tab.");
            if (b != (byte)'\\') continue;
            int escape = end++;
            byte kind = end < text.Length ? text[end] : (byte)'"';
            bool known = kind is (byte)'"' or (byte)'\\' or (byte)'/' or (byte)'b' or (byte)'f' or (byte)'n' or (byte)'r' or (byte)'t';
            if (kind == (byte)'u')
            {
                for (int digit = end + 1; digit <= end + 4; digit++)
                {
                    bool isHex = digit < text.Length
                        && text[digit] is (>= (byte)'0' and <= (byte)'9') or (>= (byte)'a' and <= (byte)'f')
                            or (>= (byte)'A' and <= (byte)'F');
                    if (!isHex) return new Found(escape, "An escape \\u needs four hexadecimal digits.", "Write the character itself.");
                }

                known = true;
            }

            if (!known)
                return new Found(
                    escape, "A backslash stands before something that it cannot stand before.", "Write two backslashes where one is meant.");
        }

        return new Found(
            at, "The text breaks off: a double quote is not closed.",
            "Complete the file; it may have been cut short when it was saved.");
    }

    private Found? SkipBlanks(ref int at)
    {
        while (at < text.Length)
        {
            byte b = text[at];
            if (b is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            {
                at++;
            }
            else if (b == (byte)'/')
            {
                int comment = at;
                byte second = at + 1 < text.Length ? text[at + 1] : (byte)0;
                if (second == (byte)'/')
                {
                    int end = text.Slice(at).IndexOfAny((byte)'\n', (byte)'\r');
                    at = end < 0 ? text.Length : at + end;
                }
                else if (second == (byte)'*')
                {
                    int end = text.Slice(at + 2).IndexOf("*/"u8);
                    if (end < 0) return new Found(comment, "A comment is not closed.", "Put */ at its end.");
                    at += end + 4;
                }
                else
                {
                    return new Found(comment, "A single slash does not start a comment.", "Write a comment after // or between /* and */.");
                }
            }
            else
            {
                return null;
            }
        }

        return null;
    }

    private Found NotClosed(bool inObject) => new(
        text.Length,
        inObject ? "The text breaks off: an object is not closed." : "The text breaks off: a list is not closed.",
        inObject ? "Complete the file, and close the object with }." : "Complete the file, and close the list with ].",
        Unclosed: true);

    private Found WrongBracket(int at, bool inObject) => text[at] == (byte)(inObject ? '}' : ']')
        ? General
        : new Found(
            at,
            inObject ? "An object is closed with ] instead of }." : "A list is closed with } instead of ].",
            inObject ? "Close it with }." : "Close it with ].",
            Unclosed: true);

    private Found Stray(int at) => new(at, "This has no place here: the text is no JSON from here on.", "Take it out, or put it in double quotes.");

    private static bool IsLetter(byte b) =>
        b is (>= (byte)'a' and <= (byte)'z') or (>= (byte)'A' and <= (byte)'Z') or (byte)'_' or (byte)'$' or >= 0x80;

    private static bool IsValueStart(byte b) => IsLetter(b) || b is (byte)'{' or (byte)'[' or (byte)'-' or (>= (byte)'0' and <= (byte)'9');
}
