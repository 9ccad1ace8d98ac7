namespace SpecLint.Vocabulary;

/// <summary>The facts of a recipe: their names, meanings and units are a contract of the output.</summary>
public enum Fact
{
    /// <summary>mL of the parts before ice or technique.</summary>
    MixVolume,

    /// <summary>Water that the technique adds, % of the mix volume.</summary>
    Dilution,

    /// <summary>mL of liquid in the glass.</summary>
    ServedVolume,

    /// <summary>Ethanol, % vol.</summary>
    Abv,

    /// <summary>Mono- and disaccharides, g per 100 mL (solids: per 100 g).</summary>
    Sugar,

    /// <summary>Dissolved solids as sucrose, % w/w.</summary>
    Brix,

    /// <summary>Titratable acid to pH 8.1 as anhydrous citric acid, g per 100 mL.</summary>
    Acid,

    /// <summary>Sum of the organic acids present, g per 100 mL.</summary>
    AcidAnalysed,

    /// <summary>Sugar over acid.</summary>
    SugarAcidRatio,

    /// <summary>pH, activity scale.</summary>
    Ph,

    /// <summary>Water activity at 25 °C.</summary>
    WaterActivity,

    /// <summary>Density, g/mL.</summary>
    Density,

    /// <summary>Salt as NaCl, g per 100 mL.</summary>
    Salt,

    /// <summary>Temperature as served, °C.</summary>
    Temperature,

    /// <summary>First ice, °C.</summary>
    FreezingPoint,

    /// <summary>Ethanol, g: a drink per serve, a preparation per 100 mL.</summary>
    Alcohol,

    /// <summary>Energy, kcal: a drink per serve, a preparation per 100 mL.</summary>
    Energy,

    /// <summary>Days from made, by the rules of keeping.</summary>
    Life,

    /// <summary>Strength before dilution, % vol.</summary>
    MixAbv,

    /// <summary>Sugar before dilution, g per 100 mL.</summary>
    MixSugar,

    /// <summary>Acid before dilution, g per 100 mL.</summary>
    MixAcid,

    /// <summary>pH before dilution.</summary>
    MixPh,

    /// <summary>Caffeine, mg: a drink per serve, a preparation per 100 mL.</summary>
    Caffeine,

    /// <summary>Quinine, mg: a drink per serve, a preparation per 100 mL.</summary>
    Quinine,

    /// <summary>Sulphite as SO2, mg/L.</summary>
    Sulphite,

    /// <summary>What it costs, in the currency of the bar: a drink per serve, a preparation per 100 mL (solids: per 100 g).</summary>
    Cost,
}
