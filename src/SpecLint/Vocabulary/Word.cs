namespace SpecLint.Vocabulary;

/// <summary>
/// A word of the trade as its table knows it. A word is looked up once, while a file is read; from then on it is an object
/// that can be compared by reference and asked what it means.
/// </summary>
public abstract class Word
{
    private protected Word(string id, bool isKnown)
    {
        Id = id;
        IsKnown = isKnown;
    }

    /// <summary>The word that stands for all its synonyms; of an unknown word the word itself.</summary>
    public string Id { get; }

    /// <summary>Whether the table has it. An unknown word has no trait.</summary>
    public bool IsKnown { get; }

    /// <inheritdoc/>
    public override string ToString() => Id;
}
