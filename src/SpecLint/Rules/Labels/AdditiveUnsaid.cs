using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7029", "additive-unsaid", "It holds a sweetener or an azo colour without the required statement", Level.Warning,
    Needs = [Fact.Abv])]
[Limit("claims-strength", "AzoStrength")]
[Limit("polyols-statement", "PolyolShare")]
internal sealed partial class AdditiveUnsaid : RecipeRule
{
    private static readonly LabelRule Sweetener = LabellingTable.Of("sweeteners");
    private static readonly LabelRule SweetenerBesideSugar = LabellingTable.Of("sweeteners-and-sugars");
    private static readonly LabelRule Polyols = LabellingTable.Of("polyols");
    private static readonly LabelRule Azo = LabellingTable.Of("azo-colours");
    private static readonly LabelRule[] Phenylalanine =
    [
        LabellingTable.Of("aspartame"), LabellingTable.Of("aspartame-us"), LabellingTable.Of("aspartame-anz"),
        LabellingTable.Of("aspartame-ca"),
    ];

    /// <summary>Sweeteners without the mass of sugar; those of the polyol kind are known by what they hold.</summary>
    private static readonly HashSet<string> Intense =
        new(StringComparer.Ordinal) { "stevia", "stevia-leaf", "sucralose", "aspartame", "monk-fruit" };

    /// <summary>Bought drinks that makers sweeten without sugar, or in part, with what they choose.</summary>
    private static readonly HashSet<string> SugarFreeDrinks = new(StringComparer.Ordinal)
    {
        "diet-cola", "diet-lemonade", "tonic-water-light", "tonic-water-sugar-free", "ginger-ale-light", "ginger-ale-sugar-free",
        "ginger-beer-light", "ginger-beer-sugar-free",
    };

    /// <summary>Bought goods that are coloured with an azo colour by some makers.</summary>
    private static readonly HashSet<string> Coloured = new(StringComparer.Ordinal) { "sprinkles", "orange-soda", "cocktail-cherry" };

    /// <summary>All that this rule knows by id: hardly any part is one of them.</summary>
    private static readonly HashSet<string> Ids = new(
        Intense.Concat(SugarFreeDrinks).Concat(Coloured).Concat(["red-food-colour", "aspartame", "erythritol"]), StringComparer.Ordinal);

    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item?.File is not Ingredient || (!Additives.IsOrLikeAny(context, part.Item, Ids) && !IsPolyol(part))) continue;
            CheckColour(context, part);
            CheckPhenylalanine(context, part);
            CheckSweetener(context, part);
        }

        CheckPolyols(context);
    }

    private static void CheckColour(RecipeContext context, Part part)
    {
        if (!Azo.AppliesIn(context.Settings) || !IsSoft(context) || Additives.IsSaid(context.Recipe, ["activity and attention"])) return;
        const string soft = "in a drink of at most 1.2 % vol";
        if (Additives.IsOrLike(context, part.Item!, "red-food-colour"))
            Report(context, part, Azo, $"is an azo colour, {soft}");
        else if (Additives.IsOrLikeAny(context, part.Item!, Coloured))
            Report(context, part, Azo, $"is coloured with an azo colour by some makers, {soft}", Answer.NotShown, Level.Note);
    }

    private static void CheckPhenylalanine(RecipeContext context, Part part)
    {
        bool certain = Additives.IsOrLike(context, part.Item!, "aspartame");
        if (!certain && !Additives.IsOrLikeAny(context, part.Item!, SugarFreeDrinks)) return;
        if (Additives.IsSaid(context.Recipe, ["phenylalanine"])) return;
        foreach (var law in Phenylalanine)
        {
            if (!law.AppliesIn(context.Settings)) continue;
            if (certain) Report(context, part, law, "is a source of phenylalanine");
            else Report(context, part, law, "is sweetened with aspartame, a source of phenylalanine, by some makers", Answer.NotShown);
            return;
        }
    }

    private static void CheckSweetener(RecipeContext context, Part part)
    {
        if (!Sweetener.AppliesIn(context.Settings) || Additives.IsSaid(context.Recipe, ["sweetener"])) return;
        if (!Additives.IsOrLikeAny(context, part.Item!, Intense)
            && !Additives.IsOrLikeAny(context, part.Item!, SugarFreeDrinks)
            && !Additives.IsOrLike(context, part.Item!, "erythritol")
            && !IsPolyol(part))
            return;
        Report(context, part, HasSugarAdded(context) ? SweetenerBesideSugar : Sweetener, "is a sweetener other than sugar");
    }

    private static void CheckPolyols(RecipeContext context)
    {
        if (!Polyols.AppliesIn(context.Settings) || !(context.Profile.Mass > 0)) return;
        double share = 100 * Components.SweetPolyols(context.Profile.Grams) / context.Profile.Mass;
        Part? most = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item?.File is Ingredient && Additives.IsOrLike(context, part.Item, "erythritol"))
                share += 100 * part.Grams.Typical / context.Profile.Mass;
            else if (!IsPolyol(part))
                continue;
            most ??= part;
        }

        if (most is null || share <= PolyolShare.Value || Additives.IsSaid(context.Recipe, ["laxative"])) return;
        Report(context, most, Polyols, $"raises polyols to {Say.Number(share, 0)} % of the mass, above {Say.Number(PolyolShare.Value)} %");
    }

    private static bool IsPolyol(Part part) =>
        part.Material is { Kind.IsSugar: true } material && Components.SweetPolyols(material.PerGram) > Guards.PolyolPowder;

    private static bool HasSugarAdded(RecipeContext context) => RecipeTree.Of(context.Profile).Any(static leaf =>
        leaf.Ingredient.IngredientKind.OrNone().Sweetens
        && leaf.Ingredient.Values.Any(static v => v.Key.StartsWith("sugars.", StringComparison.Ordinal) && v.Value.Typical > 0));

    private static bool IsSoft(RecipeContext context)
    {
        var abv = context.Fact(Fact.Abv);
        return abv.IsKnown && abv.High <= AzoStrength.Value;
    }

    private static void Report(
        RecipeContext context, Part part, LabelRule law, string what, Answer answer = Answer.Broken, Level level = Level.Warning) =>
        context.Report(new(Rule)
        {
            AskedLevel = law.LevelCap is { } cap && cap < level ? cap : level,
            Answer = answer,
            At = context.ItemOf(part.Line),
            Key = law.Id,
            Message = $"`{part.Item!.Id}` {what}, and guests are not told ({law.Source}{Additives.Scope(context.Recipe)}).",
            Advice = (answer == Answer.NotShown ? "Read the label. If it names the substance, write" : "Write")
                + $" under `declares.advisory`: \"{law.Text}\".",
            Caution = Array.IndexOf(Phenylalanine, law) >= 0 ? "People with phenylketonuria must not have it: follow the local law." : null,
            Evidence = [Proof.Of("text", law.Text), Proof.Of("law", law.Source)],
            Corrections = Correction.Propose($"Say \"{law.Text}\".", Additives.Say(context.Recipe, law.Text)),
        });
}
