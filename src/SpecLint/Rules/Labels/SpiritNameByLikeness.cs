using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7036", "spirit-name-by-likeness", "Something is called like a spirit that is not in it", Level.Warning)]
internal sealed partial class SpiritNameByLikeness : FileRule
{
    private static readonly LegalName Law = NameTable.All.First(n => n.Id == "words-of-likeness-with-a-spirit-name-eu");
    private static readonly FixedList<LegalName> Spirits = [.. NameTable.All.Where(n => n.Kind == "category" && n.StrengthAtLeast > 0)];

    public override void Check(FileContext context)
    {
        if (!Law.AppliesIn(context.Settings)) return;
        if (context.File is Recipe { Name.IsGiven: true } own) Look(context, own, own.Name.Value, own.Name, "name");
        if (context.File is not Menu menu) return;
        foreach (var (entry, at, path, text) in MenuPieces.Texts(menu))
        {
            if (entry.Drink.IsGiven && context.Book.Resolve(entry.Drink.Value)?.File is Recipe recipe)
                Look(context, recipe, text, at, path);
        }
    }

    private static void Look(FileContext context, Recipe recipe, string words, Given<string> at, string path)
    {
        if (!MayLiken(words)) return;
        foreach (var spirit in Spirits)
        {
            if (!spirit.AppliesIn(context.Settings)) continue;
            foreach (string name in spirit.Terms)
            {
                if (Likeness(words, name) is not { } likeness
                    || HeldWords.Of(context, recipe) is not { IsOpen: false } held
                    || held.HasName(name))
                    continue;
                context.Report(new(Rule)
                {
                    AskedLevel = recipe == context.File && recipe is Prep prep && !Sold.IsSold(context, prep) ? Level.Note : Law.LevelCap,
                    At = context.At(at.Span, path),
                    Key = name,
                    Message = $"\"{words}\": {name} is reserved for a spirit drink of its category, also with \"{likeness}\", and "
                        + $"{recipe.Name.Or(recipe.Id)} is made from {Say.List(held.Names)} ({Law.Source}).",
                    Advice = $"Say what it tastes of, e.g. the botanicals or the cask, or make it with {name}.",
                    Evidence = [Proof.Of("words", words, context.At(at.Span))],
                });
                return;
            }
        }
    }

    private static readonly WordFilter Likenesses = WordFilter.OfFirstWords(Law.Terms.Skip(1));

    /// <summary>Whether any word of likeness stands in a text: hardly a name has one, and there are many spirits to look for.</summary>
    private static bool MayLiken(string text) => Likenesses.MayHold(text) || text.IndexOf('\'') >= 0;

    /// <summary>The word of likeness behind a name in a text; <see langword="null"/> where there is none.</summary>
    private static string? Likeness(string text, string name)
    {
        if (WordSearch.Find(text, name) < 0) return null;
        for (int i = 1; i < Law.Terms.Count; i++)
        {
            if (WordSearch.Has(text, $"{name} {Law.Terms[i]}") || WordSearch.Has(text, $"{name}-{Law.Terms[i]}")) return Law.Terms[i];
        }

        return null;
    }
}
