using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

[Rule("SL6016", "spirit-set-alight", "Spirit is set alight and nothing says how it is put out", Level.Error, Safety = true)]
[Limit("flame-strength", "Strength")]
internal sealed partial class SpiritSetAlight : RecipeRule
{
    private static readonly FixedList<string> PutOut =
    [
        "put out", "smother", "smothered", "extinguish", "extinguished", "lid", "flame is out", "flames are out", "flame dies", "snuff",
        "snuffed",
    ];

    private static readonly string[] RuledOut = ["never", "do not", "don't", "must not"];

    private static readonly FixedList<string> InWords =
    [
        "set alight", "set it alight", "set fire", "sets fire", "on fire", "ignite", "ignites", "ignited", "through the flame",
        "through a flame", "through the lighter", "over an open flame", "alight", "flambé", "flambe", "flaming rum", "flaming spirit",
        "flaming overproof",
    ];

    public override void Check(RecipeContext context)
    {
        bool told = false;
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Verb.SetsAlight) continue;

            // A peel flamed over the glass burns for a blink and lights no drink.
            if (step.Items.Count > 0 && !BurnsSpirit(context, step)) continue;
            if (Ends(step.Until) || Ends(step.Note)) continue;
            Report(
                context, context.VerbOf(step), "", "The step sets spirit alight and does not say how and when the flame", "",
                "Pour the measure, put the bottle away, light it with a long lighter and smother it with a metal lid before it leaves the "
                    + "bar. Write that in the step.");
            told = true;
        }

        if (!told) CheckWords(context);
    }

    /// <summary>Fire that only a note tells of, in a recipe with spirit.</summary>
    private static void CheckWords(RecipeContext context)
    {
        if (!context.Profile.Parts.Any(static p => p.Material is { Kind.Burns: true })
            && !RecipeTree.Of(context.Profile).Any(static l => l.Ingredient.IngredientKind.OrNone().Burns))
            return;
        foreach (var text in context.Texts)
        {
            if (text.Property.Length == 0
                || !Phrases.Affirms(text.Text.Value, InWords)
                || Phrases.HasAny(text.Text.Value, RuledOut)
                || Ends(text.Text))
                continue;
            Report(
                context, context.At(text.Text.Span, text.PathIn(context)), "words", "The text tells of fire and not how and when it",
                "; sprayed or poured into a flame it throws fire",
                "Make a step of it, pour the measure, put the bottle away and say how it is put out.");
            return;
        }
    }

    private static void Report(RecipeContext context, Spot at, string key, string what, string more, string advice) =>
        context.Report(new(Rule)
        {
            Answer = Answer.NotShown,
            AskedLevel = key.Length > 0 ? Level.Warning : null,
            At = at,
            Key = key,
            Message = $"{what} is put out before the guest gets the drink. From about {Say.Number(Strength.Value)} % vol spirit burns with "
                + $"a flame that is hard to see ({Strength.Source}){more}.",
            Advice = advice,
            Caution = HazardWords.StaffCaution,
            Evidence = [Proof.Of(Strength)],
        });

    private static bool BurnsSpirit(RecipeContext context, Step step)
    {
        foreach (var item in step.Items)
        {
            foreach (var part in context.Profile.Parts)
            {
                if (part.Line.Item.IsGiven
                    && part.Line.Item.Value == item.Value
                    && RecipeTree.AnyIn(part, context.Profile, static m => m.Kind.Burns))
                    return true;
            }

            if (context.Profiles.MaterialOf(item.Value) is { Kind.Burns: true }) return true;
        }

        return false;
    }

    private static bool Ends(Given<string> text) => text.IsGiven && Phrases.Affirms(text.Value, PutOut);
}
