using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Turns an ingredient's values into a composition by mass.</summary>
internal static class MaterialBuilder
{
    private static readonly HashSet<string> KindsWithSugar = new(StringComparer.Ordinal)
    {
        "juice", "puree", "fruit", "syrup", "honey", "liqueur", "vermouth", "fortified-wine", "soda", "sugar", "ferment", "sauce", "cider",
    };

    private static readonly HashSet<string> KindsWithAcid = new(StringComparer.Ordinal)
    {
        "juice", "puree", "fruit", "vinegar", "acid", "ferment", "wine", "sparkling-wine",
    };

    private static readonly HashSet<string> KindsWithStrength = new(StringComparer.Ordinal)
    {
        "spirit", "liqueur", "vermouth", "fortified-wine", "wine", "sparkling-wine", "beer", "cider", "sake", "bitters",
    };

    private static readonly HashSet<string> SolidKinds = new(StringComparer.Ordinal)
    {
        "fruit", "vegetable", "herb", "spice", "flower", "nut", "seed", "garnish", "ice", "egg", "fat", "gel", "gum", "sugar", "salt",
    };

    private static readonly HashSet<string> LiquidKinds = new(StringComparer.Ordinal) { "egg" };

    /// <summary>The material of an ingredient.</summary>
    /// <param name="ingredient">With what it inherits.</param>
    public static Material Of(Ingredient ingredient)
    {
        var values = ingredient.Values;
        string kind = ingredient.IngredientKind.Or("other");
        var state = StateOf(ingredient, kind);
        var (unknown, because) = UnknownsOf(ingredient, kind);
        var composition = new EntryComposition(ingredient, state);
        var (nominal, density) = composition.Compose();
        return new Material(ingredient.Id, nominal, EntryVariations.Of(ingredient, composition, nominal), density, state)
        {
            Kind = kind,
            Unknown = unknown,
            UnknownBecause = because,
            Piece = TraceOf(values, "piece", 1),
            Traces = new Traces(
                TraceOf(values, "caffeine", PerGramFactor(ingredient, density), 0),
                TraceOf(values, "quinine", PerGramFactor(ingredient, density), 0),
                TraceOf(values, "sulphite", PerGramFactor(ingredient, density), 0)),
            Ph = TraceOf(values, "ph", 1),
            Ingredient = ingredient,
        };
    }

    /// <summary>Whether a kind of ingredient is a plant part that is strained out.</summary>
    public static bool IsBotanical(string kind) =>
        kind is "fruit" or "vegetable" or "herb" or "spice" or "flower" or "nut" or "seed" or "tea" or "coffee" or "garnish";

    /// <summary>Whether a kind is bought in bottles, made by somebody who answers for what is in it.</summary>
    public static bool IsBottled(string kind) =>
        kind is "spirit" or "liqueur" or "bitters" or "wine" or "fortified-wine" or "vermouth" or "sparkling-wine" or "beer" or "cider" or "sake" or "soda" or "tonic" or "syrup" or "vinegar" or "juice";

    private static double PerGramFactor(Ingredient ingredient, double density)
    {
        // Contents are stored in grams per basis of 100 g or 100 mL; traces go to mg a gram.
        double basis = ingredient.PerHundredMillilitres.Or(false) && !double.IsNaN(density) ? 100 * density : 100;
        return 1000 / basis;
    }

    private static MaterialState StateOf(Ingredient ingredient, string kind) => ingredient.State.Or("") switch
    {
        "liquid" => MaterialState.Liquid,
        "solid" => MaterialState.Solid,
        "powder" => MaterialState.Powder,
        "gas" => MaterialState.Gas,
        _ when kind is "acid" or "salt" or "sugar" or "gum" or "preservative" => MaterialState.Powder,
        _ when LiquidKinds.Contains(kind) => MaterialState.Liquid,
        _ when SolidKinds.Contains(kind) => MaterialState.Solid,
        _ => MaterialState.Liquid,
    };

    private static (Unknowns, string) UnknownsOf(Ingredient ingredient, string kind)
    {
        var values = ingredient.Values;
        var unknown = Unknowns.None;
        var reasons = new List<string>();
        bool builtIn = ingredient.Source.Path.StartsWith("catalogue/", StringComparison.Ordinal);
        bool inherits = ingredient.Like.IsGiven;
        bool anyContents = values.Keys.Any(k => k.StartsWith("sugars.", StringComparison.Ordinal) || k.StartsWith("acids.", StringComparison.Ordinal)) || values.ContainsKey("solids") || values.ContainsKey("water");

        void Lack(Unknowns what, string words)
        {
            if ((unknown & what) != 0) return;
            unknown |= what;
            reasons.Add($"{words} of {ingredient.Id} is not given");
        }

        if (KindsWithStrength.Contains(kind) && !values.ContainsKey("strength")) Lack(Unknowns.Strength, "the strength");
        if (kind is "fruit" or "vegetable" or "juice" or "puree" && values.ContainsKey("potassium") && !values.ContainsKey("ph")) Lack(Unknowns.Ph, "the pH");
        if (!builtIn && !inherits)
        {
            if (KindsWithSugar.Contains(kind) && !anyContents) Lack(Unknowns.Sugar, "the sugar");
            if (KindsWithAcid.Contains(kind) && !anyContents && !values.ContainsKey("titratableAcidity")) Lack(Unknowns.Acid | Unknowns.Ph, "the acid");
            if (kind is "other" && !anyContents && !values.ContainsKey("strength")) Lack(Unknowns.Composition, "the composition");
        }

        foreach (var open in ingredient.Open)
        {
            string key = open.Key;
            if (values.ContainsKey(key)) continue;
            var what = key.StartsWith("sugars", StringComparison.Ordinal) ? Unknowns.Sugar
                : key.StartsWith("acids", StringComparison.Ordinal) || key == "titratableAcidity" ? Unknowns.Acid
                : key == "ph" ? Unknowns.Ph
                : key == "strength" ? Unknowns.Strength
                : key == "salt" ? Unknowns.Salt
                : key is "water" or "solids" ? Unknowns.Water
                : Unknowns.None;
            if (what != Unknowns.None && (unknown & what) == 0)
            {
                unknown |= what;
                reasons.Add($"{key} of {ingredient.Id}: {open.Value}");
            }
        }

        return (unknown, string.Join("; ", reasons));
    }

    private static Trace TraceOf(IReadOnlyDictionary<string, SourcedValue> values, string path, double factor, double fallback = double.NaN) =>
        values.TryGetValue(path, out var v) ? new Trace(v.Typical * factor, v.Low * factor, v.High * factor) : new Trace(fallback, fallback, fallback);
}
