using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>SL7007: a declared allergen that is no token.</summary>
internal sealed class AllergenWordUnknown : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL7007", "allergen-word-unknown", "A declared allergen is none of the words that lists are made of", Level.Warning) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { } declares) return;
        if (declares.Allergens.IsGiven) Check(context, declares.Allergens.Value, "allergens");
        Check(context, declares.MayContain, "mayContain");
    }

    private static void Check(RecipeContext context, IReadOnlyList<Given<string>> words, string list)
    {
        for (int w = 0; w < words.Count; w++)
        {
            var word = words[w];
            if (!word.IsGiven || AllergenTable.IsToken(word.Value) || AllergenTable.IsGroup(word.Value)) continue;
            var tokens = AllergenTable.TokensOf(word.Value);
            string? meant = tokens.Count == 1 ? tokens[0] : NearestName.Of(word.Value, AllergenTable.Tokens);
            context.Report(new Finding(Rule)
            {
                Place = context.At(word.Span),
                Subject = context.Id,
                Path = $"declares.{list}[{word.Value}]",
                Message = tokens.Count == 1
                    ? $"\"{word.Value}\" is not the word that allergen lists use for {tokens[0]}, so that a menu's key or another list may miss it."
                    : $"\"{word.Value}\" is no allergen that a list of the law knows, so that nothing can be held against it.",
                Advice = meant is null ? $"Write one of {Say.List(AllergenTable.Tokens, "or")}." : $"Write `{meant}`, if that is meant.",
                Caution = AllergenWords.Caution,
                Evidence = [Proof.Of("declared", word.Value, context.At(word.Span))],
                Corrections = meant is null
                    ? []
                    : [new Correction(tokens.Count == 1 ? CorrectionGrade.Assured : CorrectionGrade.Proposed, $"Write `{meant}`.", [new TextEdit(context.At(word.Span), $"\"{meant}\"")])],
            });
        }
    }
}
