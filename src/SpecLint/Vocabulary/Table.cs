using System.Buffers.Text;
using System.Collections;

namespace SpecLint.Vocabulary;

/// <summary>
/// An embedded table of data, read where it lies in memory. A start reads some thirty tables and asks for little of what stands
/// in them, so this notes only where each value starts; nothing is copied, and a text is made when it is asked for. The tables are
/// ours, and a test holds what this reads against a full reader of JSON, so it looks for no mistakes. Comments and a comma behind
/// the last value are allowed.
/// </summary>
internal sealed class Table : IDisposable
{
    private const int BytesPerNumber = 6;

    [ThreadStatic]
    private static int[]? spare;

    private readonly Resource text;

    /// <summary>
    /// Two numbers a value: where it starts; and where it ends, or for a list or an object the complement of which value comes behind
    /// it. The name of a property is the value before its own.
    /// </summary>
    private int[] places;
    private int count;
    private ListOfTexts? last;

    /// <param name="text">The bytes of the table.</param>
    public Table(Resource text)
    {
        this.text = text;
        places = spare ?? new int[Math.Max(64, text.Bytes.Length / BytesPerNumber)];
        spare = null;
        Read(text.Bytes);
    }

    /// <summary>The value that the table is.</summary>
    public TableValue Root => new(this, 0);

    /// <summary>Lends the room to the next table: no value of this one can be asked any more, but its <see cref="TableText"/>s can.</summary>
    public void Dispose()
    {
        if (spare is null || spare.Length < places.Length) spare = places;
        places = [];
    }

    /// <summary>The first byte of a value, which tells what it is.</summary>
    internal byte FirstOf(int value) => text.Bytes[places[2 * value]];

    /// <summary>The bytes of a text with its quotes, a number or a word.</summary>
    internal ReadOnlySpan<byte> BytesOf(int value) => text.Bytes.Slice(places[2 * value], places[(2 * value) + 1] - places[2 * value]);

    /// <summary>The number of the value behind a value and all that is in it.</summary>
    internal int Behind(int value) => places[(2 * value) + 1] is < 0 and var behind ? ~behind : value + 1;

    /// <summary>The number of a property's value; 0 where an object has none of that name.</summary>
    internal int Find(int value, string name)
    {
        var bytes = text.Bytes;
        int[] numbers = places;
        for (int at = value + 1, end = Behind(value); at < end; at = Behind(at + 1))
        {
            int start = numbers[2 * at] + 1;
            if (numbers[(2 * at) + 1] - start == name.Length + 1 && IsCalled(bytes.Slice(start, name.Length), name)) return at + 1;
        }

        return 0;
    }

    /// <summary>A list of texts. Row after row has the same one, as for jurisdictions: it is made once.</summary>
    internal FixedList<string> Repeated(int list)
    {
        var known = last;
        if (known is null || !IsSame(list, known.List)) last = known = new ListOfTexts(list, Tables.Texts(new TableValue(this, list)));
        return known.Texts;
    }

    private bool IsSame(int list, int other)
    {
        int end = Behind(list), otherEnd = Behind(other);
        if (end - list != otherEnd - other) return false;
        for (int i = 1; list + i < end; i++)
        {
            if (!BytesOf(list + i).SequenceEqual(BytesOf(other + i))) return false;
        }

        return true;
    }

    private sealed record ListOfTexts(int List, FixedList<string> Texts);

    /// <summary>A text that is made when it is read.</summary>
    internal TableText TextOf(int value) => new(text, places[2 * value], places[(2 * value) + 1] - places[2 * value]);

    /// <summary>Whether bytes are a name; no name in a table has anything but letters of ASCII.</summary>
    internal static bool IsCalled(ReadOnlySpan<byte> bytes, string name)
    {
        for (int i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] != name[i]) return false;
        }

        return true;
    }

    /// <summary>The text of bytes in quotes.</summary>
    internal static string TextOf(ReadOnlySpan<byte> quoted)
    {
        var inside = quoted.Slice(1, quoted.Length - 2);
        if (inside.IndexOf((byte)'\\') < 0) return Utf8Text.Decode(inside);
        var reader = new System.Text.Json.Utf8JsonReader(quoted);
        reader.Read();
        return reader.GetString()!;
    }

    private void Read(ReadOnlySpan<byte> bytes)
    {
        int at = 0, open = -1;
        while (at < bytes.Length)
        {
            byte first = bytes[at];
            if (first <= ' ' || first is (byte)',' or (byte)':')
            {
                at++;
            }
            else if (first == '"')
            {
                int end = EndOfText(bytes, at + 1);
                Add(at, end);
                at = end;
            }
            else if (first is (byte)'{' or (byte)'[')
            {
                // While it is open it notes what it stands in.
                Add(at, open);
                open = count - 1;
                at++;
            }
            else if (first is (byte)'}' or (byte)']')
            {
                int within = places[(2 * open) + 1];
                places[(2 * open) + 1] = ~count;
                open = within;
                at++;
            }
            else if (first == '/')
            {
                int line = bytes.Slice(at).IndexOf((byte)'\n');
                at = line < 0 ? bytes.Length : at + line;
            }
            else
            {
                int end = at + 1;
                while (end < bytes.Length && bytes[end] > ' ' && bytes[end] is not ((byte)',' or (byte)'}' or (byte)']')) end++;
                Add(at, end);
                at = end;
            }
        }
    }

    private void Add(int start, int end)
    {
        if ((2 * count) + 1 >= places.Length) Array.Resize(ref places, 2 * places.Length);
        places[2 * count] = start;
        places[(2 * count) + 1] = end;
        count++;
    }

    /// <summary>Where a text ends, behind its closing quote.</summary>
    private static int EndOfText(ReadOnlySpan<byte> bytes, int at)
    {
        while (true)
        {
            at += bytes.Slice(at).IndexOfAny((byte)'"', (byte)'\\');
            if (bytes[at] == '"') return at + 1;
            at += 2;
        }
    }
}

