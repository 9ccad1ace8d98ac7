using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8027", "slush-freezes-solid", "A slush so weak that it freezes solid", Level.Warning,
    Needs = [Fact.FreezingPoint], IsConsequence = true)]
[Limit("slush-ice-most", "Most")]
[Limit("slush-machine-coldest", "Coldest")]
internal sealed partial class SlushFreezesSolid : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        Step? slush = null;
        foreach (var step in prep.Method)
        {
            if (step.Verb.Slushes && (step.At.IsGiven || step.To.IsGiven)) slush = step;
        }

        if (slush is null || context.Profile.IsSolid) return;
        double t = slush.At.IsGiven ? slush.At.Value.Base : slush.To.Value.Base;

        // Colder than a slush machine runs it is frozen and spun, and is meant to be hard.
        if (t < Coldest.Value || !context.Fact(Fact.FreezingPoint).IsKnown) return;
        double ice = Cold.Ice(context.Profile.Grams, t);
        if (!(ice > Most.Value)) return;
        context.Report(new(Rule)
        {
            At = context.VerbOf(slush),
            Message = $"At {Say.Number(t, 0)} °C {Say.Number(ice, 0)} % of it is ice, above the {Say.With(Most.Value, "%")} at which a "
                + $"slush still turns ({Most.Source}). It sets round the cylinder and strains the machine.",
            Advice = "Use more sugar or spirit (about 12 to 15 °Brix, or the equivalent in alcohol), or run it warmer.",
            Evidence = [Proof.Of($"ice at {Say.Number(t, 0)} °C", ice, "%"), Proof.Of(Most)],
        });
    }
}
