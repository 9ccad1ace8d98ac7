namespace SpecLint.Science;

/// <summary>
/// Energy of a composition by the conversion factors of food labelling: carbohydrate 17 kJ (4 kcal) a gram, polyols 10 (2.4), protein 17 (4), fat 37 (9),
/// ethanol 29 (7), organic acids 13 (3), fibre 8 (2). Glycerol and sorbitol count as polyols; phosphoric acid, carbon dioxide, salts and solids
/// of no further kind count for nothing. Defined for every composition.
/// </summary>
[Source(Law)]
public static class FoodEnergyModel
{
    private const string Law = "Regulation (EU) No 1169/2011 on the provision of food information to consumers, 2011, Annex XIV: conversion factors";

    /// <summary>Mass of a millilitre of ethanol at 20 °C, g.</summary>
    public const double EthanolGramsPerMillilitre = EthanolWater.PureDensityAt20 / 1000;

    /// <summary>Error of the factors themselves: labels may differ by as much.</summary>
    public static ModelError Error =>
        new(
            new(0),
            0.02,
            Zero: 0,
            "kJ",
            0,
            double.PositiveInfinity,
            "rounding of the legal factors: ethanol burns 29.7 kJ/g, the factor is 29 (judged from that)");

    /// <summary>Energy of a composition.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    /// <returns>kJ and kcal of the whole; null for an invalid composition.</returns>
    [Source(Law)]
    [Source("FDA, The Declaration of Allulose and Calories from Allulose on Nutrition and Supplement Facts Labels, guidance, 2020: 0.4 kcal/g")]
    public static FoodEnergy? Of(ReadOnlySpan<double> grams)
    {
        if (!Composition.IsValid(grams, out _))
            return null;
        double carbohydrate = 0, acids = 0;
        for (var i = (int)Component.Sucrose; i <= (int)Component.Dextrin; i++)
            carbohydrate += grams[i];
        for (var i = (int)Components.FirstAcid; i <= (int)Components.LastAcid; i++)
            acids += grams[i];
        acids -= grams.Of(Component.Phosphoric);
        // Erythritol counts for nothing in that annex.
        double polyols = -grams.Of(Component.Erythritol);
        for (var i = (int)Components.FirstPolyol; i <= (int)Components.LastPolyol; i++)
            polyols += grams[i];
        var allulose = grams.Of(Component.Allulose);
        var ethanol = grams.Of(Component.Ethanol);
        var protein = grams.Of(Component.Protein);
        var fat = grams.Of(Component.Fat);
        var fibre = grams.Of(Component.Fibre);
        return new(
            (17 * (carbohydrate + protein)) + (10 * polyols) + (13 * acids) + (29 * ethanol) + (37 * fat) + (8 * fibre) + (1.7 * allulose),
            (4 * (carbohydrate + protein)) + (2.4 * polyols) + (3 * acids) + (7 * ethanol) + (9 * fat) + (2 * fibre) + (0.4 * allulose));
    }

    /// <summary>Mass of pure ethanol in a volume of a drink.</summary>
    /// <param name="volume">mL at 20 °C.</param>
    /// <param name="abv">Strength by volume, 0 to 1.</param>
    /// <returns>g; null outside the range.</returns>
    [Source("OIML, International Recommendation R 22, 1975: density of ethanol at 20 °C, 789.24 kg/m³")]
    public static Grams? EthanolGrams(Millilitres volume, AlcoholByVolume abv) =>
        volume.Value >= 0 && abv.Value is >= 0 and <= 1 ? new(volume.Value * abv.Value * EthanolGramsPerMillilitre) : null;

    /// <summary>Volume of pure ethanol of a mass.</summary>
    /// <param name="ethanol">g.</param>
    /// <returns>mL at 20 °C; null for a negative mass.</returns>
    [Source("OIML, International Recommendation R 22, 1975: density of ethanol at 20 °C, 789.24 kg/m³")]
    public static Millilitres? EthanolVolume(Grams ethanol) => ethanol.Value >= 0 ? new(ethanol.Value / EthanolGramsPerMillilitre) : null;
}
