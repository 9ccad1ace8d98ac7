using SpecLint.Catalogue;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

/// <summary>How drinks are built, held against how their style is.</summary>
internal static class Builds
{
    private static readonly Limit SharpJuice = Limits.Of("amount-sour-juice");
    private static readonly Limit SourPart = Limits.Of("sour-part");
    private static readonly Limit SweetPart = Limits.Of("sweet-part");

    /// <summary>The verb of a technique; <see langword="null"/> where no ice touches it or it is not known.</summary>
    public static string? Verb(TechniqueKind technique) => technique switch
    {
        TechniqueKind.Shaken => "shake",
        TechniqueKind.Stirred => "stir",
        TechniqueKind.Built => "build",
        TechniqueKind.Thrown => "throw",
        TechniqueKind.Blended => "blend",
        TechniqueKind.Swizzled => "swizzle",
        _ => null,
    };

    /// <summary>Whether a technique is none of the style's.</summary>
    public static bool Contradicts(TechniqueKind technique, Style style)
    {
        if (technique is TechniqueKind.Unknown or TechniqueKind.NoIce) return false;
        foreach (var known in style.Techniques)
        {
            // To muddle, churn or heat is to build in the glass; a freezer or carbonated drink may be poured on ice.
            if (known.Technique == (technique == TechniqueKind.Built ? TechniqueKind.NoIce : technique)) return false;
        }

        return true;
    }

    /// <summary>Grams of the parts that a test names, of the mix and the tops.</summary>
    public static double Grams(RecipeProfile profile, Func<Material?, bool> test)
    {
        double sum = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase is PartPhase.Mix or PartPhase.Top && part.IsWeighed && test(part.Material)) sum += part.Grams.Typical;
        }

        return sum;
    }

    /// <summary>Millilitres of the parts that a test names, of the mix and the tops.</summary>
    public static double Millilitres(RecipeProfile profile, Func<Material?, bool> test)
    {
        double sum = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase is not (PartPhase.Mix or PartPhase.Top) || double.IsNaN(part.Millilitres)) continue;
            if (test(part.Material)) sum += part.Millilitres;
        }

        return sum;
    }

    /// <summary>Share of the poured mass that is added after the technique.</summary>
    public static double TopShare(RecipeProfile profile)
    {
        double mix = 0, top = 0;
        foreach (var part in profile.Parts)
        {
            if (!part.IsWeighed) continue;
            if (part.Phase == PartPhase.Mix) mix += part.Grams.Typical;
            else if (part.Phase == PartPhase.Top) top += part.Grams.Typical;
        }

        return top > 0 ? top / (mix + top) : 0;
    }

    /// <summary>The first part that a test names, of the mix and the tops.</summary>
    public static Part? First(RecipeProfile profile, Func<Material?, bool> test)
    {
        foreach (var part in profile.Parts)
        {
            if (part.Phase is PartPhase.Mix or PartPhase.Top && test(part.Material)) return part;
        }

        return null;
    }

    /// <summary>Whether the value to expect lies outside the band of a style.</summary>
    public static bool IsOut(RecipeContext context, Style style, Fact fact) =>
        style.Seen(fact) is { } band && context.Fact(fact) is { IsKnown: true } value
        && (value.Value < band.Low || value.Value > band.High);

    /// <summary>A fact so low that what brings it seems forgotten: under half of what any accepted drink of the style has.</summary>
    public static bool IsMissing(FactValue value, Band seen) => value.IsKnown && value.High < seen.Low / 2;

    /// <summary>
    /// Whether what sweetens or sours a drink of a style seems forgotten: there is next to nothing of it, or there is less than
    /// usual and no part is sweet or sour of itself.
    /// </summary>
    /// <param name="profile">The drink.</param>
    /// <param name="style">Its style.</param>
    /// <param name="fact">Sugar or acid.</param>
    public static bool LacksSide(RecipeProfile profile, Style style, Fact fact)
    {
        if (!(fact == Fact.Sugar ? style.WantsSugar : style.WantsAcid) || style.Seen(fact) is not { } seen) return false;
        var value = profile.Get(fact);
        if (IsMissing(value, seen)) return true;
        return value.IsKnown && style.Usual(fact) is { } usual && value.High < usual.Low
            && First(profile, fact == Fact.Sugar ? IsSweet : IsSour) is null;
    }

    /// <summary>Whether a part is as sour as lemon or lime.</summary>
    public static bool IsSharp(Material? material) => material is not null && 100 * Solving.AcidsOf(material.PerGram) >= SharpJuice.Value;

    /// <summary>Whether a part makes a drink creamy as milk and cream do: a plant milk, a liqueur on cream.</summary>
    public static bool IsCreamy(Material? material) =>
        material is not null && (material.Kind.IsPlantMilk || material.Of(Science.Component.Fat) > Guards.CreamyFat);

    /// <summary>Whether a part is sour of itself.</summary>
    private static bool IsSour(Material? material) => material is null || Solving.AcidsOf(material.PerGram) >= SourPart.Value / 100;

    /// <summary>Whether a part is sweet of itself.</summary>
    private static bool IsSweet(Material? material) => material is null || Solving.SugarOf(material.PerGram) >= SweetPart.Value / 100;
}
