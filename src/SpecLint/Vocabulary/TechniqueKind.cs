namespace SpecLint.Vocabulary;

/// <summary>How a drink is chilled and diluted.</summary>
public enum TechniqueKind
{
    /// <summary>Not known: the recipe has no method and no style that tells.</summary>
    Unknown,

    /// <summary>No ice touches it.</summary>
    NoIce,

    /// <summary>Shaken with ice.</summary>
    Shaken,

    /// <summary>Stirred with ice and strained.</summary>
    Stirred,

    /// <summary>Built on ice in the glass.</summary>
    Built,

    /// <summary>Thrown between vessels over ice.</summary>
    Thrown,

    /// <summary>Blended with ice.</summary>
    Blended,

    /// <summary>Swizzled with crushed ice.</summary>
    Swizzled,
}
