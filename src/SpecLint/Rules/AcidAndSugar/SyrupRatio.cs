using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

/// <summary>The ratio of sweetener to water of a syrup: as its name says, and as it is.</summary>
internal static class SyrupRatio
{
    /// <summary>
    /// The ratio that a name, an id or a note says ("2:1", "honey-syrup-3-1", "two parts of sugar to one of water"); NaN where none does.
    /// </summary>
    public static double Named(Prep prep)
    {
        if (prep.Name.IsGiven && InWords(prep.Name.Value) is var byName && !double.IsNaN(byName)) return byName;
        if (InId(prep.Id) is var byId && !double.IsNaN(byId)) return byId;
        foreach (var note in prep.Notes)
        {
            if (note.IsGiven && InParts(note.Value) is var byNote && !double.IsNaN(byNote)) return byNote;
        }

        return double.NaN;
    }

    /// <summary>Words between a count and what it counts ("two parts of sugar").</summary>
    private const int MostBetween = 3;

    private const int MostParts = 3;

    /// <summary>The ratio of parts that a sentence says of sugar and water; NaN where it says none.</summary>
    private static double InParts(string text)
    {
        string[] words = text.Split([' ', ',', ';', '.', ':', '(', ')', '\'', '’', '-', '\n'], StringSplitOptions.RemoveEmptyEntries);
        return CountBefore(words, AmountWords.IsSugar) is > 0 and var sugar && CountBefore(words, AmountWords.IsWater) is > 0 and var water
            ? (double)sugar / water
            : double.NaN;
    }

    private static int CountBefore(string[] words, Func<string, bool> isThing)
    {
        for (int i = 0; i < words.Length; i++)
        {
            if (!isThing(words[i])) continue;
            for (int j = i - 1; j >= 0 && j >= i - 1 - MostBetween; j--)
            {
                if (NumberWords.OfWord(Slugs.Of(words[j])) is >= 1 and <= MostParts and var count) return (int)count;
                if (words[j].Length == 1 && words[j][0] is >= '1' and <= '9') return words[j][0] - '0';
                if (isThing(words[j])) break;
            }

            return 0;
        }

        return 0;
    }

    /// <summary>The sweetener and the water of a syrup of two parts; <see langword="null"/> where it is no such syrup.</summary>
    public static (Part Sweetener, Part Water)? Parts(RecipeContext context, Prep prep)
    {
        if (!prep.Family.OrNone().IsSyrup) return null;
        Part? sweet = null, water = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || !part.Line.Amount.IsGiven) continue;
            if (part.Material is { Kind.Sweetens: true })
            {
                if (sweet is not null) return null;
                sweet = part;
            }
            else if (part.Material is { Kind: { IsWater: true } or { IsBrew: true } })
            {
                if (water is not null) return null;
                water = part;
            }
        }

        return sweet is null || water is null ? null : (sweet, water);
    }

    private static double InWords(string name)
    {
        for (int i = 1; i < name.Length - 1; i++)
        {
            if (name[i] is not (':' or '∶')) continue;
            int a = i - 1, b = i + 1;
            while (a >= 0 && name[a] == ' ') a--;
            while (b < name.Length && name[b] == ' ') b++;
            if (a < 0 || b >= name.Length || !IsDigit(name[a]) || !IsDigit(name[b])) continue;
            if ((a > 0 && IsDigit(name[a - 1])) || (b + 1 < name.Length && IsDigit(name[b + 1]))) continue;
            return Ratio(name[a], name[b]);
        }

        return double.NaN;
    }

    private static double InId(string id)
    {
        int n = id.Length;
        return n >= 4 && id[n - 4] == '-' && IsDigit(id[n - 3]) && id[n - 2] == '-' && IsDigit(id[n - 1])
            ? Ratio(id[n - 3], id[n - 1])
            : double.NaN;
    }

    private static double Ratio(char a, char b) => b == '0' || a == '0' ? double.NaN : (a - '0') / (double)(b - '0');

    private static bool IsDigit(char c) => c is >= '0' and <= '9';

    /// <summary>Whether an amount is a volume.</summary>
    public static bool IsVolume(Part part) => part.Line.Amount.Value.Dimension == Dimension.Volume;
}
