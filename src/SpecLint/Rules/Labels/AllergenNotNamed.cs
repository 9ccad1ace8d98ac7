using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

/// <summary>SL7006: a group such as "nuts" where the law asks for the name.</summary>
internal sealed class AllergenNotNamed : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL7006", "allergen-not-named", "A group of allergens is declared where the one has to be named", Level.Error) { Safety = true };

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
            if (!word.IsGiven || AllergenTable.IsToken(word.Value) || !AllergenTable.IsGroup(word.Value)) continue;
            var tokens = AllergenTable.TokensOf(word.Value);
            AllergenCategory? law = null;
            foreach (string jurisdiction in context.Settings.Jurisdictions)
            {
                foreach (var category in AllergenTable.In(jurisdiction))
                {
                    // Where each substance is a category of its own, it is named by being listed.
                    if ((category.ByName || category.Tokens.Count == 1) && category.Tokens.Any(t => tokens.Contains(t)) && category.DeclareAs != "gluten") law ??= category;
                }
            }

            if (law is null) continue;
            var named = new List<string>();
            foreach (var origin in context.Profile.Allergens.Origins)
            {
                if (tokens.Contains(origin.Token) && !named.Contains(origin.Token)) named.Add(origin.Token);
            }

            context.Report(new Finding(Rule)
            {
                Place = context.At(word.Span),
                Subject = context.Id,
                Path = $"declares.{list}[{word.Value}]",
                Message = $"\"{word.Value}\" names a group; the law asks for {(law.Tokens.Count == 1 ? "each by its name" : law.DeclareAs)} ({law.Source})"
                    + (named.Count > 0 ? $", which here is {Say.List(named)}." : "."),
                Advice = named.Count > 0 ? $"Write {Say.List([.. named.Select(n => $"`{n}`")])}." : $"Name the one it is: {Say.List(tokens, "or")}.",
                Caution = AllergenWords.Caution,
                Evidence = [Proof.Of("declared", word.Value, context.At(word.Span)), Proof.Of("law", law.Source)],
                Corrections = named.Count == 0
                    ? []
                    : [new Correction(CorrectionGrade.Proposed, $"Name {Say.List(named)}.", [new TextEdit(context.At(word.Span), string.Join(", ", named.Select(n => $"\"{n}\"")))])],
            });
        }
    }
}
