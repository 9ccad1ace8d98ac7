using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Balance;

[Rule("SL3020", "bitters-out-of-scale", "Dashes of bitters that add up to a large share of the drink", Level.Warning,
    Needs = [Fact.MixVolume], IsConsequence = true)]
[Limit("bitters-share", "Share")]
[Limit("bitters-dashes", "Dashes")]
internal sealed partial class BittersOutOfScale : DrinkRule
{
    public override void Check(RecipeContext context, Drink drink)
    {
        double millilitres = 0;
        Part? most = null;
        foreach (var part in context.Profile.Parts)
        {
            // Bitters by the measure are a choice of their own; dashes and drops are seasoning.
            if (part.Phase != PartPhase.Mix || !Substances.IsBitters(part.Material) || !part.Line.Amount.IsGiven) continue;
            if (part.Line.Amount.Value.Unit.Name is not ("dash" or "drop" or "dropper" or "spray")) continue;
            millilitres += part.Line.Amount.Value.BaseLow;
            if (most is null || part.Millilitres > most.Millilitres) most = part;
        }

        if (most is null) return;
        double serves = drink.ServesOrOne;
        var amount = most.Line.Amount.Value;
        double dashes = amount.Unit.Name == "dash" ? amount.Low / serves : 0;

        // Of the volume to expect they are the larger share: where that is small, its range, which costs more, is not asked for.
        double expected = Solving.VolumeOf(context.Profile.MixGrams), poured = Amounts.Written.Poured(context.Profile);
        if (dashes <= Dashes.Value && 100 * millilitres / Math.Max(expected, poured) <= Share.Value) return;
        var volume = context.Fact(Fact.MixVolume);
        if (!volume.IsKnown) return;

        // What it is topped with counts: two dashes under a glass of sparkling wine season that glass.
        double top = Math.Max(0, poured - (volume.Value * serves));
        double share = 100 * millilitres / ((volume.High * serves) + top);
        bool counted = dashes > Dashes.Value && share <= Share.Value;
        if (share <= Share.Value && !counted) return;
        string typical = Say.With(100 * most.Millilitres / ((volume.Value * serves) + top), "%"), item = most.Line.Item.Or("bitters");
        context.Report(new(Rule)
        {
            At = context.AmountOf(most.Line),
            Message = counted
                ? $"{Say.Number(dashes)} dashes of {item} in one drink are {typical} of the drink before ice, above the usual maximum of "
                    + $"{Say.Number(Dashes.Value)} dashes of one bitters ({Dashes.Source})."
                : $"{Rounding.Words(amount.Base, amount)} of {item} make {typical} of the drink before ice. Even with small dashes that "
                    + $"is above the usual maximum of {Say.With(Share.Value, "%")} ({Share.Source}).",
            Advice = "Check whether the amount was multiplied with the rest. If bitters are the base, give them in millilitres.",
            Evidence = [Proof.Of("bitters at least", share, "%"), Proof.Of(counted ? Dashes : Share), Proof.Of(Fact.MixVolume, volume)],
        });
    }
}
