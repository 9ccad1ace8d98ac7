using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Rules.Service;

[Rule("SL8019", "yield-counts-solids", "A yield that counts what is strained out", Level.Warning, IsConsequence = true)]
[Limit("yield-tolerance", "Off")]
[Limit("strained-holds-least", "Holds")]
[Limit("strained-counts-from", "CountsFrom")]
internal sealed partial class YieldCountsSolids : PrepRule
{
    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Yield is not { IsGiven: true, Value.Dimension: Dimension.Mass or Dimension.Volume } || prep.Family.OrNone().Kind.HoldsAir)
            return;
        Part? solid = null;
        double strained = 0, whole = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !part.IsWeighed) continue;
            double grams = part.Grams.Typical;
            whole += grams;
            if (part.Phase != PartPhase.TakenOut || part.Line.Role is LineRole.Fining) continue;
            strained += grams;
            if (solid is null || grams > solid.Grams.Typical) solid = part;
        }

        if (solid is null) return;
        var (all, liquid, unit) = Yields.Most(context, prep);
        double yield = prep.Yield.Value.BaseLow;
        if (double.IsNaN(all) || yield > all * (1 + (Off.Value / 100))) return;
        bool more = yield > liquid * (1 + (Off.Value / 100));

        // The sum of all that went in, to the gram, though a share of it that a scale sees is strained out.
        bool sum = prep.Yield.Value.Dimension == Dimension.Mass
            && Math.Abs(yield - whole) <= Guards.SumYield * yield
            && strained > yield * Off.Value / 100;

        // Solids that are a good share of it come out wet, and take some of the liquid with them.
        bool wet = strained >= whole * CountsFrom.Value / 100 && yield > all - (strained * Holds.Value / 100);
        if (!more && !sum && !wet) return;
        string what = $"{Say.With(strained, "g")} of that is strained out ({solid.Line.Item.Or("solids")})";
        context.Report(new(Rule)
        {
            At = context.At(prep.Yield.Span, "yield"),
            Message = more
                ? $"The yield is {Say.With(prep.Yield.Value.Base, unit)}, but without the solids of "
                    + $"{solid.Line.Item.Or("what is strained out")} at most {Say.With(liquid, unit)} can run through, counting "
                    + "every drop of its juice."
                : sum
                ? $"The yield of {Say.With(yield, "g")} is the sum of everything that goes in, but {what} and holds back liquid."
                : $"The yield is {Say.With(prep.Yield.Value.Base, unit)} of {Say.With(all, unit)} at most, but {what} and comes out wet: "
                    + $"it holds back at least {Say.With(Holds.Value, "%")} of its own mass ({Holds.Source}).",
            Advice = "Weigh what runs through, and write what is left as a by-product.",
            Evidence = [Yields.ProofOf(context, prep), Proof.Of("liquid at most", liquid, unit), Proof.Of(Off)],
            Related = [context.See(solid.Line.Span, "strained out")],
        });
    }
}
