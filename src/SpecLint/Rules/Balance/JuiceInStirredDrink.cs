using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Balance;

[Rule("SL3009", "juice-in-stirred-drink", "A stirred drink that is sour from juice", Level.Note, Needs = [Fact.Acid], IsConsequence = true)]
[Limit("stirred-acid", "Most")]
internal sealed partial class JuiceInStirredDrink : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        if (context.Profile.Technique != TechniqueKind.Stirred || Builds.First(context.Profile, Substances.IsJuice) is not { } juice)
            return;
        var acid = context.Fact(Fact.Acid);
        if (Findings.Check.AtMost(acid, Most.Value) != Stand.Broken) return;
        var step = context.Profile.TechniqueStep;
        bool isSaid = step is { Do.IsGiven: true };
        context.Report(new(Rule)
        {
            Place = context.At(isSaid ? step!.Do.Span : juice.Line.Span),
            Path = step is null ? RecipeContext.PathOf(juice.Line) : context.PathOf(step),
            Message = $"It is stirred, and {juice.Line.Item.Or("the juice")} raises its acid to {Say.Fact(Fact.Acid, acid)}, above the "
                + $"{Say.With(Most.Value, "g/100 mL")} maximum for stirred drinks ({Most.Source}).",
            Advice = "Shake it to mix and aerate the juice, or stir a clarified juice or an acid solution.",
            Evidence = [Proof.Of(Fact.Acid, acid), Proof.Of(Most)],
            Related = [context.See(juice.Line.Span, "the juice")],
            Corrections = isSaid ? context.Write(step!.Do.Span, "shake", "Shake it.") : [],
        });
    }
}
