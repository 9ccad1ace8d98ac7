namespace SpecLint.Science;

/// <summary>The acid that a titratable acidity is given as.</summary>
public enum TitrationBasis
{
    /// <summary>Citric acid, anhydrous: 64.04 g an equivalent.</summary>
    CitricAnhydrous,

    /// <summary>Citric acid monohydrate: 70.05 g an equivalent.</summary>
    CitricMonohydrate,

    /// <summary>Malic acid: 67.04 g an equivalent.</summary>
    Malic,

    /// <summary>Tartaric acid: 75.04 g an equivalent.</summary>
    Tartaric,

    /// <summary>Lactic acid: 90.08 g an equivalent.</summary>
    Lactic,

    /// <summary>Acetic acid: 60.05 g an equivalent.</summary>
    Acetic,
}

/// <summary>End points and equivalent masses of titratable acidity.</summary>
[Source(
    "AOAC 942.15, Acidity (titratable) of fruit products; International Fruit and Vegetable Juice Association, method 3, titratable "
        + "acidity, end point 8.1; OIV-MA-AS313-01, total acidity, end point 7")]
public static class Titration
{
    /// <summary>The end point of fruit juices, pH 8.1.</summary>
    public static Ph JuiceEndPoint => new(8.1);

    /// <summary>The end point of the older juice methods and of must and wine in America, pH 8.2.</summary>
    public static Ph AmericanEndPoint => new(8.2);

    /// <summary>The end point of wine in Europe, pH 7.0.</summary>
    public static Ph WineEndPoint => new(7.0);

    /// <summary>Grams of the basis acid an equivalent of base: molar mass over all its acid protons.</summary>
    /// <param name="basis">The acid.</param>
    public static double GramsPerEquivalent(TitrationBasis basis) => basis switch
    {
        TitrationBasis.CitricAnhydrous => 192.124 / 3,
        TitrationBasis.CitricMonohydrate => 210.139 / 3,
        TitrationBasis.Malic => 134.087 / 2,
        TitrationBasis.Tartaric => 150.087 / 2,
        TitrationBasis.Lactic => 90.078,
        TitrationBasis.Acetic => 60.052,
        _ => throw new ArgumentOutOfRangeException(nameof(basis)),
    };
}
