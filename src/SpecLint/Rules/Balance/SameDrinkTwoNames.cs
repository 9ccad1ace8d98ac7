using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

/// <summary>SL3018: two drinks of the same parts in the same ratios.</summary>
internal sealed class SameDrinkTwoNames : BookRule
{
    private static readonly Limit Likeness = Limits.Of("same-drink-likeness");

    private static readonly RuleInfo Rule = new("SL3018", "same-drink-two-names", "Two drinks of the same parts in the same ratios", Level.Note)
    {
        Limits = [Likeness.Id],
    };

    /// <summary>Drinks of one set of parts that are compared with each other; in a larger crowd, alike neighbours still meet.</summary>
    private const int MostOfOneSet = 200;

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(BookContext context)
    {
        // Few drinks share their parts with another, so that most are only told apart by a number made of them.
        var sets = new Dictionary<long, Set>(context.Book.Drinks.Count);
        foreach (var drink in context.Book.Drinks)
        {
            var profile = context.Profiles.Of(drink);
            if (KeyOf(profile) is not { } key) continue;
            if (!sets.TryGetValue(key, out var set))
            {
                sets.Add(key, new Set(drink));
                continue;
            }

            var vector = Vector.Of(profile, drink);
            var twin = set.Twin(context.Profiles, vector, out double likeness);
            set.Add(vector);
            if (twin is null) continue;
            context.Report(new Finding(Rule)
            {
                Place = drink.Head,
                Subject = drink.Id,
                Path = "name",
                Key = twin.Id,
                Message = $"It has the parts and ratios of `{twin.Id}` (likeness {Say.Number(likeness, 3)}, over {Say.Number(Likeness.Value, 3)}) and the same technique: one drink under two names ({Likeness.Source}).",
                Advice = "Keep one of them, or write down what sets them apart; a new version names the old one in `supersedes`.",
                Evidence = [Proof.Of("likeness", likeness, "1"), Proof.Of(Likeness)],
                Related = [new RelatedPlace(twin.Head, "the other name")],
            });
        }
    }

    private static bool Counts(Part part) => part.Phase is PartPhase.Mix or PartPhase.Top or PartPhase.TakenOut && part.Item is not null && part.IsWeighed;

    /// <summary>A number that drinks of one technique and one set of parts share; <see langword="null"/> where there is nothing to compare.</summary>
    private static long? KeyOf(RecipeProfile profile)
    {
        int count = 0;
        double sum = 0;
        long key = (long)profile.Technique;
        foreach (var part in profile.Parts)
        {
            if (!Counts(part)) continue;
            count++;
            sum += part.Grams.Typical;
            key += Book.Formula.ShareOfKey(part.Item!.Id);
        }

        return count < 2 || sum <= 0 ? null : key;
    }

    /// <summary>Drinks of one key.</summary>
    private sealed class Set(Drink first)
    {
        private List<Vector>? vectors;

        /// <summary>The first drink that is like another and neither its older nor its newer version.</summary>
        public Drink? Twin(ProfileSet profiles, Vector vector, out double likeness)
        {
            likeness = 0;
            vectors ??= [Vector.Of(profiles.Of(first), first)];
            foreach (var other in vectors)
            {
                if (other.Drink.Supersedes.IsGiven && other.Drink.Supersedes.Value == vector.Drink.Id) continue;
                if (vector.Drink.Supersedes.IsGiven && vector.Drink.Supersedes.Value == other.Drink.Id) continue;
                likeness = Vector.Cosine(vector, other);
                if (likeness > Likeness.Value) return other.Drink;
            }

            return null;
        }

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

        public static Vector Of(RecipeProfile profile, Drink drink)
        {
            var vector = new Vector(drink, profile.Technique);
            double sum = 0;
            foreach (var part in profile.Parts)
            {
                if (!Counts(part)) continue;
                sum += part.Grams.Typical;
                vector.parts.Add((part.Item!.Id, part.Grams.Typical));
            }

            vector.parts.Sort(static (a, b) => string.CompareOrdinal(a.Item, b.Item));
            for (int i = 0; i < vector.parts.Count; i++) vector.parts[i] = (vector.parts[i].Item, vector.parts[i].Share / sum);
            return vector;
        }

        /// <summary>1 for the same shares, 0 for other parts or another technique; garnish, egg and glass may differ.</summary>
        public static double Cosine(Vector a, Vector b)
        {
            if (a.technique != b.technique || a.parts.Count != b.parts.Count) return 0;
            double dot = 0, aa = 0, bb = 0;
            for (int i = 0; i < a.parts.Count; i++)
            {
                if (a.parts[i].Item != b.parts[i].Item) return 0;
                dot += a.parts[i].Share * b.parts[i].Share;
                aa += a.parts[i].Share * a.parts[i].Share;
                bb += b.parts[i].Share * b.parts[i].Share;
            }

            return dot / Math.Sqrt(aa * bb);
        }
    }
}
