
namespace SpecLint.Reading;

/// <summary>A word that names a unit.</summary>
/// <param name="Text">The word in lower case, with single blanks.</param>
/// <param name="Unit">The unit.</param>
/// <param name="StandsAlone">Whether it may stand without a number, meaning one of it ("top", "dash").</param>
public readonly record struct UnitWord(string Text, Unit Unit, bool StandsAlone);

/// <summary>
/// The units that quantities are read with: the fixed ones, the trade measures of the built-in table, and what a bar
/// says of its own in <c>measures</c>. Made once and shared between threads.
/// </summary>
public sealed class Measures
{
    private const int LongestWord = 40;
    private static readonly Lazy<Measures> BuiltIn = new(() => new Measures(BuiltInWords()));

    private readonly UnitWord[] words;
    private readonly int[] slots;

    private Measures(List<UnitWord> words)
    {
        this.words = [.. words];
        int size = 16;
        while (size < words.Count * 4) size *= 2;
        slots = new int[size];
        for (int i = 0; i < this.words.Length; i++) Enter(i);
    }

    /// <summary>The built-in units.</summary>
    public static Measures Default => BuiltIn.Value;

    /// <summary>All words, the built-in ones first.</summary>
    public IReadOnlyList<UnitWord> Words => words;

    /// <summary>The units of a bar: the built-in ones, with the sizes that its <c>measures</c> give and the words it adds.</summary>
    /// <param name="sizes">The sizes by word; <see langword="null"/> where there is no bar.</param>
    public static Measures For(IReadOnlyDictionary<string, Given<Quantity>>? sizes)
    {
        if (sizes is null || sizes.Count == 0) return Default;
        var changed = new Dictionary<string, Unit>(StringComparer.Ordinal);
        var added = new List<UnitWord>();
        foreach (var own in sizes)
        {
            if (!own.Value.IsGiven || !Normalise(own.Key, out string word)) continue;
            var size = own.Value.Value;
            if (size.Dimension is not (Dimension.Volume or Dimension.Mass or Dimension.Count)) continue;
            bool known = Default.TryFind(word.AsSpan(), out var found);
            if (known && IsFixed(found.Unit)) continue;
            string name = known ? found.Unit.Name : word;
            var unit = new Unit(name, size.Dimension, UnitSystem.Trade, size.Base, size.BaseLow, size.BaseHigh);
            if (known)
            {
                changed[name] = unit;
            }
            else
            {
                added.Add(new UnitWord(word, unit, StandsAlone: true));
                if (!word.EndsWith("s", StringComparison.Ordinal) && !Default.TryFind((word + "s").AsSpan(), out _))
                    added.Add(new UnitWord(word + "s", unit, StandsAlone: true));
            }
        }

        var all = new List<UnitWord>(Default.words.Length + added.Count);
        foreach (var word in Default.words)
            all.Add(changed.TryGetValue(word.Unit.Name, out var unit) ? word with { Unit = unit } : word);
        all.AddRange(added);
        return new Measures(all);
    }

    /// <summary>Whether a bar must not give the unit another size: metric units, percentages and the like.</summary>
    public static bool IsFixed(Unit unit) => unit.System is UnitSystem.Metric or UnitSystem.None
        || unit.Dimension is not (Dimension.Volume or Dimension.Mass or Dimension.Count);

    /// <summary>The unit that a word names, in any case.</summary>
    /// <param name="text">The word, without blanks around it.</param>
    /// <param name="word">The unit.</param>
    public bool TryFind(ReadOnlySpan<char> text, out UnitWord word)
    {
        Span<char> plain = stackalloc char[LongestWord];
        if (text.Length == 0 || text.Length > LongestWord)
        {
            word = default;
            return false;
        }

        for (int i = 0; i < text.Length; i++) plain[i] = Fold(text[i]);
        plain = plain.Slice(0, text.Length);
        for (int slot = Hash(plain) & (slots.Length - 1); slots[slot] != 0; slot = (slot + 1) & (slots.Length - 1))
        {
            if (!Matches(words[slots[slot] - 1].Text, plain)) continue;
            word = words[slots[slot] - 1];
            return true;
        }

        word = default;
        return false;
    }

    /// <summary>The word nearest to one that names no unit, or <see langword="null"/>.</summary>
    internal string? Nearest(string text, Func<Unit, bool>? fits)
    {
        if (!Normalise(text, out string plain)) return null;
        string? nearest = null;
        int least = NearestName.Allowed(plain.Length) + 1;
        foreach (var word in words)
        {
            if (fits is not null && !fits(word.Unit)) continue;
            int distance = NearestName.Distance(plain, word.Text, least - 1);
            if (distance >= least) continue;
            least = distance;
            nearest = word.Text;
        }

        return nearest;
    }

    internal static char Fold(char c) => c switch
    {
        >= 'A' and <= 'Z' => (char)(c | 0x20),
        '\u03BC' => 'µ',
        'º' or '˚' => '°',
        _ => c,
    };

    internal static bool IsBlank(char c) => c is ' ' or '\u00A0' or '\u2009' or '\u202F';

    private static bool Normalise(string text, out string word)
    {
        word = "";
        if (text.Length is 0 or > LongestWord) return false;
        var plain = new char[text.Length];
        for (int i = 0; i < text.Length; i++) plain[i] = Fold(text[i]);
        word = new string(plain);
        return true;
    }

    private static List<UnitWord> BuiltInWords()
    {
        var built = new List<UnitWord>();
        var taken = new Dictionary<string, Unit>(StringComparer.Ordinal);
        foreach (var entry in UnitWords.Fixed())
        {
            bool alone = entry.Unit.System == UnitSystem.Piece;
            foreach (string word in entry.Words)
            {
                taken.Add(word, entry.Unit);
                built.Add(new UnitWord(word, entry.Unit, alone));
            }
        }

        foreach (var measure in MeasureTable.Read())
        {
            // A table's unit that the code knows lends it its other words.
            Unit? unit = null;
            foreach (string word in measure.Words)
            {
                if (unit is null && taken.TryGetValue(word, out var known)) unit = known;
            }

            unit ??= measure.Unit;
            foreach (string word in measure.Words)
            {
                if (taken.ContainsKey(word)) continue;
                // "tea spoon" is no other measure than "teaspoon".
                var meant = taken.TryGetValue(word.Replace(" ", ""), out var joined) ? joined : unit;
                taken.Add(word, meant);
                built.Add(new UnitWord(word, meant, measure.StandsAlone || meant.System == UnitSystem.Piece));
            }
        }

        return built;
    }

    private void Enter(int index)
    {
        int slot = Hash(words[index].Text.AsSpan()) & (slots.Length - 1);
        while (slots[slot] != 0) slot = (slot + 1) & (slots.Length - 1);
        slots[slot] = index + 1;
    }

    private static int Hash(ReadOnlySpan<char> text)
    {
        // FNV-1a over what is no blank, so that both spellings of a word meet.
        uint hash = 2166136261;
        foreach (char c in text)
        {
            if (c != ' ') hash = (hash ^ c) * 16777619;
        }

        return (int)(hash ^ (hash >> 15));
    }

    /// <summary>Equal, where any blank of the word may be left out.</summary>
    private static bool Matches(string word, ReadOnlySpan<char> plain)
    {
        int at = 0;
        foreach (char c in word)
        {
            if (at < plain.Length && plain[at] == c) at++;
            else if (c != ' ') return false;
        }

        return at == plain.Length;
    }
}
