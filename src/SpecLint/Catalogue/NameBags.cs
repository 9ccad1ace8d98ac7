namespace SpecLint.Catalogue;

/// <summary>
/// Names by their words, whatever their order, number and spelling. A run that meets one unknown name indexes thousands, so that
/// they are kept by a sum of numbers of their words, and compared as words only where that is met.
/// </summary>
internal sealed class NameBags
{
    private const int None = -1;

    private readonly Dictionary<long, (int First, int Last)> ends;
    private readonly List<(string Slug, int Next)> names;

    /// <param name="capacity">Names that are expected.</param>
    public NameBags(int capacity = 0)
    {
        ends = new Dictionary<long, (int, int)>(capacity);
        names = new List<(string, int)>(capacity);
    }

    /// <summary>Adds a name as an id.</summary>
    public void Add(string slug)
    {
        long sum = NameWords.SumOf(slug);
        int at = names.Count;
        names.Add((slug, None));
        if (ends.TryGetValue(sum, out var known))
        {
            names[known.Last] = names[known.Last] with { Next = at };
            ends[sum] = (known.First, at);
        }
        else
        {
            ends.Add(sum, (at, at));
        }
    }

    /// <summary>The names of some words, in the order in which they were added.</summary>
    public IEnumerable<string> Of(List<string> words)
    {
        string slug = string.Join("-", words);
        if (!ends.TryGetValue(NameWords.SumOf(slug), out var known)) yield break;
        string key = KeyOf(slug);
        for (int at = known.First; at != None; at = names[at].Next)
        {
            if (KeyOf(names[at].Slug) == key) yield return names[at].Slug;
        }
    }

    /// <summary>The words in the singular and in one spelling, in the order of the alphabet.</summary>
    private static string KeyOf(string slug)
    {
        string[] words = slug.Split('-');
        for (int i = 0; i < words.Length; i++) words[i] = NameWords.Canonical(words[i]);
        Array.Sort(words, StringComparer.Ordinal);
        return string.Join("-", words);
    }
}
