using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4026", "over-steeped", "Tea in water too hot or for too long", Level.Warning)]
[Limit("hot-drink-from", "Hot")]
internal sealed partial class OverSteeped : PrepRule
{
    /// <summary>Seconds of a minute.</summary>
    private const double Minute = 60;

    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not { } leaf || SteepingTable.Find(leaf) is not { } most) continue;
            foreach (var step in prep.Method)
            {
                if (!step.Verb.Extracts || (step.Items.Count > 0 && !step.Items.Any(i => i.Value == part.Line.Item.Or("")))) continue;
                var heat = step.At.IsGiven ? step.At : step.To;
                if (heat is not { IsGiven: true, Value.Dimension: Reading.Dimension.Temperature } || heat.Value.BaseLow < Hot.Value) continue;
                bool hot = heat.Value.BaseLow > most.Hottest, slow = step.For.IsGiven && step.For.Value.BaseLow > most.Minutes * Minute;
                if (!hot && !slow) continue;
                context.Report(new(Rule)
                {
                    At = context.VerbOf(step),
                    Message = $"`{leaf.Id}` steeps at {Say.With(heat.Value.Base, "°C")}{(step.For.IsGiven ? $" for {Say.With(step.For.Value.Base / Minute, "min")}" : "")}, {(hot ? $"above the {Say.With(most.Hottest, "°C")}" : $"longer than the {Say.With(most.Minutes, "min")}")} that {most.Use} takes: it turns bitter ({most.Source}).",
                    Advice = hot
                        ? $"Use water of at most {Say.With(most.Hottest, "°C")}, for at most {Say.With(most.Minutes, "min")}."
                        : $"Strain it after at most {Say.With(most.Minutes, "min")}, and take more leaf if it is weak.",
                    Related = [new RelatedPlace(context.At(part.Line.Span), "the leaf")],
                });
                return;
            }
        }
    }
}
