using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Keeping;

[Rule("SL5018", "raw-egg-kept", "Raw egg is kept in a preparation", Level.Error, Safety = true, Needs = [Fact.Abv])]
[Limit("keep-raw-egg", "Most")]
[Limit("eggnog-aged-strength", "AgedStrength")]
[Limit("eggnog-aged-days", "AgedDays")]
internal sealed partial class RawEggKept : PrepRule
{
    /// <summary>Whether an ingredient is egg that nothing says was pasteurised.</summary>
    internal static bool IsRawEgg(Material material) =>
        material is { Kind.IsEgg: true, Ingredient: { } egg }
            && !Storage.Has(egg.Id, "pasteuri")
            && !(egg.Name.IsGiven && Storage.Has(egg.Name.Value, "pasteuri"))
            && !Storage.Has(egg.Id, "dried")
            && !Storage.Has(egg.Id, "powder");

    /// <summary>The raw egg that this rule speaks of; <see langword="null"/> where it is silent.</summary>
    internal static Part? EggOf(RecipeContext context, Prep prep)
    {
        // Of how long it is kept, where nothing says so, the rule of what is not stated asks; not of what it takes for dry or held, and in
        // spirit it only makes a note.
        double days = Storage.Days(prep);
        bool isAsked = !context.Profile.IsSolid
            && context.Profile.Keeping is { IsStrong: false, HoldsPerishable: true, Verdict: not KeepingVerdict.NotControlled };
        return days > SpecialCases.MarkedFromDays || (double.IsNaN(days) && !isAsked) ? RawEggIn(context.Profile) : null;
    }

    /// <summary>
    /// The line that brings raw egg that no step has heated since it went in: its own, or that of a preparation that holds some.
    /// </summary>
    private static Part? RawEggIn(RecipeProfile profile) => profile.Once(Rule.Id, static p => FindRawEgg(p));

    private static Part? FindRawEgg(RecipeProfile profile)
    {
        var product = HeatedFood.ProductOf(profile) ?? HeatedProduct.EggNog;
        var pot = Pot.Of(profile.Recipe);
        foreach (var part in profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || part.Line.Role == LineRole.Fining || part.Material is not { } material) continue;
            bool raw = part.Item is { ByProduct: null, File: Prep inner }
                ? profile.Set.TryBefore(inner, profile) is { } below && RawEggIn(below) is not null
                : IsRawEgg(material);
            if (raw && !pot.Any(part.Line, s => HeatedFood.Meets(product, s))) return part;
        }

        return null;
    }

    public override void Check(RecipeContext context, Prep prep)
    {
        if (EggOf(context, prep) is not { } egg) return;
        double days = Storage.Days(prep);
        var state = context.Profile.Keeping!;
        bool aged = state.Abv.IsKnown && state.Abv.Low >= AgedStrength.Value && days >= AgedDays.Value;
        context.Report(new(Rule)
        {
            Answer = double.IsNaN(days) ? Answer.NotShown : Answer.Broken,
            AskedLevel = double.IsNaN(days) ? Level.Warning : null,
            At = context.ItemOf(egg.Line),
            Message = aged
                ? $"Raw egg is kept {KeepingWords.Days(days)} at {Say.Fact(Fact.Abv, state.Abv)}. In one demonstration Salmonella died "
                    + $"off in {KeepingWords.Days(AgedDays.Value)} at {Say.Number(AgedStrength.Value)} % vol, but that is not a "
                    + $"validated process ({AgedStrength.Source}). Only a process authority can set one."
                : $"Raw egg is kept {KeepingWords.ForDays(days)}. Uncooked food with egg must use pasteurised egg (US Food Code "
                    + $"3-302.13), and cracked raw egg keeps at most {KeepingWords.Days(Most.Value)} (common practice, no source).",
            Advice = "Use pasteurised egg, or make it for the shift and tell guests that it contains raw egg.",
            Caution = KeepingWords.Caution,
            Evidence = [Proof.Of("keep.for", days, "d"), Proof.Of(Fact.Abv, state.Abv), Proof.Of(Most)],
        });
    }
}
