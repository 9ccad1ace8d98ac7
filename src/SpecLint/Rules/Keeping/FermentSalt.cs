using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule("SL5028", "ferment-salt", "A lactic ferment holds too little or too much salt", Level.Warning, Safety = true)]
[Limit("lacto-salt-least", "Least")]
[Limit("lacto-salt-most", "Most")]
internal sealed partial class FermentSalt : PrepRule
{
    /// <summary>Whether a ferment is one in salt: fruit or vegetable with salt among its lines, or in a preparation among them.</summary>
    internal static bool IsInBrine(RecipeProfile profile) =>
        profile.Parts.Any(p => HoldsSalt(p, profile)) && profile.Parts.Any(static p => p.Material is { Kind.IsFreshPlant: true });

    private static bool HoldsSalt(Part part, RecipeProfile profile) =>
        part.Material is { Kind.IsSalt: true }
            || (part.Item is { ByProduct: null, File: Prep inner }
                && profile.Set.TryBefore(inner, profile) is { } below
                && below.Parts.Any(p => HoldsSalt(p, below)));

    /// <summary>Whether it is a brine with as much salt as a lactic ferment needs: a pinch makes none.</summary>
    internal static bool IsSalted(RecipeProfile profile)
    {
        if (!IsInBrine(profile)) return false;
        var (salt, all) = Weighed(profile);
        return all > 0 && 100 * salt / all >= Least.Value;
    }

    /// <summary>Salt and mass of the whole, g; NaN where a part is not weighed.</summary>
    private static (double Salt, double All) Weighed(RecipeProfile profile)
    {
        double salt = 0, all = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Material is null) continue;
            if (!part.IsWeighed) return (double.NaN, double.NaN);
            salt += part.Grams.Typical * part.Material.Of(Component.SodiumChloride);
            all += part.Grams.Typical;
        }

        return (salt, all);
    }

    /// <summary>The salt itself, else the brine that brings the most.</summary>
    private static Part? SaltIn(RecipeProfile profile)
    {
        Part? line = null;
        double most = 0;
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Material is not { } material) continue;
            if (material.Kind.IsSalt) return part;
            double brought = part.Grams.Typical * material.Of(Component.SodiumChloride);
            if (brought > most) (line, most) = (part, brought);
        }

        return line;
    }

    public override void Check(RecipeContext context, Prep prep)
    {
        if (!SpecialCases.IsFerment(prep) || !IsInBrine(context.Profile)) return;
        var (salt, all) = Weighed(context.Profile);
        double percent = 100 * salt / all;
        if (!(all > 0) || SaltIn(context.Profile) is not { } line || (percent >= Least.Value && percent <= Most.Value)) return;
        bool little = percent < Least.Value;
        var limit = little ? Least : Most;

        // Rounded to the inside of the band.
        double exact = limit.Value / 100 * (all - salt) / (1 - (limit.Value / 100));
        double needed = little ? Math.Ceiling(exact) : Math.Floor(exact);
        var span = line.Line.Amount.IsGiven ? line.Line.Amount.Span : line.Line.Span;
        context.Report(new(Rule)
        {
            // Pepper mashes, olives and preserved lemons are made at 6 to 10 % and more.
            AskedLevel = little ? null : Level.Note,
            At = context.At(span, RecipeContext.PathOf(line.Line, "amount")),
            Message = $"Salt comes to {Say.Number(percent, 1)} % of the total mass, {(little ? "below" : "above")} the "
                + $"{Say.Number(limit.Value)} % that a lactic ferment "
                + $"{(little ? "needs to hold back unwanted growth until it is sour" : "still turns sour with")} ({limit.Source}).",
            Advice = $"Bring the salt to {Say.Number(needed, 0)} g for {Say.Number(limit.Value)} % of the total mass.",
            Caution = little ? KeepingWords.Caution : null,
            Evidence = [Proof.Of("salt of the whole", percent, "%"), Proof.Of(Least), Proof.Of(Most)],
            Corrections = line.Material!.Kind.IsDrySalt && line.Line.Amount.IsGiven
                ? context.Write(span, $"{Say.Number(needed, 0)} g", $"Take {Say.Number(needed, 0)} g of salt.")
                : [],
        });
    }
}
