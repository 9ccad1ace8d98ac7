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

    /// <summary>
    /// A solution of a salt as its ions: acids count with their protons, so that the masses add up to the whole by taking the protons that
    /// metals replace off the water.
    /// </summary>
    public static double[] SaltSolution(string salt, double percentMass)
    {
        (double molar, (Component, double)[] ions) = salt switch
        {
            "KCl" => (74.551, new[] { (Component.Potassium, 39.098), (Component.Chloride, 35.453) }),
            "NaHCO3" => (84.007, [(Component.Sodium, 22.990), (Component.CarbonDioxide, 44.0095)]),
            "trisodium citrate dihydrate" => (294.099, [(Component.Sodium, 3 * 22.990), (Component.Citric, 192.124)]),
            "CaCl2" => (110.984, [(Component.Calcium, 40.078), (Component.Chloride, 2 * 35.453)]),
            "MgSO4" => (120.368, [(Component.Magnesium, 24.305), (Component.Sulphate, 96.063)]),
            "calcium lactate" => (218.22, [(Component.Calcium, 40.078), (Component.Lactic, 2 * 90.078)]),
            _ => throw new ArgumentOutOfRangeException(nameof(salt), salt, "no salt"),
        };
        var grams = Of([.. ions.Select(i => (i.Item1, i.Item2 * percentMass / molar))]);
        grams[(int)Component.Water] = 100 - grams.Sum();
        return grams;
    }

    public static double Sum(double[] grams) => grams.Sum();
}
