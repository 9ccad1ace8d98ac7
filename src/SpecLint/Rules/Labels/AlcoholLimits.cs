namespace SpecLint.Rules.Labels;

/// <summary>Which limits of strength go with which words, by their ids in the table of limits.</summary>
internal static class AlcoholLimits
{
    /// <summary>"Alcohol-free": none at all in North America, Australia and New Zealand; a figure in Europe.</summary>
    public static readonly string[] Free =
        ["alcohol-free-gb", "alcohol-free-de", "alcohol-free-nl", "alcohol-free-us", "alcohol-free-ca", "alcohol-free-anz"];

    /// <summary>Figures that a country has for beer alone.</summary>
    public static readonly string[] FreeBeer = ["alcohol-free-es", "alcohol-free-fr", "alcohol-free-it"];

    /// <summary>"Non-alcoholic", "mocktail" and their like.</summary>
    public static readonly string[] NonAlcoholic =
        ["non-alcoholic-gb", "alcohol-free-de", "alcohol-free-nl", "non-alcoholic-us", "non-alcoholic-ca", "alcohol-free-anz"];

    /// <summary>"De-alcoholised".</summary>
    public static readonly string[] DeAlcoholised = ["de-alcoholised-gb", "de-alcoholised-wine-eu", "de-alcoholised-ca"];

    /// <summary>"Low alcohol".</summary>
    public static readonly string[] Low = ["low-alcohol-gb", "low-alcohol-anz", "low-alcohol-eu", "low-alcohol-ca", "low-alcohol-us"];

    /// <summary>All of them, for the rule that reads them.</summary>
    public static readonly string[] All =
    [
        .. Free.Concat(FreeBeer).Concat(NonAlcoholic).Concat(DeAlcoholised).Concat(Low)
            .Append("alcohol-free-elsewhere").Append("guard-no-alcohol").Distinct(),
    ];
}
