namespace SpecLint.Vocabulary;

/// <summary>How far a value can be trusted.</summary>
public enum Mark
{
    /// <summary>A bar's own value.</summary>
    House,

    /// <summary>Seen in the named source.</summary>
    Read,

    /// <summary>Recalled, to be verified.</summary>
    Memory,

    /// <summary>A fact of the trade without a source.</summary>
    CommonPractice,

    /// <summary>Worked out from read figures.</summary>
    Computed,
}
