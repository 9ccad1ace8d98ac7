using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Reading;
using SpecLint.Science;

namespace SpecLint.Rules.Service;

[Rule("SL8029", "yield-short", "A yield far under what went in, less what the steps take out", Level.Warning, IsConsequence = true)]
[Limit("yield-tolerance", "Off")]
[Limit("yield-share-least", "Least")]
internal sealed partial class YieldShort : PrepRule
{
    private static readonly PlausibleRange Soak = PlausibleTable.Of("soak");
    private static readonly PlausibleRange Dry = PlausibleTable.Of("short-of-solids");

    public override void Check(RecipeContext context, Prep prep)
    {
        if (prep.Yield is not { IsGiven: true, Value.Dimension: Dimension.Mass or Dimension.Volume } || IsHardlyAny(context, prep)) return;
        bool byMass = prep.Yield.Value.Dimension == Dimension.Mass;
        if (prep.Family.OrNone() is { Ferments: true } or { IsDry: true } || (!byMass && prep.Family.OrNone().Kind.HoldsAir)) return;
        double all = 0, held = 0, solids = 0;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside) continue;
            if (!part.IsWeighed || part.Material is not { } material) return;
            all += part.Grams.Low;
            if (part.Phase == PartPhase.TakenOut) held += part.Grams.High * (1 + Soak.High);
            else if (material is { State: not MaterialState.Liquid, Kind: { IsSoluble: false, IsSweetPour: false } })
                held += part.Grams.High;
            if (part.Phase == PartPhase.Mix && (material.Unknown & (Unknowns.Water | Unknowns.Composition)) == 0)
                solids += part.Grams.Low * Solids(material);
        }

        foreach (var byProduct in prep.ByProducts)
        {
            if (byProduct.Amount is { IsGiven: true, Value.Dimension: Dimension.Mass })
                held = Math.Max(held, byProduct.Amount.Value.BaseHigh);
        }

        if (prep.ByProducts.Count > 0 && held <= 0) return;
        var (share, steps) = Kept(prep);
        bool bySolids = double.IsNaN(share) && held <= 0 && prep.Method.Any(static s => s.Verb.BoilsDown);
        double least = bySolids ? solids * (1 - (Dry.High / 100)) : double.IsNaN(share) ? 0 : (all - held) * share;
        double volume = context.Profile.InputVolume, mass = context.Profile.InputMass;
        if (!byMass && (bySolids || double.IsNaN(volume) || mass <= 0)) return;
        double per = byMass ? 1 : volume / mass;
        string unit = byMass ? "g" : "mL";
        least *= per;
        if (least <= 0 || prep.Yield.Value.BaseHigh >= least * (1 - (Off.Value / 100))) return;
        double went = all * per, usual = Math.Round((all - held) * per);
        string? words = !bySolids && held <= 0 && usual > 0 ? $"{Say.Number(usual, 0)} {(byMass ? "g" : "ml")}" : null;
        context.Report(new(Rule)
        {
            At = context.At(prep.Yield.Span, "yield"),
            Message = bySolids
                ? $"The yield is {Say.With(prep.Yield.Value.Base, unit)}, but what does not boil off, such as sugar and salt, comes to "
                    + $"{Say.With(solids, "g")}. Less cannot be left in the pot."
                : $"The yield is {Say.With(prep.Yield.Value.Base, unit)} from {Say.With(went, unit)} that went in, but the steps remove at "
                    + $"most {Say.With(went - least, unit)} of that ({steps}; {Dry.Source}).",
            Advice = words is null
                ? "Weigh what is made, and write what is taken out as a step or a by-product."
                : $"Weigh what is made: without loss it is {words}. If something is removed, write the step or the by-product.",
            Evidence =
                [Yields.ProofOf(context, prep), Proof.Of("went in", went, unit), Proof.Of("left at least", least, unit), Proof.Of(Off)],
            Corrections = context.Write(prep.Yield.Span, words),
        });
    }

    /// <summary>
    /// Whether next to nothing is left of all that went in, whatever the steps take out: to press, to dry or to distil leaves more. An
    /// amount or the yield is off by a factor.
    /// </summary>
    private bool IsHardlyAny(RecipeContext context, Prep prep)
    {
        bool byMass = prep.Yield.Value.Dimension == Dimension.Mass;
        double all = 0;
        Part? most = null;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase == PartPhase.Beside || !part.IsWeighed) continue;
            double amount = byMass ? part.Grams.Low : part.Millilitres;
            if (double.IsNaN(amount)) continue;
            all += amount;
            if (most is null || amount > (byMass ? most.Grams.Low : most.Millilitres)) most = part;
        }

        double yield = prep.Yield.Value.BaseHigh;
        if (most is null || yield >= all * Least.Value / 100) return false;
        string unit = byMass ? "g" : "mL";
        context.Report(new(Rule)
        {
            At = context.At(prep.Yield.Span, "yield"),
            Message = $"The yield is {Say.With(prep.Yield.Value.Base, unit)} from {Say.With(all, unit)} that went in, under "
                + $"{Say.Number(Least.Value)} % of it: less than pressing, drying or distilling leaves ({Least.Source}).",
            Advice = $"Look at the unit and the digits of the yield, and of {most.Line.Item.Or("the largest part")}, the largest part.",
            Evidence = [Yields.ProofOf(context, prep), Proof.Of("went in", all, unit), Proof.Of(Least)],
            Related = [context.See(most.Line.Span, "the largest part")],
        });
        return true;
    }

    /// <summary>Least share that the steps leave, by the table; NaN where one of them can take out any share.</summary>
    private static (double Share, string Steps) Kept(Prep prep)
    {
        double share = 1;
        var words = new List<string>();
        foreach (var step in prep.Method)
        {
            if (!step.Do.IsGiven) continue;
            if (step.Verb.BoilsDown
                || step.Verb.Boils
                || step.Verb.Dries
                || PlausibleTable.Of(PlausibleOf.Loss, step.Verb) is not { } loss)
                return (double.NaN, "");
            share *= 1 - (loss.High / 100);
            if (!words.Contains(loss.Condition)) words.Add(loss.Condition);
        }

        // Nothing at all is said of how it is made: what sticks to a vessel.
        if (words.Count == 0) words.Add("no step is written");
        return (share, Say.List(words));
    }

    private static double Solids(Material material) => Math.Max(
        0,
        1 - material.Of(Component.Water) - material.Of(Component.Ethanol) - material.Of(Component.CarbonDioxide)
            - material.Of(Component.Acetic));
}
