using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7038", "exempt-without-distilling", "An allergen is exempted as distilled in something that is not distilled", Level.Error,
    Safety = true)]
internal sealed partial class NotDistilled : IngredientRule
{
    private static readonly string[] Distilling = ["distill", "distilat", "destill", "destilad", "spiritueux"];

    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (ingredient.Allergens is not { Exempt.Count: > 0 } stated) return;
        var flat = context.Profiles.MaterialOf(ingredient.Id)?.Ingredient ?? ingredient;
        var kind = flat.IngredientKind.OrNone();

        // Made with spirit, or of it: what the law exempts is what was distilled.
        if (kind.IsSpirit || kind.Burns || kind.IsStrong || kind.IsLiqueur || kind.IsBitters) return;
        foreach (var exemption in stated.Exempt)
        {
            if (exemption.Because is not { } because
                || !Array.Exists(Distilling, w => because.IndexOf(w, StringComparison.OrdinalIgnoreCase) >= 0))
                continue;
            context.Report(new(Rule)
            {
                Answer = kind.IsKnown ? Answer.Broken : Answer.NotShown,
                AskedLevel = kind.IsKnown ? null : Level.Warning,
                Place = context.At(stated.Span),
                Path = "allergens.exempt",
                Key = exemption.Allergen,
                Message = $"{ingredient.Name.Or(ingredient.Id)} exempts {exemption.Allergen} as used for distilling, and "
                    + (kind.IsKnown ? $"it is a {kind.Id.Replace('-', ' ')}, which is not distilled" : "nothing says that it is distilled")
                    + ": the exemption is for distillates alone (Reg (EU) 1169/2011 Annex II).",
                Advice = $"Name `{exemption.Allergen}` under `contains`, or copy the list from the supplier's specification.",
                Caution = AllergenWords.Caution,
                Evidence =
                [
                    Proof.Of("kind", flat.IngredientKind.IsGiven ? flat.IngredientKind.Value.Id : "not given"),
                    Proof.Of("because", because, context.At(stated.Span)),
                ],
            });
        }
    }
}
