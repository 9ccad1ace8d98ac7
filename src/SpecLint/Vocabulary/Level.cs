namespace SpecLint.Vocabulary;

/// <summary>Levels of a finding (SARIF 2.1.0, section 3.27.10).</summary>
public enum Level
{
    /// <summary>Not reported.</summary>
    None,

    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Probably wrong.</summary>
    Warning,

    /// <summary>Wrong, or able to hurt someone.</summary>
    Error,
}

/// <summary>The names of levels.</summary>
public static class LevelNames
{
    /// <summary>A level's name (SARIF 2.1.0, section 3.27.10).</summary>
    public static string Of(Level level) => level switch
    {
        Level.Error => "error",
        Level.Warning => "warning",
        Level.Note => "note",
        _ => "none",
    };
}
