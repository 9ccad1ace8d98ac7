namespace SpecLint.Science;

/// <summary>
/// The substances a liquid or solid is made of, as far as the models tell them apart.
/// A composition is a span of <see cref="Components.Count"/> masses in grams, indexed by this enum.
/// </summary>
public enum Component
{
    /// <summary>Water, g.</summary>
    Water,

    /// <summary>Ethanol, g.</summary>
    Ethanol,

    /// <summary>Sucrose, g.</summary>
    Sucrose,

    /// <summary>Glucose (anhydrous), g.</summary>
    Glucose,

    /// <summary>Fructose, g.</summary>
    Fructose,

    /// <summary>Lactose, g.</summary>
    Lactose,

    /// <summary>Maltose, g.</summary>
    Maltose,

    /// <summary>Glucose oligomers of three units and more (maltodextrin, starch syrup), g.</summary>
    Dextrin,

    /// <summary>Glycerol, g.</summary>
    Glycerol,

    /// <summary>Sorbitol and mannitol, g.</summary>
    Sorbitol,

    /// <summary>Xylitol, g.</summary>
    Xylitol,

    /// <summary>Erythritol, g.</summary>
    Erythritol,

    /// <summary>Alcohols of disaccharides: maltitol, isomalt, lactitol, g.</summary>
    Maltitol,

    /// <summary>Allulose (psicose), g.</summary>
    Allulose,

    /// <summary>Citric acid (anhydrous), all forms, g.</summary>
    Citric,

    /// <summary>Malic acid, all forms, g.</summary>
    Malic,

    /// <summary>Tartaric acid, all forms, g.</summary>
    Tartaric,

    /// <summary>Lactic acid, all forms, g.</summary>
    Lactic,

    /// <summary>Acetic acid, all forms, g.</summary>
    Acetic,

    /// <summary>Phosphoric acid, all forms as H3PO4, g.</summary>
    Phosphoric,

    /// <summary>Succinic acid, all forms, g.</summary>
    Succinic,

    /// <summary>Ascorbic acid, all forms, g.</summary>
    Ascorbic,

    /// <summary>Oxalic acid (anhydrous), all forms, g.</summary>
    Oxalic,

    /// <summary>Fumaric acid, all forms, g.</summary>
    Fumaric,

    /// <summary>Quinic acid, all forms, g.</summary>
    Quinic,

    /// <summary>Gluconic acid, all forms, as its lactone C6H10O6, g.</summary>
    Gluconic,

    /// <summary>Benzoic acid, all forms, g.</summary>
    Benzoic,

    /// <summary>Sorbic acid, all forms, g.</summary>
    Sorbic,

    /// <summary>Carbon dioxide dissolved, all forms (bicarbonate and carbonate too) as CO2, g.</summary>
    CarbonDioxide,

    /// <summary>Sulphate, all forms as SO4, g.</summary>
    Sulphate,

    /// <summary>Sodium chloride, g.</summary>
    SodiumChloride,

    /// <summary>
    /// Sodium ions beyond those of sodium chloride (of citrates, bicarbonate, benzoate …), g.
    /// </summary>
    Sodium,

    /// <summary>
    /// Potassium ions, g: in juices they carry the strong-ion difference, so that calcium and magnesium
    /// are counted here as the potassium of equal charge, less the strong anions.
    /// </summary>
    Potassium,

    /// <summary>Calcium ions, g; not those of juices, which <see cref="Potassium"/> counts.</summary>
    Calcium,

    /// <summary>Magnesium ions, g; not those of juices, which <see cref="Potassium"/> counts.</summary>
    Magnesium,

    /// <summary>Chloride ions beyond those of sodium chloride, g.</summary>
    Chloride,

    /// <summary>Protein, g.</summary>
    Protein,

    /// <summary>Fat, g.</summary>
    Fat,

    /// <summary>Dietary fibre, soluble gums included, g.</summary>
    Fibre,

    /// <summary>Dissolved solids of no further kind, g.</summary>
    OtherDissolved,

    /// <summary>Insoluble solids of no further kind, g.</summary>
    OtherInsoluble,
}

/// <summary>Facts of the <see cref="Component"/> enum.</summary>
public static class Components
{
    /// <summary>Number of components: the length of a composition.</summary>
    public const int Count = (int)Component.OtherInsoluble + 1;

    /// <summary>The first sugar; sugars stand together.</summary>
    public const Component FirstSugar = Component.Sucrose;

    /// <summary>The last mono- or disaccharide.</summary>
    public const Component LastSugar = Component.Maltose;

    /// <summary>The first organic acid (phosphoric, benzoic and sorbic acid stand among them).</summary>
    public const Component FirstAcid = Component.Citric;

    /// <summary>The last acid; carbon dioxide is not counted.</summary>
    public const Component LastAcid = Component.Sorbic;

    /// <summary>The first sugar alcohol; they stand together, glycerol first.</summary>
    public const Component FirstPolyol = Component.Glycerol;

    /// <summary>The last sugar alcohol.</summary>
    public const Component LastPolyol = Component.Maltitol;

    /// <summary>Sugar alcohols that sweeten (sorbitol, mannitol, xylitol, erythritol, maltitol, isomalt, lactitol), g; glycerol is not among them.</summary>
    /// <param name="grams">Masses by <see cref="Component"/>, g.</param>
    [Source("Regulation (EU) No 1169/2011, 2011, Annex III: polyols as sweeteners")]
    public static double SweetPolyols(ReadOnlySpan<double> grams)
    {
        double sum = 0;
        for (var c = Component.Sorbitol; c <= LastPolyol; c++)
            sum += grams[(int)c];
        return sum;
    }

    /// <summary>The first solute; solutes stand together, but for dissolved solids of no further kind.</summary>
    public const Component FirstSolute = Component.Sucrose;

    /// <summary>The last solute of a kind of its own.</summary>
    public const Component LastSolute = Component.Chloride;
}
