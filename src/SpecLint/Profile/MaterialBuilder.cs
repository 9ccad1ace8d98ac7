using SpecLint.Book;
using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>Turns an ingredient's values into a composition by mass.</summary>
internal static class MaterialBuilder
{
    /// <summary>g/mL of ethanol at 20 °C (OIML R 22, 1975).</summary>
    private const double EthanolDensity = 0.78924;

    /// <summary>Half widths of a low–high range (about 95 %) in standard deviations.</summary>
    private const double Coverage = 1.96;

    /// <summary>Property paths of contents and the component that each is.</summary>
    internal static FixedList<(string Path, Component Component)> ContentPaths => Contents;

    private static readonly (string Path, Component Component)[] Contents =
    [
        ("sugars.sucrose", Component.Sucrose), ("sugars.glucose", Component.Glucose), ("sugars.fructose", Component.Fructose),
        ("sugars.lactose", Component.Lactose), ("sugars.maltose", Component.Maltose), ("sugars.dextrin", Component.Dextrin),
        ("polyols.glycerol", Component.Glycerol), ("polyols.sorbitol", Component.Sorbitol),
        ("acids.citric", Component.Citric), ("acids.malic", Component.Malic), ("acids.tartaric", Component.Tartaric),
        ("acids.lactic", Component.Lactic), ("acids.acetic", Component.Acetic), ("acids.phosphoric", Component.Phosphoric),
        ("acids.succinic", Component.Succinic), ("acids.ascorbic", Component.Ascorbic), ("acids.oxalic", Component.Oxalic),
        ("acids.fumaric", Component.Fumaric), ("acids.quinic", Component.Quinic), ("acids.benzoic", Component.Benzoic),
        ("acids.sorbic", Component.Sorbic), ("carbonDioxide", Component.CarbonDioxide), ("salt", Component.SodiumChloride),
        ("sodium", Component.Sodium), ("potassium", Component.Potassium), ("protein", Component.Protein), ("fat", Component.Fat),
        ("fibre", Component.Fibre),
    ];

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
        double given = Typical(values, "density", double.NaN);
        Rest? rest = null;
        double[] nominal = Compose(ingredient, state, given, null, 0, ref rest, out double density);
        var inputs = new List<UncertainInput>();

        void Vary(string name, params string[] paths)
        {
            bool any = false;
            foreach (string path in paths) any |= values.TryGetValue(path, out var v) && v.High > v.Low;
            if (!any) return;

            // One unit of the input is the whole way from typical to the end of the range: it may differ up and down, so
            // the composition is worked out at the end that lies farther.
            double[] up = Compose(ingredient, state, given, paths, +1, ref rest, out _);
            double[] down = Compose(ingredient, state, given, paths, -1, ref rest, out _);
            double upNorm = Distance(up, nominal), downNorm = Distance(down, nominal);
            if (upNorm == 0 && downNorm == 0) return;
            bool useUp = upNorm >= downNorm;
            var vector = new double[Components.Count];
            double norm = useUp ? upNorm : downNorm;
            for (int c = 0; c < vector.Length; c++) vector[c] = useUp ? up[c] - nominal[c] : nominal[c] - down[c];
            inputs.Add(new UncertainInput($"{ingredient.Id}: {name}", vector, upNorm / norm / Coverage, downNorm / norm / Coverage));
        }

        Vary("strength", "strength");
        Vary("sugar", "sugars.sucrose", "sugars.glucose", "sugars.fructose", "sugars.lactose", "sugars.maltose", "sugars.dextrin");
        Vary("polyols", "polyols.glycerol", "polyols.sorbitol");
        bool titrated = values.ContainsKey("titratableAcidity") && values.ContainsKey("ph");
        if (titrated)
        {
            Vary("titratable acidity", "titratableAcidity");
        }
        else
        {
            Vary("acid", "acids.citric", "acids.malic", "acids.tartaric", "acids.lactic", "acids.acetic", "acids.phosphoric",
                "acids.succinic", "acids.ascorbic", "acids.oxalic", "acids.fumaric", "acids.quinic");
        }

        Vary("pH", "ph");
        Vary("salt", "salt");
        Vary("solids", "solids");

        return new Material(ingredient.Id, nominal, [.. inputs], density, state)
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

    /// <summary>What the typical composition leaves to no further kind: a varied value moves the water, not these.</summary>
    private sealed record Rest(double Dissolved, double Insoluble, double ComputedDensity);

