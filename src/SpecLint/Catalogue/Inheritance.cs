using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Catalogue;

/// <summary>
/// Resolves <c>like</c>: an ingredient inherits each property that it does not give itself. A composition is one thing: what
/// the parent's values of water, density and energy rested on is no longer so when a part of it is given anew, so that they go and
/// are worked out again; the dry matter changes by as much as the contents in it.
/// </summary>
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

        own.LikeIsBroken = next.Like.IsGiven;
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
                foreach (string key in values.Keys.Where(k => k is not ("strength" or "density" or "ph")
                    && !k.StartsWith("life", StringComparison.Ordinal))
                    .ToList())
                    values.Remove(key);
            }

            if (i < chain.Count - 1) MakeRoom(values, entry.Values);
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
            flat.Allergens = Merge(entry.Allergens, flat.Allergens);
        }

        flat.Like = own.Like;
        flat.LikeIsBroken = own.LikeIsBroken;
        flat.LikeInTheEnd = next;
        flat.Aliases = own.Aliases;
        flat.Accept = own.Accept;
        flat.Notes = own.Notes;
        flat.Values = values;
        flat.Open = open;
        return flat;
    }

    /// <summary>A statement that does not say what is contained adds to what is inherited, and clears nothing of it.</summary>
    private static AllergenStatement? Merge(AllergenStatement? own, AllergenStatement? inherited) =>
        own is null ? inherited
        : own.SaysWhatItContains || inherited is null ? own
        : own with
        {
            Contains = inherited.Contains,
            MayContain = [.. inherited.MayContain.Concat(own.MayContain).Distinct()],
            Exempt = [.. inherited.Exempt.Concat(own.Exempt)],
            SaysWhatItContains = inherited.SaysWhatItContains,
        };

    private static Given<T> Pick<T>(Given<T> own, Given<T> inherited) => own.IsGiven ? own : inherited;

    /// <summary>Takes out of inherited values what an entry's own values contradict.</summary>
    private static void MakeRoom(Dictionary<string, SourcedValue> inherited, IReadOnlyDictionary<string, SourcedValue> own)
    {
        bool water = own.ContainsKey("water"), solids = own.ContainsKey("solids"), density = own.ContainsKey("density");
        var groups = Groups.Where(g => own.Keys.Any(k => IsIn(k, g))).ToList();
        if (!water && !solids && !density && !own.ContainsKey("strength") && groups.Count == 0) return;
        if (!solids && water) ScaleDryMatter(inherited, DryMatterOf(inherited), 100 - own["water"].Typical);
        else if (solids) ScaleDryMatter(inherited, DryMatterOf(inherited), own["solids"].Typical);
        else if (!density) MoveDryMatter(inherited, own, groups);
        foreach (string group in groups)
        {
            foreach (string key in inherited.Keys.Where(k => IsIn(k, group)).ToList()) inherited.Remove(key);
        }

        if (groups.Contains("acids.") && !own.ContainsKey("titratableAcidity")) inherited.Remove("titratableAcidity");
        inherited.Remove("density");
        inherited.Remove("energy");
        inherited.Remove("water");
        if (water || (density && !solids)) inherited.Remove("solids");
    }

    /// <summary>Contents that are given as a whole, or count by themselves, within the dry matter.</summary>
    private static readonly string[] Groups = ["sugars.", "polyols.", "acids.", "salt", "protein", "fat", "fibre"];

    private static bool IsIn(string key, string group) =>
        group.EndsWith(".", StringComparison.Ordinal) ? key.StartsWith(group, StringComparison.Ordinal) : key == group;

    private static double DryMatterOf(Dictionary<string, SourcedValue> values) =>
        values.TryGetValue("solids", out var solids) ? solids.Typical : values.TryGetValue("water", out var water) ? 100 - water.Typical : double.NaN;

    /// <summary>More or less water in the same solids: sugars and polyols grow or shrink with the dry matter.</summary>
    private static void ScaleDryMatter(Dictionary<string, SourcedValue> values, double from, double to)
    {
        if (!(from > 0) || !(to >= 0)) return;
        double factor = to / from;
        foreach (string key in values.Keys.Where(k => IsIn(k, "sugars.") || IsIn(k, "polyols.")).ToList())
        {
            var v = values[key];
            values[key] = v with { Typical = v.Typical * factor, Low = v.Low * factor, High = v.High * factor };
        }
    }

    /// <summary>The dry matter follows the contents that are given anew; the spread of the old ones goes with them.</summary>
    private static void MoveDryMatter(Dictionary<string, SourcedValue> inherited, IReadOnlyDictionary<string, SourcedValue> own, List<string> groups)
    {
        if (groups.Count == 0 || !inherited.TryGetValue("solids", out var solids)) return;
        double typical = solids.Typical, down = 0, up = 0;

        // The range of a sum of parts is the sum of theirs; one that was measured holds theirs by squares.
        bool isSum = solids.Mark == Mark.Computed;
        foreach (string group in groups)
        {
            foreach (var old in inherited.Where(p => IsIn(p.Key, group)).Select(p => p.Value))
            {
                typical -= old.Typical;
                down += isSum ? old.Typical - old.Low : (old.Typical - old.Low) * (old.Typical - old.Low);
                up += isSum ? old.High - old.Typical : (old.High - old.Typical) * (old.High - old.Typical);
            }
        }

        down = Rest(solids.Typical - solids.Low, down, isSum);
        up = Rest(solids.High - solids.Typical, up, isSum);
        typical = Math.Max(0, typical);
        foreach (var added in groups.SelectMany(g => own.Where(p => IsIn(p.Key, g)).Select(p => p.Value)))
        {
            typical += added.Typical;
            down += added.Typical - added.Low;
            up += added.High - added.Typical;
        }

        inherited["solids"] = solids with { Typical = typical, Low = typical - down, High = typical + up, Mark = Mark.Computed };
    }

    private static double Rest(double whole, double part, bool isSum) =>
        isSum ? Math.Max(0, whole - part) : Math.Sqrt(Math.Max(0, (whole * whole) - part));
}
