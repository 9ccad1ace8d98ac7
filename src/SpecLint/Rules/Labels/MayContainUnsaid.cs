using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7004", "may-contain-unsaid", "A part may contain an allergen, and nothing says so", Level.Warning, Safety = true)]
internal sealed partial class MayContainUnsaid : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        var list = AllergenWords.Declared(context.Recipe);
        if (!list.IsGiven) return;
        foreach (var unsaid in PossibleAllergens.Of(context, list.Value)) Report(context, list.Span, unsaid);
    }

    private static void Report(RecipeContext context, TextSpan list, PossibleAllergens unsaid)
    {
        string[] tokens = [.. unsaid.Found.Select(static f => f.Token)];
        string named = Say.List(tokens, "or");
        var first = unsaid.Found[0];
        var may = context.Recipe.Declares!.MayContain;
        var edit = !context.OffersCorrections ? null
            : may.Count > 0 ? JsonEdits.AddToList(context.Recipe, new Given<FixedList<Given<string>>>(may, may[0].Span), tokens)
            : Declares.Edit(context.Recipe, "mayContain", Declares.List(tokens));
        context.Report(new(Rule)
        {
            AskedLevel = unsaid.IsBottle ? Level.Note : null,
            Answer = Answer.NotShown,
            At = context.At(list, "declares.mayContain"),
            Key = unsaid.Leaf,
            Message = unsaid.IsOwn
                ? $"The label of `{unsaid.Leaf}` says that it may contain {named}, which comes in {AllergenWords.Way(first.Origin)} and "
                    + "guests are not told."
                : $"`{unsaid.Leaf}` from some makers holds {named}. It comes in {AllergenWords.Way(first.Origin)}, and nothing says that "
                    + "its label was read.",
            Advice = tokens.Length == 1
                ? $"Read the specification of the bottle. Declare `{tokens[0]}` under `allergens` or `mayContain`, or note in the bar's "
                    + "own ingredient file that it holds none."
                : "Read the specification of the bottle. Declare what it names under `allergens` or `mayContain`, or note in the bar's "
                    + "own ingredient file what it holds.",
            Caution = AllergenWords.Caution,
            Evidence = [AllergenWords.ComesIn(context, first.Origin), Proof.Of("law", first.Category.Source)],
            Related = [context.See(first.Origin.Part.Line.Span, $"may contain {named}")],
            Corrections = Correction.Propose($"Declare that it may contain {Say.List([.. tokens.Select(static t => $"`{t}`")])}.", edit),
        });
    }
}
