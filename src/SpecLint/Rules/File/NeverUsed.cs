using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.File;

[Rule("SL1016", "never-used", "An ingredient that the method never uses", Level.Warning)]
internal sealed partial class NeverUsed : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var recipe = context.Recipe;
        bool listsAdded = ListsWhatIsAdded(recipe);
        if (recipe.Method.Count == 0 || (TakesAll(recipe) && !listsAdded)) return;
        foreach (var part in context.Profile.Parts)
        {
            var line = part.Line;
            if (!line.Item.IsGiven
                || (line.Role is not (LineRole.Part or LineRole.Muddle) && !IsAskedFor(recipe, line.Role))
                || line.Optional
                || part.Material is { Kind: { IsIce: true } or { IsGas: true } }
                || IsNamed(context, part))
                continue;
            context.Report(new(Rule)
            {
                // A step to stir or shake that names nothing may mean all.
                AskedLevel = listsAdded ? Level.Note : null,
                At = context.ItemOf(line),
                Message = $"The steps name what they use, and none of them names {Amounts.Written.Item(line)}. It is listed but never goes "
                    + "in.",
                Advice = line.RoleIsGiven
                    ? "Write the step that brings it in, with its item, or delete the line."
                    : "Name it in the step that uses it, or delete the line.",
                Related = [context.See(recipe.MethodSpan, "the method")],
            });
        }
    }

    /// <summary>
    /// Whether the method should bring in a line with such a role: it tops, floats, rinses or washes, and no step that names nothing may
    /// mean it. A garnish and a rim need no step.
    /// </summary>
    private static bool IsAskedFor(Recipe recipe, LineRole role)
    {
        if (role is LineRole.Garnish or LineRole.Rim) return false;
        foreach (var step in recipe.Method)
        {
            if (step.Items.Count > 0) continue;
            if (!step.Verb.IsKnown || step.Verb.Adds || step.Verb.Builds) return false;
            if (role is LineRole.Rinse or LineRole.Wash or LineRole.Fining
                && (step.Verb.Group == VerbGroup.Finish || step.Verb.Works))
                return false;
        }

        return true;
    }

    /// <summary>Whether a step without items takes all that is listed: it gathers, or nothing was named before it.</summary>
    private static bool TakesAll(Recipe recipe)
    {
        bool named = false;
        foreach (var step in recipe.Method)
        {
            if (step.Items.Count > 0)
            {
                named = true;
                continue;
            }

            if (!step.Verb.IsKnown || step.Verb.TakesAll || (!named && step.Verb.Works)) return true;
        }

        return !named;
    }

    /// <summary>
    /// Whether the only steps without items that take all come after a step that says what is added: they mix what is there.
    /// </summary>
    private static bool ListsWhatIsAdded(Recipe recipe)
    {
        bool added = false, mixes = false;
        foreach (var step in recipe.Method)
        {
            if (step.Items.Count > 0)
            {
                added |= step.Verb.Adds;
                continue;
            }

            if (!step.Verb.IsKnown || (step.Verb.TakesAll && !(added && step.Verb.Chills)) || (!added && step.Verb.Works)) return false;
            mixes |= step.Verb.TakesAll;
        }

        return mixes;
    }

    private static bool IsNamed(RecipeContext context, Part part)
    {
        string id = part.Line.Item.Value;
        foreach (var step in context.Recipe.Method)
        {
            foreach (var item in step.Items)
            {
                if (item.Value == id || (part.Item is { } known && context.Book.Resolve(item.Value)?.Id == known.Id)) return true;
            }

            // What a step strains out, it does not put in.
            if (step.Verb.Strains) continue;
            if (Says(step.Note, id) || Says(step.Until, id) || Says(step.Into, id)) return true;
        }

        return false;
    }

    /// <summary>Whether a remark names an item by its id in words.</summary>
    private static bool Says(Given<string> given, string id)
    {
        if (!given.IsGiven) return false;
        string text = given.Value;
        for (int i = 0; i + id.Length <= text.Length; i++)
        {
            if ((i == 0 || !char.IsLetterOrDigit(text[i - 1])) && Amounts.AmountsInText.Names(text, i, id)) return true;
        }

        // The last word of an id is what people say: "the milk".
        int cut = id.LastIndexOf('-');
        return cut > 0 && id.Length - cut > 3 && text.IndexOf(id.Substring(cut + 1), StringComparison.OrdinalIgnoreCase) >= 0;
    }
}
