using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Book;

/// <content>Foods that are named in any of eight languages, whatever kind of them is meant.</content>
internal sealed partial class MenuWordsNotHeld
{
    /// <summary>Letters from which on two words that differ in one are taken for each other: cherry and sherry.</summary>
    private const int LettersOfLikeness = 6;

    /// <summary>Holds a piece that names a food against the drink; whether it names one.</summary>
    private static bool NamesFood(FileContext context, MenuEntry entry, Recipe recipe, string words, ref HeldWords? held)
    {
        if (MenuFoodTable.NamedBy(words) is not { Count: > 0 } foods) return false;
        held ??= HeldWords.Of(context, recipe);
        var drink = held;
        if (drink.IsOpen || drink.Has(words) || WordSearch.Has(recipe.Name.Or(""), words)) return true;
        if (foods.Any(f => drink.Texts.Any(f.IsToldIn))) return true;
        var others = MenuPieces.Of(entry.Words.Value).Where(p => p != words).ToList();

        // A word that is nearly that of a part which no other piece names was written for it, whatever the drink may taste of.
        string? near = drink.Texts.SelectMany(static t => t.Split(' '))
            .FirstOrDefault(t => foods.Any(f => f.Words.Any(w => IsNearly(w, t))) && !others.Exists(o => WordSearch.Has(o, t)));
        bool mayTaste = drink.IsManifold || foods.Any(static f => f.IsTaste);
        if (near is null && mayTaste && (drink.IsManifold || others.Count == 0 || !others.TrueForAll(drink.Has))) return true;
        context.Report(new(Rule)
        {
            At = context.At(entry.Words.Span, $"drinks[{entry.Drink.Value}].words"),
            Key = BuiltInCatalogue.Slug(words),
            Message = $"Guests read \"{words}\", but {recipe.Name.Or(recipe.Id)} holds none: it is made from "
                + $"{Say.List(drink.Names)} (Reg (EU) 1169/2011 Art 7: what is said about a food must not mislead).",
            Advice = (near is null ? "" : $"If {near} was meant, write that. ")
                + $"Remove \"{words}\" from the words, or add it to the drink.",
            Evidence = [Proof.Of("words", entry.Words.Value, context.At(entry.Words.Span))],
            Related = [new RelatedPlace(recipe.Head, "the recipe")],
        });
        return true;
    }

    /// <summary>Whether two words differ in one letter.</summary>
    private static bool IsNearly(string a, string b)
    {
        if (a.Length != b.Length || a.Length < LettersOfLikeness) return false;
        int other = 0;
        for (int i = 0; i < a.Length; i++) other += a[i] == b[i] ? 0 : 1;
        return other == 1;
    }
}
