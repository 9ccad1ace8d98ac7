using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4010", "sugar-over-solubility", "More sucrose than the water holds at the temperature it is kept or mixed at", Level.Warning,
    IsConsequence = true)]
[Limit("supersaturation-sucrose", "Most")]
internal sealed partial class SugarOverSolubility : PrepRule
{
    private const Unknowns Open = Unknowns.Sugar | Unknowns.Water | Unknowns.Composition | Unknowns.Mass;

    private static readonly Solving.Measure PerWater = static g => g[(int)Component.Sucrose] / g[(int)Component.Water];

    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.IsSolid || (context.Profile.Unknown & Open) != 0) return;
        var grams = context.Profile.Grams;
        double sucrose = grams[(int)Component.Sucrose], water = grams[(int)Component.Water];
        if (sucrose < Guards.SucroseShare * context.Profile.Mass || water <= 0) return;

        // Invert sugar and glucose keep sucrose from growing crystals, and take water for themselves: not judged.
        double others = Solving.SugarOf(grams) - sucrose + grams[(int)Component.Dextrin];
        if (others > Guards.OtherSugars * sucrose || grams[(int)Component.Ethanol] > Guards.SpiritedSyrup * context.Profile.Mass) return;
        var (t, span, from) = Temperature(context, prep);
        if (SolubilityModel.Of(Component.Sucrose, new Celsius(t)) is not { Value: var saturated }) return;
        double holds = saturated / (1 - saturated), ratio = sucrose / water / holds;
        if (ratio <= Most.Value) return;
        double percent = 100 * sucrose / (sucrose + water), most = 100 * Most.Value * holds / (1 + (Most.Value * holds));
        var (take, corrections) = MoreWater(context, holds, t);
        double off = SolubilityModel.Error.At(saturated).Tolerance.HalfWidth;
        var known = Proof.Of($"saturated at {Say.Number(t, 0)} °C", 100 * saturated, "%", "CRC Handbook; Antokolskaya 1964");
        context.Report(new(Rule)
        {
            AskedLevel = Most.LevelCap,
            At = context.At(span, "ingredients"),
            Message = $"There are {Say.Number(percent, 1)} g of sucrose in 100 g of sucrose and water. At {Say.Number(t, 0)} °C ({from}) "
                + $"water holds {Say.Number(100 * saturated, 1)} and stays clear to about {Say.Number(most, 1)} (handbook "
                + $"solubility; {Most.Source}). It will not dissolve, or it will crystallise.",
            Advice = take,
            Evidence =
            [
                Proof.Of("sucrose of sucrose and water", percent, "%"),
                known with { Low = 100 * (saturated - off), High = 100 * (saturated + off) },
                Proof.Of(Most),
            ],
            Corrections = corrections,
        });
    }

    /// <summary>The water that the sugar saturates.</summary>
    private static (string Take, IReadOnlyList<Correction> Corrections) MoreWater(RecipeContext context, double holds, double celsius)
    {
        double factor = Solving.Factor(context.Profile, static p => Substances.IsWater(p.Material), PerWater, holds);
        foreach (var part in context.Profile.Parts)
        {
            if (double.IsNaN(factor) || part.Phase != PartPhase.Mix || !part.IsWeighed || !Substances.IsWater(part.Material)) continue;
            var amount = part.Line.Amount.Value;
            string words = Rounding.Words(Rounding.ToStep(amount.Base * factor, amount, context.Settings), amount);
            string take = $"Take {words} of {part.Line.Item.Or("water")} instead of {Rounding.Words(amount.Base, amount)}, which is what "
                + $"the sugar saturates at {Say.Number(celsius, 0)} °C.";
            return (take, context.Write(part.Line.Amount.Span, words, take));
        }

        return ("Take more water, or keep it warmer.", []);
    }

    /// <summary>The coldest temperature at which the whole of it has to stay dissolved.</summary>
    internal static (double Celsius, Reading.TextSpan Span, string From) Temperature(RecipeContext context, Prep prep) =>
        prep.Keep is { At: { IsGiven: true } at }
            ? (Math.Max(0, at.Value.Base), at.Span, "keep.at")
            : (20, prep.IngredientsSpan, "room temperature, since keep.at is not given");
}
