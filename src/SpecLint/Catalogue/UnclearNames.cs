namespace SpecLint.Catalogue;

/// <summary>A name of the trade that stands for several things.</summary>
/// <param name="Could">Ids of the catalogue that it could be.</param>
/// <param name="Because">What it leaves open, in words.</param>
internal sealed record UnclearName(FixedList<string> Could, string Because);

/// <summary>The table of names that say too little: a syrup without its ratio, a soda without its kind.</summary>
internal static class UnclearNames
{
    private static readonly Lazy<Dictionary<string, UnclearName>> ByName = new(Load);

    /// <summary>What a name could be; <see langword="null"/> where it is none of the unclear ones.</summary>
    public static UnclearName? Find(string name) => ByName.Value.TryGetValue(name, out var found) ? found : null;

    /// <summary>All unclear names.</summary>
    public static IEnumerable<string> All => ByName.Value.Keys;

    private static Dictionary<string, UnclearName> Load()
    {
        var table = new Dictionary<string, UnclearName>(StringComparer.Ordinal);
        using var document = Tables.Open("unclear-names");
        foreach (var row in Tables.Rows(document))
        {
            var could = row.Texts("could");
            foreach (string id in could)
            {
                if (!BuiltInCatalogue.Has(id))
                    throw new InvalidOperationException($"The table of unclear names has {id}, which the catalogue lacks.");
            }

            var name = new UnclearName(could, row.Text("because"));
            foreach (string one in row.Texts("names")) table.Add(one, name);
        }

        return table;
    }
}
