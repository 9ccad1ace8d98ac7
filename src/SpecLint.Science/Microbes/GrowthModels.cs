namespace SpecLint.Science;

/// <summary>
/// Published growth models, as data. Left out: models whose stored form contradicts itself or whose unit of rate is in doubt, as
/// long as their papers have not been read.
/// </summary>
[Source("the paper of each model stands in its property Source")]
public static class GrowthModels
{
    private const string Augustin = "Augustin et al. 2005, as compared in Mejlholm et al., Int. J. Food Microbiol. 141:137, 2010";

    /// <summary>
    /// Error of a doubling time: the model of Listeria against measured doubling times in milk, cream and broth at 0 to 21 °C.
    /// </summary>
    public static ModelError DoublingTimeError => new(
        new(0), 0.35, Zero: 0, "h", 1, 150,
        "5 measured ranges of doubling time (Rosenow & Marth 1987; Walker et al. 1990) against their geometric middle, rms of the "
            + "natural logarithm; at 0 °C the model is too slow by 1.9, at 21 °C by 1.4");

    /// <summary>Listeria monocytogenes in chilled foods: the model with the acids.</summary>
    public static GrowthModel Listeria { get; } = new()
    {
        Id = "listeria-chilled",
        Organism = "Listeria monocytogenes",
        Group = OrganismGroup.Pathogen,
        Medium = "chilled ready-to-eat foods",
        Constant = 0.419,
        Temperature = new(GrowthShape.SquareRoot, -2.83, 25),
        Ph = new(GrowthShape.HydrogenIon, 4.97),
        WaterActivity = new(GrowthShape.Linear, 0.923, 1),
        TemperatureRange = new(0, 25),
        PhRange = new(4.97, 7.8),
        WaterActivityRange = new(0.923, 1),
        Acids = AcidInhibition.Listeria,
        Interaction = true,
        Source = "Mejlholm & Dalgaard, J. Food Prot. 72:2132, 2009; Mejlholm et al., Int. J. Food Microbiol. 141:137, 2010",
        Note = "its least pH of 4.97 is a parameter of the fit: growth is known down to 4.4, so that below 4.97 nothing is said; "
            + "phenol, nitrite and carbon dioxide are not counted",
    };

    /// <summary>Lactic acid bacteria of chilled foods.</summary>
    public static GrowthModel LacticAcidBacteria { get; } = new()
    {
        Id = "lactic-acid-bacteria-chilled",
        Organism = "Lactic acid bacteria (psychrotolerant)",
        Group = OrganismGroup.Spoilage,
        Medium = "chilled ready-to-eat foods",
        Constant = 0.583,
        Temperature = new(GrowthShape.SquareRoot, -5.25, 25),
        Ph = new(GrowthShape.HydrogenIon, 4.24),
        WaterActivity = new(GrowthShape.Linear, 0.928, 1),
        TemperatureRange = new(0, 25),
        PhRange = new(4.24, 7.8),
        WaterActivityRange = new(0.928, 1),
        Acids = AcidInhibition.LacticAcidBacteria,
        Interaction = true,
        Source = "Mejlholm & Dalgaard, J. Food Prot. 76, 2013; Int. J. Food Microbiol. 2015",
    };

    /// <summary>Escherichia coli O157:H7 in broth.</summary>
    public static GrowthModel EscherichiaColi { get; } = new()
    {
        Id = "e-coli-o157-broth",
        Organism = "Escherichia coli O157:H7",
        Group = OrganismGroup.Pathogen,
        Medium = "nutrient broth",
        Constant = 2.635,
        Temperature = new(GrowthShape.Cardinal2, 3.06, 41.1, 45.06),
        Ph = new(GrowthShape.Cardinal1, 3.88, 7.2, 12.17),
        TemperatureRange = new(4, 45),
        PhRange = new(4, 12),
        Source = "Rosso, Lobry, Bajard & Flandrois, Appl. Environ. Microbiol. 61:610, 1995",
    };

    /// <summary>Staphylococcus aureus in milk and broth by water activity.</summary>
    public static GrowthModel StaphylococcusAureus { get; } = new()
    {
        Id = "s-aureus-milk",
        Organism = "Staphylococcus aureus",
        Group = OrganismGroup.Pathogen,
        Medium = "milk and broth, strain 2064, 247 curves",
        Constant = 1.97,
        Temperature = new(GrowthShape.Cardinal2, 7.7, 40.6, 46.7),
        WaterActivity = new(GrowthShape.Cardinal2, 0.808, 0.994, 1),
        TemperatureRange = new(8, 46.7),
        WaterActivityRange = new(0.83, 0.999),
        Source = "Medvedova, Valik and co-workers, growth of S. aureus 2064 by temperature and water activity",
        Note = "no pH in the model: for neutral foods",
    };

