namespace SpecLint.Vocabulary;

/// <summary>State at room temperature.</summary>
public enum MaterialState
{
    /// <summary>Pours.</summary>
    Liquid,

    /// <summary>Pieces.</summary>
    Solid,

    /// <summary>Powder or crystals.</summary>
    Powder,

    /// <summary>Gas.</summary>
    Gas,
}
