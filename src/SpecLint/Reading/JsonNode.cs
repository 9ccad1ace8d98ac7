using System.Buffers.Text;

namespace SpecLint.Reading;

/// <summary>One value of a <see cref="JsonTree"/>.</summary>
public readonly struct JsonNode : IEquatable<JsonNode>
{
    private readonly JsonTree? tree;

    internal JsonNode(JsonTree tree, int index)
    {
        this.tree = tree;
        Index = index;
    }

    /// <summary>The tree; must not be asked of a value of kind <see cref="JsonKind.None"/>.</summary>
    public JsonTree Tree => tree!;

    /// <summary>Its number in the tree, in the order of the text.</summary>
    public int Index { get; }

    /// <summary>Whether there is a value.</summary>
    public bool Exists => tree is not null;

    /// <summary>What it is.</summary>
    public JsonKind Kind => tree is null ? JsonKind.None : tree.Nodes[Index].Kind;

    /// <summary>Its place; a string's quotes are included.</summary>
    public TextSpan Span => tree is null ? default : new TextSpan(tree.Nodes[Index].Start, tree.Nodes[Index].Length);

    /// <summary>Place of the name of the property whose value it is, quotes included; empty elsewhere.</summary>
    public TextSpan NameSpan => tree is null ? default : new TextSpan(tree.Nodes[Index].NameStart, tree.Nodes[Index].NameLength);

    /// <summary>Whether it is the value of a property.</summary>
    public bool HasName => tree is not null && tree.Nodes[Index].NameLength > 0;

    /// <summary>The object or list that it is in; of kind <see cref="JsonKind.None"/> for the outermost value.</summary>
    public JsonNode Parent => tree is null || tree.Nodes[Index].Parent < 0 ? default : new JsonNode(tree, tree.Nodes[Index].Parent);

    /// <summary>Its first property or item; of kind <see cref="JsonKind.None"/> where there is none.</summary>
    public JsonNode FirstChild => tree is null || tree.Nodes[Index].FirstChild < 0 ? default : new JsonNode(tree, tree.Nodes[Index].FirstChild);

    /// <summary>The property or item behind it; of kind <see cref="JsonKind.None"/> where there is none.</summary>
    public JsonNode Next => tree is null || tree.Nodes[Index].Next < 0 ? default : new JsonNode(tree, tree.Nodes[Index].Next);

    /// <summary>The values of its properties (each knows its name), in the order of the text; none where it is no object.</summary>
    public Children Properties => new(Kind == JsonKind.Object ? FirstChild : default);

    /// <summary>Its items, in the order of the text; none where it is no list.</summary>
    public Children Items => new(Kind == JsonKind.Array ? FirstChild : default);

    /// <summary>Number in its list or object, from 1.</summary>
    public int Position
    {
        get
        {
            int position = 1;
            for (var before = Parent.FirstChild; before.Exists && before.Index != Index; before = before.Next) position++;
            return position;
        }
    }

    /// <summary>The bytes between a string's quotes, else the bytes of the value.</summary>
    internal ReadOnlySpan<byte> RawText
    {
        get
        {
            ref readonly var node = ref tree!.Nodes[Index];
            var text = tree.Source.Utf8.Span.Slice(node.Start, node.Length);
            return node.Kind == JsonKind.String ? Unquote(text) : text;
        }
    }

    /// <summary>The bytes between the quotes of its name.</summary>
    internal ReadOnlySpan<byte> RawName
    {
        get
        {
            if (tree is null) return default;
            ref readonly var node = ref tree.Nodes[Index];
            return node.NameLength == 0 ? default : Unquote(tree.Source.Utf8.Span.Slice(node.NameStart, node.NameLength));
        }
    }

    internal bool IsEscaped => tree is not null && tree.Nodes[Index].IsEscaped;

    internal bool NameIsEscaped => tree is not null && tree.Nodes[Index].NameIsEscaped;

    /// <summary>The name of the property whose value it is, escapes resolved; empty elsewhere.</summary>
    public string Name => NameIsEscaped ? JsonText.Unescape(RawName) : Utf8Text.Decode(RawName);

    /// <summary>Finds a property by name; of two with one name the first.</summary>
    /// <param name="utf8Name">The name in UTF-8, without quotes.</param>
    /// <param name="value">The value; of kind <see cref="JsonKind.None"/> where there is none.</param>
    public bool TryGetProperty(ReadOnlySpan<byte> utf8Name, out JsonNode value)
    {
        foreach (var property in Properties)
        {
            if (property.NameEquals(utf8Name))
            {
                value = property;
                return true;
            }
        }

        value = default;
        return false;
    }

    /// <summary>Whether the name of the property is this one.</summary>
    public bool NameEquals(ReadOnlySpan<byte> utf8Name)
    {
        var raw = RawName;
        if (!NameIsEscaped) return raw.SequenceEqual(utf8Name);
        return raw.Length > utf8Name.Length && JsonText.Unescape(raw) == Utf8Text.Decode(utf8Name);
    }

    /// <summary>
    /// A string's text, escapes resolved, invalid bytes and lone surrogates replaced by U+FFFD; of any other value its
    /// bytes as text.
    /// </summary>
    public string GetString() => tree is null ? "" : IsEscaped ? JsonText.Unescape(RawText) : Utf8Text.Decode(RawText);

    /// <summary>A number's value; NaN where it is no number or beyond the range of a double.</summary>
    public double GetDouble()
    {
        if (Kind != JsonKind.Number) return double.NaN;
        return Utf8Parser.TryParse(RawText, out double value, out int used) && used == RawText.Length && !double.IsInfinity(value)
            ? value
            : double.NaN;
    }

    /// <summary>
    /// Where it stands, by names: <c>ingredients[lime-juice].amount</c>. An item of a list is named by its <c>item</c>,
    /// <c>drink</c>, <c>id</c>, <c>rule</c>, <c>do</c> or <c>allergen</c>, a text by itself, anything else by its number; a second item of
    /// the same name is followed by <c>#2</c>. The path of a line thus outlives a change of order.
    /// </summary>
    public string Path => JsonPath.Of(this);

    /// <inheritdoc/>
    public bool Equals(JsonNode other) => ReferenceEquals(tree, other.tree) && Index == other.Index;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is JsonNode other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Index;

    /// <summary>The same value of the same tree.</summary>
    public static bool operator ==(JsonNode a, JsonNode b) => a.Equals(b);

    /// <summary>Another value.</summary>
    public static bool operator !=(JsonNode a, JsonNode b) => !a.Equals(b);

    /// <summary>A string's quotes taken off; the closing one may be missing where the text breaks off.</summary>
    private static ReadOnlySpan<byte> Unquote(ReadOnlySpan<byte> text) =>
        text.Length >= 2 && text[text.Length - 1] == (byte)'"' ? text.Slice(1, text.Length - 2) : text.Slice(Math.Min(1, text.Length));

    /// <summary>Properties of an object or items of a list, for <c>foreach</c>.</summary>
    public readonly struct Children(JsonNode first)
    {
        /// <summary>The enumerator.</summary>
        public Enumerator GetEnumerator() => new(first);

        /// <summary>How many there are.</summary>
        public int Count
        {
            get
            {
                int count = 0;
                for (var node = first; node.Exists; node = node.Next) count++;
                return count;
            }
        }
    }

    /// <summary>Goes from one property or item to the next.</summary>
    public struct Enumerator(JsonNode first)
    {
        private bool started;

        /// <summary>The value.</summary>
        public JsonNode Current { get; private set; }

        /// <summary>Goes on.</summary>
        public bool MoveNext()
        {
            Current = started ? Current.Next : first;
            started = true;
            return Current.Exists;
        }
    }
}
