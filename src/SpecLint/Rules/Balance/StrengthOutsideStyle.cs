using SpecLint.Book;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3001", "strength-outside-style", "A strength outside the style's range", Level.Warning, Needs = [Fact.Abv], IsConsequence = true)]
internal sealed partial class StrengthOutsideStyle : StyleBandRule
{
    protected override Fact Of => Fact.Abv;

    protected override string Noun => "strength";

    protected override bool IsSaidElsewhere(RecipeContext context, Drink drink, Style style, Band seen, FactValue value) => false;

    protected override bool IsLikelyAnother(RecipeContext context, Style style) =>
        style.IsTopped && Builds.First(context.Profile, static m => m is null || Remedy.EthanolOf(m) > 0) is null;

    protected override Remedy PutRight(RecipeContext context, FactValue value, Band seen, Band aim) =>
        context.Recipe is Drink { KnownStyle: { } style } && IsLikelyAnother(context, style)
            ? Remedy.Say("Name a style without alcohol (`zero-proof-long`), if no spirit is meant; else add what is forgotten.")
            : Remedy.Amount(
                context, Remedy.EthanolOf, Solving.Strength, Nearest(aim, value.Value), "% vol",
                value.Value > seen.High
                    ? "Take less spirit, or dilute it more, or name the right style."
                    : "Take more spirit, or less of what dilutes it, or name the right style.");
}
