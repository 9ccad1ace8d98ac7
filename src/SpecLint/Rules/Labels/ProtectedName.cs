using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7022: a protected name on the menu for a drink that does not hold the thing.</summary>
internal sealed class ProtectedName : MenuRule
{
    private static readonly LabelRule Law = LabellingTable.Of("protected-name");

    private static readonly RuleInfo Rule = new("SL7022", "protected-name-misused", "A protected name stands on the menu for something else", Level.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <summary>Whether some words end in a protected name.</summary>
    public static bool IsOne(string words)
    {
        foreach (string name in Law.Words)
        {
            if (WordSearch.EndsWith(words, name)) return true;
        }

        return false;
    }

    /// <inheritdoc/>
    public override void Check(FileContext context, Menu menu)
    {
        if (!Law.AppliesIn(context.Settings)) return;
        foreach (var entry in menu.Drinks)
        {
            if (!entry.Words.IsGiven || !entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
            HeldWords? held = null;
            foreach (string words in MenuPieces.Of(entry.Words.Value))
            {
                foreach (string name in Law.Words)
                {
                    // "Champagne vinegar" names a vinegar: only the last words say what a thing is.
                    if (!WordSearch.EndsWith(words, name)) continue;
                    held ??= HeldWords.Of(context, recipe);
                    if (held.IsOpen || held.HasName(name)) continue;
                    context.Report(new Finding(Rule)
                    {
                        AskedLevel = Law.LevelCap,
                        Place = context.At(entry.Words.Span),
                        Subject = context.Id,
                        Path = $"drinks[{entry.Drink.Value}].words",
                        Key = name,
                        Message = $"The guest reads \"{words}\", a protected name, and {recipe.Name.Or(recipe.Id)} is made of {Say.List(held.Names)} ({Law.Source}).",
                        Advice = "Name what is poured, by its kind, or pour what is named.",
                        Evidence = [Proof.Of("words", entry.Words.Value, context.At(entry.Words.Span))],
                        Related = [new RelatedPlace(recipe.Head, "the recipe")],
                    });
                }
            }
        }
    }
}