    /// <summary>Lactobacillus plantarum in broth.</summary>
    public static GrowthModel LactobacillusPlantarum { get; } = new()
    {
        Id = "l-plantarum-broth",
        Organism = "Lactiplantibacillus plantarum",
        Group = OrganismGroup.Fermentation,
        Medium = "MRS broth",
        Constant = 0.0385 * 0.0385,
        Temperature = new(GrowthShape.ExtendedSquareRoot, 3.29, 0.247, 44.8),
        TemperatureRange = new(6, 43),
        Source = "Zwietering et al., Appl. Environ. Microbiol. 60:195, 1994",
    };

    /// <summary>All models.</summary>
    public static IReadOnlyList<GrowthModel> All { get; } =
    [
        Listeria,
        Augustin2005("listeria-dairy", "dairy", 0.742),
        Augustin2005("listeria-meat", "meat and poultry", 1.168),
        Augustin2005("listeria-seafood", "seafood", 0.565),
        Square("listeria-milk", "Listeria monocytogenes", "pasteurised milk", 0.024, -2.32, new(1.5, 16), "Xanthiakos et al. 2006"),
        EscherichiaColi,
        Cardinal("e-coli-broth", "Escherichia coli", "brain-heart infusion", 2.35, (8.44, 41.5, 46.4), new(8.44, 46), "Van Derlinden & Van Impe 2012"),
        Cardinal("salmonella-oyster", "Salmonella spp.", "raw oyster", 1.195, (6.24, 38.37, 47.97), new(7.9, 43), "Fang et al. 2015"),
        Cardinal(
            "salmonella-chicken", "Salmonella Typhimurium", "cooked chicken", 0.7320 * Electrolyte.Ln10, (5.699, 40.01, 49.26), new(8, 48),
            "Oscar, Int. J. Food Microbiol. 2002"),
        new()
        {
            Id = "salmonella-liquid-egg",
            Organism = "Salmonella spp.",
            Group = OrganismGroup.Pathogen,
            Medium = "liquid egg",
            Constant = 0.00136,
            Temperature = new(GrowthShape.SquareTapered, 2.62, 0.436, 45.8),
            TemperatureRange = new(10, 45),
            Source = "Li et al. 2017",
        },
        Square("salmonella-yolk", "Salmonella spp.", "egg yolk", 0.02991, 3.581, new(5, 37), "Park et al. 2020"),
        new()
        {
            Id = "salmonella-broth-37",
            Organism = "Salmonella enterica",
            Group = OrganismGroup.Pathogen,
            Medium = "tryptic soy broth, 37 °C",
            Constant = 2.14,
            Ph = new(GrowthShape.Cardinal1, 3.84, 6.47, 14.1),
            WaterActivity = new(GrowthShape.SquareRoot, 0.939, 0.992),
            TemperatureRange = new(36.5, 37.5),
            PhRange = new(4, 7),
            WaterActivityRange = new(0.965, 0.991),
            Source = "Lianou & Koutsoumanis, Int. J. Food Microbiol. 2011",
        },
        StaphylococcusAureus,
        Square("s-aureus-fresh-milk", "Staphylococcus aureus", "fresh milk", 0.0442, 5.407, new(10, 34), "Fujikawa & Morozumi 2005"),
        Cardinal("b-cereus-rice", "Bacillus cereus (mesophilic)", "cooked rice", 2.21, (8.23, 37.6, 46.8), new(8.23, 46.8), "Hwang & Huang 2019"),
        Cardinal(
            "c-botulinum-like-beef", "Clostridium botulinum, non-toxigenic mutant LNT01", "cooked beef", 0.633, (11.5, 36.4, 44.3),
            new(11.5, 44.3), "Huang 2018"),
        LacticAcidBacteria,
        new()
        {
            Id = "l-curvatus-ph",
            Organism = "Latilactobacillus curvatus",
            Group = OrganismGroup.Spoilage,
            Medium = "MRS broth",
            Constant = 1.263e-4,
            Temperature = new(GrowthShape.Square, -3.27),
            Ph = new(GrowthShape.Product, 4.26, 0, 9.77),
            TemperatureRange = new(6, 31),
            PhRange = new(4.6, 9.3),
            Source = "Wijtzes et al., Appl. Environ. Microbiol. 61:2533, 1995",
        },
        new()
        {
            Id = "l-curvatus-water",
            Organism = "Latilactobacillus curvatus",
            Group = OrganismGroup.Spoilage,
            Medium = "MRS broth",
            Constant = 2.34e-3,
            Temperature = new(GrowthShape.Square, -3.63),
            Ph = new(GrowthShape.Product, 4.24, 0, 9.53),
            WaterActivity = new(GrowthShape.Difference, 0.928),
            TemperatureRange = new(7, 15),
            PhRange = new(5, 7.5),
            WaterActivityRange = new(0.951, 0.969),
            Source = "Wijtzes et al. 2001",
        },
        LactobacillusPlantarum,
        new()
        {
            Id = "alicyclobacillus-juice",
            Organism = "Alicyclobacillus acidoterrestris",
            Group = OrganismGroup.Spoilage,
            Medium = "fruit drinks",
            Constant = 1.035,
            Temperature = new(GrowthShape.Cardinal2, 18.11, 48.6, 55.68),
            Ph = new(GrowthShape.Cardinal1, 2.93, 4.22, 5.9),
            TemperatureRange = new(25, 55),
            PhRange = new(3.03, 5.5),
            Source = "Kakagianni et al. 2018",
            Note = "spores survive pasteurising; held back by cold, not by acid",
        },
    ];

