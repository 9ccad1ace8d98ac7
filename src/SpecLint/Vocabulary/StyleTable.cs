namespace SpecLint.Vocabulary;

/// <summary>The table of styles.</summary>
internal static class StyleTable
{
    /// <summary>The words of the table for traits, in the order of <see cref="StyleTrait"/>.</summary>
    private static readonly string[] TraitWords = ["needsIce", "sour", "mustSparkle", "neverSparkles"];

    private static readonly (string Name, Fact Fact)[] Facts =
    [
        ("mixVolume", Fact.MixVolume), ("servedVolume", Fact.ServedVolume), ("abv", Fact.Abv), ("sugar", Fact.Sugar), ("acid", Fact.Acid),
        ("sugarAcidRatio", Fact.SugarAcidRatio), ("dilution", Fact.Dilution),
    ];

    private static readonly Dictionary<string, Style> ById = Load();
    private static readonly Dictionary<string, Style> BySlug = Slugs.Index(ById.Values, static style => style.Aliases.Prepend(style.Name));

    /// <summary>All styles, in the order of the table.</summary>
    public static IReadOnlyCollection<Style> All => ById.Values;

    /// <summary>The style of an id; <see langword="null"/> if none.</summary>
    public static Style? Find(string id) => ById.TryGetValue(id, out var style) ? style : null;

    /// <summary>The style that another word means; <see langword="null"/> if none.</summary>
    public static Style? FindByAlias(string word) => BySlug.TryGetValue(Slugs.Of(word), out var style) ? style : null;

    private static Dictionary<string, Style> Load()
    {
        var styles = new Dictionary<string, Style>(StringComparer.Ordinal);
        var traits = new TraitWords(TraitWords);
        using var document = Tables.Open("styles");
        foreach (var row in document.Root.Get("styles").Items)
        {
            var build = row.Get("build");
            var wants = build.Texts("wants");
            var style = new Style(row.Text("id"), traits.Of(build))
            {
                Name = row.Text("name"),
                Aliases = row.Texts("aliases"),
                Techniques = [.. build.Texts("technique").Select(Verb.Of)],
                ImpliedTechnique = Technique(build.Text("impliedTechnique")),
                IsTopped = build.TryGet("topped", out var topped) && topped.IsTrue,
                Egg = build.Text("egg") switch { "white" => EggPart.White, "whole" => EggPart.Whole, _ => EggPart.None },
                HasDairy = build.TryGet("dairy", out var dairy) && dairy.IsTrue,
                MayHaveDairy = dairy.IsText,
                Ice = build.Text("ice") is { Length: > 0 } ice ? Ice.Of(ice) : null,
                Glasses = row.Texts("glasses"),
                IsHot = build.TryGet("hot", out var hot) && hot.IsTrue,
                WantsAcid = wants.Contains("acid"),
                WantsSugar = wants.Contains("sugar"),
                UsualText = row.TextLater("usualSource"),
                SeenText = row.TextLater("seenSource"),
                SeenIsComputed = row.Text("seenMark") == "computed",
            };
            foreach (var (name, fact) in Facts)
            {
                if (row.Get("usual").TryGet(name, out var usual)) style.Add(true, fact, new Band(usual.Number("low"), usual.Number("high")));
                if (row.Get("seen").TryGet(name, out var seen)) style.Add(false, fact, new Band(seen.Number("low"), seen.Number("high")));
            }

            styles.Add(style.Id, style);
        }

        return styles;
    }

    private static TechniqueKind Technique(string word) => word switch
    {
        "" => TechniqueKind.Unknown,
        "noIce" => TechniqueKind.NoIce,
        "shaken" => TechniqueKind.Shaken,
        "stirred" => TechniqueKind.Stirred,
        "built" => TechniqueKind.Built,
        "blended" => TechniqueKind.Blended,
        _ => throw new InvalidOperationException($"The table of styles has the technique {word}, which is none."),
    };
}
