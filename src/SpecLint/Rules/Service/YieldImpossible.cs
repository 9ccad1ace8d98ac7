using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8018", "yield-impossible", "A yield larger than what went in", Level.Error, IsConsequence = true)]
[Limit("yield-tolerance", "Off")]
internal sealed partial class YieldImpossible : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        // A foam takes up air: it grows, and weighs no more.
        if (prep.Yield is not { IsGiven: true, Value.Dimension: Dimension.Mass or Dimension.Volume }
            || (prep.Yield.Value.Dimension == Dimension.Volume && prep.Family.OrNone().Kind.HoldsAir))
            return;
        var (all, _, unit) = Yields.Most(context, prep);
        if (!(all > 0)) return;
        double yield = prep.Yield.Value.BaseLow, left = 0;
        foreach (var byProduct in prep.ByProducts)
        {
            if (byProduct.Amount.IsGiven && byProduct.Amount.Value.Dimension == prep.Yield.Value.Dimension)
                left += byProduct.Amount.Value.BaseLow;
        }

        if (yield + left <= all * (1 + (Off.Value / 100))) return;
        double typical = 0;
        bool strained = false;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Beside && part.IsWeighed) typical += part.Grams.Typical;
            strained |= part.Phase == PartPhase.TakenOut;
        }

        if (unit == "mL") typical *= context.Profile.InputVolume / context.Profile.InputMass;
        typical -= left;
        string with = left > 0 ? $", with {Say.With(left, unit)} of by-products beside it," : "";

        // What is strained out takes liquid with it, and only the scale knows how much.
        bool solved = typical > 0 && left < all && !strained && !prep.PortionCount.IsGiven;
        string words = $"{Say.Number(typical, 0)} {(unit == "mL" ? "ml" : unit)}";
        context.Report(new(Rule)
        {
            At = context.At(prep.Yield.Span, "yield"),
            Message = $"The yield is {Say.With(prep.Yield.Value.Base, unit)}{with} but the parts come to at most {Say.With(all, unit)}: "
                + $"{Say.Number(100 * (((yield + left) / all) - 1), 0)} % more than went in.",
            Advice = "Weigh what is made." + (solved ? $" Without loss it is {words}." : ""),
            Evidence =
                [Yields.ProofOf(context, prep), Proof.Of("parts at most", all, unit), Proof.Of("left over", left, unit), Proof.Of(Off)],
            Corrections = context.Write(prep.Yield.Span, solved ? words : null),
        });
    }
}
