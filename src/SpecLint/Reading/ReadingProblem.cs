namespace SpecLint.Reading;

/// <summary>What kind of thing is wrong with a file's text or structure; each kind is a rule of family 1 or 2.</summary>
public enum ReadingProblemKind
{
    /// <summary>The text is not JSON, or no object.</summary>
    Syntax,

    /// <summary>The bytes are not UTF-8 (a lone surrogate escape counts).</summary>
    Encoding,

    /// <summary>The file is too large to be read.</summary>
    TooLarge,

    /// <summary>Values are nested too deep to be read.</summary>
    TooDeep,

    /// <summary>A property appears twice in one object.</summary>
    DuplicateProperty,

    /// <summary>A property that this kind of file does not have.</summary>
    UnknownProperty,

    /// <summary>A property that belongs to another place or kind of file.</summary>
    MisplacedProperty,

    /// <summary>A required property is missing.</summary>
    MissingProperty,

    /// <summary>A value of the wrong type.</summary>
    WrongType,

    /// <summary>A value that cannot be read (a quantity, date, id, word of a list).</summary>
    UnreadableValue,

    /// <summary>A number out of range.</summary>
    NumberOutOfRange,

    /// <summary>A decimal comma in a quantity.</summary>
    DecimalComma,

    /// <summary>A number without a unit.</summary>
    UnitMissing,

    /// <summary>The file's name makes no id.</summary>
    BadId,

    /// <summary>Something that a schema of the house asks for.</summary>
    HouseSchema,
}

/// <summary>Something wrong that reading or binding found; it becomes a finding.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Span">Where.</param>
/// <param name="Path">JSON path by item name, e.g. <c>ingredients[lime-juice].amount</c>; stable under reordering.</param>
/// <param name="Message">One sentence in words of the recipe.</param>
/// <param name="Advice">What to do.</param>
/// <param name="Replacement">Text that would put it right (of <paramref name="Span"/>), when that is certain; else <see langword="null"/>.</param>
/// <param name="Related">Another place that explains it (the first of two duplicates), or an empty span.</param>
public sealed record ReadingProblem(
    ReadingProblemKind Kind,
    TextSpan Span,
    string Path,
    string Message,
    string Advice,
    string? Replacement = null,
    TextSpan Related = default);
