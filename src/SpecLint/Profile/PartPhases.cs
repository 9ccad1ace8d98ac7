using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>Tells when each line of a recipe goes in, by its role and the method.</summary>
internal sealed class PartPhases
{
    private readonly bool ofDrink;
    private readonly HashSet<string>? topped;
    private readonly bool topsRest;
    private readonly bool strains;
    private readonly bool agitates;
    private readonly bool muddlesRest;
    private readonly HashSet<string>? muddled;

    /// <summary>Reads the method of a recipe.</summary>
    public PartPhases(Recipe recipe)
    {
        ofDrink = recipe is Drink;
        foreach (var step in recipe.Method)
        {
            strains |= step.Verb.Strains;
            agitates |= step.Verb.Agitates;
            if (step.Verb.Muddles)
            {
                muddlesRest |= step.Items.Count == 0;
                foreach (var item in step.Items) (muddled ??= new HashSet<string>(StringComparer.Ordinal)).Add(item.Value);
            }

            if (!step.Verb.AddsLast) continue;
            topsRest |= step.Items.Count == 0;
            foreach (var item in step.Items) (topped ??= new HashSet<string>(StringComparer.Ordinal)).Add(item.Value);
        }
    }

    /// <summary>When a line goes in.</summary>
    public PartPhase Of(Line line, Material? material)
    {
        switch (line.Role)
        {
            case LineRole.Garnish or LineRole.Rim or LineRole.Rinse: return PartPhase.Beside;
            case LineRole.Top or LineRole.Float: return PartPhase.Top;
            case LineRole.Fining or LineRole.Wash: return PartPhase.TakenOut;
        }

        if (ofDrink)
        {
            if (line.Item.IsGiven && topped is not null && topped.Contains(line.Item.Value)) return PartPhase.Top;
            if (topsRest && material is { Kind.Lengthens: true }) return PartPhase.Top;
            if (material is { Kind.IsIce: true }) return PartPhase.Beside;
            if (IsCut(line, material))
            {
                // A muddled or shaken piece gives its juice; one that only lies in the drink or in the mixing glass gives little.
                if (IsMuddled(line)) return PartPhase.TakenOut;
                if (!agitates) return PartPhase.Beside;
            }
        }

        return strains && material is { State: MaterialState.Solid } && material.Kind.IsBotanical ? PartPhase.TakenOut
            : line.Role == LineRole.Muddle ? PartPhase.TakenOut
            : PartPhase.Mix;
    }

    /// <summary>Whether a line is pieces of a fresh fruit or vegetable. What can harm counts in full all the same.</summary>
    private static bool IsCut(Line line, Material? material) =>
        line.Amount.IsGiven && line.Amount.Value.Dimension == Reading.Dimension.Count && Catalogue.PieceTable.IsPart(line.Amount.Value.Unit.Name)
        && material is { State: MaterialState.Solid, Kind: { IsFreshPlant: true, ComesInPieces: true }, Ingredient: { Hazard.IsGiven: false } };

    private bool IsMuddled(Line line) =>
        muddlesRest
            || line.Role == LineRole.Muddle
            || line.Amount.Value.Unit.Name == "squeeze"
            || (muddled is not null && line.Item.IsGiven && muddled.Contains(line.Item.Value));
}
