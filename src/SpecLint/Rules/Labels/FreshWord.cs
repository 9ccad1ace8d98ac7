using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

[Rule("SL7024", "fresh-untrue", "Something called fresh is bottled, soured or cooked", Level.Warning)]
internal sealed partial class FreshWord : FileRule
{
    private static readonly LabelRule Law = LabellingTable.Of("fresh-claim");
    private static readonly string[] Words = ["freshly squeezed", "freshly pressed", "fresh-pressed", "fresh-squeezed", "fresh"];
    private static readonly string[] Worked = ["bottled", "pasteurised", "pasteurized", "concentrate", "super", "adjusted", "frozen", "dried", "dehydrated", "cordial", "syrup", "soda", "powder", "candied", "canned"];

    public override void Check(FileContext context)
    {
        if (context.File is Menu menu)
        {
            foreach (var entry in menu.Drinks)
            {
                if (!entry.Words.IsGiven || !entry.Drink.IsGiven || context.Book.Resolve(entry.Drink.Value)?.File is not Recipe recipe) continue;
                foreach (string piece in MenuPieces.Of(entry.Words.Value))
                {
                    string? word = WordSearch.First(piece, Words);
                    if (word is null) continue;
                    string rest = piece.Substring(WordSearch.Find(piece, word) + word.Length).Trim();
                    if (rest.Length < 3) continue;
                    rest = rest.EndsWith(" juice", StringComparison.OrdinalIgnoreCase) ? rest.Substring(0, rest.Length - 6) : rest;
                    var parts = HeldWords.Of(context, recipe).PartsOf(rest);

                    // The wheel on the rim is fresh; the word speaks of what is poured.
                    if (parts.Exists(static p => p.Line.Role != LineRole.Garnish)) parts = parts.FindAll(static p => p.Line.Role != LineRole.Garnish);
                    if (AllWorked(parts) is not { } worked) continue;
                    Report(context, context.At(entry.Words.Span), $"drinks[{entry.Drink.Value}].words", piece, recipe, worked);
                }
            }
        }
        else if (context.File is Recipe { Declares: { Claims.Count: > 0 } declares } own)
        {
            foreach (var claim in declares.Claims)
            {
                if (!claim.IsGiven || BuiltInCatalogue.Slug(claim.Value) is not ("fresh" or "fresh-juice" or "freshly-squeezed")) continue;
                var juices = new List<Part>();
                foreach (var part in ((RecipeContext)context).Profile.Parts)
                {
                    if (part.Line.Role is not LineRole.Garnish && part.Material?.Kind is { IsJuice: true } or { IsPuree: true }) juices.Add(part);
                }

                if ((AllWorked(juices) ?? Bottled(juices)) is { } worked) Report(context, context.At(claim.Span), $"declares.claims[{claim.Value}]", claim.Value, own, worked);
            }
        }
    }

    /// <summary>The first juice that is bought ready: beside a fresh one, the word still is not true of the drink.</summary>
    private static Part? Bottled(List<Part> juices)
    {
        foreach (var part in juices)
        {
            if (part.Item?.File is Ingredient && AllWorked([part]) is { } bottled) return bottled;
        }

        return null;
    }

    /// <summary>The first part, if none of the parts is fresh; <see langword="null"/> where one is, or there are none.</summary>
    private static Part? AllWorked(List<Part> parts)
    {
        Part? first = null;
        foreach (var part in parts)
        {
            bool worked = part.Item?.File switch
            {
                Prep prep => prep.Family.OrNone().IsReworked,
                Ingredient ingredient => WordSearch.First(ingredient.Id.Replace('-', ' ') + " " + ingredient.Name.Or(""), Worked) is not null,
                _ => false,
            };
            if (!worked) return null;
            first ??= part;
        }

        return first;
    }

    private static void Report(FileContext context, Reading.Place place, string path, string words, Recipe recipe, Part worked)
    {
        string how = worked.Item!.File is Prep prep ? $"made as {(prep.Family.IsGiven ? prep.Family.Value.Id : "a preparation").Replace('-', ' ')}" : "bought";
        context.Report(new(Rule)
        {
            AskedLevel = Law.LevelCap,
            Place = place,
            Path = path,
            Key = words,
            Message = $"The words say \"{words}\", but {recipe.Name.Or(recipe.Id)} uses `{worked.Item.Id}`, {how} ({Law.Source}).",
            Advice = "Remove the word fresh, or use the fresh version.",
            Evidence = [Proof.Of("words", words, place), Proof.Of("held", worked.Item.Id, recipe.At(worked.Line.Span))],
            Related = [new RelatedPlace(recipe.At(worked.Line.Span), "what is used")],
        });
    }
}
