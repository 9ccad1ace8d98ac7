using SpecLint.Book;

namespace SpecLint.Profile;

/// <summary>Reads the technique off a method.</summary>
internal static class Techniques
{
    /// <summary>Whether a method has a step of such a verb.</summary>
    public static bool Has(Recipe recipe, Func<Verb, bool> trait)
    {
        foreach (var step in recipe.Method)
        {
            if (trait(step.Verb)) return true;
        }

        return false;
    }

    /// <summary>The technique of a drink, with the step that decides it.</summary>
    public static (TechniqueKind Kind, Step? Step) Of(Drink drink)
    {
        Step? iced = null;
        var kind = TechniqueKind.NoIce;
        bool anyIce = false;
        Step? onIce = null;
        foreach (var step in drink.Method)
        {
            bool none = step.Ice.IsGiven && step.Ice.Value.IsNone;
            if (step.HasIce)
            {
                anyIce = true;
                onIce ??= step;
            }

            var found = step.Verb.Technique;
            if (found == TechniqueKind.NoIce || none) continue;

            // The first chilling step is the one that dilutes; a stir of sugar and bitters is not one.
            if (kind == TechniqueKind.NoIce && (found != TechniqueKind.Stirred || !(IsDissolving(step) || IsMixing(drink, step))))
            {
                kind = found;
                iced = step;
            }
        }

        if (kind != TechniqueKind.NoIce)
        {
            // A built drink that is given a stir in its glass stays a built one.
            if (kind == TechniqueKind.Stirred && !iced!.Ice.IsGiven && BuildsFirst(drink) && !StrainsAfter(drink, iced))
                return anyIce ? (TechniqueKind.Built, iced) : (TechniqueKind.NoIce, null);
            return (kind, iced);
        }

        foreach (var step in drink.Method)
        {
            if (step.Verb.IcesGlass && step.Ice is { IsGiven: true, Value.IsNone: false }) return (TechniqueKind.Built, step);
        }

        if (anyIce) return (TechniqueKind.Built, onIce);
        return drink.Method.Count > 0
            ? (TechniqueKind.NoIce, null)
            : (drink.Style.IsGiven ? (drink.Style.Value.Meant ?? drink.Style.Value).ImpliedTechnique : TechniqueKind.Unknown, null);
    }

    private static bool IsDissolving(Step step) => step.Until.IsGiven && step.Until.Value.IndexOf("dissol", StringComparison.OrdinalIgnoreCase) >= 0;

    /// <summary>
    /// Whether a stir without a word of ice only mixes: a later step chills on ice, or no step has any and what is stirred is cooled
    /// afterwards, as a bowl in the refrigerator.
    /// </summary>
    private static bool IsMixing(Drink drink, Step step)
    {
        if (step.Ice.IsGiven) return false;
        bool ice = false, cooled = false;
        foreach (var other in drink.Method)
        {
            if (other.HasIce && other.Number > step.Number && other.Verb.Technique != TechniqueKind.NoIce) return true;
            ice |= other.HasIce;
            cooled |= other.Number > step.Number && other.Verb.Cools && (other.To.IsGiven || other.At.IsGiven || other.For.IsGiven);
        }

        return cooled && !ice;
    }

    /// <summary>Whether it is strained after a step: what was built, stirred and strained was built in a mixing glass.</summary>
    private static bool StrainsAfter(Drink drink, Step step)
    {
        foreach (var later in drink.Method)
        {
            if (later.Number > step.Number && later.Verb.UsesStrainer) return true;
        }

        return false;
    }

    private static bool BuildsFirst(Drink drink)
    {
        foreach (var step in drink.Method)
        {
            if (step.Verb.Builds) return true;
        }

        return false;
    }
}
