using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Labels;

[Rule("SL7008", "allergens-unknown", "The allergens of a bought ingredient are not known", Level.Warning, Safety = true)]
internal sealed partial class AllergensUnknown : IngredientRule
{
    /// <summary>Allergens that a thing called after them holds, whatever it is made into: a paste of hazelnuts, an oil of sesame.</summary>
    private static readonly HashSet<string> NamedAlone = new(StringComparer.Ordinal)
    {
        "almond", "hazelnut", "walnut", "cashew", "pecan", "brazil-nut", "pistachio", "macadamia", "pine-nut", "peanut", "sesame",
        "soybean", "celery", "mustard", "fish", "crustacean",
    };

    private static readonly string[] OnlyTaste =
        ["flavour", "flavor", "flavoured", "flavored", "aroma", "aromatizzato", "arome", "style", "imitation", "artificial"];

    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (ingredient.Allergens is { SaysWhatItContains: true } stated)
        {
            LeftOut(context, ingredient, stated);
            NamedButNotListed(context, ingredient, stated);
            return;
        }

        var flat = context.Profiles.MaterialOf(ingredient.Id)?.Ingredient;
        if (flat is null) return;
        if (flat.Allergens is { SaysWhatItContains: true } taken) NamedOtherwise(context, ingredient, flat, taken);
        else NotStated(context, ingredient, flat);
    }

    /// <summary>No list, its own or another's, says what it contains.</summary>
    private static void NotStated(FileContext context, Ingredient ingredient, Ingredient flat)
    {
        bool saysNothing = ingredient.Allergens is not null;
        if (!saysNothing
            && !flat.LikeIsBroken
            && flat.IngredientKind.OrNone() is { MayHoldAllergen: false, IsKnown: true }
            && !NamesAllergen(ingredient, flat))
            return;
        var users = context.Book.UsersOf(ingredient.Id);
        string nothing = saysNothing ? "`allergens` names nothing that it contains, not even `\"contains\": []`, so nothing"
            : flat.LikeIsBroken ? $"`{ingredient.Like.Or("")}` is not an ingredient, so nothing"
            : "Nothing";
        string made = users.Count == 0
            ? "what is made with it cannot"
            : $"{Say.Count(users.Count, "recipe")} {(users.Count == 1 ? "is" : "are")} made with it, so no list there can";
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = LevelOf(context, ingredient),
            Place = saysNothing ? context.At(ingredient.Allergens!.Span) : ingredient.Head,
            Path = "allergens",
            Message = $"{nothing} says which allergens {ingredient.Name.Or(ingredient.Id)} holds, and {made} be shown to be complete "
                + "(general knowledge of such products).",
            Advice = "Copy them from the supplier's specification: `\"allergens\": { \"contains\": [], \"mayContain\": [] }`.",
            Caution = AllergenWords.Caution,
            Evidence = [Proof.Of("kind", flat.IngredientKind.IsGiven ? flat.IngredientKind.Value.Id : "not given")],
            Related = [.. users.Take(5).Select(u => new RelatedPlace(u.Head, "is made with it"))],
        });
    }

    /// <summary>
    /// Whether a word of its name or id is that of an allergen, or of an entry of the catalogue that holds one. A spirit is called
    /// after the cereal or nut that it was distilled from, which the law exempts (Regulation (EU) No 1169/2011, Annex II).
    /// </summary>
    private static bool NamesAllergen(Ingredient ingredient, Ingredient flat) =>
        !flat.IngredientKind.OrNone().Burns
        && (Namesakes.WordsOf(ingredient).Any(static w => AllergenTable.TokensOf(w).Count > 0)
            || Namesakes.InWords(ingredient).Any(static e => e.Allergens is { Contains.Count: > 0 }));

    /// <summary>A list of its own that does not name what the thing is called after.</summary>
    private static void NamedButNotListed(FileContext context, Ingredient ingredient, AllergenStatement stated)
    {
        var kind = (context.Profiles.MaterialOf(ingredient.Id)?.Ingredient ?? ingredient).IngredientKind.OrNone();
        if (kind.IsSpirit || Hazards.HazardWords.HasWords(ingredient.Name, OnlyTaste)) return;
        var aliases = ingredient.Aliases.Where(static a => a.IsGiven).Select(static a => BuiltInCatalogue.Slug(a.Value));
        string words = BuiltInCatalogue.Slug(ingredient.Name.Or("")) + "-" + string.Join("-", aliases);
        var left = words.Split('-')
            .SelectMany(static w => AllergenTable.TokensOf(w))
            .Distinct()
            .Where(t => NamedAlone.Contains(t) && !Names(stated, t))
            .ToList();
        if (left.Count == 0) return;
        var place = context.At(stated.Span);
        Report(
            context, ingredient, place, "named-not-listed",
            $"called after {Say.List(left, "and")}, and its own list of allergens does not name {(left.Count == 1 ? "it" : "them")}",
            "Copy the list from the supplier's specification. If it only tastes of it, say so in the name.",
            Proof.Of("left out", string.Join(", ", left), place));
    }

    /// <summary>A list that is taken over from what it is `like`, which leaves out what holds the thing that it is called after.</summary>
    private static void NamedOtherwise(FileContext context, Ingredient ingredient, Ingredient flat, AllergenStatement taken)
    {
        if (flat.IngredientKind.OrNone().IsSpirit) return;
        foreach (var called in Namesakes.InWords(ingredient))
        {
            var left = called.Allergens is { } holds ? holds.Contains.Where(t => !Names(taken, t)).ToList() : [];
            if (left.Count == 0) continue;
            Report(
                context, ingredient, ingredient.Head, "named-otherwise",
                $"called after `{called.Id}`, which holds {Say.List(left, "and")}, and takes its allergens from "
                    + $"`{ingredient.Like.Or("")}`, which has no {Say.List(left, "and no")}",
                "Copy the list from the supplier's specification: `\"allergens\": { \"contains\": [], \"mayContain\": [] }`.",
                Proof.Of("left out", string.Join(", ", left), ingredient.Head), Proof.Of("of", called.Id));
            return;
        }
    }

    /// <summary>A list of its own that leaves out what the thing that it takes after holds is not shown to be complete.</summary>
    private static void LeftOut(FileContext context, Ingredient ingredient, AllergenStatement stated)
    {
        if (context.Profiles.MaterialOf(ingredient.Id) is not { TakesAfter: var others }) return;
        foreach (var other in others)
        {
            if (other.Allergens is not { SaysWhatItContains: true } inherited || ReferenceEquals(other, ingredient)) continue;
            var left = inherited.Contains.Where(t => !Names(stated, t) && !inherited.Exempt.Any(e => e.Allergen == t)).ToList();
            if (left.Count == 0) continue;
            var place = context.At(stated.Span);
            Report(
                context, ingredient, place, "left-out",
                $"{(ingredient.Like.IsGiven ? "like" : "called")} `{other.Id}`, which holds {Say.List(left, "and")}, and its own list of "
                    + $"allergens leaves {(left.Count == 1 ? "that" : "those")} out",
                "Copy the list from the supplier's specification. If it really holds none of it, describe it without `like` and by its "
                    + "own name.",
                Proof.Of("left out", string.Join(", ", left), place), Proof.Of("of", other.Id));
            return;
        }
    }

    private static void Report(
        FileContext context, Ingredient ingredient, Place place, string key, string what, string advice, params Evidence[] evidence) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = LevelOf(context, ingredient),
            Place = place,
            Path = "allergens",
            Key = key,
            Message = $"{ingredient.Name.Or(ingredient.Id)} is {what}.",
            Advice = advice,
            Caution = AllergenWords.Caution,
            Evidence = evidence,
        });

    /// <summary>Whether a list says anything of an allergen: that it is in it, may be, or is exempt.</summary>
    private static bool Names(AllergenStatement list, string token) =>
        list.Contains.Contains(token) || list.MayContain.Contains(token) || list.Exempt.Any(e => e.Allergen == token);

    /// <summary>What nothing is made with yet may be poured tomorrow: a note.</summary>
    private static Level? LevelOf(FileContext context, Ingredient ingredient) =>
        context.Book.UsersOf(ingredient.Id).Count == 0 ? Level.Note : null;
}
