using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

/// <summary>Compares the formulas of recipes.</summary>
internal static class Formula
{
    /// <summary>A number that recipes of one key share; another recipe may have it too.</summary>
    public static long RoughKeyOf(Prep prep)
    {
        long key = StringComparer.Ordinal.GetHashCode(prep.Family.OrNone().Id) + prep.Method.Count;
        foreach (var line in prep.Ingredients) key += PartsKey.ShareOf(line.Item.Or("?"));
        return key;
    }

    /// <summary>Family, items and steps, so that only recipes alike in them are compared.</summary>
    public static string KeyOf(Prep prep)
    {
        var items = prep.Ingredients.Select(l => $"{l.Item.Or("?")}/{l.Role}").OrderBy(i => i, StringComparer.Ordinal);
        var steps = prep.Method.Select(s => $"{s.Verb.Id}@{Of(s.At)}/{Of(s.To)}/{Of(s.For)}");
        string target = Of(prep.Target?.Acid ?? default) + Of(prep.Target?.Brix ?? default);
        return $"{prep.Family.OrNone().Id}|{string.Join("+", items)}|{string.Join("+", steps)}|{target}";

        static string Of(Given<Quantity> q) => q.IsGiven ? Say.Number(q.Value.Base) : "";
    }

    /// <summary>Whether every item has the same share of the mass in both, within 2 % of it.</summary>
    public static bool IsSame(RecipeProfile a, RecipeProfile b)
    {
        if (a.Parts.Count != b.Parts.Count) return false;
        double wholeA = 0, wholeB = 0;
        foreach (var part in a.Parts) wholeA += part.Grams.Typical;
        foreach (var part in b.Parts) wholeB += part.Grams.Typical;
        if (!(wholeA > 0) || !(wholeB > 0)) return false;
        foreach (var part in a.Parts)
        {
            bool matched = false;
            foreach (var other in b.Parts)
            {
                if (part.Line.Item.Or("") != other.Line.Item.Or("")) continue;
                double x = part.Grams.Typical / wholeA, y = other.Grams.Typical / wholeB;
                matched |= Math.Abs(x - y) <= 0.02 * Math.Max(x, y);
            }

            if (!matched) return false;
        }

        return true;
    }

    /// <summary>Whether two recipes of one formula also have the same yield and the same words in every step.</summary>
    public static bool IsCopy(Prep a, Prep b)
    {
        if (a.Yield.IsGiven != b.Yield.IsGiven
            || (a.Yield.IsGiven && Math.Abs(a.Yield.Value.Base - b.Yield.Value.Base) > 1e-6 * a.Yield.Value.Base)
            || a.Method.Count != b.Method.Count)
            return false;
        for (int i = 0; i < a.Method.Count; i++)
        {
            Step x = a.Method[i], y = b.Method[i];
            if (x.Into.Or("") != y.Into.Or("")
                || x.Until.Or("") != y.Until.Or("")
                || x.Note.Or("") != y.Note.Or("")
                || x.Vessel.Or(Vessel.None).Id != y.Vessel.Or(Vessel.None).Id)
                return false;
        }

        return true;
    }

    /// <summary>Whether one of two recipes is a later state of the other.</summary>
    public static bool Replaces(Recipe a, Recipe b) => a.Supersedes.Or("") == b.Id || b.Supersedes.Or("") == a.Id;
}