    /// <summary>Masses in one gram, with the named values at the low (−1), typical (0) or high (+1) end.</summary>
    private static double[] Compose(Ingredient ingredient, MaterialState state, double givenDensity, string[]? varied, int end, ref Rest? rest, out double density)
    {
        var values = ingredient.Values;
        var grams = new double[Components.Count];
        bool ionsAreBound = ingredient.IngredientKind.Or("") is "acid" or "salt" or "preservative" or "water" or "saline";

        double Value(string path)
        {
            if (!values.TryGetValue(path, out var v)) return 0;
            if (varied is null || end == 0 || Array.IndexOf(varied, path) < 0) return v.Typical;
            return end > 0 ? v.High : v.Low;
        }

        foreach (var (path, component) in Contents) grams[(int)component] = Math.Max(0, Value(path));
        bool perVolume = ingredient.PerHundredMillilitres.Or(false);
        double strength = Math.Max(0, Math.Min(100, Value("strength")));

        // Strength is by volume; per 100 g it needs the density, which hangs on the composition: three rounds settle it.
        density = double.IsNaN(givenDensity) || state == MaterialState.Powder ? 1 : givenDensity;
        for (int round = 0; round < 3; round++)
        {
            double basisGrams = perVolume ? 100 * density : 100;
            double basisMillilitres = perVolume ? 100 : 100 / density;
            grams[(int)Component.Ethanol] = strength / 100 * EthanolDensity * basisMillilitres;
            FillRest(values, grams, basisGrams, state, varied is null ? null : rest, Value);
            Titrate(values, grams, ionsAreBound, Value);
            double computed = state == MaterialState.Liquid ? Mixture.Density(grams, Celsius.Reference)?.GramsPerMillilitre ?? double.NaN : double.NaN;
            if (varied is null && (round == 0 || double.IsNaN(givenDensity)))
                rest = new Rest(grams[(int)Component.OtherDissolved], grams[(int)Component.OtherInsoluble], computed);
            if (double.IsNaN(computed)) break;

            // A density that is given is kept; a varied composition moves it as the model does.
            double next = double.IsNaN(givenDensity) ? computed
                : varied is null || rest is null || double.IsNaN(rest.ComputedDensity) ? givenDensity
                : givenDensity * computed / rest.ComputedDensity;
            if (Math.Abs(next - density) < 1e-6) break;
            density = next;
        }

        if (state is MaterialState.Powder or MaterialState.Solid) density = givenDensity;
        double total = 0;
        foreach (double g in grams) total += g;
        if (total <= 0)
        {
            grams[(int)Component.OtherInsoluble] = 1;
            return grams;
        }

        for (int c = 0; c < grams.Length; c++) grams[c] /= total;
        return grams;
    }

    private static void FillRest(IReadOnlyDictionary<string, SourcedValue> values, double[] grams, double basis, MaterialState state, Rest? nominal, Func<string, double> value)
    {
        grams[(int)Component.Water] = 0;
        grams[(int)Component.OtherDissolved] = 0;
        grams[(int)Component.OtherInsoluble] = 0;
        double known = 0;
        foreach (double g in grams) known += g;
        double rest = Math.Max(0, basis - known);
        if (nominal is not null)
        {
            grams[(int)Component.OtherDissolved] = Math.Min(rest, nominal.Dissolved);
            rest -= grams[(int)Component.OtherDissolved];
            grams[(int)Component.OtherInsoluble] = Math.Min(rest, nominal.Insoluble);
            grams[(int)Component.Water] = rest - grams[(int)Component.OtherInsoluble];
            return;
        }

        double water;
        if (values.ContainsKey("water")) water = Math.Min(rest, value("water"));
        else if (values.ContainsKey("solids")) water = Math.Min(rest, Math.Max(0, basis - value("solids") - grams[(int)Component.Ethanol]));
        else water = state == MaterialState.Liquid || known > 0 ? rest : 0;
        grams[(int)Component.Water] = water;
        var other = state == MaterialState.Liquid ? Component.OtherDissolved : Component.OtherInsoluble;
        grams[(int)other] = rest - water;
    }

    /// <summary>Sets acids and strong ions so that the model gives the pH and titratable acidity that are given.</summary>
    private static void Titrate(IReadOnlyDictionary<string, SourcedValue> values, double[] grams, bool ionsAreBound, Func<string, double> value)
    {
        if (!values.ContainsKey("ph"))
        {
            // Ions that are analysed without the acids and anions that hold them are no free base: they count as neutral salts.
            if (!ionsAreBound)
            {
                grams[(int)Component.OtherDissolved] += grams[(int)Component.Potassium] + grams[(int)Component.Sodium];
                grams[(int)Component.Potassium] = grams[(int)Component.Sodium] = 0;
            }

            return;
        }

        var ph = new Ph(value("ph"));
        if (values.ContainsKey("titratableAcidity"))
        {
            Span<double> shares = stackalloc double[Components.Count];
            double sum = 0;
            for (var c = Components.FirstAcid; c <= Components.LastAcid; c++) sum += shares[(int)c] = grams[(int)c];
            if (sum <= 0) shares[(int)Component.Citric] = 1;
            var titratable = new Grams(value("titratableAcidity"));
            double before = Sum(grams);
            if (Juice.TryBackOut(grams, shares, ph, titratable, Celsius.Reference))
            {
                // The mass of acids and ions moved; water takes up the difference.
                grams[(int)Component.Water] = Math.Max(0, grams[(int)Component.Water] + before - Sum(grams));
            }

            return;
        }

        if (Juice.PotassiumForPh(grams, ph, Celsius.Reference) is { } potassium) grams[(int)Component.Potassium] = potassium.Value;
    }

    private static double Sum(double[] grams)
    {
        double sum = 0;
        foreach (double g in grams) sum += g;
        return sum;
    }

    private static double Distance(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += (a[i] - b[i]) * (a[i] - b[i]);
        return Math.Sqrt(sum);
    }

    private static double Typical(IReadOnlyDictionary<string, SourcedValue> values, string path, double fallback) =>
        values.TryGetValue(path, out var v) ? v.Typical : fallback;

    private static Trace TraceOf(IReadOnlyDictionary<string, SourcedValue> values, string path, double factor, double fallback = double.NaN) =>
        values.TryGetValue(path, out var v) ? new Trace(v.Typical * factor, v.Low * factor, v.High * factor) : new Trace(fallback, fallback, fallback);
}
