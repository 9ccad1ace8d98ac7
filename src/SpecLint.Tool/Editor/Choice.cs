namespace SpecLint.Tool.Editor;

/// <summary>What a completion is, by the numbers of the protocol.</summary>
internal enum ChoiceKind
{
    /// <summary>A unit.</summary>
    Unit = 11,

    /// <summary>A value.</summary>
    Value = 12,

    /// <summary>A word of a list.</summary>
    Word = 13,

    /// <summary>A text with places to fill in.</summary>
    Template = 15,

    /// <summary>A property.</summary>
    Property = 10,

    /// <summary>Something that a file is about.</summary>
    Item = 18,
}

/// <summary>Something that can be written at the cursor.</summary>
/// <param name="Label">What a person reads.</param>
/// <param name="Text">The text in the place of the token, quotes included.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Detail">A word beside it.</param>
/// <param name="Says">More of it, in Markdown.</param>
/// <param name="IsSnippet">Whether the text has places to fill in.</param>
internal sealed record Choice(string Label, string Text, ChoiceKind Kind, string Detail = "", string Says = "", bool IsSnippet = false);
