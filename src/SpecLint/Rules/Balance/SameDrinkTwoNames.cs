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
        var sets = new Dictionary<string, List<Vector>>(StringComparer.Ordinal);
        foreach (var drink in context.Book.Drinks)
        {
            if (Vector.Of(context.Profiles.Of(drink), drink) is not { } vector) continue;
            if (!sets.TryGetValue(vector.Key, out var list)) sets.Add(vector.Key, list = []);
            Vector? twin = null;
            double likeness = 0;
            foreach (var other in list)
            {
                if (other.Drink.Supersedes.IsGiven && other.Drink.Supersedes.Value == drink.Id) continue;
                if (drink.Supersedes.IsGiven && drink.Supersedes.Value == other.Drink.Id) continue;
                likeness = Vector.Cosine(vector, other);
                if (likeness <= Likeness.Value) continue;
                twin = other;
                break;
            }

            if (list.Count < MostOfOneSet) list.Add(vector);
            if (twin is null) continue;
            context.Report(new Finding(Rule)
            {
                Place = drink.Head,
                Subject = drink.Id,
                Path = "name",
                Key = twin.Drink.Id,
                Message = $"It has the parts and ratios of `{twin.Drink.Id}` (likeness {Say.Number(likeness, 3)}, over {Say.Number(Likeness.Value, 3)}) and the same technique: one drink under two names ({Likeness.Source}).",
                Advice = "Keep one of them, or write down what sets them apart; a new version names the old one in `supersedes`.",
                Evidence = [Proof.Of("likeness", likeness, "1"), Proof.Of(Likeness)],
                Related = [new RelatedPlace(twin.Drink.Head, "the other name")],
            });
        }
    }

    /// <summary>A drink as shares of its parts.</summary>
    private sealed class Vector
    {
        private readonly List<(string Item, double Share)> parts = [];

        private Vector(Drink drink) => Drink = drink;

        public Drink Drink { get; }

        public string Key { get; private set; } = "";

        public static Vector? Of(RecipeProfile profile, Drink drink)
        {
            var vector = new Vector(drink);
            double sum = 0;
            foreach (var part in profile.Parts)
            {
                if (part.Phase is not (PartPhase.Mix or PartPhase.Top or PartPhase.TakenOut) || part.Item is null || !part.IsWeighed) continue;
                sum += part.Grams.Typical;
                vector.parts.Add((part.Item.Id, part.Grams.Typical));
            }

            if (vector.parts.Count < 2 || sum <= 0) return null;
            vector.parts.Sort(static (a, b) => string.CompareOrdinal(a.Item, b.Item));
            for (int i = 0; i < vector.parts.Count; i++) vector.parts[i] = (vector.parts[i].Item, vector.parts[i].Share / sum);

            // Garnish, egg and glass may differ; technique and parts may not.
            vector.Key = $"{profile.Technique}:{string.Join("+", vector.parts.Select(static p => p.Item))}";
            return vector;
        }

        public static double Cosine(Vector a, Vector b)
        {
            double dot = 0, aa = 0, bb = 0;
            for (int i = 0; i < a.parts.Count; i++)
            {
                dot += a.parts[i].Share * b.parts[i].Share;
                aa += a.parts[i].Share * a.parts[i].Share;
                bb += b.parts[i].Share * b.parts[i].Share;
            }

            return dot / Math.Sqrt(aa * bb);
        }
    }
}
