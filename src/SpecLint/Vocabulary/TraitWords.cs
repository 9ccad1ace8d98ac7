
namespace SpecLint.Vocabulary;

/// <summary>A set of at most 128 traits, each by its number.</summary>
internal readonly struct Traits
{
    private readonly ulong low;
    private readonly ulong high;

    private Traits(ulong low, ulong high) => (this.low, this.high) = (low, high);

    /// <summary>Whether a trait is in the set.</summary>
    public bool Has(int trait) => ((trait < 64 ? low : high) & (1UL << (trait & 63))) != 0;

    /// <summary>The set with all of another.</summary>
    public Traits With(Traits others) => new(low | others.low, high | others.high);

    /// <summary>The set with one more.</summary>
    public Traits With(int trait) => trait < 64 ? new(low | (1UL << trait), high) : new(low, high | (1UL << (trait & 63)));
}

/// <summary>Turns the list <c>traits</c> of a row into a set.</summary>
internal readonly struct TraitWords
{
    private readonly Dictionary<string, int> numbers;

    /// <summary>Gives each word its number.</summary>
    /// <param name="words">At most 128 words.</param>
    public TraitWords(string[] words)
    {
        numbers = new Dictionary<string, int>(words.Length, StringComparer.Ordinal);
        for (int i = 0; i < words.Length; i++) numbers.Add(words[i], i);
    }

    /// <summary>The traits of a row.</summary>
    /// <exception cref="InvalidOperationException">A trait is none of the words.</exception>
    public Traits Of(TableValue row)
    {
        var traits = default(Traits);
        if (!row.TryGet("traits", out var list)) return traits;
        foreach (var item in list.Items)
        {
            string word = item.GetText();
            if (!numbers.TryGetValue(word, out int number))
                throw new InvalidOperationException($"{row.Text("id")} has the trait {word}, which is none.");
            traits = traits.With(number);
        }

        return traits;
    }
}
