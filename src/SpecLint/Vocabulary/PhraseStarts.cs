namespace SpecLint.Vocabulary;

/// <summary>
/// How many words the longest of some phrases has that begins with a word: no run of words that is longer need be put together to be
/// looked up, and none at all behind most words.
/// </summary>
internal sealed class PhraseStarts
{
    private readonly Dictionary<string, int> longest = new(StringComparer.Ordinal);

    /// <param name="phrases">Phrases of plain words, parted by single blanks.</param>
    public PhraseStarts(IEnumerable<string> phrases)
    {
        foreach (string phrase in phrases)
        {
            string[] words = phrase.Split(' ');
            longest[words[0]] = Math.Max(words.Length, LongestFrom(words[0]));
        }
    }

    /// <summary>Words of the longest phrase that begins with a word; 0 where none does.</summary>
    public int LongestFrom(string word) => longest.TryGetValue(word, out int length) ? length : 0;
}
