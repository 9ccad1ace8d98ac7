namespace SpecLint.Science;

/// <summary>
/// Apparent specific volumes of solutes in water, mL/g: φ = a + b w + c w², w the share of all solutes in solutes and water,
/// beyond the last measured w as that of sucrose goes on (to 80 %).
/// φ moves with temperature as that of sucrose does.
/// </summary>
internal readonly struct SpecificVolumes
{
    private readonly double w;
    private readonly double t;

    // What every component asks for, worked out once a composition.
    private readonly double sucrose;
    private readonly double sucroseAt20;
    private readonly double shift;

    /// <param name="w">Share of all solutes in solutes and water.</param>
    /// <param name="t">Temperature, °C.</param>
    public SpecificVolumes(double w, double t)
    {
        this.w = w;
        this.t = t;
        var inRange = Math.Min(w, SugarWater.HighestMassFraction);
        sucroseAt20 = SugarWater.ApparentVolume(inRange, 20);
        sucrose = t == 20 ? sucroseAt20 : SugarWater.ApparentVolume(inRange, t);
        shift = t == 20 ? 0 : SugarWater.ApparentVolume(0.1, t) - SugarWater.ApparentVolume(0.1, 20);
    }

    // Fitted to densities at 20 °C of the CRC Handbook, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions;
    // largest deviation of the density, g/mL: glucose 0.0002, fructose 0.0001, maltose 0.0008, lactose 0.0003, glycerol 0.0002,
    // mannitol (for sugar alcohols) 0.0003, citric 0.0001, lactic 0.0008, acetic 0.005, phosphoric 0.0004, salt 0.0001.
    public double Of(Component component)
    {
        return component switch
        {
            Component.Sucrose or Component.Dextrin or Component.OtherDissolved => sucrose,
            Component.Glucose => Curve(0.61839, 0.02851, 0, 0.58),
            Component.Fructose => Curve(0.60941, 0.03042, 0, 0.48),
            Component.Maltose => Curve(0.62034, -0.01597, 0.04797, 0.60),
            Component.Lactose => Curve(0.60258, 0.05624, 0, 0.16),
            Component.Glycerol => Curve(0.77477, -0.01633, 0.03476, 1),
            Component.Sorbitol => Curve(0.65321, 0.02111, 0, 0.15),
            Component.Citric => Curve(0.59551, 0.0116, 0, 0.18),
            Component.Lactic => Curve(0.78428, -0.00612, 0.03974, 0.80),
            Component.Acetic => Curve(0.87085, -0.00196, 0.08088, 1),
            Component.Phosphoric => Curve(0.47457, 0.0415, 0, 0.40),
            // Lange and Sinks 1930, specific gravity of malic acid solutions, 10 to 40 %.
            Component.Malic => Curve(0.600, 0.090, 0, 0.40),
            // Partial molar volumes at infinite dilution from memory: tartaric 83.5, succinic 82.5, ascorbic 106 cm³/mol.
            Component.Tartaric => Curve(0.556, 0, 0, 0),
            Component.Succinic => Curve(0.699, 0, 0, 0),
            Component.Ascorbic => Curve(0.602, 0, 0, 0),
            // No source: as citric acid. They are present in grams a litre at most.
            Component.Oxalic or Component.Fumaric or Component.Quinic or Component.Benzoic or Component.Sorbic => Curve(0.59551, 0, 0, 0),
            // 33.9 cm³/mol, from memory.
            Component.CarbonDioxide => Curve(0.770, 0, 0, 0),
            Component.SodiumChloride => Curve(0.29086, 0.36072, -0.34561, 0.26),
            // From trisodium citrate less citric acid (same table): 3 Na⁺ in place of 3 H⁺.
            Component.Sodium => Curve(-0.90, 1.0, 0, 0.30),
            // As sodium, moved by the difference of the conventional ionic volumes, 10.2 cm³/mol (Millero 1971, from memory).
            Component.Potassium => Curve(-0.27, 0.59, 0, 0.30),
            // Choi and Okos 1986, densities of pure food components.
            Component.Protein => 1000 / (1329.9 - (0.5184 * t)),
            Component.Fat => 1000 / (925.59 - (0.41757 * t)),
            Component.Fibre => 1000 / (1311.5 - (0.36589 * t)),
            Component.OtherInsoluble => 1000 / (1599.1 - (0.31046 * t)),
            _ => throw new ArgumentOutOfRangeException(nameof(component)),
        };
    }

    private double Curve(double a, double b, double c, double last)
    {
        if (w <= last)
            return a + (w * (b + (w * c))) + shift;
        return a + (last * (b + (last * c))) + shift + sucroseAt20 - SugarWater.ApparentVolume(last, 20);
    }
}
