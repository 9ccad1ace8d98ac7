namespace SpecLint.Science.Tests.Physics;

/// <summary>Compositions for the tests.</summary>
internal static class Mixes
{
    public static double[] Of(params (Component Component, double Grams)[] parts)
    {
        var grams = new double[Components.Count];
        foreach (var (component, mass) in parts)
            grams[(int)component] += mass;
        return grams;
    }

    /// <summary>So many mL at 20 °C of a strength with so much sucrose; water fills up.</summary>
    public static double[] Drink(double ml, double percentVol, double sucroseGramsPerLitre)
    {
        var density = Mixture.LiqueurDensity(AlcoholByVolume.FromPercent(percentVol), new(sucroseGramsPerLitre))!.Value.Value;
        var ethanol = percentVol / 100 * EthanolWater.PureDensityAt20;
        var water = density - ethanol - sucroseGramsPerLitre;
        return Of((Component.Ethanol, ethanol * ml / 1000), (Component.Sucrose, sucroseGramsPerLitre * ml / 1000), (Component.Water, water * ml / 1000));
    }

    public static Component Named(string name) => name switch
    {
        "sucrose" => Component.Sucrose,
        "glucose" or "D-glucose" => Component.Glucose,
        "fructose" or "D-fructose" => Component.Fructose,
        "maltose" => Component.Maltose,
        "lactose" => Component.Lactose,
        "glycerol" => Component.Glycerol,
        "mannitol" => Component.Sorbitol,
        "ethanol" => Component.Ethanol,
        "citric acid" => Component.Citric,
        "malic acid" => Component.Malic,
        "lactic acid" => Component.Lactic,
        "acetic acid" => Component.Acetic,
        "phosphoric acid" => Component.Phosphoric,
        "NaCl" => Component.SodiumChloride,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no component"),
    };

    public static double[] Solution(string solute, double percentMass) =>
        Of((Named(solute), percentMass), (Component.Water, 100 - percentMass));

    public static double Sum(double[] grams) => grams.Sum();
}
