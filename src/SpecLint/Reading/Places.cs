namespace SpecLint.Reading;

/// <summary>A run of bytes of a file's UTF-8 text.</summary>
/// <param name="Start">Offset of the first byte, from the start of the file (a byte order mark counts).</param>
/// <param name="Length">Number of bytes.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>Offset behind the last byte.</summary>
    public int End => Start + Length;
}

/// <summary>A line and column, both counted from 1; columns in UTF-16 units.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column in UTF-16 units, from 1.</param>
public readonly record struct LinePosition(int Line, int Column);

/// <summary>A place in a file of the book.</summary>
/// <param name="File">The file.</param>
/// <param name="Span">The bytes.</param>
public readonly record struct Place(SourceFile File, TextSpan Span)
{
    /// <summary>Where the place starts.</summary>
    public LinePosition Start => File.PositionOf(Span.Start);

    /// <summary>Where the place ends (the position behind its last character).</summary>
    public LinePosition End => File.PositionOf(Span.End);
}

/// <summary>A value of a file: where it stands, and its path.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Path">JSON path by item name, stable under reordering, e.g. <c>ingredients[lime-juice].amount</c>.</param>
public readonly record struct Spot(Place Place, string Path);

/// <summary>A property of a file: whether it is given, its value and its places.</summary>
/// <typeparam name="T">Type of the value.</typeparam>
public readonly struct Given<T>
{
    /// <summary>A property that is given.</summary>
    public Given(T value, TextSpan span, TextSpan name = default)
    {
        IsGiven = true;
        Value = value;
        Span = span;
        Name = name;
    }

    /// <summary>Whether the property is in the file and could be read.</summary>
    public bool IsGiven { get; }

    /// <summary>The value; meaningful only when <see cref="IsGiven"/>.</summary>
    public T Value { get; }

    /// <summary>Place of the value (a string's quotes included).</summary>
    public TextSpan Span { get; }

    /// <summary>Place of the property's name (quotes included); empty in an array.</summary>
    public TextSpan Name { get; }

    /// <summary>The value, or a fallback where it is not given.</summary>
    public T Or(T fallback) => IsGiven ? Value : fallback;
}
