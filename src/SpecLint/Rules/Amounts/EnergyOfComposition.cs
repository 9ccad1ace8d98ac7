using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;

namespace SpecLint.Rules.Amounts;

[Rule("SL2041", "energy-against-composition", "An energy that the stated composition cannot have", Level.Warning, IsCause = true)]
[Limit("amount-energy-composition", "Apart")]
internal sealed partial class EnergyOfComposition : IngredientRule
{
    private const double KilojoulesPerKilocalorie = 4.184;

    public override void Check(FileContext context, Ingredient ingredient)
    {
        if (!ingredient.Values.TryGetValue("energy", out var energy) || Composition.MostEnergy(context, ingredient) is not { } most) return;
        double room = most * (1 + (Apart.Value / 100)) + 1, read = energy.Typical / KilojoulesPerKilocalorie;
        if (energy.Low <= room) return;
        string written = context.File.Source.TextOf(energy.Span), number = Say.Number(energy.Typical);
        bool isKilojoules = read <= room, rewrites = isKilojoules && written.EndsWith("kcal\"", StringComparison.Ordinal);
        context.Report(new(Rule)
        {
            At = context.At(energy.Span, "energy"),
            Message = $"{number} kcal is more than its stated dry matter and alcohol can give, {Say.Number(most)} kcal at most "
                + "(9 kcal/g for fat, 7 for alcohol, 4 for the rest: Reg (EU) 1169/2011 Annex XIV).",
            Advice = isKilojoules
                ? $"If the label says {number} kJ, write that unit: it is {Say.Number(read)} kcal."
                : "Read the label again, for its basis too: per 100 g, per 100 ml or per serving.",
            Evidence = [Proof.Of("energy", energy.Typical, "kcal"), Proof.Of("most by composition", most, "kcal"), Proof.Of(Apart)],
            Corrections = Correction.Propose(
                $"Write {number} kJ.",
                rewrites ? new TextEdit(context.At(energy.Span), written.Substring(0, written.Length - 5) + "kJ\"") : null),
        });
    }
}
