using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule("SL7032", "claim-not-checked", "A claim of a recipe is not checked", Level.Note, Safety = true)]
internal sealed partial class ClaimNotChecked : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var placed in context.Claims)
        {
            if (placed.Claim.Meaning.Kind == ClaimKind.Unknown) context.Report(Of(Rule, placed, context));
        }
    }

    /// <summary>The finding about a claim that is not known.</summary>
    internal static Finding Of(RuleInfo rule, PlacedClaim placed, FileContext context) => new(rule)
    {
        AskedLevel = placed.Claim.IsFreeFrom ? Level.Warning : null,
        Answer = Answer.NotShown,
        Place = context.At(placed.Text.Span),
        Path = placed.Path,
        Key = placed.InList >= 0 ? "" : placed.Claim.Words,
        Message = $"\"{placed.Claim.Words}\" is not checked: the rules do not know what it excludes.",
        Advice = "Check it by hand against every part, or name the allergen or the ingredient in plain words.",
        Caution = placed.Claim.IsFreeFrom ? AllergenWords.Caution : null,
        Evidence = [Proof.Of("claim", placed.Text.Value, context.At(placed.Text.Span))],
    };
}
