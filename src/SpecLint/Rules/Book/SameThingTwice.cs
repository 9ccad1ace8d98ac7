using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Linking;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Book;

[Rule("SL9003", "two-names-for-one", "Two preparations of one formula have two names", Level.Warning)]
internal sealed partial class SameThingTwice : BookRule
{
    public override void Check(BookContext context)
    {
        // Few preparations share family, items and number of steps with another; only those are looked at closely.
        var crowds = new Dictionary<long, List<Prep>>();
        foreach (var prep in context.Book.Preps)
        {
            if (prep.Ingredients.Count == 0) continue;
            long key = Formula.RoughKeyOf(prep);
            if (!crowds.TryGetValue(key, out var crowd)) crowds.Add(key, crowd = []);
            crowd.Add(prep);
        }

        foreach (var crowd in crowds.Values)
        {
            if (crowd.Count > 1) Compare(context, crowd);
        }
    }

    private static void Compare(BookContext context, List<Prep> crowd)
    {
        var groups = new Dictionary<string, List<Prep>>(StringComparer.Ordinal);
        foreach (var prep in crowd)
        {
            string key = Formula.KeyOf(prep);
            if (!groups.TryGetValue(key, out var group)) groups.Add(key, group = []);
            group.Add(prep);
        }

        foreach (var group in groups.Values)
        {
            for (int i = 1; i < group.Count; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    // Of one name they are told by the rule on names.
                    if (SameNameTwice.IsSame(group[i], group[j])
                        || Formula.Replaces(group[i], group[j])
                        || !Formula.IsSame(context.Profiles.Of(group[i]), context.Profiles.Of(group[j])))
                        continue;

                    // One ingredient alone is no formula, and a batch may be made in two sizes: only a copy counts, yield, steps and all.
                    if ((group[i].Ingredients.Count < 2 || group[i].BatchOf.IsGiven) && !Formula.IsCopy(group[i], group[j])) continue;
                    context.Report(Find(context, group[i], group[j]));
                    break;
                }
            }
        }
    }

    private static Finding Find(BookContext context, Prep second, Prep first)
    {
        int more = context.Book.UsersOf(second.Id).Count, less = context.Book.UsersOf(first.Id).Count;
        var (keep, drop) = more > less ? (second, first) : (first, second);
        return new(Rule)
        {
            At = new(second.Head, "name"),
            Key = first.Id,
            Message = $"`{second.Id}` and `{first.Id}` are made of the same {Say.Count(second.Ingredients.Count, "part")} in the same "
                + "shares, by the same steps: one thing under two names, made and dated twice.",
            Advice = $"Keep `{keep.Id}`, which {Say.Count(Math.Max(more, less), "recipe")} "
                + $"{(Math.Max(more, less) == 1 ? "uses" : "use")}, and name it instead of `{drop.Id}`.",
            Evidence = [Proof.Of("same as", first.Id, first.Head)],
            Related = [new RelatedPlace(first.Head, "the same formula")],
            Corrections = Rename(context, drop.Id, keep.Id),
        };
    }

    internal static IReadOnlyList<Correction> Rename(BookContext context, string from, string to)
    {
        var edits = new List<TextEdit>();
        foreach (var user in context.Book.UsersOf(from))
        {
            foreach (var line in LinkedBook.LinesOf(user))
            {
                if (line.Item.IsGiven && line.Item.Value == from) edits.Add(new TextEdit(user.At(line.Item.Span), $"\"{to}\""));
            }
        }

        return edits.Count == 0 ? [] : [new Correction(CorrectionGrade.Proposed, $"Name `{to}` instead of `{from}`.", edits)];
    }
}

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
        return prep.Family.OrNone().Id + "|" + string.Join("+", items) + "|" + string.Join(
            "+", prep.Method.Select(s => $"{s.Verb.Id}@{Of(s.At)}/{Of(s.To)}/{Of(s.For)}")) + "|" + Of(prep.Target?.Acid
                ?? default) + Of(prep.Target?.Brix
            ?? default);

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
