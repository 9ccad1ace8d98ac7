using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4030", "milk-does-not-curdle", "A milk wash without the acid that curdles the milk", Level.Warning, Needs = [Fact.Acid])]
[Limit("curdling-acid", "Least")]
internal sealed partial class MilkDoesNotCurdle : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (Milk(context, prep) is not { } milk) return;
        var acid = context.Fact(Fact.Acid);
        if (!acid.IsKnown || AcidOfMilk(context) is not { } of || of >= Least.Value) return;
        bool may = acid.Value > 0 && of * acid.High / acid.Value >= Least.Value;
        context.Report(new(Rule)
        {
            Answer = may ? Answer.NotShown : Answer.Broken,
            AskedLevel = may ? Level.Note : null,
            At = context.ItemOf(milk.Line),
            Message = $"It is clarified with {milk.Line.Item.Or("milk")}, and all the acid beside it comes to {Say.With(of, "g")} for "
                + $"100 mL of milk. Milk curdles from about {Say.With(Least.Value, "g")} ({Least.Source}): "
                + $"{(may ? "it may stay" : "it stays")} milk, and nothing clears.",
            Advice = "Put lemon juice, wine or dissolved citric acid into the punch before it meets the milk, and pour "
                + "the punch onto the milk.",
            Evidence = [Proof.Of("acid for 100 mL of milk", of, "g"), Proof.Of(Fact.Acid, acid), Proof.Of(Least)],
            Related = [context.See(prep.MethodSpan, "the method")],
        });
    }

    /// <summary>The acid of all other parts for 100 mL of the milk, g; <see langword="null"/> where a part cannot be weighed.</summary>
    private static double? AcidOfMilk(RecipeContext context)
    {
        double acid = 0, millilitres = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (!part.IsWeighed) return null;
            if (Substances.IsDairy(part.Material)) millilitres += part.Millilitres;
            else acid += part.Grams.Typical * Solving.AcidsOf(part.Material!.PerGram);
        }

        return millilitres > 0 ? 100 * acid / millilitres : null;
    }

    /// <summary>
    /// The fresh milk that is to clear a preparation: what a milk wash or a line with the role `wash` brings. Sour milk has curdled, and a
    /// fat wash wants its fat.
    /// </summary>
    private static Part? Milk(RecipeContext context, Prep prep)
    {
        var family = prep.Family.OrNone();
        if (family.IsFatWash || prep.Method.Any(static s => !s.Verb.IsKnown)) return null;
        Part? milk = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Material is not { } material) return null;
            if (!Substances.IsDairy(material)) continue;
            if (material.Of(Component.Protein) <= Guards.CurdProtein || 100 * Solving.AcidsOf(material.PerGram) > Least.Value) return null;
            if (family.IsMilkWash || part.Line.Role == LineRole.Wash) milk ??= part;
        }

        return milk;
    }
}
