namespace SpecLint.Reading;

/// <summary>A JSON text as a tree whose every value keeps its place.</summary>
public sealed class JsonTree
{
    internal JsonTree(SourceFile source) => Source = source;

    /// <summary>The text.</summary>
    public SourceFile Source { get; }
}