    /// <summary>
    /// Zygosaccharomyces rouxii in strong sugar solutions, 1/h: 0.48 · CPM₁(pH; 2.3, 4, 15.1) · (1 − S/981).
    /// Null outside pH 2.5 to 5.5 and 300 to 899 g of sugar a kilogram.
    /// </summary>
    /// <param name="ph">pH.</param>
    /// <param name="sugar">Sugar by mass.</param>
    [Source("Membré, Kubaczka & Chéné, Appl. Environ. Microbiol. 65:4921, 1999")]
    public static GrowthRate? OsmophilicYeast(Ph ph, MassFraction sugar) =>
        ph.Value is >= 2.5 and <= 5.5 && sugar.Value is >= 0.3 and <= 0.899
            && GrowthFunctions.Cardinal(1, ph.Value, 2.3, 4, 15.1) is { } factor
            ? new GrowthRate(0.48 * factor * (1 - sugar.Value * 1000 / 981), 0, 1)
            : null;

    private static GrowthModel Augustin2005(string id, string medium, double rate) => new()
    {
        Id = id,
        Organism = "Listeria monocytogenes",
        Group = OrganismGroup.Pathogen,
        Medium = medium,
        Constant = rate,
        Temperature = new(GrowthShape.Cardinal2, -1.72, 37, 45.5),
        Ph = new(GrowthShape.Cardinal1, 4.71, 7.1, 9.61),
        WaterActivity = new(GrowthShape.Linear, 0.913, 0.997),
        TemperatureRange = new(-1.72, 45.5),
        PhRange = new(4.72, 9.6),
        WaterActivityRange = new(0.914, 0.999),
        Source = Augustin,
        Note = "without the interaction of its factors, so that it is fast near the limits",
    };

    private static GrowthModel Cardinal(
        string id, string organism, string medium, double rate, (double Min, double Optimum, double Max) celsius, FitRange range, string source)
    {
        return Plain(id, organism, medium, rate, new GrowthFactor(GrowthShape.Cardinal2, celsius.Min, celsius.Optimum, celsius.Max), range, source);
    }

    private static GrowthModel Square(string id, string organism, string medium, double slope, double min, FitRange range, string source)
    {
        return Plain(id, organism, medium, slope * slope, new GrowthFactor(GrowthShape.Square, min), range, source);
    }

    // A pathogen by temperature alone.
    private static GrowthModel Plain(
        string id, string organism, string medium, double constant, GrowthFactor temperature, FitRange range, string source)
    {
        return new GrowthModel
        {
            Id = id,
            Organism = organism,
            Group = OrganismGroup.Pathogen,
            Medium = medium,
            Constant = constant,
            Temperature = temperature,
            TemperatureRange = range,
            Source = source,
        };
    }
}
