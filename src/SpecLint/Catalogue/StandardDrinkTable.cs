namespace SpecLint.Catalogue;

/// <summary>What a country counts as one drink.</summary>
/// <param name="Jurisdiction">ISO 3166 code.</param>
/// <param name="Country">The country.</param>
/// <param name="Name">What it is called: "standard drink", "unit".</param>
/// <param name="Grams">Ethanol, g.</param>
/// <param name="Source">Source.</param>
internal sealed record StandardDrink(string Jurisdiction, string Country, string Name, double Grams, string Source);

/// <summary>The table of standard drinks.</summary>
internal static class StandardDrinkTable
{
    private static readonly Dictionary<string, StandardDrink> ByCode = Load();

    /// <summary>The standard drink of a country; <see langword="null"/> if none is known.</summary>
    /// <param name="code">ISO 3166 code.</param>
    public static StandardDrink? Find(string code) => ByCode.TryGetValue(code, out var drink) ? drink : null;

    private static Dictionary<string, StandardDrink> Load()
    {
        var drinks = new Dictionary<string, StandardDrink>(StringComparer.Ordinal);
        using var document = Tables.Open("standard-drinks");
        foreach (var row in document.Root.Get("standardDrinks").Items)
        {
            string code = row.Text("jurisdiction");
            if (!drinks.ContainsKey(code))
                drinks.Add(
                    code, new StandardDrink(code, row.Text("country"), row.Text("name"), row.Number("ethanolG"), row.Text("source")));
        }

        return drinks;
    }
}
