using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Rules.Balance;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4011", "solute-over-solubility", "More of an acid, of salt or of a sugar alcohol than the water holds", Level.Warning,
    IsConsequence = true)]
[LimitsOf(typeof(SoluteOverSolubility), nameof(SolubilityLimits))]
internal sealed partial class SoluteOverSolubility : PrepRule
{
    private static readonly (Component Solute, string Noun, Limit Known)[] Solutes =
    [
        (Component.SodiumChloride, "salt", Limits.Of("solubility-salt-20")),
        (Component.Citric, "citric acid", Limits.Of("solubility-citric-20")),
        (Component.Malic, "malic acid", Limits.Of("solubility-malic-20")),
        (Component.Tartaric, "tartaric acid", Limits.Of("solubility-tartaric-20")),
        (Component.Succinic, "succinic acid", Limits.Of("solubility-succinic-20")),
        (Component.Ascorbic, "ascorbic acid", Limits.Of("solubility-ascorbic-20")),
        (Component.Fumaric, "fumaric acid", Limits.Of("solubility-fumaric-20")),
        (Component.Erythritol, "erythritol", Limits.Of("solubility-erythritol-25")),
        (Component.Xylitol, "xylitol", Limits.Of("solubility-xylitol-25")),
        (Component.Sorbitol, "sorbitol", Limits.Of("solubility-sorbitol-25")),
        (Component.Maltitol, "maltitol", Limits.Of("solubility-maltitol-25")),
    ];

    internal static IEnumerable<string> SolubilityLimits => Solutes.Select(s => s.Known.Id);

    public override void Check(RecipeContext context, Prep prep)
    {
        if (context.Profile.IsSolid || (context.Profile.Unknown & (Unknowns.Water | Unknowns.Composition | Unknowns.Mass)) != 0) return;
        var grams = context.Profile.Grams;
        double water = grams[(int)Component.Water];
        if (water <= 0) return;
        foreach (var (solute, noun, known) in Solutes)
        {
            double mass = grams[(int)solute];
            if (mass < Guards.SolidLeast * water) continue;
            double t = SugarOverSolubility.Temperature(context, prep).Celsius, percent = 100 * mass / (mass + water);
            var model = SolubilityModel.Of(solute, new Celsius(t));
            double most = model is { } m ? 100 * m.Value : known.Value;

            // Tables differ by a per cent or two, and another solute takes water for itself.
            if (percent <= most * Guards.SolubilityRounding) continue;
            if (Chief(context.Profile, solute) is not { } part) continue;
            var amount = part.Line.Amount.Value;
            double fits = water * most / (100 - most), brings = part.Grams.Typical * part.Material!.Of(solute);
            double factor = (fits - (mass - brings)) / brings;
            double rounded = factor > 0 ? Rounding.ToStep(amount.Base * factor * 0.98, amount, context.Settings) : 0;
            string? words = factor > 0 ? Rounding.Words(rounded, amount) : null;
            string take = words is null ? "Take more water." : $"Take at most {words} of {part.Line.Item.Or("it")}, or more water.";
            context.Report(new(Rule)
            {
                AskedLevel = known.LevelCap,
                At = context.AmountOf(part.Line),
                Key = noun,
                Message = $"There are {Say.Number(percent, 1)} g of {noun} in 100 g of it and water. At "
                    + $"{Say.Number(model is null ? (IsPolyol(solute) ? 25 : 20) : t, 0)} °C water holds {Say.Number(most, 1)} "
                    + $"({known.Source}). The rest stays at the bottom.",
                Advice = take,
                Evidence = [Proof.Of($"{noun} of {noun} and water", percent, "%"), Proof.Of("saturated", most, "%", known.Source)],
                Corrections = context.Write(part.Line.Amount.Span, words, take),
            });
        }
    }

    /// <summary>Sugar alcohols, whose solubility is known at 25 °C; that of the others at 20 °C.</summary>
    private static bool IsPolyol(Component solute) => solute is >= Component.Sorbitol and <= Component.Maltitol;

    private static Part? Chief(RecipeProfile profile, Component solute) => Remedy.Chief(profile, material => material.Of(solute));
}
