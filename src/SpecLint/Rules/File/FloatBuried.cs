using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Profile;
using SpecLint.Rules.Hazards;
using SpecLint.Rules.Service;

namespace SpecLint.Rules.File;

/// <summary>Whether a step goes through what an earlier one laid on a drink.</summary>
internal static class FloatBuried
{
    /// <summary>g/mL by which what is laid is denser than what follows, so that it is the layer below.</summary>
    private static readonly double Sinks = Limits.Of("layer-density").Value;

    /// <summary>
    /// Whether a later step pours something of weight on a float, or stirs it in. Dashes, solids, cream, foam and spirits may follow.
    /// </summary>
    public static bool By(RecipeContext context, Step floated, Step later)
    {
        var laid = floated.Items.Count == 0 ? Floating(context) : PartOf(context, floated.Items[0].Value);
        if (laid is not { Material.State: MaterialState.Liquid } || later.Verb.Floats) return false;
        if (HazardWords.HasWords(later.Note, TextWords.Spooned)) return false;
        if (later.Items.Count == 0) return later.Verb.Tops ? HasTop(context) : later.Verb is { TakesAll: true, Adds: false, Keeps: false };
        if (!later.Verb.Adds && !later.Verb.TakesAll) return false;
        foreach (var item in later.Items)
        {
            if (PartOf(context, item.Value) is { } part && part != laid && IsOfWeight(part, laid)) return true;
        }

        return false;
    }

    private static bool IsOfWeight(Part part, Part laid) =>
        part.Line.Role is not (LineRole.Float or LineRole.Garnish or LineRole.Rim)
        && !Batch.IsSeasoning(part)
        && part.Material is { State: MaterialState.Liquid, Kind: { IsDairy: false, IsEgg: false, IsSpirit: false, IsIce: false } } material
        && !(laid.Material!.Density - material.Density > Sinks);

    private static Part? PartOf(RecipeContext context, string id)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Item.IsGiven && part.Line.Item.Value == id) return part;
        }

        return null;
    }

    private static Part? Floating(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Role == LineRole.Float) return part;
        }

        return null;
    }

    private static bool HasTop(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Line.Role == LineRole.Top) return true;
        }

        return false;
    }
}
