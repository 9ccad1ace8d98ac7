using SpecLint.Book;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

/// <summary>A sentence of a recipe, and where it stands.</summary>
/// <param name="Text">The text.</param>
/// <param name="Path">Its JSON path.</param>
/// <param name="Step">The step it belongs to; <see langword="null"/> where it belongs to none.</param>
internal readonly record struct RecipeText(Given<string> Text, string Path, Step? Step);

/// <summary>All that a recipe says in words about how it is made and served: notes, lines, steps. Its name is not among them.</summary>
internal static class RecipeTexts
{
    /// <summary>The texts, in the order of the file.</summary>
    public static IEnumerable<RecipeText> Of(RecipeContext context)
    {
        var recipe = context.Recipe;
        foreach (var line in LinkedBook.LinesOf(recipe))
        {
            if (line.Note.IsGiven) yield return new RecipeText(line.Note, RecipeContext.PathOf(line, "note"), null);
        }

        foreach (var step in recipe.Method)
        {
            if (step.Do.IsGiven) yield return new RecipeText(new Given<string>(step.Written, step.Do.Span), context.PathOf(step), step);
            if (step.Ice.IsGiven) yield return new RecipeText(new Given<string>(step.IceWritten, step.Ice.Span), context.PathOf(step) + ".ice", step);
            if (step.Until.IsGiven) yield return new RecipeText(step.Until, context.PathOf(step) + ".until", step);
            if (step.Into.IsGiven) yield return new RecipeText(step.Into, context.PathOf(step) + ".into", step);
            if (step.Vessel.IsGiven) yield return new RecipeText(new Given<string>(step.Vessel.Value.Id, step.Vessel.Span), context.PathOf(step) + ".vessel", step);
            if (step.Note.IsGiven) yield return new RecipeText(step.Note, context.PathOf(step) + ".note", step);
            foreach (var item in step.Items)
            {
                if (item.IsGiven && context.Book.Resolve(item.Value) is null) yield return new RecipeText(item, context.PathOf(step) + ".items", step);
            }
        }

        for (int i = 0; i < recipe.Notes.Count; i++)
        {
            if (recipe.Notes[i].IsGiven) yield return new RecipeText(recipe.Notes[i], $"notes[{i}]", null);
        }

        if (recipe is not Prep prep) yield break;
        if (prep.Keep is { In.IsGiven: true } keep) yield return new RecipeText(new Given<string>(keep.In.Value.Id, keep.In.Span), "keep.in", null);
        foreach (var left in prep.ByProducts)
        {
            if (left.Note.IsGiven) yield return new RecipeText(left.Note, "byProducts", null);
        }
    }
}