/// <summary>A value in a <see cref="Table"/>; it can be asked until the table is closed.</summary>
internal readonly struct TableValue
{
    private readonly Table table;
    private readonly int number;

    internal TableValue(Table table, int number)
    {
        this.table = table;
        this.number = number;
    }

    /// <summary>Whether it is a text.</summary>
    public bool IsText => First == '"';

    /// <summary>Whether it is a number.</summary>
    public bool IsNumber => First is (byte)'-' or (>= (byte)'0' and <= (byte)'9');

    /// <summary>Whether it is the word true.</summary>
    public bool IsTrue => First == 't';

    /// <summary>Whether it is a list.</summary>
    public bool IsList => First == '[';

    /// <summary>Whether it is an object.</summary>
    public bool IsObject => First == '{';

    /// <summary>Its text.</summary>
    public string GetText() => Table.TextOf(table.BytesOf(number));

    /// <summary>Its text, made when it is read.</summary>
    public TableText GetTextLater() => table.TextOf(number);

    /// <summary>Its number; <see cref="double.NaN"/> where it is none.</summary>
    public double GetNumber() => IsNumber && Utf8Parser.TryParse(table.BytesOf(number), out double value, out _) ? value : double.NaN;

    /// <summary>Looks for a property.</summary>
    public bool TryGet(string name, out TableValue value)
    {
        int found = table.Find(number, name);
        value = found == 0 ? default : new TableValue(table, found);
        return found != 0;
    }

    /// <summary>A property.</summary>
    /// <exception cref="InvalidOperationException">There is none of that name: a fault of the build.</exception>
    public TableValue Get(string name) =>
        TryGet(name, out var value) ? value : throw new InvalidOperationException($"A row of a table lacks {name}.");

    /// <summary>Whether it is this text; it has only letters and blanks of ASCII.</summary>
    public bool Is(string other)
    {
        if (!IsText) return false;
        var bytes = table.BytesOf(number);
        return bytes.Length == other.Length + 2 && Table.IsCalled(bytes.Slice(1, other.Length), other);
    }

    /// <summary>Its texts, of a list that row after row has.</summary>
    public FixedList<string> GetRepeatedTexts() => table.Repeated(number);

    /// <summary>What a list holds.</summary>
    public TableItems Items => new(table, number, step: 1);

    /// <summary>How many values a list holds.</summary>
    public int Count
    {
        get
        {
            int count = 0;
            foreach (var _ in Items) count++;
            return count;
        }
    }

    /// <summary>The properties of an object, in the order written.</summary>
    public IEnumerable<(string Name, TableValue Value)> Properties
    {
        get
        {
            foreach (var name in new TableItems(table, number, step: 2)) yield return (name.GetText(), new TableValue(table, name.number + 1));
        }
    }

    private byte First => table is null ? (byte)0 : table.FirstOf(number);
}

/// <summary>The values in a list; a loop over them makes no object. The default is a list without any.</summary>
internal readonly struct TableItems : IEnumerable<TableValue>
{
    private readonly Table table;
    private readonly int list, step;

    /// <param name="table">The table.</param>
    /// <param name="list">The number of the list or object.</param>
    /// <param name="step">1 for the values of a list, 2 for the names of an object.</param>
    internal TableItems(Table table, int list, int step)
    {
        this.table = table;
        this.list = list;
        this.step = step;
    }

    /// <summary>Walks the values.</summary>
    public Walk GetEnumerator() => new(table, list, step);

    IEnumerator<TableValue> IEnumerable<TableValue>.GetEnumerator() => GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>A walk through the values.</summary>
    internal struct Walk : IEnumerator<TableValue>
    {
        private readonly Table table;
        private readonly int step, end;
        private int at, next;

        internal Walk(Table table, int list, int step)
        {
            this.table = table;
            this.step = step;
            end = table is null ? 0 : table.Behind(list);
            next = list + 1;
        }

        /// <inheritdoc/>
        public readonly TableValue Current => new(table, at);

        /// <inheritdoc/>
        readonly object IEnumerator.Current => Current;

        /// <inheritdoc/>
        public bool MoveNext()
        {
            if (next >= end) return false;
            at = next;
            next = table.Behind(at + step - 1);
            return true;
        }

        /// <inheritdoc/>
        public readonly void Reset() => throw new NotSupportedException();

        /// <inheritdoc/>
        public readonly void Dispose()
        {
        }
    }
}

/// <summary>A text of a table that hardly a run reads, as the source of a figure: it is made when somebody does.</summary>
internal sealed class TableText
{
    private readonly Resource? table;
    private readonly int start, length;
    private string? text;

    /// <param name="table">The table.</param>
    /// <param name="start">Where its quotes begin.</param>
    /// <param name="length">Bytes, with the quotes.</param>
    internal TableText(Resource table, int start, int length)
    {
        this.table = table;
        this.start = start;
        this.length = length;
    }

    /// <summary>A text that is at hand.</summary>
    internal TableText(string text) => this.text = text;

    /// <summary>None.</summary>
    public static TableText Empty { get; } = new("");

    /// <summary>The text.</summary>
    public static implicit operator string(TableText text) => text.ToString();

    /// <summary>Its characters.</summary>
    public int Length => ToString().Length;

    /// <inheritdoc/>
    public override string ToString() => text ??= Table.TextOf(table!.Bytes.Slice(start, length));
}
