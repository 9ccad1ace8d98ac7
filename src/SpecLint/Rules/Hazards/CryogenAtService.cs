using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

/// <summary>SL6014: liquid nitrogen or dry ice that may reach the guest.</summary>
internal sealed class CryogenAtService : RecipeRule
{
    private static readonly string[] Gone = ["gone", "evaporat", "boiled off", "no liquid", "sublim", "no vapour", "no piece", "cage", "outer vessel", "outside the glass", "not in the glass"];

    private static readonly RuleInfo Rule = new("SL6014", "cryogen-at-service", "Liquid nitrogen or dry ice may reach the guest", Level.Error) { Safety = true };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Id is not ("liquid-nitrogen" or "dry-ice")) continue;
            if (!IsGone(context.Recipe, load.Part)) Report(context, load.Part.Line.Item.Span, RecipeContext.PathOf(load.Part.Line, "item"), load.Hazard.Id == "dry-ice");
            return;
        }

        foreach (var step in context.Recipe.Method)
        {
            if (!step.Do.IsGiven) continue;
            bool ice = step.Verb.UsesDryIce || HazardWords.Holds(step.Ice, "dry ice") || HazardWords.Holds(step.Ice, "dry-ice");
            bool nitrogen = step.Verb.UsesLiquidNitrogen || HazardWords.Holds(step.Note, "liquid nitrogen");
            if ((!ice && !nitrogen) || IsGone(step)) continue;
            Report(context, ice && step.Ice.IsGiven ? step.Ice.Span : step.Do.Span, context.PathOf(step), ice);
        }
    }

    private static void Report(RecipeContext context, Reading.TextSpan span, string path, bool ice) =>
        context.Report(new Finding(Rule)
        {
            Answer = Answer.NotShown,
            Place = context.At(span),
            Subject = context.Id,
            Path = path,
            Message = ice
                ? "Dry ice is used and nothing says that no piece of it reaches the glass the guest drinks from: swallowed it burns the throat and stomach (FDA alert of August 2018 and Food Code interpretation of October 2018)."
                : "Liquid nitrogen is used and nothing says that all of it is gone before the drink is served: swallowed it has torn stomachs (FDA alert of August 2018; UK Food Standards Agency 2012).",
            Advice = ice ? "Keep it in an outer vessel or a cage, never in the glass, and say so in the step." : "End the step with `until` all the liquid has evaporated and the drink is no colder than it is meant to be, before it leaves the bar.",
            Caution = HazardWords.StaffCaution + " Both gases push the air out of a small room.",
            Evidence = [Proof.Of("source", "FDA alert 2018-08-30; FDA Food Code interpretation 2018-10; FSA 2012")],
        });

    private static bool IsGone(Recipe recipe, Part part)
    {
        if (Says(part.Line.Note)) return true;
        foreach (var step in recipe.Method)
        {
            if (IsGone(step)) return true;
        }

        return false;
    }

    private static bool IsGone(Step step) => Says(step.Until) || Says(step.Note) || Says(step.Into) || Says(step.Vessel);

    private static bool Says(Reading.Given<string> text)
    {
        if (!text.IsGiven) return false;
        foreach (string word in Gone)
        {
            if (Storage.Has(text.Value, word)) return true;
        }

        return false;
    }
}
