using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6016: a drink that is set alight.</summary>
internal sealed class SpiritSetAlight : RecipeRule
{
    private static readonly Limit Strength = Limits.Of("flame-strength");

    private static readonly string[] PutOut = ["put out", "smother", "smothered", "extinguish", "extinguished", "lid", "flame is out", "flames are out", "flame dies", "snuff", "snuffed"];

    private static readonly RuleInfo Rule = new("SL6016", "spirit-set-alight", "Spirit is set alight and nothing says how it is put out", Level.Error)
    {
        Safety = true,
        Limits = [Strength.Id],
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (!step.Verb.SetsAlight) continue;

            // A peel flamed over the glass burns for a blink and lights no drink.
            if (step.Items.Count > 0 && !BurnsSpirit(context, step)) continue;
            if (Ends(step.Until) || Ends(step.Note)) continue;
            context.Report(new Finding(Rule)
            {
                Answer = Answer.NotShown,
                Place = context.At(step.Do.Span),
                Subject = context.Id,
                Path = context.PathOf(step),
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
