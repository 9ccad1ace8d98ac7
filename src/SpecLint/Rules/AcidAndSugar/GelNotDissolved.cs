using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4024", "gel-not-dissolved", "A gelling agent that nothing gets hot enough to dissolve", Level.Warning)]
internal sealed partial class GelNotDissolved : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Method.Count == 0) return;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Item is not { File: Ingredient ingredient } item || GellingTable.Agent(item) is not { } agent) continue;
            double hottest = StepHeat.Hottest(prep);
            if (double.IsNaN(hottest)) return;
            if (hottest >= agent.Least) continue;
            context.Report(new(Rule)
            {
                At = context.ItemOf(part.Line),
                Message = double.IsNegativeInfinity(hottest)
                    ? $"No step heats anything, and {agent.Use}: from {Say.With(agent.Least, "°C")} ({agent.Source}). Cold, "
                        + $"{ingredient.Name.Or(item.Id)} stays as grains and sets nothing."
                    : $"The hottest step is at {Say.With(hottest, "°C")}, and {agent.Use}: from {Say.With(agent.Least, "°C")} "
                        + $"({agent.Source}). What is not dissolved sets nothing.",
                Advice = $"Heat it in a part of the liquid to at least {Say.With(agent.Least, "°C")}, and write the step with its "
                    + "temperature.",
                Evidence = [Proof.Of("needs at least", agent.Least, "Cel", agent.Source)],
                Related = [context.See(prep.MethodSpan, "the method")],
            });
        }
    }
}
