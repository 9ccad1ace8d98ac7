namespace SpecLint.Vocabulary;

/// <summary>The table of vessels and of the states they are in, and how a text is read by it.</summary>
internal static class VesselTable
{
    /// <summary>Words that deny the one behind them, those that may stand between, and those that deny the one before.</summary>
    private static readonly string[] Negators, Fillers, Likenesses;

    /// <summary>Phrases by their first word.</summary>
    private static readonly Dictionary<string, List<Phrase>> ByFirst = new(StringComparer.Ordinal);

    static VesselTable()
    {
        var traits = new TraitWords([.. Enum.GetNames(typeof(Vessel.Trait)).Select(static t => char.ToLowerInvariant(t[0]) + t.Substring(1))]);
        var types = new List<VesselType>();
        using var document = Tables.Open("vessels");
        foreach (var row in document.Root.Get("vessels").Items)
        {
            var type = new VesselType(
                row.Text("id"), row.Text("name"), row.Texts("aliases"), row.Flag("forPressure"), row.Number("ratingBar"),
                row.Text("source"), row.Mark());
            types.Add(type);
            foreach (string name in (string[])[type.Id, type.Name, .. type.Aliases]) Add(name, type, traits.Of(row));
        }

        foreach (var row in document.Root.Get("states").Items)
        {
            foreach (string word in row.Texts("words")) Add(word, null, traits.Of(row));
        }

        Negators = [.. document.Root.Texts("denying").Select(Slugs.Of)];
        (Fillers, Likenesses) = ([.. document.Root.Texts("between")], [.. document.Root.Texts("likeness")]);
        foreach (var list in ByFirst.Values) list.Sort(static (a, b) => b.Words.Length.CompareTo(a.Words.Length));
        All = types;
        Words = [.. types.SelectMany(static t => (string[])[t.Id, .. t.Aliases])];
    }

    /// <summary>All types, in the order of the table.</summary>
    public static IReadOnlyList<VesselType> All { get; }

    /// <summary>Ids and other names of all types.</summary>
    public static IReadOnlyList<string> Words { get; }

    /// <summary>The vessel that a text tells.</summary>
    public static Vessel Read(string text)
    {
        string[] words = Split(text);
        VesselType? type = null;
        var traits = default(Traits);
        for (int at = 0; at < words.Length;)
        {
            if (PhraseAt(words, at) is not { } phrase)
            {
                at++;
                continue;
            }

            int end = at + phrase.Words.Length;
            if (!IsDenied(words, at, end))
            {
                type ??= phrase.Type;
                traits = traits.With(phrase.Traits);
            }

            at = end;
        }

        return new Vessel(text, type, Rated(text), traits);
    }

    /// <summary>The type that a text, or what stands before its first comma, is the name of.</summary>
    private static VesselType? Rated(string text)
    {
        if (TypeOf(Split(text)) is { } whole) return whole;
        int comma = text.IndexOf(',');
        return comma > 0 ? TypeOf(Split(text.Substring(0, comma))) : null;
    }

    private static VesselType? TypeOf(string[] words) =>
        PhraseAt(words, 0) is { Type: { } type } phrase && phrase.Words.Length == words.Length ? type : null;

    /// <summary>The longest phrase of the table that starts at a word.</summary>
    private static Phrase? PhraseAt(string[] words, int at)
    {
        if (at >= words.Length
            || (!ByFirst.TryGetValue(words[at], out var phrases) && !ByFirst.TryGetValue(Singular(words[at]), out phrases))) return null;
        foreach (var phrase in phrases)
        {
            if (Matches(words, at, phrase.Words)) return phrase;
        }

        return null;
    }

    /// <summary>Whether the words of a phrase stand there; the last may be in the plural.</summary>
    private static bool Matches(string[] words, int at, string[] phrase)
    {
        if (at + phrase.Length > words.Length) return false;
        for (int i = 0; i < phrase.Length; i++)
        {
            string word = words[at + i];
            if (word != phrase[i] && !(i == phrase.Length - 1 && (word == phrase[i] + "s" || word == phrase[i] + "es"))) return false;
        }

        return true;
    }

    private static string Singular(string word) =>
        word.EndsWith("es", StringComparison.Ordinal)
            && !ByFirst.ContainsKey(word.Substring(0, word.Length - 1)) ? word.Substring(0, word.Length - 2)
        : word.EndsWith("s", StringComparison.Ordinal) ? word.Substring(0, word.Length - 1) : word;

    private static bool IsDenied(string[] words, int at, int end)
    {
        if (end < words.Length && Likenesses.Contains(words[end])) return true;
        int before = at - 1;
        while (before >= 0 && Fillers.Contains(words[before])) before--;
        return before >= 0 && Negators.Contains(words[before]);
    }

    private static void Add(string name, VesselType? type, Traits traits)
    {
        var phrase = new Phrase(Split(name), type, traits);
        if (!ByFirst.TryGetValue(phrase.Words[0], out var list)) ByFirst.Add(phrase.Words[0], list = []);
        if (!list.Exists(p => p.Words.SequenceEqual(phrase.Words))) list.Add(phrase);
    }

    private static string[] Split(string text) => Slugs.Of(text).Split(['-'], StringSplitOptions.RemoveEmptyEntries);

    private sealed record Phrase(string[] Words, VesselType? Type, Traits Traits);
}
