using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule("SL8006", "ice-missing", "No ice in a method that needs it", Level.Warning)]
[Limit("hot-drink-from", "Hot")]
[Limit("ice-spirit-least", "Base")]
[Limit("ice-spirit-share", "Strong")]
internal sealed partial class IceMissing : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (drink.Method.Count == 0) return;
        bool ice = false, withoutIce = false;
        Step? chills = null, dry = null;
        foreach (var step in drink.Method)
        {
            bool has = step.HasIce;

            // Ice that the drink is strained onto was not in the shaker; a dry shake has one with ice behind it.
            if (has && withoutIce && step.Verb.Strains) continue;
            ice |= has;
            withoutIce |= !ice && step.Verb.Technique == TechniqueKind.Shaken && !step.Ice.IsGiven;
            if (step.Verb.Chills) chills ??= step;
            if (step.IsDryShake) dry ??= step;
        }

        foreach (var part in context.Profile.Parts) ice |= part.Material is { Kind.IsIce: true };
        if (ice || NeedsNone(context)) return;
        if (context.Profile.Technique == TechniqueKind.NoIce) NoIce(context, drink, dry);
        else if (chills is not null && context.Profile is { TechniqueStep: not null, Technique: not TechniqueKind.Unknown })
            WhichIce(context, chills);
    }

    /// <summary>The verb implies ice; which ice is worth a word, since dilution and texture hang on it.</summary>
    private static void WhichIce(RecipeContext context, Step chills) => context.Report(new(Rule)
    {
        AskedLevel = Level.Note,
        At = context.VerbOf(chills),
        Message = $"The step to {chills.Written} needs ice, and no step says which. Its size decides the dilution.",
        Advice = "Add the ice to the step, for example `\"ice\": \"cubed\"`.",
        Corrections = Correction.Propose(
            "Write cubed ice.", new TextEdit(context.At(new TextSpan(chills.Do.Span.End, 0)), ", \"ice\": \"cubed\"")),
    });

    private static void NoIce(RecipeContext context, Drink drink, Step? dry)
    {
        const string warm = "it is served warm and undiluted (common practice, no source).";
        var method = context.At(drink.Method[0].Do.IsGiven ? drink.Method[0].Do.Span : drink.Method[0].Span, "method");
        if (dry is not null)
        {
            context.Report(new(Rule)
            {
                At = context.VerbOf(dry),
                Message = $"It is shaken without ice ({dry.Written}), and no step chills it: {warm}",
                Advice = "Add the shake on ice behind it, or the ice that it is served on.",
                Evidence = [Proof.Of("step", dry.Written)],
            });
        }
        else if (Unchilled(context, drink) is { } bare)
        {
            context.Report(new(Rule)
            {
                At = context.At(bare.Ice.Span, context.PathOf(bare) + ".ice"),
                Message = $"The step to {bare.Written} has no ice, and no other step chills it: {warm}",
                Advice = "Write the ice of the step. If it is meant, as of a drink at room temperature, say so in its style.",
                Evidence = [Proof.Of("step", bare.Written)],
            });
        }
        else if (!drink.Style.IsGiven && Lengthened(context, drink) is { } soda)
        {
            context.Report(new(Rule)
            {
                At = method,
                Message = $"A spirit or liqueur is lengthened with {soda.Line.Item.Or("soda")}, and no step has any ice: it is served "
                    + "warm (common practice, no source).",
                Advice = "Add the ice to the method, or the step that chills it.",
                Related = [context.See(soda.Line.Span, "what lengthens it")],
            });
        }
        else if (drink.KnownStyle is { NeedsIce: true } style)
        {
            context.Report(new(Rule)
            {
                At = method,
                Message = $"A `{style.Id}` is chilled with ice, but no step of the method has any, so it is served warm and undiluted.",
                Advice = "Add the ice to the method, or name the right style.",
                Related = [context.See(drink.Style.Span, "the style")],
            });
        }
    }

    /// <summary>
    /// The step that stirs or shakes without ice a drink that is strained afterwards: mixing glass and strainer are there for the ice.
    /// </summary>
    private static Step? Unchilled(RecipeContext context, Drink drink)
    {
        if (drink.KnownStyle is not null || !(context.Profile.Grams[(int)Component.Ethanol] > 0)) return null;
        Step? bare = null;
        foreach (var step in drink.Method)
        {
            if (step.Verb.Chills && step.Ice is { IsGiven: true, Value.IsNone: true }) bare = step;
            else if (bare is not null && step.Verb.UsesStrainer) return bare;
        }

        return null;
    }

    /// <summary>
    /// What lengthens a spirit or liqueur in the glass, more of it than of the spirit: soda, with the sparkling wine beside it. Beer or
    /// sparkling wine alone come cold.
    /// </summary>
    private static Part? Lengthened(RecipeContext context, Drink drink)
    {
        double strong = 0, wine = 0;
        Part? soda = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { State: MaterialState.Liquid } material || double.IsNaN(part.Millilitres)) continue;
            double ethanol = material.Of(Component.Ethanol);
            if (ethanol > Strong.Value / 100 || material.Kind.IsLiqueur) strong += part.Millilitres;
            else if (material.Kind.IsSparkling && ethanol > 0) wine += part.Millilitres;
            else if (material.Kind is { Lengthens: true } or { IsJuice: true }
                && ethanol <= 0
                && (soda is null || part.Millilitres > soda.Millilitres))
                soda = part;
        }

        return strong >= Base.Value * drink.ServesOrOne
            && soda is not null
            && soda.Millilitres + (soda.Material is { Kind.Lengthens: true } ? wine : 0) > strong
            ? soda
            : null;
    }

    /// <summary>A drink poured from a cold batch needs no ice, nor does one that is heated.</summary>
    private static bool NeedsNone(RecipeContext context)
    {
        foreach (var step in context.Recipe.Method)
        {
            if (step.Verb.Freezes || step.Verb.Carbonates || step.Verb.Draws || step.Verb.Heats) return true;
            if (Heat.Reaches(step, Hot.Value) || (step.At.IsGiven && step.At.Value.Base <= Guards.KeptCold)) return true;
        }

        foreach (var part in context.Profile.Parts)
        {
            if (part.Item?.File is Prep prep && prep.Family.OrNone().IsBatch) return true;
        }

        return false;
    }
}
