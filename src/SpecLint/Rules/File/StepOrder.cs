using SpecLint.Book;

namespace SpecLint.Rules.File;

[Rule("SL1018", "step-order", "Steps in an order in which they cannot be done", Level.Warning)]
internal sealed partial class StepOrder : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (Find(context) is not var (early, late, words)) return;
        context.Report(new(Rule)
        {
            At = context.VerbOf(early),
            Message = $"{words} (common practice, no source).",
            Advice = $"Put `{early.Written}` (step {early.Number}) after `{late.Written}` (step {late.Number}).",
            Related = [context.See(late.Do.Span, "what should come first")],
        });
    }

    /// <summary>The first two steps that stand the wrong way round, and why.</summary>
    private static (Step Early, Step Late, string Words)? Find(RecipeContext context)
    {
        var method = context.Recipe.Method;
        bool worked = false, onlyAdded = true;
        Step? topped = null, floated = null, strained = null, gelled = null, poured = null, chilled = null;
        for (int i = 0; i < method.Count; i++)
        {
            var step = method[i];
            if (!step.Do.IsGiven) continue;
            var verb = step.Verb;
            if (!verb.IsKnown)
            {
                // A verb that nothing is known of may do anything.
                worked = true;
                onlyAdded = false;
                continue;
            }

            if (context.Recipe is Drink)
            {
                if (poured is not null && verb.Rims)
                    return (poured, step, "The glass gets its rim after the drink is in it: the rim wets and slides in");
                if (chilled is not null && verb.Muddles)
                    return (chilled, step, $"It is muddled after it is {chilled.Verb.Past}, so it never mixes with the drink");
                if (topped is not null && verb.UsesStrainer)
                    return (topped, step, "The drink is topped before it is strained: the gas is knocked out on the way into the glass");
                if (floated is not null && (verb.UsesStrainer || verb.Agitates))
                    return (floated, step, "What is floated goes on last: the next step mixes it in");
                if (floated is not null && FloatBuried.By(context, floated, step))
                    return (floated, step, "What is floated goes on last: the next step is poured or stirred through it");

                // A rinse or a coat is poured out again; a build in the glass is where muddling may follow ice.
                if (verb.UsesStrainer) poured ??= step;
                if (verb.Chills && verb.LeavesIce) chilled ??= step;
                if (verb.Floats) floated ??= step;
                if (verb.Tops) topped ??= step;
                else if (topped is not null && verb.Agitates)
                    return (topped, step, $"The drink is topped before it is {verb.Past}: the gas is gone before it reaches the guest");
            }

            if (verb.UsesStrainer && (!worked || (onlyAdded && step.Items.Count == 0 && context.Recipe is Drink))) strained ??= step;
            else if (strained is not null && verb.Chills && context.Recipe is Drink && step != strained)
                return (strained, step,
                    $"The drink is strained before it is {verb.Past}: there is nothing to strain yet, and the ice stays in");
            if (verb.Hydrates && step.Items.Count > 0) gelled ??= step;
            else if (gelled is null
                && step.Items.Count > 0
                && (verb.Adds || verb.TakesAll)
                && Salted(context, step)
                && LaterHydrates(method, i) is { } later)
                return (step, later, "Salt goes in before the gum takes up water: dissolved salts keep gums and gellan from taking it up");
            if (verb.Works) worked = true;
            if (verb.Works && !verb.Adds) onlyAdded = false;
        }

        return null;
    }

    private static bool Salted(RecipeContext context, Step step)
    {
        foreach (var item in step.Items)
        {
            if (context.Profiles.MaterialOf(item.Value)?.Kind is { IsSalt: true }) return true;
        }

        return false;
    }

    private static Step? LaterHydrates(FixedList<Step> method, int from)
    {
        for (int i = from + 1; i < method.Count; i++)
        {
            if (method[i].Verb.Hydrates && method[i].Items.Count > 0) return method[i];
        }

        return null;
    }
}
