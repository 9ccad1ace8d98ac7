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
    private static readonly string[] PutOut = ["put out", "smother", "smothered", "extinguish", "extinguished", "lid", "flame is out", "flames are out", "flame dies", "snuff", "snuffed"];

    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Verb.SetsAlight) continue;

            // A peel flamed over the glass burns for a blink and lights no drink.
            if (step.Items.Count > 0 && !BurnsSpirit(context, step)) continue;
            if (Ends(step.Until) || Ends(step.Note)) continue;
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                At = context.VerbOf(step),
                Message = $"The step sets spirit alight and does not say how and when the flame is put out before the guest gets the drink. From about {Say.Number(Strength.Value)} % vol spirit burns with a flame that is hard to see ({Strength.Source}).",
                Advice = "Pour the measure, put the bottle away, light it with a long lighter and smother it with a metal lid before it leaves the bar. Write that in the step.",
                Caution = HazardWords.StaffCaution,
                Evidence = [Proof.Of(Strength)],
            });
        }
    }

    private static bool BurnsSpirit(RecipeContext context, Step step)
    {
        foreach (var item in step.Items)
        {
            if (context.Profiles.MaterialOf(item.Value) is { Kind.Burns: true }) return true;
        }

        return false;
    }

    private static bool Ends(Given<string> text) =>
        text.IsGiven && Phrases.Affirms(text.Value, PutOut);
}
