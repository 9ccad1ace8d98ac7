using SpecLint.Reports;

namespace SpecLint.Bench;

/// <summary>What somebody works on at the bench: a recipe as lines of text, or the file of one.</summary>
/// <param name="Text">The text as typed.</param>
public sealed record BenchEntry(string Text)
{
    /// <summary>Path of the file that the text is, where a file was opened; empty where it is lines.</summary>
    public string Path { get; init; } = "";

    /// <summary>Which recipe of the text, from 0.</summary>
    public int Which { get; init; }

    /// <summary>
    /// Whether only the files that the recipe is made of are checked with it, and nothing is looked up for names that are not known: an
    /// answer while typing.
    /// </summary>
    public bool Quick { get; init; }

    /// <summary>Units of volume and temperature.</summary>
    public DisplayUnits Units { get; init; } = DisplayUnits.Metric;

    /// <summary>Whether the text is the file itself, not lines.</summary>
    public bool IsFile => Path.Length > 0 || Text.TrimStart().StartsWith("{", StringComparison.Ordinal);
}
