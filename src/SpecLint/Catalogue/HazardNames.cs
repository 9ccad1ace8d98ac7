
namespace SpecLint.Catalogue;

/// <summary>A hazard that a text names.</summary>
/// <param name="Hazard">The hazard.</param>
/// <param name="Start">Where the name starts in the text.</param>
/// <param name="Length">Length of the name in the text.</param>
internal readonly record struct NamedHazard(Hazard Hazard, int Start, int Length)
{
    /// <summary>The name as the text has it.</summary>
    public string In(string text) => text.Substring(Start, Length);
}

/// <summary>
/// Finds hazards by name in ids, names and prose: scientific, English and trade names, as whole words, in any case, with or
/// without hyphens and apostrophes, singular or plural. A name that the text itself denies ("no foxglove", "foxglove-free",
/// "instead of foxglove") is not one.
/// </summary>
internal static class HazardNames
{
    private static readonly Lazy<Dictionary<uint, List<Name>>> Everything = new(() => Index(static _ => true));
    private static readonly Lazy<Dictionary<uint, List<Name>>> Prose = new(() => Index(static h => h.IsNamedInProse));

    private sealed record Name(Hazard Hazard, uint[] Words);

    /// <summary>The first hazard that an id or a short name names, of all in the table.</summary>
    /// <param name="text">An id or name.</param>
    /// <param name="isSuch">Which hazards count.</param>
    public static NamedHazard? InName(string text, Func<Hazard, bool> isSuch) => Find(Everything.Value, text, 0, text.Length, isSuch);

    /// <summary>The same between two places of a longer text.</summary>
    public static NamedHazard? InName(string text, int from, int to, Func<Hazard, bool> isSuch) => Find(Everything.Value, text, from, to, isSuch);

    /// <summary>The first hazard that a sentence names: only what kills or maims whoever meets it is looked for in prose.</summary>
    /// <param name="text">A note, an end point, a vessel, words of a menu.</param>
    /// <param name="isSuch">Which hazards count.</param>
    public static NamedHazard? InProse(string text, Func<Hazard, bool> isSuch) => Find(Prose.Value, text, 0, text.Length, isSuch);

    private static NamedHazard? Find(Dictionary<uint, List<Name>> index, string text, int from, int to, Func<Hazard, bool> isSuch)
    {
        NamedHazard? best = null;
        int at = from;
        while (NextWord(text, ref at, out int start, out uint hash) && start < to)
        {
            if (index.TryGetValue(hash, out var names))
            {
                foreach (var name in names)
                {
                    // The longest of the names that start here: "belladonna lily" is not "belladonna".
                    if (!isSuch(name.Hazard) || EndOf(name, text, at) is not { } end || end > to || Phrases.IsDenied(text, start, end)) continue;
                    if (best is null || end - start > best.Value.Length) best = new NamedHazard(name.Hazard, start, end - start);
                }
            }

            if (best is not null) return best;
        }

        return null;
    }

    /// <summary>End of a name whose first word ends at a place; <see langword="null"/> where the text goes on otherwise.</summary>
    private static int? EndOf(Name name, string text, int at)
    {
        for (int w = 1; w < name.Words.Length; w++)
        {
            if (!NextWord(text, ref at, out _, out uint hash) || hash != name.Words[w]) return null;
        }

        return at;
    }

    private static Dictionary<uint, List<Name>> Index(Func<Hazard, bool> isSuch)
    {
        var index = new Dictionary<uint, List<Name>>();
        foreach (var hazard in HazardTable.All)
        {
            if (!isSuch(hazard)) continue;
            Add(index, hazard, hazard.Id);
            Add(index, hazard, hazard.Name);
            foreach (string name in hazard.Names) Add(index, hazard, name);
        }

        return index;
    }

    private static void Add(Dictionary<uint, List<Name>> index, Hazard hazard, string text)
    {
        var words = new List<uint>();
        int at = 0;
        while (NextWord(text, ref at, out _, out uint hash)) words.Add(hash);
        if (words.Count == 0) return;
        if (!index.TryGetValue(words[0], out var names)) index.Add(words[0], names = []);
        names.Add(new Name(hazard, [.. words]));
    }

    private static bool IsLetter(char c) => char.IsLetterOrDigit(c);

    /// <summary>The next word from a place on, with the hash of its stem: lower case, without apostrophes, in the singular.</summary>
    private static bool NextWord(string text, ref int at, out int start, out uint hash)
    {
        while (at < text.Length && !IsLetter(text[at])) at++;
        start = at;
        hash = 2166136261;
        if (at == text.Length) return false;
        int end = at;
        while (end < text.Length && (IsLetter(text[end]) || (text[end] is '\'' or '’' && end + 1 < text.Length && IsLetter(text[end + 1])))) end++;
        var (stem, ending) = Plurals.Singular(text, start, end);
        for (int i = start; i < stem; i++)
        {
            char c = char.ToLowerInvariant(text[i]);
            if (c is not ('\'' or '’')) hash = (hash ^ c) * 16777619;
        }

        foreach (char c in ending) hash = (hash ^ c) * 16777619;
        at = end;
        return true;
    }
}
