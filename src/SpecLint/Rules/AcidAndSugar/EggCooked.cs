using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Rules.Balance;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4027", "egg-cooked", "Egg heated until it sets", Level.Warning)]
[Limit("egg-sets-from", "Sets")]
internal sealed partial class EggCooked : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        // Milk, cream and starch keep a custard smooth for some degrees more.
        if (Builds.First(context.Profile, static m => m is { Kind.IsEgg: true }) is not { } egg
            || Builds.First(context.Profile, Substances.IsDairy) is not null)
            return;
        foreach (var step in prep.Method)
        {
            if (!StepHeat.Takes(step, egg.Line.Item.Or(""))) continue;
            var heat = step.To.IsGiven ? step.To : step.At;
            bool stated = heat is { IsGiven: true, Value.Dimension: Reading.Dimension.Temperature };
            if (!(stated ? heat.Value.BaseLow >= Sets.Value : step.Verb.Boils)) continue;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
                Message = $"It holds `{egg.Line.Item.Or("egg")}` and is "
                    + $"{(heat.IsGiven ? $"brought to {Say.With(heat.Value.Base, "°C")}" : "boiled")}: white of egg sets at about "
                    + $"{Say.With(Sets.Value, "°C")} ({Sets.Source}).",
                Advice = "Keep it at 60 to 70 °C for as long as it takes, or heat the rest and add the egg when it has cooled.",
                Evidence = [Proof.Of(Sets)],
                Related = [context.See(egg.Line.Span, "the egg")],
            });
            return;
        }
    }
}
