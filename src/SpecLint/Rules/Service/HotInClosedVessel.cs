using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8026", "hot-in-closed-vessel", "Something hot shaken or blended in a closed vessel", Level.Error, Safety = true)]
[Limit("hot-in-closed-vessel", "Hot")]
[Limit("hot-oil-in-closed-vessel", "Simmers")]
internal sealed partial class HotInClosedVessel : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        Step? heated = null;
        double celsius = 0;
        foreach (var step in context.Recipe.Method)
        {
            // What is toasted dry cools as soon as anything wet is poured over it.
            if (step.Verb.HeatsDry) continue;
            double given = Temperature(step);

            // Ice takes the heat at once; cooling and freezing take it in time.
            if (step.HasIce || step.Verb.Cools || step.Verb.Freezes || (!double.IsNaN(given) && given < Hot.Value))
            {
                heated = null;
                continue;
            }

            if (!double.IsNaN(given) || step.Verb.Boils || step.Verb.Cooks)
            {
                heated = step;
                celsius = !double.IsNaN(given) ? given : step.Verb.Boils ? Boiling : double.NaN;
            }

            if (heated is null || !step.Verb.ClosesVessel || !step.Verb.Agitates) continue;

            // Warm oil gives off no steam; what little water leaves bring does not lift a lid below the boil.
            if (celsius < Simmers.Value && IsOil(context)) continue;
            Report(context, step, heated, celsius);
            return;
        }
    }

    private static void Report(RecipeContext context, Step step, Step heated, double celsius)
    {
        bool same = heated == step, known = !double.IsNaN(celsius);
        string degrees = $"{Say.Number(celsius, 0)} °C";
        string state = same
            ? "By the method it is " + (known ? $"at {degrees}" : "heated, and nothing says how hot")
            : $"It was {(known ? $"brought to {degrees}" : "heated, nothing says how hot,")} and nothing cools it";
        context.Report(new(Rule)
        {
            Answer = known ? Answer.Broken : Answer.NotShown,
            At = context.VerbOf(step),
            Message = $"{state} at the step to {step.Written}. Above {Say.Number(Hot.Value, 0)} °C steam and hot air lift the lid of a "
                + $"closed vessel and throw out its contents ({Hot.Source}).",
            Advice = "Cool it first, or shake it on ice. Blend hot liquid in small amounts with the cap of the lid off and a cloth over "
                + "it.",
            Caution = "Hot liquid under pressure scalds: follow the maker's instructions for the blender and the house's safety rules.",
            Evidence = known ? [Proof.Of("temperature", celsius, "Cel"), Proof.Of(Hot)] : [Proof.Of(Hot)],
            Related = same ? [] : [context.See(heated.Do.Span, "the step that heats it")],
        });
    }

    private const double Boiling = 100;

    /// <summary>Whether the half of it or more is fat.</summary>
    private static bool IsOil(RecipeContext context)
    {
        double fat = 0, all = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (!part.IsWeighed || part.Material is not { } material) return false;
            all += part.Grams.Typical;
            fat += part.Grams.Typical * material.Of(Science.Component.Fat);
        }

        return all > 0 && fat >= all - fat;
    }

    private static double Temperature(Step step) =>
        step.To is { IsGiven: true, Value.Dimension: Dimension.Temperature } ? step.To.Value.Base
        : step.At is { IsGiven: true, Value.Dimension: Dimension.Temperature } ? step.At.Value.Base
        : double.NaN;
}
