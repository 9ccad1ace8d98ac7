using SpecLint.Book;
using SpecLint.Linking;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

/// <summary>A sentence of a recipe, and where it stands.</summary>
/// <param name="Text">The text.</param>
/// <param name="Step">The step it belongs to; <see langword="null"/> where it belongs to none.</param>
/// <param name="Line">The line it belongs to; <see langword="null"/> where it belongs to none.</param>
/// <param name="Property">Its property in the step or line (empty for the verb itself); of the recipe where it belongs to neither.</param>
internal readonly record struct RecipeText(Given<string> Text, Step? Step, Line? Line, string Property)
{
    /// <summary>Its JSON path, which only a finding needs.</summary>
    /// <param name="context">The recipe.</param>
    public string PathIn(RecipeContext context) =>
        Line is not null ? RecipeContext.PathOf(Line, Property)
        : Step is null ? Property
        : Property.Length == 0 ? context.PathOf(Step) : $"{context.PathOf(Step)}.{Property}";
}

/// <summary>
/// All that a recipe says in words about how it is made and served: notes, lines, steps, and what could not be read. Its name is not
/// among them.
/// </summary>
internal static class RecipeTexts
{
    [ThreadStatic]
    private static List<RecipeText>? gathered;

    /// <summary>Whether one of some texts names a hazard that is looked for in prose.</summary>
    public static bool NameHazard(FixedList<RecipeText> texts)
    {
        foreach (var text in texts)
        {
            if (Catalogue.HazardNames.InProse(text.Text.Value, static _ => true) is not null) return true;
        }

        return false;
    }

    /// <summary>The texts, in the order of the file.</summary>
    public static FixedList<RecipeText> Of(RecipeContext context)
    {
        var recipe = context.Recipe;
        var texts = gathered ??= [];
        texts.Clear();
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Note.IsGiven) texts.Add(new RecipeText(line.Note, null, line, "note"));
        }

        foreach (var step in recipe.Method)
        {
            if (step.Do.IsGiven) texts.Add(new RecipeText(new Given<string>(step.Written, step.Do.Span), step, null, ""));
            if (step.Ice.IsGiven) texts.Add(new RecipeText(new Given<string>(step.IceWritten, step.Ice.Span), step, null, "ice"));
            if (step.Until.IsGiven) texts.Add(new RecipeText(step.Until, step, null, "until"));
            if (step.Into.IsGiven) texts.Add(new RecipeText(step.Into, step, null, "into"));
            if (step.Vessel.IsGiven)
                texts.Add(new RecipeText(new Given<string>(step.Vessel.Value.Id, step.Vessel.Span), step, null, "vessel"));
            if (step.Note.IsGiven) texts.Add(new RecipeText(step.Note, step, null, "note"));
            foreach (var item in step.Items)
            {
                if (item.IsGiven && context.Book.Resolve(item.Value) is null) texts.Add(new RecipeText(item, step, null, "items"));
            }
        }

        for (int i = 0; i < recipe.Notes.Count; i++)
        {
            if (recipe.Notes[i].IsGiven) texts.Add(new RecipeText(recipe.Notes[i], null, null, $"notes[{i}]"));
        }

        if (recipe is Drink { Glass.IsGiven: true } drink && drink.GlassWritten.Length > 0)
            texts.Add(new RecipeText(new Given<string>(drink.GlassWritten, drink.Glass.Span), null, null, "glass"));
        if (recipe is Prep prep)
        {
            if (prep.Keep is { In.IsGiven: true } keep)
                texts.Add(new RecipeText(new Given<string>(keep.In.Value.Id, keep.In.Span), null, null, "keep.in"));
            foreach (var left in prep.ByProducts)
            {
                if (left.Note.IsGiven) texts.Add(new RecipeText(left.Note, null, null, "byProducts"));
            }
        }

        foreach (var (text, path) in UnreadTexts.OfMethod(recipe)) texts.Add(new RecipeText(text, null, null, path));

        return FixedList.Of(texts);
    }
}
