using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7005", "allergen-surplus", "An allergen is declared that nothing in the recipe contains", Level.Warning)]
internal sealed partial class AllergenSurplus : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var list = AllergenWords.Declared(context.Recipe);
        if (!list.IsGiven || list.Value.Count == 0) return;
        var allergens = context.Profile.Allergens;
        if (allergens.Unknown.Count > 0 || context.Profile.Parts.Any(static p => p.Item is null)) return;
        FixedList<TreeLeaf>? leaves = null;
        for (int w = 0; w < list.Value.Count; w++)
        {
            var word = list.Value[w];
            var tokens = AllergenTable.TokensOf(word.Value);
            if (tokens.Count == 0) continue;
            bool brought = false;
            foreach (var origin in allergens.Origins) brought |= tokens.Contains(origin.Token);
            if (brought) continue;

            // What the law exempts may be declared all the same; so may what an unread part of the tree (a cycle) hides.
            leaves ??= RecipeTree.Of(context.Profile);
            foreach (var leaf in leaves)
            {
                foreach (var exemption in leaf.Ingredient.Allergens?.Exempt ?? []) brought |= tokens.Contains(exemption.Allergen);
            }

            if (brought) continue;
            context.Report(new(Rule)
            {
                At = context.At(word.Span, $"declares.allergens[{word.Value}]"),
                Message = $"{word.Value} is declared, and none of its {Say.Count(leaves.Count, "ingredient")} contains it. A list with "
                    + $"too much on it hides what matters (Reg (EU) 1169/2011 Art 36: not misleading, not confusing).",
                Advice = $"Remove `{word.Value}` from the list. If it is a trace from the station, declare it under `mayContain`.",
                Evidence = [Proof.Of("declared", word.Value, context.At(word.Span))],
                Corrections = Correction.Propose(
                    $"Remove `{word.Value}` from the list.", JsonEdits.RemoveFromList(context.Recipe, list.Value, w)),
            });
        }
    }
}
