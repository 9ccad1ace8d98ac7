using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Book;

[Rule("SL9017", "drink-as-ingredient", "The spec of a drink is named as an ingredient", Level.Error)]
internal sealed partial class DrinkAsPart : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            // A drink in its own list is a finding of the family of files.
            if (part.Item?.File is not Drink drink || drink.Id == context.Id) continue;
            var batch = context.Book.Preps.FirstOrDefault(p => p.BatchOf.IsGiven && p.BatchOf.Value == drink.Id);
            context.Report(new(Rule)
            {
                At = context.ItemOf(part.Line),
                Message = $"`{drink.Id}` is the spec of a drink, with its ice, glass and garnish. Only a preparation can go into another "
                    + "recipe.",
                Advice = batch is null
                    ? "Write a preparation for what is poured (`\"family\": \"batch\"`, `\"batchOf\"`), and name that."
                    : $"Name its batch, `{batch.Id}`.",
                Evidence = [Proof.Of("drink", drink.Id, drink.Head)],
                Related = [new RelatedPlace(drink.Head, "the drink")],
                Corrections = context.Write(part.Line.Item.Span, batch?.Id, $"Name `{batch?.Id}` instead of `{drink.Id}`."),
            });
        }
    }
}
