using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Rules;
using SpecLint.Vocabulary;

namespace Saltmarsh.Rules;

/// <summary>HR3001: a drink sweeter than the house pours, whatever its style allows.</summary>
[Rule("HR3001", "sweeter-than-the-house-pours", "A drink sweeter than the house pours", Level.Warning, Needs = [Fact.Sugar], IsConsequence = true)]
public sealed partial class SweeterThanTheHousePours : DrinkRule
{
    /// <inheritdoc/>
    public override void Check(RecipeContext context, Drink drink)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(drink);
        var sugar = context.Fact(Fact.Sugar);

        // Balance reports what is broken: the whole range must lie over the limit.
        if (SpecLint.Findings.Check.AtMost(sugar, HouseLimits.Sugar.Value) != Stand.Broken) return;
        context.Report(new(Rule)
        {
            Message = $"The sugar comes to {Say.Fact(Fact.Sugar, sugar)}, and the house pours no more than "
                + $"{Say.With(HouseLimits.Sugar.Value, HouseLimits.Sugar.Unit)} ({HouseLimits.Sugar.Source}).",
            Advice = "Take less of what sweetens it.",
            Evidence = [Proof.Of(Fact.Sugar, sugar), Proof.Of("house limit", HouseLimits.Sugar.Value, HouseLimits.Sugar.Unit, HouseLimits.Sugar.Source)],
        });
    }
}
