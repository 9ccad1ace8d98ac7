using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7001", "allergen-undeclared", "The recipe contains an allergen that is not in its list", Level.Error,
    Needs = [Fact.Sulphite], Safety = true)]
internal sealed partial class AllergenUndeclared : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var list = AllergenWords.Declared(context.Recipe);
        if (!list.IsGiven) return;
        var found = context.Profile.Allergens.Found;
        for (int i = 0; i < found.Count; i++)
        {
            var one = found[i];
            if (one.Presence == Presence.Possible
                || AllergenTable.Covers(list.Value, one.Token)
                || AllergenWords.SaysMay(context.Recipe, one.Token))
                continue;
            bool notShown = one.Presence == Presence.NotShown;
            string amount = "";
            var evidence = new List<Evidence> { Proof.Of("allergen", one.Token), AllergenWords.ComesIn(context, one.Origin) };
            if (!double.IsNaN(one.Category.Threshold))
            {
                var sulphite = context.Fact(Fact.Sulphite);
                if (sulphite.IsKnown && sulphite.High > 0)
                {
                    evidence.Add(Proof.Of(Fact.Sulphite, sulphite));
                    amount = $" at {Say.Fact(Fact.Sulphite, sulphite)}, against the {Say.Number(one.Category.Threshold)} mg/kg from "
                        + "which it must be named";
                }

                evidence.Add(Proof.Of("threshold", one.Category.Threshold, "mg/kg", one.Category.Source));
            }

            context.Report(new(Rule)
            {
                AskedLevel = context.Recipe is Drink && AllergenWords.IsOfLabelsOnly(one)
                    ? Level.Note
                    : notShown || AllergenWords.IsRecalled(one) ? Level.Warning : null,
                Answer = notShown ? Answer.NotShown : Answer.Broken,
                At = context.At(list.Span, "declares.allergens"),
                Key = one.Token,
                Message = $"{Name(one.Token)} {(notShown ? "may come" : "comes")} in {AllergenWords.Way(one.Origin)}{amount} and is "
                    + $"not declared. {AllergenWords.Asks(one)} ({one.Category.Source}).",
                Advice = $"Declare `{one.Token}`, or " + (notShown ? "find out how much of it the bottle holds." : "remove its source."),
                Caution = AllergenWords.Caution,
                Evidence = evidence,
                Related = [context.See(one.Origin.Part.Line.Span, $"brings {one.Token}")],
                Corrections = Correction.Propose($"Declare `{one.Token}`.", JsonEdits.AddToList(context.Recipe, list, one.Token)),
            });
        }
    }

    private static string Name(string token) => char.ToUpperInvariant(token[0]) + token.Substring(1).Replace('-', ' ');
}
