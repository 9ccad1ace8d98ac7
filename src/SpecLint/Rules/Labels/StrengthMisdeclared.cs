using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

[Rule(
    "SL7009", "strength-misdeclared", "The declared strength differs from the computed or measured strength", Level.Error,
    Needs = [Fact.Abv], IsConsequence = true)]
[LimitsOf(typeof(StrengthTolerance), nameof(StrengthTolerance.Ids))]
[Limit("amount-proof-apart", "ProofApart")]
[Limit("strength-declared-far", "Far")]
internal sealed partial class StrengthMisdeclared : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { Abv.IsGiven: true } declares) return;
        var abv = context.Fact(Fact.Abv);
        if (!abv.IsKnown) return;
        double declared = declares.Abv.Value.Base;

        // Within the range itself no tolerance is looked up.
        if (abv.Low <= declared && abv.High >= declared) return;
        var limit = StrengthTolerance.For(context);
        if (abv.Low <= declared + limit.Value && abv.High >= declared - limit.Value) return;

        // Twice the strength is proof under the wrong unit, which family 2 finds.
        if (abv.Value >= Guards.LeastStrengthForRatio
            && Math.Abs((declared / abv.Value) - Guards.ProofRatio) <= Guards.ProofRatio * ProofApart.Value / 100)
            return;
        string right = Say.Number(abv.Value, 1);
        bool sold = context.Recipe is Prep;

        // A drink over the bar has no label; declared so far under, a guest still counts wrongly.
        bool far = abv.Low > declared + Far.Value || abv.High < declared - Far.Value;
        context.Report(new(Rule)
        {
            AskedLevel = sold || far ? limit.LevelCap : Level.Warning,
            At = context.At(declares.Abv.Span, "declares.abv"),
            Message = $"Declared at {Say.Number(declared)} % vol, it comes to {Say.Fact(Fact.Abv, abv)}. The tolerance of a label is "
                + $"{Say.Number(limit.Value)} % vol ({limit.Source}).",
            Advice = $"Declare {right} % v/v, or change the recipe to match.",
            Caution = "People count their drinks by the declared figure. Local law on labels and measures decides.",
            Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of("declared", declares.Abv.Value, context.At(declares.Abv.Span)), Proof.Of(limit)],
            Corrections = context.Write(declares.Abv.Span, $"{right} % v/v", $"Declare {right} % v/v."),
        });
    }
}
