using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Rules.Labels;

namespace SpecLint.Rules.Service;

[Rule(
    "SL8032", "does-not-freeze", "A step to freeze it solid at which it stays liquid", Level.Warning,
    Needs = [Fact.FreezingPoint], IsConsequence = true)]
internal sealed partial class DoesNotFreeze : PrepRule
{
    private static readonly string[] Solid = ["solid", "hard", "frozen", "set"];

    public override void Check(RecipeContext context, Prep prep)
    {
        foreach (var step in prep.Method)
        {
            if (!step.Verb.Freezes
                || step.Items.Count > 0
                || !step.Until.IsGiven
                || WordSearch.First(step.Until.Value, Solid) is null)
                continue;
            var cold = step.To.IsGiven ? step.To : step.At;

            // Fat hardens on what stays liquid below it.
            if (!cold.IsGiven
                || prep.Family.OrNone().IsFatWash
                || Balance.Builds.First(context.Profile, static m => m is { Kind.IsFat: true }) is not null)
                continue;
            var point = context.Fact(Fact.FreezingPoint);
            if (!point.IsKnown || point.High >= cold.Value.Base) continue;
            context.Report(new(Rule)
            {
                At = context.VerbOf(step),
                Message = $"It is to freeze at {Say.With(cold.Value.Base, "°C")}, but its first ice forms at "
                    + $"{Say.Fact(Fact.FreezingPoint, point)}: it stays liquid.",
                Advice = "Let it down with water or juice until it freezes, or leave the spirit out and pour it at service.",
                Evidence = [Proof.Of(Fact.FreezingPoint, point)],
            });
            return;
        }
    }
}
