using SpecLint.Book;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule("SL7008", "allergens-unknown", "The allergens of a bought ingredient are not known", Level.Warning, Safety = true)]
internal sealed partial class AllergensUnknown : IngredientRule
{
    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (ingredient.Allergens is { SaysWhatItContains: true }) return;
        var users = context.Book.UsersOf(ingredient.Id);
        if (users.Count == 0) return;
        var flat = context.Profiles.MaterialOf(ingredient.Id)?.Ingredient;
        if (flat is null || flat.Allergens is { SaysWhatItContains: true }) return;
        bool saysNothing = ingredient.Allergens is not null;
        if (!saysNothing && !flat.LikeIsBroken && !flat.IngredientKind.OrNone().MayHoldAllergen) return;
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            Place = saysNothing ? context.At(ingredient.Allergens!.Span) : ingredient.Head,
            Path = "allergens",
            Message = $"{(saysNothing ? "`allergens` names nothing that it contains, not even `\"contains\": []`, so nothing" : flat.LikeIsBroken ? $"`{ingredient.Like.Or("")}` is not an ingredient, so nothing" : "Nothing")} says which allergens {ingredient.Name.Or(ingredient.Id)} holds, and {Say.Count(users.Count, "recipe")} {(users.Count == 1 ? "is" : "are")} made with it, so no list there can be shown to be complete (general knowledge of such products).",
            Advice = "Copy them from the supplier's specification: `\"allergens\": { \"contains\": [], \"mayContain\": [] }`.",
            Caution = AllergenWords.Caution,
            Evidence = [Proof.Of("kind", flat.IngredientKind.IsGiven ? flat.IngredientKind.Value.Id : "not given")],
            Related = [.. users.Take(5).Select(u => new RelatedPlace(u.Head, "is made with it"))],
        });
    }
}
