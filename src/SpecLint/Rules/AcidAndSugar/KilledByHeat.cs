using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4029", "killed-by-heat", "An enzyme or a live culture goes into something so hot that it cannot work", Level.Warning)]
internal sealed partial class KilledByHeat : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not { } item || EnzymeTable.Find(item) is not { } enzyme) continue;
            int entry = Pot.Of(prep).Entry(part.Line);
            if (entry >= prep.Method.Count || Heat(prep, entry) is not { } heat || !(heat.Celsius > enzyme.Kills)) continue;
            context.Report(new(Rule)
            {
                At = context.ItemOf(part.Line),
                Message = $"`{item.Id}` goes in at {Say.Number(heat.Celsius, 0)} °C, and {enzyme.Name} stops working for good above "
                    + $"{Say.Number(enzyme.Kills, 0)} °C ({enzyme.Source}).",
                Advice = $"Let it cool below {Say.Number(enzyme.Kills, 0)} °C first, and give it its time there.",
                Evidence = [Proof.Of("works below", enzyme.Kills, "Cel", enzyme.Source)],
                Related = [new RelatedPlace(context.At(heat.Span), "how hot it is")],
            });
        }
    }

    /// <summary>How hot it is at a step: by the step itself, else by the last one before it that says so.</summary>
    private static (double Celsius, TextSpan Span)? Heat(Prep prep, int entry)
    {
        for (int i = entry; i >= 0; i--)
        {
            var step = prep.Method[i];
            if (i < entry && step.Verb.HeatsDry) continue;
            var heat = step.At.IsGiven ? step.At : step.To;
            if (heat is { IsGiven: true, Value.Dimension: Dimension.Temperature }) return (heat.Value.BaseLow, heat.Span);

            // What is rested or cooled in between is cooler, and nothing says how much.
            if (step.Verb.Cools || (i < entry && step.Verb.Keeps) || step.Verb.Freezes) return null;
        }

        return null;
    }
}
