namespace SpecLint.Science;

/// <summary>What a strength means to organisms. It lowers a worry by a level; it never clears a food for keeping.</summary>
public enum EthanolBand
{
    /// <summary>Under 5 % vol: no credit.</summary>
    None,

    /// <summary>5 to under 12.5 % vol: growth slowed, some organisms stopped.</summary>
    Partial,

    /// <summary>12.5 to under 20 % vol: none of the pathogens tested grew; they survive.</summary>
    NoGrowthOfTestedPathogens,

    /// <summary>20 to under 40 % vol: no growth in practice; survival for days.</summary>
    NoGrowthInPractice,

    /// <summary>40 % vol and over: counts fall below detection within 48 hours.</summary>
    KillsOverDays,
}

/// <summary>One observation of what ethanol did.</summary>
/// <param name="Organism">Organism.</param>
/// <param name="Low">Least strength of the observation, per cent.</param>
/// <param name="High">Greatest strength of the observation, per cent.</param>
/// <param name="Basis">Basis of the per cent, and the medium.</param>
/// <param name="Observation">What was seen.</param>
/// <param name="Source">Source; "from memory" is said where so.</param>
public sealed record EthanolObservation(string Organism, double Low, double High, string Basis, string Observation, string Source);

/// <summary>Ethanol against organisms, as data.</summary>
[Source(
    "Acharya & Nummer, Food Prot. Trends 42:284, 2022; Huang, Weng & Chiou, J. Food Prot. 64:546, 2001; Yamamoto, Higashi & Yoshii "
        + "1984; Oh & Marshall, Int. J. Food Microbiol. 20:239, 1993 (abstracts)")]
public static class EthanolInhibition
{
    /// <summary>The band of a strength; null outside 0 to 100 % vol.</summary>
    /// <param name="strength">Strength.</param>
    public static EthanolBand? Band(AlcoholByVolume strength) => strength.Percent switch
    {
        >= 0 and < 5 => EthanolBand.None,
        >= 5 and < 12.5 => EthanolBand.Partial,
        >= 12.5 and < 20 => EthanolBand.NoGrowthOfTestedPathogens,
        >= 20 and < 40 => EthanolBand.NoGrowthInPractice,
        >= 40 and <= 100 => EthanolBand.KillsOverDays,
        _ => null,
    };

    /// <summary>All observations.</summary>
    public static IReadOnlyList<EthanolObservation> Observations { get; } =
    [
        new(
            "Listeria monocytogenes", 5, 5, "% w/v in tryptic soy broth", "growth stopped; 1.25 % did nothing",
            "Oh & Marshall, Int. J. Food Microbiol. 20:239, 1993"),
        new("Staphylococcus aureus", 10, 10, "% w/w on nutrient agar", "no growth at or above", "Huang, Weng & Chiou, J. Food Prot. 64:546, 2001"),
        new("Staphylococcus aureus", 7.5, 7.5, "% w/w with 7.5 % of salt", "no growth", "Huang, Weng & Chiou, J. Food Prot. 64:546, 2001"),
        new(
            "Escherichia coli, O157:H7 among them", 7.5, 7.5, "% w/w", "no growth at or above; none at 5 % with 2.5 % of salt and more",
            "Huang, Weng & Chiou, J. Food Prot. 64:546, 2001"),
        new(
            "Staphylococcus aureus and Escherichia coli", 20, 20, "% w/w with 5 % of salt", "dead after 30 and 10 minutes",
            "Huang, Weng & Chiou, J. Food Prot. 64:546, 2001"),
        new("all test strains", 40, 40, "% w/w", "dead within 5 minutes", "Huang, Weng & Chiou, J. Food Prot. 64:546, 2001"),
        new(
            "Gram-positive spoilage bacteria", 9, 11, "%, basis not in the abstract", "growth stopped; lactic acid bacteria stand most",
            "Yamamoto, Higashi & Yoshii, Nippon Shokuhin Kogyo Gakkaishi 31:531, 1984"),
        new(
            "Gram-negative spoilage bacteria", 0, 9, "%, basis not in the abstract", "growth stopped below 9 %",
            "Yamamoto, Higashi & Yoshii, Nippon Shokuhin Kogyo Gakkaishi 31:531, 1984"),
        new(
            "Escherichia coli O157, Salmonella and Listeria monocytogenes",
            10,
            50,
            "% in banana and pear purée, orange and apple juice, 25 °C",
            "no growth; at 40 to 50 % not found after 48 h, below that reduced unevenly; the authors still ask for pH below 4.2 or cold",
            "Acharya & Nummer, Food Prot. Trends 42:284, 2022"),
        new(
            "Salmonella in egg-nog",
            14,
            20,
            "% vol, estimates",
            "not all killed in 24 h at a thousand times the natural number; gone by about three weeks, chilled",
            "demonstration reported by the press, 2008 to 2012"),
        new("Saccharomyces cerevisiae", 13, 15, "% vol", "ceiling of fermentation", "textbooks, from memory"),
        new("Zygosaccharomyces bailii", 15, 15, "% vol", "growth reported up to", "textbooks, from memory"),
    ];
}
