using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Rules.Hazards;

namespace SpecLint.Rules.Service;

[Rule("SL8008", "fizz-in-shaker", "Something sparkling in a closed shaker or blender", Level.Error, Safety = true)]
internal sealed partial class FizzInShaker : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        foreach (var step in drink.Method)
        {
            if (!step.Verb.ClosesVessel || !step.Verb.Agitates) continue;
            foreach (var part in context.Profile.Parts)
            {
                // A top that the step names is shaken all the same.
                if ((part.Line.Role is not (LineRole.Part or LineRole.Muddle) && !Names(step, part.Line.Item.Or("")))
                    || !Substances.MayBringGas(part.Material)
                    || !GoesIn(drink, step, part.Line))
                    continue;
                Report(context, step, part);
                return;
            }
        }
    }

    private static void Report(RecipeContext context, Step step, Part part)
    {
        var line = part.Line;
        string item = line.Item.Or("It");
        bool sparkles = Substances.IsSparkling(part.Material), blends = step.Verb.Technique == TechniqueKind.Blended;
        context.Report(new(Rule)
        {
            // A blender is run with the cap of its lid off; a ferment may be flat, and nothing says so.
            AskedLevel = blends ? Level.Note : sparkles ? null : Level.Warning,
            Answer = sparkles ? Answer.Broken : Answer.NotShown,
            At = context.At(line.Item.IsGiven ? line.Item.Span : line.Span, RecipeContext.PathOf(line)),
            Message = blends
                ? $"{item} {(sparkles ? "is sparkling" : "is a ferment and may hold gas")}, and by the method it is in the "
                    + $"blender at the step to {step.Written}. Its gas lifts a closed lid, and the drink is served flat."
                : sparkles
                    ? $"{item} is sparkling, and by the method it is in the vessel at the step to {step.Written}. Its gas "
                        + "comes out at once and blows the closed vessel open, and the drink is served flat."
                    : $"{item} is a ferment, and nothing says that its gas is gone. By the method it is in the vessel at the "
                        + $"step to {step.Written}, where gas blows the closed vessel open.",
            Advice = blends ? "Blend with the cap of the lid off, or stir it in afterwards."
                : (sparkles ? "Add it after the technique" : "Degas it first and say so in its recipe, or add it after the technique")
                    + ": give the line the role `top`.",
            Caution = "A shaker or blender under pressure can burst open and hurt people. Never open a hissing one towards a "
                + "face, and follow the maker's and the house's rules.",
            Related = [context.See(step.Do.Span, "the step")],
            Corrections = !line.Amount.IsGiven || line.RoleIsGiven
                ? []
                : Correction.Propose(
                    $"Add {item} after the technique.",
                    new TextEdit(context.At(new TextSpan(line.Amount.Span.End, 0)), ", \"role\": \"top\"")),
            Evidence = [Proof.Of("kind", part.Material!.Kind.Id, context.At(line.Span))],
        });
    }

    /// <summary>Whether a line is in the vessel at a step: the step names it, or names nothing and no later step brings it.</summary>
    private static bool GoesIn(Drink drink, Step at, Line line)
    {
        if (!line.Item.IsGiven || IsFlat(drink, at, line)) return false;
        string id = line.Item.Value;
        if (at.Items.Count > 0) return Names(at, id);
        foreach (var step in drink.Method)
        {
            // A later top without items is the sparkling part.
            if (step.Number > at.Number && (Names(step, id) || (step.Verb.AddsLast && step.Items.Count == 0))) return false;
        }

        return true;
    }

    /// <summary>Whether its gas has gone by a step: its line says so, or an earlier step that works on it does.</summary>
    private static bool IsFlat(Drink drink, Step at, Line line)
    {
        if (SaysFlat(line.Note)) return true;
        foreach (var step in drink.Method)
        {
            if (step.Number >= at.Number || (step.Items.Count > 0 && !Names(step, line.Item.Value))) continue;
            if (step.Verb.Degasses || SaysFlat(step.Until) || SaysFlat(step.Note)) return true;
        }

        return false;
    }

    private static bool SaysFlat(Given<string> text) =>
        HazardWords.HasWords(text, TextWords.Flat) && !HazardWords.HasWords(text, TextWords.KeptLively);

    private static bool Names(Step step, string id)
    {
        foreach (var item in step.Items)
        {
            if (item.Value == id) return true;
        }

        return false;
    }
}
