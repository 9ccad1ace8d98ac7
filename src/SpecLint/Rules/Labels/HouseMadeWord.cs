using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7025", "house-made-untrue", "Something called house-made is bought", Level.Warning)]
internal sealed partial class HouseMadeWord : MenuRule
{
    private static readonly LabelRule Law = LabellingTable.Of("house-made-claim");
    private static readonly string[] Words = ["house-made", "house made", "housemade", "homemade", "home-made", "our own", "made in house"];

    public override void Check(FileContext context, Menu menu)
    {
        foreach (var (entry, recipe, piece) in MenuPieces.In(context, menu))
        {
            if (WordSearch.First(piece, Words) is not { } word || WordSearch.Behind(piece, word) is not { Length: >= 3 } rest) continue;
            var held = HeldWords.Of(context, recipe);
            var named = held.PartsNamed(rest);
            if (named.Count == 0) named = held.PartsOf(rest);
            if (named.Count == 0 || !named.TrueForAll(IsBought)) continue;
            var bought = named[0];
            context.Report(new(Rule)
            {
                AskedLevel = Law.LevelCap,
                At = context.At(entry.Words.Span, $"drinks[{entry.Drink.Value}].words"),
                Key = piece,
                Message = $"The menu says \"{piece}\", but {recipe.Name.Or(recipe.Id)} uses `{bought.Item!.Id}`, which is bought: "
                    + $"no preparation of the book makes it ({Law.Source}).",
                Advice = $"Remove \"{word}\", or write the recipe of what is made.",
                Evidence =
                [
                    Proof.Of("words", piece, context.At(entry.Words.Span)),
                    Proof.Of("held", bought.Item.Id, recipe.At(bought.Line.Span)),
                ],
                Related = [new RelatedPlace(recipe.At(bought.Line.Span), "what is used")],
            });
        }
    }

    /// <summary>A bar's own ingredient file is of what it buys; of the catalogue only what no bar makes itself counts.</summary>
    private static bool IsBought(Part part) =>
        part.Item is { File: Ingredient, IsBuiltIn: var builtIn } && (!builtIn || part.Material is { Kind.IsBoughtReady: true });
}
