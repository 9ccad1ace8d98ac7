using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3006", "size-outside-style", "A drink far larger or smaller than its style", Level.Note,
    Needs = [Fact.MixVolume, Fact.ServedVolume], IsConsequence = true)]
internal sealed partial class SizeOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.MixVolume;

    protected override double About(RecipeContext context, Drink drink) => context.Profile.InputVolume / drink.ServesOrOne;

    protected override string Noun => "volume before ice";

    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) =>
        context.Fact(Fact.ServedVolume) is { IsKnown: true } served
            && style.Seen(Fact.ServedVolume) is { } glass
            && Findings.Check.Within(served, glass.Low, glass.High) != Stand.Broken;

    /// <summary>The same ratios at the nearest usual size.</summary>
    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim)
    {
        // Where most of it is the top, the mix before ice says little of its size.
        if (Builds.TopShare(context.Profile) > Guards.MostlyTop)
            return Remedy.Say("Check for a wrong unit, and whether the style is right.");
        double by = Nearest(aim, value.Value) / value.Value;
        if (Scaling.By(context.Profile, by, context.Settings, mayFallShort: value.Value > aim.High) is not { } scaled)
            return Remedy.Say("Check for a wrong unit. Otherwise write how many it serves.");
        var edits = ScaledEdits.Of(scaled, context.File);
        return new Remedy(
            $"Check for a wrong unit, or write how many it serves. Scaled with the same ratios it is {Words(scaled)}.",
            [new Correction(CorrectionGrade.Proposed, $"Scale every amount by {Say.Number(scaled.Factor, 2)}.", edits)]);
    }

    private static string Words(ScaledRecipe scaled)
    {
        var poured = scaled.Lines.Where(static line => line.Part.Phase is PartPhase.Mix or PartPhase.Top);
        return Say.List([.. poured.Select(static line => $"{line.Text} {line.Part.Line.Item.Or("")}")]);
    }
}
