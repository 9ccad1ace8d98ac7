using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Turns an ingredient's values into a composition by mass.</summary>
internal static class MaterialBuilder
{
    private static readonly Catalogue.Limit PhDistance = Catalogue.Limits.Of("ph-unexplained");

    /// <summary>The material of an ingredient.</summary>
    /// <param name="ingredient">With what it inherits.</param>
    /// <param name="isBuiltIn">Whether it is an entry of the built-in catalogue, in which what is not given is none.</param>
    public static Material Of(Ingredient ingredient, bool isBuiltIn)
    {
        var values = ingredient.Values;
        var kind = ingredient.IngredientKind.Or(ItemKind.Other);
        var state = StateOf(ingredient, kind);
        var (unknown, because) = UnknownsOf(ingredient, kind, isBuiltIn);
        var composition = new EntryComposition(ingredient, state);
        var (nominal, density) = composition.Compose();
        if (PhIsUnexplained(composition, state, nominal))
        {
            because = unknown == Unknowns.None
                ? $"the acids of {ingredient.Id} do not explain its pH"
                : $"{because}; the acids of {ingredient.Id} do not explain its pH";
            unknown |= Unknowns.Ph;
        }

        // A density that was measured beside the dry matter, as of milk, is truer than the one of the model.
        if (state == MaterialState.Liquid && IsMeasured(values)) density = values["density"].Typical;
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
            MeasuredDensity = IsMeasured(values) ? TraceOf(values, "density", 1) : new Trace(double.NaN, double.NaN, double.NaN),
            Ingredient = ingredient,
            TakesAfter = isBuiltIn ? [] : Namesakes.Of(ingredient),
            IsOwn = !isBuiltIn,
        };
    }

    /// <summary>Whether the model does not come to the pH that is given, so that in a mix it would mislead.</summary>
    private static bool PhIsUnexplained(EntryComposition given, MaterialState state, double[] perGram) =>
        !double.IsNaN(given.Ph) && state is MaterialState.Liquid or MaterialState.Solid
        && !(AcidBase.Ph(perGram, Celsius.Reference) is { } computed && Math.Abs(computed.Value - given.Ph) <= PhDistance.Value);

    private static bool IsMeasured(IReadOnlyDictionary<string, SourcedValue> values) =>
        values.ContainsKey("solids") && values.TryGetValue("density", out var density) && density.Mark != Mark.Computed;

    private static double PerGramFactor(Ingredient ingredient, double density)
    {
        // Contents are stored in grams per basis of 100 g or 100 mL; traces go to mg a gram.
        double basis = ingredient.PerHundredMillilitres.Or(false) && !double.IsNaN(density) ? 100 * density : 100;
        return 1000 / basis;
    }

    private static MaterialState StateOf(Ingredient ingredient, ItemKind kind) => ingredient.State.Or("") switch
    {
        "liquid" => MaterialState.Liquid,
        "solid" => MaterialState.Solid,
        "powder" => MaterialState.Powder,
        "gas" => MaterialState.Gas,
        _ => kind.UsualState,
    };

    private static (Unknowns, string) UnknownsOf(Ingredient ingredient, ItemKind kind, bool isBuiltIn)
    {
        var values = ingredient.Values;
        var unknown = Unknowns.None;
        var reasons = new List<string>();

        // What is like a file of the bar's own in the end knows no more than that.
        bool inherits = !ingredient.LikeIsBroken
            && ingredient.LikeInTheEnd is { } end
            && ReferenceEquals(Catalogue.BuiltInCatalogue.FindItem(end.Id)?.File, end);
        bool anyContents = values.Keys.Any(k => k.StartsWith("sugars.", StringComparison.Ordinal)
            || k.StartsWith("acids.", StringComparison.Ordinal))
            || values.ContainsKey("solids")
            || values.ContainsKey("water");

        void Lack(Unknowns what, string words)
        {
            if ((unknown & what) != 0) return;
            unknown |= what;
            reasons.Add($"{words} of {ingredient.Id} is not given");
        }

        if (kind.GivesStrength && !values.ContainsKey("strength")) Lack(Unknowns.Strength, "the strength");
        if (kind.HasPlantPh && values.ContainsKey("potassium") && !values.ContainsKey("ph")) Lack(Unknowns.Ph, "the pH");
        if (ingredient.LikeIsBroken)
        {
            unknown |= Unknowns.Composition;
            reasons.Add($"what {ingredient.Id} is like (`{ingredient.Like.Or("")}`) is not an ingredient");
        }

        if (!isBuiltIn && !inherits)
        {
            if (kind.MayHoldSugar && !anyContents) Lack(Unknowns.Sugar, "the sugar");
            if (kind.MayHoldAcid && !anyContents && !values.ContainsKey("titratableAcidity")) Lack(Unknowns.Acid | Unknowns.Ph, "the acid");
            if ((kind.IsBrew || NamesCaffeine(ingredient, kind) || (ingredient.LikeInTheEnd is { } root && NamesCaffeine(root, kind)))
                && !values.ContainsKey("caffeine"))
                Lack(Unknowns.Caffeine, "the caffeine");
            if (kind.IsUnspecified && !anyContents && !values.ContainsKey("strength")) Lack(Unknowns.Composition, "the composition");
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
                : key == "caffeine" ? Unknowns.Caffeine
                : Unknowns.None;
            if (what != Unknowns.None && (unknown & what) == 0)
            {
                unknown |= what;
                reasons.Add($"{key} of {ingredient.Id}: {open.Value}");
            }
        }

        return (unknown, string.Join("; ", reasons));
    }

    /// <summary>Whether it is called after something that brings caffeine; what a maker of spirits bottles, or is dosed by the dash, brings little.</summary>
    private static bool NamesCaffeine(Ingredient ingredient, ItemKind kind)
    {
        if (kind.GivesStrength || kind.IsDosed) return false;
        if (Phrases.HasAny($"{ingredient.Id.Replace('-', ' ')} {ingredient.Name.Or("")}", CaffeineWords)) return true;
        foreach (var entry in Namesakes.InWords(ingredient))
        {
            if (entry.Values.TryGetValue("caffeine", out var caffeine) && caffeine.Typical > 0) return true;
        }

        return false;
    }

    /// <summary>Words on labels for caffeine that is added, beside the names of what brings it.</summary>
    private static readonly string[] CaffeineWords = ["caffeine", "caffeinated", "guarana", "energy", "pre workout", "pre-workout"];

    private static Trace TraceOf(IReadOnlyDictionary<string, SourcedValue> values, string path, double factor, double fallback = double.NaN) =>
        values.TryGetValue(path, out var v) ? new Trace(v.Typical * factor, v.Low * factor, v.High * factor) : new Trace(fallback, fallback, fallback);
}
