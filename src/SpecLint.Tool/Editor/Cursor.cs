using SpecLint.Binding;
using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Tool.Editor;

/// <summary>
/// What stands at a place of a text that may be half typed: the token there, and what can stand in its place. It reads the text
/// before the place alone, so that what is broken behind it does no harm.
/// </summary>
internal sealed class Cursor
{
    private readonly byte[] text;
    private readonly int offset;
    private readonly Stack<Frame> frames = new();

    private Cursor(BookFile file, int offset)
    {
        text = file.Source.Utf8.ToArray();
        this.offset = Math.Clamp(offset, file.Source.ByteOrderMarkLength, text.Length);
        File = file;
        Scan(FileShapes.Of(file.Kind));
    }

    /// <summary>The file.</summary>
    public BookFile File { get; }

    /// <summary>Whether it is in a comment.</summary>
    public bool IsInComment { get; private set; }

    /// <summary>Whether a name of a property stands here, or could.</summary>
    public bool IsName { get; private set; }

    /// <summary>The token that it touches, quotes included; empty where there is none.</summary>
    public TextSpan Token { get; private set; }

    /// <summary>Whether the token is a text.</summary>
    public bool IsText => Token.Length > 0 && text[Token.Start] == (byte)'"';

    /// <summary>The token, without quotes.</summary>
    public string Word => System.Text.Encoding.UTF8.GetString(text, Inner.Start, Inner.Length);

    /// <summary>The token up to the place, without quotes.</summary>
    public string Typed => System.Text.Encoding.UTF8.GetString(text, Inner.Start, Math.Clamp(offset - Inner.Start, 0, Inner.Length));

    /// <summary>The innermost object with known properties; <see langword="null"/> where none is.</summary>
    public ObjectShape? Object => frames.TryPeek(out var frame) ? frame.Object : null;

    /// <summary>What an innermost object with free names accepts as names; <see langword="null"/> where it is none.</summary>
    public ValueShape? Map => frames.TryPeek(out var frame) && frame.Container is { Form: ValueForm.Map } map ? map : null;

    /// <summary>Names that the innermost object has already, that at the place left out.</summary>
    public IReadOnlySet<string> Names { get; private set; } = new HashSet<string>();

    /// <summary>The property whose value, or list, it is in; of a name the property of that name.</summary>
    public PropertyShape? Property { get; private set; }

    /// <summary>What can stand here, where a value can.</summary>
    public ValueShape? Value { get; private set; }

    /// <summary>Whether the innermost container is a list.</summary>
    public bool IsInList => frames.TryPeek(out var frame) && !frame.IsObject;

    /// <summary>Whether nothing but blanks and comments stands in the file.</summary>
    public bool IsEmptyFile { get; private set; } = true;

    /// <summary>Whether a value follows the name here.</summary>
    public bool ValueFollows { get; private set; }

    /// <summary>What stands at a place of a file.</summary>
    public static Cursor At(BookFile file, int offset) => new(file, offset);

    private TextSpan Inner
    {
        get
        {
            if (!IsText) return Token;
            bool closed = Token.Length > 1 && text[Token.Start + Token.Length - 1] == (byte)'"';
            return new TextSpan(Token.Start + 1, Token.Length - (closed ? 2 : 1));
        }
    }

