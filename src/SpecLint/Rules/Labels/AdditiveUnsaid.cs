using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Labels;

/// <summary>SL7029: a sweetener or an azo colour without the words that go with it.</summary>
internal sealed class AdditiveUnsaid : RecipeRule
{
    private static readonly Limit AzoStrength = Limits.Of("claims-strength");
    private static readonly LabelRule Sweetener = LabellingTable.Of("sweeteners");
    private static readonly LabelRule Aspartame = LabellingTable.Of("aspartame");
    private static readonly LabelRule Azo = LabellingTable.Of("azo-colours");
    private static readonly string[] Sweeteners = ["stevia", "sucralose", "aspartame", "saccharin", "acesulfame", "xylitol", "erythritol", "sorbitol", "diet-cola", "diet-lemonade"];

    private static readonly RuleInfo Rule = new("SL7029", "additive-unsaid", "A sweetener or an azo colour is in it without the words that go with it", Level.Warning) { Needs = [Fact.Abv] };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item?.File is not Ingredient) continue;
            if (Azo.AppliesIn(context.Settings) && Additives.IsOrLike(context, part.Item, "red-food-colour") && IsSoft(context) && !Additives.IsSaid(context.Recipe, ["activity and attention"]))
            {
                Report(context, part, Azo, Azo.Text, "is an azo colour, in a drink of at most 1.2 % vol");
                continue;
            }

            if (!Sweetener.AppliesIn(context.Settings)) continue;
            if (Additives.IsOrLike(context, part.Item, "aspartame") && !Additives.IsSaid(context.Recipe, ["phenylalanine"]))
            {
                Report(context, part, Aspartame, Aspartame.Text, "is a source of phenylalanine");
                continue;
            }

            foreach (string id in Sweeteners)
            {
                if (!Additives.IsOrLike(context, part.Item, id) || Additives.IsSaid(context.Recipe, ["sweetener"])) continue;
                Report(context, part, Sweetener, "with sweetener", "sweetens without being sugar");
                break;
            }
        }
    }

    private static bool IsSoft(RecipeContext context)
    {
        var abv = context.Fact(Fact.Abv);
        return abv.IsKnown && abv.High <= AzoStrength.Value;
    }

    private static void Report(RecipeContext context, Part part, LabelRule law, string text, string what) => context.Report(new Finding(Rule)
    {
        AskedLevel = law.LevelCap ?? Level.Warning,
        Place = context.At(part.Line.Item.Span),
        Subject = context.Id,
        Path = RecipeContext.PathOf(part.Line, "item"),
        Message = $"`{part.Item!.Id}` {what}, and nothing tells the guest ({law.Source}).",
        Advice = $"Say it under `declares.advisory`: \"{text}\".",
        Caution = law == Aspartame ? "People with phenylketonuria must not have it: follow the local law." : null,
        Evidence = [Proof.Of("text", text), Proof.Of("law", law.Source)],
        Corrections = Additives.Say(context.Recipe, text) is { } edit ? [new Correction(CorrectionGrade.Proposed, $"Say \"{text}\".", [edit])] : [],
    });
}
