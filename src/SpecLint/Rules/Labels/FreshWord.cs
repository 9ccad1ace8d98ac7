using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7024", "fresh-untrue", "Something called fresh is bottled, soured or cooked", Level.Warning)]
internal sealed partial class FreshWord : FileRule
{
    private static readonly LabelRule Law = LabellingTable.Of("fresh-claim");
    private static readonly string[] Words = ["freshly squeezed", "freshly pressed", "fresh-pressed", "fresh-squeezed", "fresh"];
    private static readonly string[] Worked =
    [
        "bottled", "pasteurised", "pasteurized", "concentrate", "super", "adjusted", "frozen", "dried", "dehydrated", "cordial", "syrup",
        "soda", "powder", "candied", "canned",
    ];

    public override void Check(FileContext context)
    {
        if (context.File is Menu menu) CheckWords(context, menu);
        else if (context is RecipeContext { Recipe.Declares: { Claims.Count: > 0 } declares } own) CheckClaims(own, declares);
    }

    private static void CheckWords(FileContext context, Menu menu)
    {
        foreach (var (entry, recipe, piece) in MenuPieces.In(context, menu))
        {
            if (WordSearch.First(piece, Words) is not { } word || WordSearch.Behind(piece, word) is not { Length: >= 3 } rest) continue;
            if (rest.EndsWith(" juice", StringComparison.OrdinalIgnoreCase)) rest = rest.Substring(0, rest.Length - 6);
            var parts = HeldWords.Of(context, recipe).PartsOf(rest);

            // The wheel on the rim is fresh; the word speaks of what is poured.
            if (parts.FindAll(static p => p.Line.Role != LineRole.Garnish) is { Count: > 0 } poured) parts = poured;
            if (AllWorked(parts) is { } worked)
                Report(context, context.At(entry.Words.Span, $"drinks[{entry.Drink.Value}].words"), piece, recipe, worked);
        }
    }

    private static void CheckClaims(RecipeContext context, Declaration declares)
    {
        foreach (var claim in declares.Claims)
        {
            if (!claim.IsGiven || BuiltInCatalogue.Slug(claim.Value) is not ("fresh" or "fresh-juice" or "freshly-squeezed")) continue;
            var juices = new List<Part>();
            foreach (var part in context.Profile.Parts)
            {
                if (part.Line.Role != LineRole.Garnish && part.Material?.Kind is { IsJuice: true } or { IsPuree: true }) juices.Add(part);
            }

            if ((AllWorked(juices) ?? Bottled(juices)) is { } worked)
                Report(context, context.At(claim.Span, $"declares.claims[{claim.Value}]"), claim.Value, context.Recipe, worked);
        }
    }

    /// <summary>The first juice that is bought ready: beside a fresh one, the word still is not true of the drink.</summary>
    private static Part? Bottled(List<Part> juices) => juices.Find(static p => p.Item?.File is Ingredient && IsWorked(p));

    /// <summary>The first part, if none of the parts is fresh; <see langword="null"/> where one is, or there are none.</summary>
    private static Part? AllWorked(List<Part> parts) => parts.Count > 0 && parts.TrueForAll(IsWorked) ? parts[0] : null;

    private static bool IsWorked(Part part) => part.Item?.File switch
    {
        Prep prep => prep.Family.OrNone().IsReworked,
        Ingredient ingredient => WordSearch.First(ingredient.Id.Replace('-', ' ') + " " + ingredient.Name.Or(""), Worked) is not null,
        _ => false,
    };

    private static void Report(FileContext context, Spot at, string words, Recipe recipe, Part worked)
    {
        string how = worked.Item!.File is Prep prep
            ? $"made as {(prep.Family.IsGiven ? prep.Family.Value.Id : "a preparation").Replace('-', ' ')}"
            : "bought";
        context.Report(new(Rule)
        {
            AskedLevel = Law.LevelCap,
            At = at,
            Key = words,
            Message = $"The words say \"{words}\", but {recipe.Name.Or(recipe.Id)} uses `{worked.Item.Id}`, {how} ({Law.Source}).",
            Advice = "Remove the word fresh, or use the fresh version.",
            Evidence = [Proof.Of("words", words, at.Place), Proof.Of("held", worked.Item.Id, recipe.At(worked.Line.Span))],
            Related = [new RelatedPlace(recipe.At(worked.Line.Span), "what is used")],
        });
    }
}
