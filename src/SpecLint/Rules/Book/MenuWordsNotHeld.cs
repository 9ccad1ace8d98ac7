using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

[Rule("SL9011", "menu-words-not-held", "The menu names an ingredient that the drink does not hold", Level.Warning)]
internal sealed partial class MenuWordsNotHeld : MenuEntryRule
{
    protected override void Check(FileContext context, Menu menu, MenuEntry entry)
    {
        if (!entry.Words.IsGiven || !entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) return;
        HeldWords? held = null;
        foreach (string words in MenuPieces.Of(entry.Words.Value))
        {
            if (NamesFood(context, entry, recipe, words, ref held)) continue;
            if (BuiltInCatalogue.Find(BuiltInCatalogue.Slug(words)) is not { } meant) continue;
            var kind = meant.IngredientKind.OrNone();
            if (kind is { ComesInPieces: true, IsSpice: true } && recipe is Drink { Garnish.Count: > 0 } dressed)
            {
                held ??= HeldWords.Of(context, recipe);
                if (!held.IsOpen && !held.HasId(meant.Id) && held.PartsNamed(words).Count == 0)
                    ReportGarnish(context, entry, words, dressed);
                continue;
            }

            if (ProtectedName.IsOne(words)) continue;
            held ??= HeldWords.Of(context, recipe);

            // One of two sisters is named and the other poured: dry vermouth and sweet, rye and bourbon.
            bool sister = ((kind.IsSpirit && words.IndexOf(' ') > 0)
                || (!kind.IsNamedOnMenus && kind is { IsManifold: true, GivesStrength: true, IsLiqueur: false, IsBitters: false }))
                && held.Parts.Any(p => p.Material is { } m && m.Kind == kind);
            if (!kind.IsNamedOnMenus && !sister) continue;
            if (held.IsOpen
                || held.HasId(meant.Id)
                || (sister ? held.PartsNamed(words).Count > 0 : held.Has(words) || held.Has(meant.Name.Or(meant.Id))))
                continue;

            // A liqueur or an aromatised wine tastes of many things that no file lists.
            if (held.IsManifold && !kind.IsSpirit && !sister) continue;
            context.Report(new(Rule)
            {
                At = context.At(entry.Words.Span, $"drinks[{entry.Drink.Value}].words"),
                Key = BuiltInCatalogue.Slug(words),
                Message = $"Guests read \"{words}\", but {recipe.Name.Or(recipe.Id)} holds none: it is made from "
                    + $"{Say.List(held.Names)} (Reg (EU) 1169/2011 Art 7: what is said about a food must not mislead).",
                Advice = $"Remove \"{words}\" from the words, or add it to the drink.",
                Evidence = [Proof.Of("words", entry.Words.Value, context.At(entry.Words.Span))],
                Related = [new RelatedPlace(recipe.Head, "the recipe")],
            });
        }
    }

    private static void ReportGarnish(FileContext context, MenuEntry entry, string words, Drink drink) => context.Report(new(Rule)
    {
        AskedLevel = Level.Note,
        At = context.At(entry.Words.Span, $"drinks[{entry.Drink.Value}].words"),
        Key = BuiltInCatalogue.Slug(words),
        Message = $"Guests read \"{words}\", and {drink.Name.Or(drink.Id)} is garnished with "
            + $"{Say.List(drink.Garnish.Where(l => l.Item.IsGiven).Select(l => l.Item.Value).ToList())}.",
        Advice = "Write the garnish that is served.",
        Related = [new RelatedPlace(drink.At(drink.Garnish[0].Span), "the garnish")],
    });
}