    private void Scan(ObjectShape root)
    {
        int at = File.Source.ByteOrderMarkLength;
        while (at < text.Length)
        {
            if (at >= offset && !StartsTokenAt(at)) break;
            byte c = text[at];
            if (c is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            {
                at++;
            }
            else if (c == (byte)'/')
            {
                int end = EndOfComment(at);
                if (offset > at && (offset < end || (offset == end && text[at..end] is [_, (byte)'/', ..]))) IsInComment = true;
                at = end;
            }
            else if (c is (byte)'{' or (byte)'[')
            {
                IsEmptyFile = false;
                if (at >= offset) break;
                Push(c == (byte)'{', root);
                at++;
            }
            else if (c is (byte)'}' or (byte)']')
            {
                if (at >= offset) break;
                frames.TryPop(out _);
                at++;
            }
            else if (c is (byte)',' or (byte)':')
            {
                if (at >= offset) break;
                if (frames.TryPeek(out var frame))
                {
                    frame.ExpectsValue = c == (byte)':';
                    if (c == (byte)',') frame.Name = null;
                }

                at++;
            }
            else
            {
                IsEmptyFile = false;
                int end = EndOfToken(at);
                bool isText = c == (byte)'"';
                if (at <= offset && offset <= end)
                {
                    // Behind the closing quote something new begins.
                    Token = new TextSpan(at, end - at);
                    Settle(isName: frames.TryPeek(out var here) && here.IsObject && !here.ExpectsValue, end);
                    return;
                }

                if (at >= offset) break;
                if (isText && frames.TryPeek(out var frame) && frame.IsObject && !frame.ExpectsValue)
                {
                    frame.Name = System.Text.Encoding.UTF8.GetString(text, at + 1, Math.Max(0, end - at - 2));
                    frame.Names.Add(frame.Name);
                }

                at = end;
            }
        }

        Token = new TextSpan(offset, 0);
        Settle(isName: frames.TryPeek(out var last) && last.IsObject && !last.ExpectsValue, offset);
    }

    /// <summary>Whether a token begins exactly at the cursor: it is the one that is meant.</summary>
    private bool StartsTokenAt(int at) => at == offset && (text[at] == (byte)'"' || IsBare(text[at]));

    private void Settle(bool isName, int end)
    {
        IsName = isName;
        if (!frames.TryPeek(out var frame)) return;
        var names = new HashSet<string>(frame.Names, StringComparer.Ordinal);
        if (frame.IsObject) AddNamesBehind(names, end);
        if (isName)
        {
            string word = Word;
            names.Remove(word);
            Property = frame.Object?.Find(word);
            Value = Property?.Value ?? frame.Container?.Item;
            ValueFollows = NextSign(end) == (byte)':';
        }
        else if (frame.IsObject)
        {
            Property = frame.Name is null ? null : frame.Object?.Find(frame.Name);
            Value = Property?.Value ?? (frame.Container is { Form: ValueForm.Map } map ? map.Item : null);
        }
        else
        {
            Property = frame.Property;
            Value = frame.Item;
        }

        Names = names;
    }

    private void Push(bool isObject, ObjectShape root)
    {
        if (!frames.TryPeek(out var frame))
        {
            frames.Push(new Frame { IsObject = isObject, Object = isObject ? root : null });
            return;
        }

        var property = frame.IsObject ? frame.Name is null ? null : frame.Object?.Find(frame.Name) : frame.Property;
        var value = frame.IsObject ? property?.Value ?? (frame.Container is { Form: ValueForm.Map } map ? map.Item : null) : frame.Item;
        frames.Push(new Frame
        {
            IsObject = isObject,
            Object = isObject ? value?.Object : null,
            Container = isObject ? value : null,
            Item = isObject || value is null ? null : ShapedTree.ItemOf(value),
            Property = property,
        });
    }

    /// <summary>Names of the same object behind the place, as far as the text can be followed.</summary>
    private void AddNamesBehind(HashSet<string> names, int from)
    {
        int depth = 0;
        for (int at = from; at < text.Length && depth >= 0;)
        {
            byte c = text[at];
            if (c == (byte)'/')
            {
                at = EndOfComment(at);
            }
            else if (c == (byte)'"')
            {
                int end = EndOfToken(at);
                if (depth == 0 && NextSign(end) == (byte)':') names.Add(System.Text.Encoding.UTF8.GetString(text, at + 1, Math.Max(0, end - at - 2)));
                at = end;
            }
            else
            {
                if (c is (byte)'{' or (byte)'[') depth++;
                if (c is (byte)'}' or (byte)']') depth--;
                at++;
            }
        }
    }

    private byte NextSign(int from)
    {
        int at = from;
        while (at < text.Length && text[at] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n') at++;
        return at < text.Length ? text[at] : (byte)0;
    }

    private int EndOfComment(int at)
    {
        if (at + 1 >= text.Length || text[at + 1] is not ((byte)'/' or (byte)'*')) return at + 1;
        var rest = text.AsSpan(at + 2);
        bool isBlock = text[at + 1] == (byte)'*';
        int length = isBlock ? rest.IndexOf("*/"u8) : rest.IndexOfAny((byte)'\n', (byte)'\r');
        return length < 0 ? text.Length : at + 2 + length + (isBlock ? 2 : 0);
    }

    private int EndOfToken(int at)
    {
        int end = at + 1;
        if (text[at] == (byte)'"')
        {
            // A text that is not closed ends with its line.
            for (; end < text.Length && text[end] is not ((byte)'\n' or (byte)'\r'); end++)
            {
                if (text[end] == (byte)'\\') end++;
                else if (text[end] == (byte)'"') return end + 1;
            }

            return Math.Min(end, text.Length);
        }

        while (end < text.Length && IsBare(text[end])) end++;
        return end;
    }

    private static bool IsBare(byte c) =>
        c is not ((byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)',' or (byte)':' or (byte)'{' or (byte)'}' or (byte)'['
            or (byte)']' or (byte)'"' or (byte)'/');

    /// <summary>An object or list that is open at the place.</summary>
    private sealed class Frame
    {
        public bool IsObject { get; init; }

        public ObjectShape? Object { get; init; }

        public ValueShape? Container { get; init; }

        public ValueShape? Item { get; init; }

        public PropertyShape? Property { get; init; }

        public string? Name { get; set; }

        public bool ExpectsValue { get; set; }

        public HashSet<string> Names { get; } = new(StringComparer.Ordinal);
    }
}
