namespace SpecLint.Science;

/// <summary>
/// Apparent specific volumes of solutes in water, mL/g: φ = a + b w + c w², w the share of all solutes in solutes and water,
/// beyond the last measured w as that of sucrose goes on (to 80 %).
/// φ moves with temperature as that of sucrose does.
/// </summary>
internal static class SpecificVolumes
{
    // Fitted to densities at 20 °C of the CRC Handbook, 102nd ed. 2021, Concentrative Properties of Aqueous Solutions;
    // largest deviation of the density, g/mL: glucose 0.0002, fructose 0.0001, maltose 0.0008, lactose 0.0003, glycerol 0.0002,
    // mannitol (for sugar alcohols) 0.0003, citric 0.0001, lactic 0.0008, acetic 0.005, phosphoric 0.0004, salt 0.0001.
    public static double Of(Component component, double w, double t)
    {
        return component switch
        {
            Component.Sucrose or Component.Dextrin or Component.OtherDissolved => SugarWater.ApparentVolume(Math.Min(w, SugarWater.HighestMassFraction), t),
            Component.Glucose => Curve(0.61839, 0.02851, 0, w, 0.58, t),
            Component.Fructose => Curve(0.60941, 0.03042, 0, w, 0.48, t),
            Component.Maltose => Curve(0.62034, -0.01597, 0.04797, w, 0.60, t),
            Component.Lactose => Curve(0.60258, 0.05624, 0, w, 0.16, t),
            Component.Glycerol => Curve(0.77477, -0.01633, 0.03476, w, 1, t),
            Component.Sorbitol => Curve(0.65321, 0.02111, 0, w, 0.15, t),
            Component.Citric => Curve(0.59551, 0.0116, 0, w, 0.18, t),
            Component.Lactic => Curve(0.78428, -0.00612, 0.03974, w, 0.80, t),
            Component.Acetic => Curve(0.87085, -0.00196, 0.08088, w, 1, t),
            Component.Phosphoric => Curve(0.47457, 0.0415, 0, w, 0.40, t),
            // Lange and Sinks 1930, specific gravity of malic acid solutions, 10 to 40 %.
            Component.Malic => Curve(0.600, 0.090, 0, w, 0.40, t),
            // Partial molar volumes at infinite dilution from memory: tartaric 83.5, succinic 82.5, ascorbic 106 cm³/mol.
            Component.Tartaric => Curve(0.556, 0, 0, w, 0, t),
            Component.Succinic => Curve(0.699, 0, 0, w, 0, t),
            Component.Ascorbic => Curve(0.602, 0, 0, w, 0, t),
            // No source: as citric acid. They are present in grams a litre at most.
            Component.Oxalic or Component.Fumaric or Component.Quinic or Component.Benzoic or Component.Sorbic => Curve(0.59551, 0, 0, w, 0, t),
            // 33.9 cm³/mol, from memory.
            Component.CarbonDioxide => Curve(0.770, 0, 0, w, 0, t),
            Component.SodiumChloride => Curve(0.29086, 0.36072, -0.34561, w, 0.26, t),
            // From trisodium citrate less citric acid (same table): 3 Na⁺ in place of 3 H⁺.
            Component.Sodium => Curve(-0.90, 1.0, 0, w, 0.30, t),
            // As sodium, moved by the difference of the conventional ionic volumes, 10.2 cm³/mol (Millero 1971, from memory).
            Component.Potassium => Curve(-0.27, 0.59, 0, w, 0.30, t),
            // Choi and Okos 1986, densities of pure food components.
            Component.Protein => 1000 / (1329.9 - (0.5184 * t)),
            Component.Fat => 1000 / (925.59 - (0.41757 * t)),
            Component.Fibre => 1000 / (1311.5 - (0.36589 * t)),
            Component.OtherInsoluble => 1000 / (1599.1 - (0.31046 * t)),
            _ => throw new ArgumentOutOfRangeException(nameof(component)),
        };
    }

    private static double Curve(double a, double b, double c, double w, double last, double t)
    {
        var measured = Math.Min(w, last);
        var volume = a + (measured * (b + (measured * c)));
        if (w > last)
            volume += SugarWater.ApparentVolume(Math.Min(w, SugarWater.HighestMassFraction), 20) - SugarWater.ApparentVolume(last, 20);
        if (t != 20)
            volume += SugarWater.ApparentVolume(0.1, t) - SugarWater.ApparentVolume(0.1, 20);
        return volume;
    }
}
