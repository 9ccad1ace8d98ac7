using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

/// <summary>SL9012: a claim on the menu that the drink does not keep.</summary>
internal sealed class MenuClaimFalse : MenuRule
{
    private static readonly RuleInfo Rule = new("SL9012", "menu-claim-false", "The menu claims what the drink does not keep", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(FileContext context, Menu menu)
    {
        foreach (var entry in menu.Drinks)
        {
            if (entry.Claims.Count == 0 || !entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
            for (int c = 0; c < entry.Claims.Count; c++)
            {
                var claim = entry.Claims[c];
                if (!claim.IsGiven) continue;
                var kind = Claims.KindOf(claim.Value);

                // What the recipe claims itself is found there.
                if (kind == ClaimKind.None || ClaimsItself(recipe, kind)) continue;
                if (Claims.Judge(kind, context.Profiles.Of(recipe), context.Settings) is not { } verdict) continue;
                context.Report(new Finding(Rule)
                {
                    AskedLevel = verdict.Cap,
                    Answer = verdict.Answer,
                    Place = context.At(claim.Span),
                    Subject = context.Id,
                    Path = $"drinks[{entry.Drink.Value}].claims[{claim.Value}]",
                    Message = $"{recipe.Name.Or(recipe.Id)} is called {claim.Value} here, and {verdict.Because} ({verdict.Source}).",
                    Advice = "Drop the claim, or change the drink.",
                    Caution = "Guests choose by such words, some because they must: where it is not shown, do not say it.",
                    Evidence = verdict.Evidence,
                    Related = [new RelatedPlace(verdict.Culprit is { } leaf ? recipe.At(leaf.Part.Line.Span) : recipe.Head, "stands against the claim")],
                    Corrections = [new Correction(CorrectionGrade.Proposed, $"Drop the claim `{claim.Value}`.", [JsonEdits.RemoveFromList(menu, entry.Claims, c)])],
                });
            }
        }
    }

    private static bool ClaimsItself(Recipe recipe, ClaimKind kind)
    {
        foreach (var claim in recipe.Declares?.Claims ?? [])
        {
            if (claim.IsGiven && Claims.KindOf(claim.Value) == kind) return true;
        }

        return false;
    }
}
