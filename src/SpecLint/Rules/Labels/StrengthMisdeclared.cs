using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Labels;

/// <summary>SL7009: the declared strength is further from the computed than the law lets it be.</summary>
internal sealed class StrengthMisdeclared : RecipeRule
{
    private static readonly Limit ProofApart = Limits.Of("amount-proof-apart");
    private static readonly Limit Far = Limits.Of("strength-declared-far");

    private static readonly RuleInfo Rule = new("SL7009", "strength-misdeclared", "The declared strength differs from the computed or measured strength", Level.Error)
    {
        Needs = [Fact.Abv],
        Limits = [.. StrengthTolerance.Ids, "amount-proof-apart", "strength-declared-far"],
        IsConsequence = true,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Rule;

    /// <inheritdoc/>
    public override void Check(RecipeContext context)
    {
        if (context.Recipe.Declares is not { Abv.IsGiven: true } declares) return;
        var abv = context.Fact(Fact.Abv);
        if (!abv.IsKnown) return;
        var limit = StrengthTolerance.For(context);
        double declared = declares.Abv.Value.Base;
        if (abv.Low <= declared + limit.Value && abv.High >= declared - limit.Value) return;

        // Twice the strength is proof under the wrong unit, which family 2 finds.
        if (abv.Value >= Guards.LeastStrengthForRatio && Math.Abs((declared / abv.Value) - Guards.ProofRatio) <= Guards.ProofRatio * ProofApart.Value / 100) return;
        string right = Say.Number(abv.Value, 1);
        bool sold = context.Recipe is Prep;

        // A drink over the bar has no label; declared so far under, a guest still counts wrongly.
        bool far = abv.Low > declared + Far.Value || abv.High < declared - Far.Value;
        context.Report(new Finding(Rule)
        {
            AskedLevel = sold || far ? limit.LevelCap : Level.Warning,
            Place = context.At(declares.Abv.Span),
            Subject = context.Id,
            Path = "declares.abv",
            Message = $"Declared at {Say.Number(declared)} % vol, it comes to {Say.Fact(Fact.Abv, abv)}. The tolerance of a label is {Say.Number(limit.Value)} % vol ({limit.Source}).",
            Advice = $"Declare {right} % v/v, or change the recipe to match.",
            Caution = "People count their drinks by the declared figure. Local law on labels and measures decides.",
            Evidence = [Proof.Of(Fact.Abv, abv), Proof.Of("declared", declares.Abv.Value, context.At(declares.Abv.Span)), Proof.Of(limit)],
            Corrections = [new Correction(CorrectionGrade.Proposed, $"Declare {right} % v/v.", [new TextEdit(context.At(declares.Abv.Span), $"\"{right} % v/v\"")])],
        });
    }
}
