using System.Text.Json;

namespace SpecLint.Reading;

/// <summary>Builds a <see cref="JsonTree"/> in one pass; the buffers are kept for the next text on the same thread.</summary>
internal static class JsonTreeReader
{
    private const int DenseObject = 24;

    [ThreadStatic]
    private static JsonTree.NodeData[]? buffer;

    [ThreadStatic]
    private static int[]? nameKeys;

    /// <summary>The open objects and lists, and the last value in each.</summary>
    [ThreadStatic]
    private static (int[] Open, int[] Last) ways;

    /// <summary>Reads a text into a tree that can be kept.</summary>
    public static JsonTree Read(SourceFile source, ICollection<ReadingProblem> problems)
    {
        var lent = Lend(source, problems);
        var nodes = lent.Nodes.AsSpan(0, lent.Count).ToArray();
        TakeBack(lent);
        return new JsonTree(source, nodes, nodes.Length, lent.IsWhole, lent.Comments);
    }

    /// <summary>Hands back the values of a tree that was lent, on the thread that asked for it; nobody may look at it from then on.</summary>
    public static void TakeBack(JsonTree lent)
    {
        if (lent.Nodes.Length is > 0 and <= 1 << 16) buffer = lent.Nodes;
    }

    /// <summary>Reads a text into a tree whose values stand in a buffer of this thread, until <see cref="TakeBack"/>.</summary>
    public static JsonTree Lend(SourceFile source, ICollection<ReadingProblem> problems)
    {
        var text = source.Utf8.Span;
        if (text.Length > JsonTree.LargestFile)
        {
            problems.Add(new ReadingProblem(
                ReadingProblemKind.TooLarge,
                new TextSpan(0, 1),
                "",
                "The file is larger than 4 MiB and is not read.",
                "A recipe fits in a few kilobytes: split the file, or leave it out of the book."));
            return Nothing(source);
        }

        int start = source.ByteOrderMarkLength;
        return LooksLikeText(text, start, problems) ? Lend(source, new TextSpan(start, text.Length - start), problems) : Nothing(source);
    }

    /// <summary>Reads a part of a text that is a value by itself, in the same way; every value keeps its place in the whole.</summary>
    public static JsonTree Lend(SourceFile source, TextSpan part, ICollection<ReadingProblem> problems)
    {
        var text = source.Utf8.Span.Slice(0, part.End);
        ReportInvalidBytes(text, part.Start, problems);

        // While it is lent the buffer is nobody else's: reading one text may lead to reading another.
        var read = new Reading(text, part.Start, problems, buffer ?? new JsonTree.NodeData[512], nameKeys ??= new int[512]);
        buffer = null;
        bool whole = read.Run();
        nameKeys = read.Keys.Length > 1 << 16 ? null : read.Keys;
        if (whole && read.Count == 0)
        {
            problems.Add(new ReadingProblem(
                ReadingProblemKind.Syntax, new TextSpan(part.Start, 0), "", "The file holds only a comment.",
                "Write a recipe into it, or remove it."));
            return Nothing(source);
        }

        var tree = new JsonTree(source, read.Nodes, read.Count, whole, read.Comments is null ? [] : read.Comments);
        // Paths are worked out on the whole tree: while it grows, each would need a copy.
        foreach (var (problem, node) in read.Found ?? [])
            problems.Add(node < 0 ? problem : problem with { Path = JsonPath.Of(tree[node]) });
        return tree;
    }

    private static JsonTree Nothing(SourceFile source) => new(source, [], 0, isWhole: false, []);

