using SpecLint.Book;

namespace SpecLint.Rules.Service;

[Rule("SL8007", "strain-missing", "A shaken or stirred drink that is never strained or poured", Level.Note)]
internal sealed partial class StrainMissing : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.Technique is not (TechniqueKind.Shaken or TechniqueKind.Stirred or TechniqueKind.Thrown)
            || context.Profile.TechniqueStep is not { Do.IsGiven: true, Into.IsGiven: false } step)
            return;
        foreach (var later in drink.Method)
        {
            if (later.Number <= step.Number || !later.Do.IsGiven) continue;
            if (later.Verb.Strains || later.Verb.Pours || later.Into.IsGiven) return;
        }

        context.Report(new(Rule)
        {
            At = context.VerbOf(step),
            Message = $"After the step to {step.Written} it is neither strained nor poured. So it is not clear whether the ice goes "
                + "into the glass, and how much water it adds.",
            Advice = "Write the step: strain, fine-strain, or pour with its ice.",
        });
    }
}
