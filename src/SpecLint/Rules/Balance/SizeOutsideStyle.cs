using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule(
    "SL3006", "size-outside-style", "A drink far larger or smaller than its style", Level.Note, Needs = [Fact.MixVolume, Fact.ServedVolume],
    IsConsequence = true)]
internal sealed partial class SizeOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.MixVolume;

    protected override double About(RecipeContext context, Drink drink) => context.Profile.InputVolume / drink.ServesOrOne;

    protected override string Noun => "volume before ice";

    protected override bool IsSaidElsewhere(
        RecipeContext context, Drink drink, Style style, Band seen, FactValue value) =>
            context.Fact(Fact.ServedVolume) is { IsKnown: true } served
                && style.Seen(Fact.ServedVolume) is { } glass
                && Findings.Check.Within(served, glass.Low, glass.High) != Stand.Broken;

    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        Scaled(context, aim, value);

    /// <summary>The same ratios at the nearest usual size.</summary>
    private static Remedy Scaled(RecipeContext context, Band aim, FactValue value)
    {
        // Where most of it is the top, the mix before ice says little of its size.
        if (Builds.TopShare(context.Profile) > Guards.MostlyTop) return Remedy.Say("Check for a wrong unit, and whether the style is right.");
        if (Scaling.By(context.Profile, Nearest(aim, value.Value) / value.Value, context.Settings, mayFallShort: value.Value > aim.High) is not { } scaled)
            return Remedy.Say("Check for a wrong unit. Otherwise write how many it serves.");
        return new Remedy(
            $"Check for a wrong unit, or write how many it serves. Scaled with the same ratios it is {Words(scaled)}.",
            [new Correction(CorrectionGrade.Proposed, $"Scale every amount by {Say.Number(scaled.Factor, 2)}.", ScaledEdits.Of(scaled, context.File))]);
    }

    private static string Words(ScaledRecipe scaled)
    {
        var words = new List<string>();
        foreach (var line in scaled.Lines)
        {
            if (line.Part.Phase is PartPhase.Mix or PartPhase.Top) words.Add($"{line.Text} {line.Part.Line.Item.Or("")}");
        }

        return Say.List(words);
    }
}
