using SpecLint.Book;
using SpecLint.Catalogue;
using SpecLint.Findings;
using SpecLint.Profile;
using SpecLint.Science;

namespace SpecLint.Rules.AcidAndSugar;

[Rule("SL4013", "tartrate-crystals", "Tartaric acid in a juice whose potassium makes crystals of it", Level.Warning, Needs = [Fact.Ph])]
[Limit("solubility-potassium-bitartrate-20", "Soluble")]
internal sealed partial class TartrateHaze : PrepRule
{
    private const double PotassiumMolarMass = 39.098;
    private const double TartaricMolarMass = 150.087;
    private const double BitartrateMolarMass = 188.18;

    /// <summary>First and second pK of tartaric acid at 25 °C (CRC Handbook of Chemistry and Physics).</summary>
    private const double Pk1 = 3.03, Pk2 = 4.37;

    public override void Check(RecipeContext context, Prep prep)
    {
        Part? tartaric = null;
        bool juice = false;
        foreach (var part in context.Profile.Parts)
        {
            if (part.Phase != PartPhase.Mix || part.Material is null) continue;
            if (Substances.IsAcid(part.Material) && part.Material.Of(Component.Tartaric) > Guards.TartaricPart) tartaric ??= part;
            else juice |= part.Material.Of(Component.Potassium) > Guards.PotassiumOfJuice;
        }

        if (tartaric is null || !juice || context.Profile.IsSolid) return;
        var ph = context.Fact(Fact.Ph);
        double volume = Solving.VolumeOf(context.Profile.Grams);
        if (!ph.IsKnown || double.IsNaN(volume) || volume <= 0) return;
        double litres = volume / 1000;
        double potassium = context.Profile.Grams[(int)Component.Potassium] / PotassiumMolarMass / litres;
        double acid = context.Profile.Grams[(int)Component.Tartaric] / TartaricMolarMass / litres;

        // The product of potassium and hydrogen tartrate against that of the saturated solution in water (both as concentrations).
        double product = potassium * acid * Share(ph.Value);
        double saturated = Soluble.Value * 10 / BitartrateMolarMass, limit = saturated * saturated * Share(3.56);
        if (product <= limit) return;

        // What falls out until the product is met.
        double s = Share(ph.Value), b = potassium + acid, c = (potassium * acid) - (limit / s);
        double falls = (b - Math.Sqrt((b * b) - (4 * c))) / 2 * BitartrateMolarMass / 10;
        if (falls < Guards.LeastTartrate) return;
        context.Report(new(Rule)
        {
            AskedLevel = Soluble.LevelCap,
            At = context.At(tartaric.Line.Item.IsGiven ? tartaric.Line.Item.Span : tartaric.Line.Span, RecipeContext.PathOf(tartaric.Line)),
            Message = $"With the potassium of the juice ({Say.Number(potassium * PotassiumMolarMass, 1)} g/L) about "
                + $"{Say.Number(falls, 2)} g of potassium bitartrate in 100 mL precipitates at 20 °C, where water holds "
                + $"{Say.With(Soluble.Value, "g")} ({Soluble.Source}). In the cold or with spirit it is more.",
            Advice = "Sour the juice with citric or malic acid, or chill it for a day and rack it off its crystals before its acid is "
                + "measured.",
            Evidence =
            [
                Proof.Of("potassium", potassium * PotassiumMolarMass, "g/L"), Proof.Of("tartaric acid", acid * TartaricMolarMass, "g/L"),
                Proof.Of(Fact.Ph, ph), Proof.Of(Soluble),
            ],
        });
    }

    /// <summary>Share of tartaric acid that is hydrogen tartrate.</summary>
    private static double Share(double ph)
    {
        double h = Math.Pow(10, -ph), k1 = Math.Pow(10, -Pk1), k2 = Math.Pow(10, -Pk2);
        return h * k1 / ((h * h) + (h * k1) + (k1 * k2));
    }
}
