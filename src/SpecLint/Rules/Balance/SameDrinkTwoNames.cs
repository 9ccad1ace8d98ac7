using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3018", "same-drink-two-names", "Two drinks of the same parts in the same ratios", Level.Note)]
[Limit("same-drink-part", "Apart")]
internal sealed partial class SameDrinkTwoNames : BookRule
{
    /// <summary>Drinks of one set of parts that are compared with each other; in a larger crowd, alike neighbours still meet.</summary>
    private const int MostOfOneSet = 200;

    public override void Check(BookContext context)
    {
        // Few drinks share their parts with another, so that most are only told apart by a number made of them.
        var sets = new Dictionary<long, Set>(context.Book.Drinks.Count);
        foreach (var drink in context.Book.Drinks)
        {
            if (context.Profiles.PartsKeyOf(drink) is not { } key) continue;
            if (!sets.TryGetValue(key, out var set))
            {
                sets.Add(key, new Set(drink));
                continue;
            }

            var vector = Vector.Of(context.Profiles, drink);
            var twin = set.Twin(context.Profiles, vector, out double apart);
            set.Add(vector);
            if (twin is null) continue;
            context.Report(new(Rule)
            {
                Place = drink.Head,
                Path = "name",
                Key = twin.Id,
                Message = $"It has the parts of `{twin.Id}` in the same ratios (no share is over "
                    + $"{Say.Number(Math.Max(1, Math.Ceiling(apart)), 0)} % apart; up to {Say.Number(Apart.Value, 0)} % counts as the "
                    + $"same), the same technique and the same garnish: one drink under two names ({Apart.Source}).",
                Advice = "Keep one of them, or write down what sets them apart. A new version names the old one in `supersedes`.",
                Evidence = [Proof.Of("largest difference of a share", apart, "%"), Proof.Of(Apart)],
                Related = [new RelatedPlace(twin.Head, "the other name")],
            });
        }
    }

    /// <summary>Drinks of one key.</summary>
    private sealed class Set(Drink first)
    {
        private List<Vector>? vectors;

        /// <summary>The first drink that is like another and neither its older nor its newer version.</summary>
        public Drink? Twin(ProfileSet profiles, Vector vector, out double apart)
        {
            apart = 0;
            vectors ??= [Vector.Of(profiles, first)];
            foreach (var other in vectors)
            {
                if (Replaces(other.Drink, vector.Drink) || Replaces(vector.Drink, other.Drink)) continue;
                apart = Vector.Apart(vector, other);
                if (apart <= Apart.Value) return other.Drink;
            }

            return null;
        }

        private static bool Replaces(Drink later, Drink earlier) => later.Supersedes.IsGiven && later.Supersedes.Value == earlier.Id;

        public void Add(Vector vector)
        {
            if (vectors!.Count < MostOfOneSet) vectors.Add(vector);
        }
    }

    /// <summary>A drink as shares of its parts.</summary>
    private sealed class Vector
    {
        private readonly List<(string Item, double Share)> parts = [];
        private readonly TechniqueKind technique;

        private Vector(Drink drink, TechniqueKind technique)
        {
            Drink = drink;
            this.technique = technique;
        }

        public Drink Drink { get; }

        public static Vector Of(ProfileSet profiles, Drink drink)
        {
            var vector = new Vector(drink, Techniques.Of(drink).Kind);
            double sum = 0;
            foreach (var part in profiles.PartsOf(drink))
            {
                if (!PartsKey.Counts(part)) continue;
                sum += part.Grams.Typical;
                vector.parts.Add((part.Item!.Id, part.Grams.Typical));
            }

            vector.parts.Sort(static (a, b) => string.CompareOrdinal(a.Item, b.Item));
            for (int i = 0; i < vector.parts.Count; i++) vector.parts[i] = (vector.parts[i].Item, vector.parts[i].Share / sum);
            return vector;
        }

        /// <summary>
        /// The largest difference of a share, % of the larger; infinite for other parts, another technique or another garnish (an
        /// olive and an onion make two drinks of one mix). Glass and rim may differ.
        /// </summary>
        public static double Apart(Vector a, Vector b)
        {
            if (a.technique != b.technique || a.parts.Count != b.parts.Count || !SameGarnish(a.Drink, b.Drink))
                return double.PositiveInfinity;
            double most = 0;
            for (int i = 0; i < a.parts.Count; i++)
            {
                if (a.parts[i].Item != b.parts[i].Item) return double.PositiveInfinity;
                double larger = Math.Max(a.parts[i].Share, b.parts[i].Share);
                if (larger > 0) most = Math.Max(most, 100 * Math.Abs(a.parts[i].Share - b.parts[i].Share) / larger);
            }

            return most;
        }

        private static bool SameGarnish(Drink a, Drink b)
        {
            // A garnish that one of them does not state may be the same.
            if (a.Garnish.Count == 0 || b.Garnish.Count == 0) return true;
            if (a.Garnish.Count != b.Garnish.Count) return false;
            foreach (var line in a.Garnish)
            {
                bool found = false;
                foreach (var other in b.Garnish) found |= line.Item.Or("") == other.Item.Or("");
                if (!found) return false;
            }

            return true;
        }
    }
}