    private static bool LooksLikeText(ReadOnlySpan<byte> text, int start, ICollection<ReadingProblem> problems)
    {
        int first = start;
        while (first < text.Length && text[first] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n') first++;
        if (first == text.Length)
        {
            problems.Add(new ReadingProblem(
                ReadingProblemKind.Syntax, new TextSpan(start, 0), "", "The file is empty.", "Write a recipe into it, or remove it."));
            return false;
        }

        bool wide = text.Length >= 2 && ((text[0] == 0xFF && text[1] == 0xFE) || (text[0] == 0xFE && text[1] == 0xFF));
        int zero = text.IndexOf((byte)0);
        if (wide || (zero is 0 or 1 && text.Length > 1 && (text[0] == (byte)'{' || text[1] == (byte)'{')))
        {
            problems.Add(new ReadingProblem(
                ReadingProblemKind.Encoding,
                new TextSpan(0, Math.Min(2, text.Length)),
                "",
                "The file is UTF-16, not UTF-8.",
                "Save it again with the encoding UTF-8."));
            return false;
        }

        if (zero >= 0)
        {
            problems.Add(new ReadingProblem(
                ReadingProblemKind.Encoding,
                new TextSpan(zero, 1),
                "",
                "The file holds bytes that no text has: it is something else than a recipe.",
                "Leave it out of the book, or give it another ending."));
            return false;
        }

        return true;
    }

    private static void ReportInvalidBytes(ReadOnlySpan<byte> text, int from, ICollection<ReadingProblem> problems)
    {
        const int most = 10;
        for (int found = 0; found < most; found++)
        {
            int at = Utf8Text.FindInvalid(text, from);
            if (at < 0) return;
            from = at + 1;
            while (from < text.Length && text[from] >= 0x80
                && Utf8Text.FindInvalid(text.Slice(0, Math.Min(text.Length, from + 4)), from) == from) from++;
            problems.Add(new ReadingProblem(
                ReadingProblemKind.Encoding,
                new TextSpan(at, from - at),
                "",
                "These bytes are not UTF-8.",
                "Save the file again with the encoding UTF-8, then look whether accents and degree signs are right."));
        }
    }

    private ref struct Reading
    {
        private readonly ReadOnlySpan<byte> text;
        private readonly ICollection<ReadingProblem> problems;
        private readonly int[] open;
        private readonly int[] last;
        private readonly int start;
        private int depth;
        private int lastEnd;

        /// <summary>Whether a comment was met since the last token.</summary>
        private bool commented;
        private bool afterName;

        public Reading(ReadOnlySpan<byte> text, int start, ICollection<ReadingProblem> problems, JsonTree.NodeData[] nodes, int[] keys)
        {
            this.text = text;
            this.problems = problems;
            this.start = start;
            Nodes = nodes;
            Keys = keys;
            if (ways.Open is null) ways = (new int[JsonTree.DeepestNesting], new int[JsonTree.DeepestNesting]);
            (open, last) = ways;
            lastEnd = start;
        }

        public JsonTree.NodeData[] Nodes { get; private set; }

        public int[] Keys { get; private set; }

        public int Count { get; private set; }

        public List<TextSpan>? Comments { get; private set; }

        /// <summary>Problems, and the value whose path each has; -1 for none.</summary>
        public List<(ReadingProblem Problem, int Node)>? Found { get; private set; }

        public bool Run()
        {
            var reader = new Utf8JsonReader(text.Slice(start), new JsonReaderOptions
            {
                AllowTrailingCommas = true,
                CommentHandling = JsonCommentHandling.Allow,
                MaxDepth = JsonTree.LargestFile,
            });
            try
            {
                Walk(ref reader);
                return true;
            }
            catch (JsonException broken)
            {
                ReportSyntax(broken);
                for (int i = depth - 1; i >= 0; i--) Nodes[open[i]].Length = Math.Max(lastEnd, Nodes[open[i]].Start + 1) - Nodes[open[i]].Start;
                for (int i = depth - 1; i >= 0; i--) CheckNames(open[i]);
                return false;
            }
        }

        private void Walk(ref Utf8JsonReader reader)
        {
            int nameStart = 0, nameLength = 0;
            bool nameIsEscaped = false;
            while (reader.Read())
            {
                int at = start + (int)reader.TokenStartIndex;
                if (commented && reader.TokenType != JsonTokenType.Comment) CheckCommas(reader.TokenType, at);
                switch (reader.TokenType)
                {
                    case JsonTokenType.Comment:
                        commented = true;
                        int commentEnd = start + (int)reader.BytesConsumed;
                        (Comments ??= []).Add(new TextSpan(at, commentEnd - at));
                        continue;
                    case JsonTokenType.PropertyName:
                        nameStart = at;
                        nameLength = reader.ValueSpan.Length + 2;
                        nameIsEscaped = reader.ValueIsEscaped;
                        afterName = true;
                        lastEnd = start + (int)reader.BytesConsumed;
                        if (nameIsEscaped) CheckSurrogates(reader.ValueSpan, at + 1);
                        continue;
                    case JsonTokenType.EndObject or JsonTokenType.EndArray:
                        depth--;
                        lastEnd = at + 1;
                        Nodes[open[depth]].Length = lastEnd - Nodes[open[depth]].Start;
                        if (reader.TokenType == JsonTokenType.EndObject) CheckNames(open[depth]);
                        continue;
                }

                int node = Add(at, nameStart, nameLength, nameIsEscaped);
                nameLength = 0;
                nameIsEscaped = false;
                afterName = false;
                switch (reader.TokenType)
                {
                    case JsonTokenType.StartObject or JsonTokenType.StartArray:
                        Nodes[node].Kind = reader.TokenType == JsonTokenType.StartObject ? JsonKind.Object : JsonKind.Array;
                        Nodes[node].Length = 1;
                        lastEnd = at + 1;
                        if (depth == JsonTree.DeepestNesting)
                        {
                            SkipDeep(ref reader, node);
                            continue;
                        }

                        open[depth] = node;
                        last[depth] = -1;
                        depth++;
                        continue;
                    case JsonTokenType.String:
                        Nodes[node].Kind = JsonKind.String;
                        Nodes[node].Length = reader.ValueSpan.Length + 2;
                        if (reader.ValueIsEscaped)
                        {
                            Nodes[node].IsEscaped = true;
                            CheckSurrogates(reader.ValueSpan, at + 1);
                        }

                        break;
                    case JsonTokenType.Number:
                        Nodes[node].Kind = JsonKind.Number;
                        Nodes[node].Length = reader.ValueSpan.Length;
                        CheckNumber(reader.ValueSpan, at);
                        break;
                    default:
                        Nodes[node].Kind = reader.TokenType switch
                        {
                            JsonTokenType.True => JsonKind.True,
                            JsonTokenType.False => JsonKind.False,
                            _ => JsonKind.Null,
                        };
                        Nodes[node].Length = reader.ValueSpan.Length;
                        break;
                }

                lastEnd = Nodes[node].End;
            }
        }

        private int Add(int at, int nameStart, int nameLength, bool nameIsEscaped)
        {
            if (Count == Nodes.Length)
            {
                var larger = new JsonTree.NodeData[Count * 2];
                Array.Copy(Nodes, larger, Count);
                Nodes = larger;
                var largerKeys = new int[Count * 2];
                Array.Copy(Keys, largerKeys, Count);
                Keys = largerKeys;
            }

            int index = Count++;
            Nodes[index] = new JsonTree.NodeData
            {
                Start = at,
                NameStart = nameLength > 0 ? nameStart : 0,
                NameLength = nameLength,
                NameIsEscaped = nameIsEscaped,
                Parent = depth == 0 ? -1 : open[depth - 1],
                FirstChild = -1,
                Next = -1,
            };
            if (depth > 0)
            {
                if (last[depth - 1] < 0) Nodes[open[depth - 1]].FirstChild = index;
                else Nodes[last[depth - 1]].Next = index;
                last[depth - 1] = index;
            }

            if (nameLength > 0) Keys[index] = KeyOf(text.Slice(nameStart + 1, nameLength - 2));
            return index;
        }

        /// <summary>Length, first, middle and last byte: tells nearly all names of one object apart.</summary>
        private static int KeyOf(ReadOnlySpan<byte> name) =>
            name.IsEmpty ? 0 : (name.Length << 24) ^ (name[0] << 16) ^ (name[name.Length / 2] << 8) ^ name[name.Length - 1];

        private void SkipDeep(ref Utf8JsonReader reader, int node)
        {
            Report(
                ReadingProblemKind.TooDeep,
                Nodes[node].Start,
                1,
                node,
                "Objects and lists are nested deeper than 64; what is inside this one is not read.",
                "No file of a book needs more than eight levels: look for a bracket too many.");
            reader.Skip();
            lastEnd = start + (int)reader.BytesConsumed;
            Nodes[node].Length = lastEnd - Nodes[node].Start;
        }

        private void CheckSurrogates(ReadOnlySpan<byte> raw, int at)
        {
            int lone = JsonText.FindLoneSurrogate(raw);
            if (lone < 0) return;
            Report(
                ReadingProblemKind.Encoding,
                at + lone,
                Math.Min(6, raw.Length - lone),
                -1,
                "This escape is half of a character (a lone surrogate).",
                "Write the character itself, or both halves of it.");
        }

        private void CheckNumber(ReadOnlySpan<byte> raw, int at)
        {
            // A double reaches 10^308: short numbers without an exponent are always within.
            if (raw.Length < 300 && raw.IndexOfAny((byte)'e', (byte)'E') < 0) return;
            if (System.Buffers.Text.Utf8Parser.TryParse(raw, out double value, out int used) && used == raw.Length
                && !double.IsInfinity(value)) return;
            Report(
                ReadingProblemKind.NumberOutOfRange,
                at,
                raw.Length,
                Count - 1,
                "This number is too large to be read.",
                "Look for digits too many, or for an exponent that slipped in.");
        }

        /// <summary>Reports names that stand twice in an object.</summary>
        private void CheckNames(int objectNode)
        {
            if (Nodes[objectNode].Kind != JsonKind.Object) return;
            int count = 0;
            for (int child = Nodes[objectNode].FirstChild; child >= 0 && count <= DenseObject; child = Nodes[child].Next) count++;
            if (count > DenseObject)
            {
                CheckManyNames(objectNode);
                return;
            }

            for (int child = Nodes[objectNode].FirstChild; child >= 0; child = Nodes[child].Next)
            {
                for (int before = Nodes[objectNode].FirstChild; before != child; before = Nodes[before].Next)
                {
                    bool same = Nodes[child].NameIsEscaped || Nodes[before].NameIsEscaped
                        ? NameOf(child) == NameOf(before)
                        : Keys[child] == Keys[before] && RawName(child).SequenceEqual(RawName(before));
                    if (!same) continue;
                    ReportDuplicate(child, before);
                    break;
                }
            }
        }

        private void CheckManyNames(int objectNode)
        {
            var seen = new Dictionary<string, int>(StringComparer.Ordinal);
            for (int child = Nodes[objectNode].FirstChild; child >= 0; child = Nodes[child].Next)
            {
                string name = NameOf(child);
                if (seen.TryGetValue(name, out int before)) ReportDuplicate(child, before);
                else seen.Add(name, child);
            }
        }

        private readonly ReadOnlySpan<byte> RawName(int node) => text.Slice(Nodes[node].NameStart + 1, Nodes[node].NameLength - 2);

        private readonly string NameOf(int node) => Nodes[node].NameIsEscaped ? JsonText.Unescape(RawName(node)) : Utf8Text.Decode(RawName(node));

        private void ReportDuplicate(int node, int first)
        {
            if (IsFull) return;
            Add(
                new ReadingProblem(
                    ReadingProblemKind.DuplicateProperty,
                    new TextSpan(Nodes[node].NameStart, Nodes[node].NameLength),
                    "",
                    $"`{ShortText.Of(NameOf(node))}` stands twice in one object; the first one counts here, other programs may take the last.",
                    "Keep the one that is meant, and take the other out.",
                    Related: new TextSpan(Nodes[first].NameStart, Nodes[first].NameLength)),
                node);
        }

        private void Report(ReadingProblemKind kind, int at, int length, int node, string message, string advice)
        {
            if (!IsFull) Add(new ReadingProblem(kind, new TextSpan(at, length), "", message, advice), node);
        }

        private readonly bool IsFull => Found is not null && Found.Count >= JsonTree.MostProblems;

        private void Add(ReadingProblem problem, int node) => (Found ??= []).Add((problem, node));

        /// <summary>
        /// Where comments stand between two values, the reader does not see that the comma is missing, or that there are two; where they
        /// stand behind a name, it does not see that the value is missing. Both are looked at here.
        /// </summary>
        /// <exception cref="JsonException">There are too few commas or too many, or a name without a value.</exception>
        private void CheckCommas(JsonTokenType next, int at)
        {
            commented = false;
            int commas = 0;
            for (int i = lastEnd; i < at; i++)
            {
                if (text[i] == ',') commas++;
                if (text[i] != '/' || i + 1 >= at) continue;
                var rest = text.Slice(i + 2, at - i - 2);
                int end = text[i + 1] == '*' ? rest.IndexOf("*/"u8) + 1 : rest.IndexOfAny((byte)'\n', (byte)'\r');
                if (end < 0) break;
                i += 2 + end;
            }

            bool ends = next is JsonTokenType.EndObject or JsonTokenType.EndArray;
            bool opens = depth == 0 || last[depth - 1] < 0;
            bool isRight = afterName
                ? commas == 0 && !ends && next != JsonTokenType.PropertyName
                : commas <= (opens ? 0 : 1) && (commas == 1 || opens || ends);
            if (!isRight) throw new JsonException();
        }

        private void ReportSyntax(JsonException broken)
        {
            bool inObject = depth > 0 && Nodes[open[depth - 1]].Kind == JsonKind.Object;
            bool isFirst = depth > 0 && last[depth - 1] < 0;
            var found = new JsonSyntax(text).Explain(lastEnd, depth, inObject, isFirst, afterName, Count > 0);
            int at = found.At >= 0 ? found.At : OffsetOf(broken);
            at = Math.Min(at, text.Length);
            // Bytes that are no UTF-8 were reported already, and are what the syntax stumbles over.
            foreach (var problem in problems)
            {
                if (problem.Kind == ReadingProblemKind.Encoding && problem.Span.Start == at) return;
            }

            int length = at < text.Length ? Utf8Text.LengthOfCharacter(text, at) : 0;
            int near = depth == 0 ? -1 : last[depth - 1] >= 0 ? last[depth - 1] : open[depth - 1];
            var related = found.Related >= 0 && found.Related < Count ? new TextSpan(Nodes[open[found.Related]].Start, 1) : default;
            if (found.Unclosed && depth > 0) related = new TextSpan(Nodes[open[depth - 1]].Start, 1);
            Add(new ReadingProblem(ReadingProblemKind.Syntax, new TextSpan(at, length), "", found.Message, found.Advice, Related: related), near);
        }

        private readonly int OffsetOf(JsonException broken)
        {
            int at = start;
            for (long line = broken.LineNumber ?? 0; line > 0; line--)
            {
                int end = text.Slice(at).IndexOf((byte)'\n');
                if (end < 0) break;
                at += end + 1;
            }

            return at + (int)(broken.BytePositionInLine ?? 0);
        }
    }
}
