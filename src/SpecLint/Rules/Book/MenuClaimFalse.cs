using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

[Rule("SL9012", "menu-claim-false", "The menu makes a claim that the drink does not meet", Level.Error, Safety = true)]
internal sealed partial class MenuClaimFalse : MenuEntryRule
{
    protected override void Check(FileContext context, Menu menu, MenuEntry entry)
    {
        if (!entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) return;
        foreach (var placed in Claims.Of(menu, entry, context.Book))
        {
            // What the recipe claims itself is found there.
            var meaning = placed.Claim.Meaning;
            if (ClaimsItself(context, recipe, meaning)
                || Claims.Judge(meaning, context, context.Profiles.Of(recipe)) is not { } verdict)
                continue;
            string key = placed.Path is "name" || placed.Path.StartsWith("notes", StringComparison.Ordinal)
                ? $"{placed.Claim.Words} {recipe.Id}"
                : placed.Claim.Words;
            var against = verdict.Against is { } part ? recipe.At(part.Line.Span) : recipe.Head;
            context.Report(new(Rule)
            {
                AskedLevel = placed.Capped(verdict.Cap),
                Answer = verdict.Answer,
                At = context.At(placed.Text.Span, placed.Path),
                Key = placed.InList >= 0 ? "" : key,
                Message = $"{recipe.Name.Or(recipe.Id)} is called {placed.Claim.Words} here, and {verdict.Because} ({verdict.Source}).",
                Advice = "Remove the claim, or change the drink.",
                Caution = "Guests rely on such words, some because they must. If it is not shown, do not say it.",
                Evidence = verdict.Evidence,
                Related = [new RelatedPlace(against, "contradicts the claim")],
                Corrections = placed.InList < 0 ? []
                    : Correction.Propose(
                        $"Remove the claim `{placed.Text.Value}`.", JsonEdits.RemoveFromList(menu, entry.Claims, placed.InList)),
            });
        }
    }

    private static bool ClaimsItself(BookContext context, Recipe recipe, ClaimMeaning meaning) =>
        Claims.Of(recipe, context.Book).Any(own => own.Of is null
            && own.Claim.Meaning.Kind == meaning.Kind
            && own.Claim.Meaning.Tokens.SequenceEqual(meaning.Tokens)
            && (meaning.Kind != ClaimKind.Ingredient || own.Claim.Meaning.What == meaning.What));
}
