using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7003", "may-contain-for-contained", "A contained allergen is declared only as may contain", Level.Error, Safety = true)]
internal sealed partial class MayForContains : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { } declares || declares.MayContain.Count == 0) return;
        var list = declares.Allergens;
        var found = context.Profile.Allergens.Found;
        for (int i = 0; i < found.Count; i++)
        {
            var one = found[i];
            if (one.Presence != Presence.Contained || (list.IsGiven && AllergenTable.Covers(list.Value, one.Token))) continue;
            for (int w = 0; w < declares.MayContain.Count; w++)
            {
                var word = declares.MayContain[w];
                if (!AllergenTable.TokensOf(word.Value).Contains(one.Token)) continue;
                context.Report(new(Rule)
                {
                    AskedLevel = AllergenWords.IsRecalled(one) ? Level.Warning : null,
                    At = context.At(word.Span, $"declares.mayContain[{word.Value}]"),
                    Key = one.Token,
                    Message = $"It contains {one.Token} ({AllergenWords.Way(one.Origin)}). \"May contain\" is for traces that cannot be "
                        + $"kept out, not for an ingredient ({one.Category.Source}).",
                    Advice = $"Declare `{one.Token}` under `allergens`.",
                    Caution = AllergenWords.Caution,
                    Evidence = [AllergenWords.ComesIn(context, one.Origin)],
                    Related = [context.See(one.Origin.Part.Line.Span, $"brings {one.Token}")],
                    Corrections = Correction.Propose(
                        $"Move `{one.Token}` to `allergens`.",
                        list.IsGiven ? JsonEdits.AddToList(context.Recipe, list, one.Token) : null,
                        JsonEdits.RemoveFromList(context.Recipe, declares.MayContain, w)),
                });
                break;
            }
        }
    }
}
