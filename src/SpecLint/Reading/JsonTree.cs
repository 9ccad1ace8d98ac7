namespace SpecLint.Reading;

/// <summary>The kinds of JSON value.</summary>
public enum JsonKind : byte
{
    /// <summary>No value.</summary>
    None,

    /// <summary>An object.</summary>
    Object,

    /// <summary>A list.</summary>
    Array,

    /// <summary>A text.</summary>
    String,

    /// <summary>A number.</summary>
    Number,

    /// <summary><c>true</c>.</summary>
    True,

    /// <summary><c>false</c>.</summary>
    False,

    /// <summary><c>null</c>.</summary>
    Null,
}

/// <summary>A JSON text as a tree whose every value keeps its place.</summary>
/// <remarks>
/// Comments and trailing commas are read. Anything wrong becomes a <see cref="ReadingProblem"/>, never an exception; of a
/// text that breaks off, the tree holds what stands before the break.
/// </remarks>
public sealed class JsonTree
{
    /// <summary>The largest file that is read, bytes (4 MiB).</summary>
    public const int LargestFile = 4 * 1024 * 1024;

    /// <summary>The deepest nesting of objects and lists that is read.</summary>
    public const int DeepestNesting = 64;

    /// <summary>The number of problems of one text that are reported.</summary>
    public const int MostProblems = 100;

    /// <param name="source">The text.</param>
    /// <param name="nodes">Its values; there may be room behind them.</param>
    /// <param name="count">Number of values.</param>
    /// <param name="isWhole">Whether the text was read to its end.</param>
    /// <param name="comments">Places of the comments.</param>
    internal JsonTree(SourceFile source, NodeData[] nodes, int count, bool isWhole, IReadOnlyList<TextSpan> comments)
    {
        Source = source;
        Nodes = nodes;
        Count = count;
        IsWhole = isWhole;
        Comments = comments;
    }

    /// <summary>The text.</summary>
    public SourceFile Source { get; }

    /// <summary>Whether the text was read to its end; <see langword="false"/> where a syntax error cut it short.</summary>
    public bool IsWhole { get; }

    /// <summary>Places of the comments, in order, their marks included.</summary>
    public IReadOnlyList<TextSpan> Comments { get; }

    /// <summary>The number of values.</summary>
    public int Count { get; }

    /// <summary>The outermost value; of kind <see cref="JsonKind.None"/> where there is none.</summary>
    public JsonNode Root => Count == 0 ? default : new JsonNode(this, 0);

    internal NodeData[] Nodes { get; }

    /// <summary>Reads a text.</summary>
    /// <param name="source">The text.</param>
    /// <param name="problems">Takes what is wrong with it, in the order of the text.</param>
    public static JsonTree Parse(SourceFile source, ICollection<ReadingProblem> problems) => JsonTreeReader.Read(source, problems);

    /// <summary>The value with an index, from 0 to <see cref="Count"/> - 1, in the order of the text.</summary>
    public JsonNode this[int index] => new(this, index);

    /// <summary>
    /// The deepest value whose place (the name of its property included) holds a byte offset or ends at it; of kind
    /// <see cref="JsonKind.None"/> where the offset is outside the outermost value.
    /// </summary>
    /// <param name="offset">Byte offset from the start of the file.</param>
    public JsonNode Find(int offset)
    {
        if (Count == 0 || offset < Nodes[0].Start || offset > Nodes[0].End) return default;
        int at = 0;
        while (true)
        {
            int inner = -1;
            for (int child = Nodes[at].FirstChild; child >= 0; child = Nodes[child].Next)
            {
                ref readonly var node = ref Nodes[child];
                int from = node.NameLength > 0 ? node.NameStart : node.Start;
                if (offset < from) break;
                if (offset <= node.End) inner = child;
            }

            if (inner < 0) return new JsonNode(this, at);
            at = inner;
        }
    }

    /// <summary>One value, as kept.</summary>
    internal struct NodeData
    {
        public int Start;
        public int Length;
        public int NameStart;
        public int NameLength;
        public int Parent;
        public int FirstChild;
        public int Next;
        public JsonKind Kind;
        public bool IsEscaped;
        public bool NameIsEscaped;

        public readonly int End => Start + Length;
    }
}
