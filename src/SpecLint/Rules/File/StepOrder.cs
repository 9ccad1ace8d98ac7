using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.File;

/// <summary>SL1018: steps in an order in which they cannot be done.</summary>
internal sealed class StepOrder : RecipeRule
{
    private static readonly RuleInfo Rule = new("SL1018", "step-order", "Steps in an order in which they cannot be done", Level.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        var method = context.Recipe.Method;
        bool worked = false;
        Step? topped = null, strained = null, gelled = null;
        for (int i = 0; i < method.Count; i++)
        {
            var step = method[i];
            if (!step.Do.IsGiven) continue;
            string verb = step.Do.Value;
            if (!Verbs.Knows(verb))
            {
                // A verb that nothing is known of may do anything.
                worked = true;
                continue;
            }

            if (context.Recipe is Drink)
            {
                if (verb is "top" or "top-up" or "lengthen") topped ??= step;
                else if (topped is not null && verb is "shake" or "hard-shake" or "wet-shake" or "throw" or "dry-shake")
                {
                    Report(context, topped, step, $"The drink is topped before it is {Past(verb)}: the gas is gone before it reaches the guest");
                    return;
                }
            }

            if (Techniques.Strains(verb) && verb is not ("press" or "squeeze" or "spin" or "centrifuge" or "clarify" or "decant") && !worked) strained ??= step;
            else if (strained is not null && Verbs.Chills(verb) && context.Recipe is Drink && step != strained)
            {
                Report(context, strained, step, $"The drink is strained before it is {Past(verb)}: there is nothing to strain yet, and the ice stays in");
                return;
            }

            if (verb is "hydrate" or "bloom" or "disperse" && step.Items.Count > 0) gelled ??= step;
            else if (gelled is null && step.Items.Count > 0 && verb is "add" or "stir" or "mix" && Salted(context, step) && LaterHydrates(method, i) is { } later)
            {
                Report(context, step, later, "Salt goes in before the gum takes up water: dissolved salts keep gums and gellan from taking it up");
                return;
            }

            if (Verbs.Works(verb)) worked = true;
        }
    }

    private static bool Salted(RecipeContext context, Step step)
    {
        foreach (var item in step.Items)
        {
            if (context.Profiles.MaterialOf(item.Value)?.Kind is "salt") return true;
        }

        return false;
    }

    private static Step? LaterHydrates(FixedList<Step> method, int from)
    {
        for (int i = from + 1; i < method.Count; i++)
        {
            if (method[i].Do.IsGiven && method[i].Do.Value is "hydrate" && method[i].Items.Count > 0) return method[i];
        }

        return null;
    }

    private static string Past(string verb) => verb switch
    {
        "shake" or "hard-shake" or "wet-shake" or "dry-shake" or "whip-shake" => "shaken",
        "stir" or "stir-down" => "stirred",
        "throw" => "thrown",
        "blend" or "flash-blend" => "blended",
        "swizzle" => "swizzled",
        _ => "mixed",
    };

    private static void Report(RecipeContext context, Step early, Step late, string words) => context.Report(new Finding(Rule)
    {
        Place = context.At(early.Do.Span),
        Subject = context.Id,
        Path = context.PathOf(early),
        Message = $"{words} (common practice, no source).",
        Advice = $"Put `{early.Do.Value}` (step {early.Number}) behind `{late.Do.Value}` (step {late.Number}).",
        Related = [new RelatedPlace(context.At(late.Do.Span), "what should come first")],
    });
}
