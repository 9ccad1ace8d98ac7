using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Reading;

namespace SpecLint.Profile;

/// <summary>Curing salts, which an own file may only tell of in its notes: salt of the house, 0.6 % nitrite.</summary>
internal static class CuringSalts
{
    private static readonly FixedList<Hazard> Salts = [.. HazardTable.All.Where(static h => h.CuresOnly.Count > 0)];

    /// <summary>The curing salt that an own file says that it is, by the code in its name or by its notes.</summary>
    public static Hazard? Of(Ingredient own)
    {
        if (ByCode(own.Name) is { } byName) return byName;
        foreach (var note in own.Notes)
        {
            if ((InProse(note) ?? ByCode(note)) is { } noted) return noted;
        }

        return null;
    }

    /// <summary>The curing salt that a text names.</summary>
    public static Hazard? InProse(Given<string> text) =>
        text.IsGiven ? HazardNames.InProse(text.Value, static h => h.CuresOnly.Count > 0)?.Hazard : null;

    /// <summary>The curing salt whose code as an additive a text gives.</summary>
    public static Hazard? ByCode(Given<string> text)
    {
        if (!text.IsGiven || text.Value.IndexOf("E 2", StringComparison.Ordinal) < 0) return null;
        foreach (var hazard in Salts)
        {
            if (hazard.Codes.Any(code => HasCode(text.Value, code))) return hazard;
        }

        return null;
    }

    /// <summary>Whether a text holds the code of an additive; a number that goes on is no code: "E 250 ml" may be "and 250 ml".</summary>
    private static bool HasCode(string text, string code)
    {
        int at = text.IndexOf(code, StringComparison.Ordinal), end = at + code.Length;
        if (at < 0 || Phrases.IsDenied(text, at, end)) return false;
        return (at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || text[end] is ')' or ',' or '.' or ';' or ':');
    }
}
