using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3030", "clear-drink-shaken", "A drink of clear parts alone that is shaken or blended", Level.Warning)]
internal sealed partial class ClearDrinkShaken : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        // A style says itself how it is made.
        if (drink.Style.IsGiven || context.Profile.TechniqueStep is not { Do.IsGiven: true } step) return;
        if (context.Profile.Technique is not (TechniqueKind.Shaken or TechniqueKind.Blended)) return;
        bool spirit = false, aromatic = false, bitters = false, blended = context.Profile.Technique == TechniqueKind.Blended;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;

            // Only what is known to be clear and has alcohol: a spirit, an aromatised wine, bitters.
            if (part.Phase == PartPhase.Top || part.Item?.File is not Ingredient || part.Material is not { } material) return;
            var kind = material.Kind;
            if (kind.IsLiqueur && !(blended && kind.IsClear)) return;
            bool aromatised = kind.IsManifold && PartRoles.Of(material) == PartRole.WithAlcohol;
            if (!kind.IsSpirit && !kind.IsLiqueur && !kind.IsBitters && !aromatised) return;
            spirit |= kind.IsSpirit;
            bitters |= kind.IsBitters;
            aromatic |= !kind.IsSpirit;
        }

        if (!spirit || !aromatic) return;
        context.Report(new(Rule)
        {
            // No drink of the list with bitters is shaken; one of spirit and wine alone is.
            AskedLevel = bitters || blended ? null : Level.Note,
            At = context.VerbOf(step),
            Message = $"It is {step.Verb.Past}, and all its parts are clear: that clouds it with air and gives it more water. The "
                + "official list stirs all drinks of spirit, aromatised wine and bitters but one, the Vesper (official list of the "
                + "trade, 2025).",
            Advice = "Stir it on ice and strain it.",
            Corrections = context.Write(step.Do.Span, "stir", "Stir it."),
        });
    }
}
