namespace SpecLint.Science;

/// <summary>The national size of one drink.</summary>
/// <param name="Country">ISO 3166-1 alpha-2 code.</param>
/// <param name="Ethanol">Grams of ethanol of one drink.</param>
/// <param name="Low">Lowest figure that sources give, g.</param>
/// <param name="High">Highest figure that sources give, g.</param>
/// <param name="Official">False where the state names no size and lists use a customary one.</param>
/// <param name="Source">Where the figure was read.</param>
public sealed record StandardDrink(string Country, double Ethanol, double Low, double High, bool Official, string Source)
{
    /// <summary>Drinks of this size in a mass of ethanol.</summary>
    /// <param name="ethanol">g of ethanol.</param>
    /// <returns>Number of drinks.</returns>
    [Source("Mass of ethanol over the mass of one drink; sizes in StandardDrinks, each with its source")]
    public double In(Grams ethanol) => ethanol.Value / Ethanol;
}

/// <summary>Sizes of a standard drink by country.</summary>
[Source(Table)]
public static class StandardDrinks
{
    private const string Table = "Standard drink, table of national definitions, as read in public lists; A. Kalinowski and K. "
        + "Humphreys, Addiction 111 (2016) 1293: 8 to 20 g worldwide";
    private const string List = "public list of national definitions";
    private const string Other = "public lists that differ";

    /// <summary>All sizes, by code.</summary>
    [Source(Table)]
    public static IReadOnlyList<StandardDrink> All { get; } =
    [
        new("AR", 14, 14, 14, Official: true, List),
        new("AT", 20, 20, 20, Official: true, List),
        new("AU", 10, 10, 10, Official: true, List),
        new("CA", 13.45, 13.45, 13.6, Official: true, List),
        new("CL", 14, 14, 14, Official: true, List),
        new("CR", 8, 8, 8, Official: true, List),
        new("DE", 11, 10, 12, Official: false, "no official size; 10 to 12 g used"),
        new("DK", 12, 12, 12, Official: true, List),
        new("ES", 10, 10, 10, Official: true, List),
        new("FI", 11, 11, 12, Official: true, Other),
        new("FR", 10, 10, 12, Official: true, Other),
        new("GB", 8, 7.9, 8, Official: true, List + "; 10 mL of ethanol, one unit"),
        new("HR", 10, 10, 10, Official: true, List),
        new("HU", 17, 17, 17, Official: true, List),
        new("IE", 10, 10, 10, Official: true, List),
        new("IN", 10, 8, 10, Official: true, Other),
        new("IS", 8, 8, 9.5, Official: true, Other),
        new("IT", 12, 10, 12, Official: true, Other),
        new("JP", 20, 19.75, 20, Official: true, List),
        new("MX", 13, 13, 13, Official: true, List),
        new("NL", 10, 9.9, 10, Official: true, Other),
        new("NZ", 10, 10, 10, Official: true, List),
        new("PL", 10, 10, 10, Official: true, List),
        new("PT", 10, 10, 14, Official: true, Other),
        new("SE", 12, 12, 12, Official: true, "from memory"),
        new("US", 14, 14, 14, Official: true, List + "; 0.6 US fl oz of ethanol"),
    ];

    /// <summary>The size of one drink in a country.</summary>
    /// <param name="country">ISO 3166-1 alpha-2 code, upper case.</param>
    /// <returns>The size; null for a country without one in the table.</returns>
    [Source(Table)]
    public static StandardDrink? Of(string country)
    {
        foreach (var drink in All)
        {
            if (string.Equals(drink.Country, country, StringComparison.Ordinal))
                return drink;
        }

        return null;
    }
}
