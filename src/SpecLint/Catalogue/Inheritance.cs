using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Catalogue;

/// <summary>Resolves <c>like</c>: an ingredient inherits each property that it does not give itself.</summary>
internal static class Inheritance
{
    private const int DeepestChain = 16;

    /// <summary>The ingredient with everything it inherits; itself where it inherits nothing.</summary>
    public static Ingredient Flatten(Ingredient own, Func<string, Ingredient?> find)
    {
        var chain = new List<Ingredient> { own };
        var next = own;
        while (next.Like.IsGiven && chain.Count < DeepestChain)
        {
            var parent = find(next.Like.Value);
            if (parent is null || chain.Contains(parent)) break;
            chain.Add(parent);
            next = parent;
        }

        if (chain.Count == 1) return own;
        var values = new Dictionary<string, SourcedValue>(StringComparer.Ordinal);
        var open = new Dictionary<string, string>(StringComparer.Ordinal);
        var flat = new Ingredient { Source = own.Source, HoldsObject = own.HoldsObject, Id = own.Id, Problems = own.Problems };
        for (int i = chain.Count - 1; i >= 0; i--)
        {
            var entry = chain[i];

            // A new basis makes the inherited contents meaningless, so they go.
            if (entry.PerHundredMillilitres.IsGiven && flat.PerHundredMillilitres.IsGiven
                && entry.PerHundredMillilitres.Value != flat.PerHundredMillilitres.Value)
            {
                foreach (string key in values.Keys.Where(k => k is not ("strength" or "density" or "ph") && !k.StartsWith("life", StringComparison.Ordinal)).ToList())
                    values.Remove(key);
            }

            foreach (var pair in entry.Values) values[pair.Key] = pair.Value;
            foreach (var pair in entry.Open)
            {
                if (!entry.Values.ContainsKey(pair.Key)) open[pair.Key] = pair.Value;
            }

            flat.Name = Pick(entry.Name, flat.Name);
            flat.IngredientKind = Pick(entry.IngredientKind, flat.IngredientKind);
            flat.State = Pick(entry.State, flat.State);
            flat.PerHundredMillilitres = Pick(entry.PerHundredMillilitres, flat.PerHundredMillilitres);
            flat.Form = Pick(entry.Form, flat.Form);
            flat.Animal = Pick(entry.Animal, flat.Animal);
            flat.Hazard = Pick(entry.Hazard, flat.Hazard);
            flat.KeepsCold = Pick(entry.KeepsCold, flat.KeepsCold);
            flat.Allergens = entry.Allergens ?? flat.Allergens;
        }

        flat.Like = own.Like;
        flat.Aliases = own.Aliases;
        flat.Accept = own.Accept;
        flat.Notes = own.Notes;
        flat.Values = values;
        flat.Open = open;
        return flat;
    }

    private static Given<T> Pick<T>(Given<T> own, Given<T> inherited) => own.IsGiven ? own : inherited;
}
