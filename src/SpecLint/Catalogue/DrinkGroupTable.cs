namespace SpecLint.Catalogue;

/// <summary>Drinks that are made up alike, whatever they are called, and what the published ones among them come to as poured, before ice.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name in words, for several: <c>sours</c>.</param>
/// <param name="Count">How many published drinks its bands are derived from.</param>
/// <param name="Source">Where those are published.</param>
internal sealed record DrinkGroup(string Id, string Name, int Count, string Source)
{
    /// <summary>What is held against the bands, in the order of the table.</summary>
    public static readonly string[] Facts = ["strength", "sugar", "acid", "sugarPerAlcohol", "acidPerAlcohol", "sugarPerAcid"];

    /// <summary>
    /// Beyond all of them, by fact, in the order of <see cref="Facts"/>; <see langword="null"/> where the published drinks do not describe
    /// it.
    /// </summary>
    public required Band?[] Seen { get; init; }

    /// <summary>What 96 in 100 of them come to.</summary>
    public required Band?[] Usual { get; init; }
}

/// <summary>
/// The groups of drinks with the bands of the published ones (<c>drink-groups.json</c>,
/// derived by a test from the lists in the repository).
/// </summary>
internal static class DrinkGroupTable
{
    private static readonly Lazy<List<DrinkGroup>> Rows = new(Load);

    /// <summary>All groups, in the order in which a drink is held against them.</summary>
    public static IReadOnlyList<DrinkGroup> All => Rows.Value;

    /// <summary>The group of an id; <see langword="null"/> where too few published drinks describe it.</summary>
    public static DrinkGroup? Find(string id)
    {
        foreach (var group in Rows.Value)
        {
            if (group.Id == id) return group;
        }

        return null;
    }

    private static List<DrinkGroup> Load()
    {
        var groups = new List<DrinkGroup>();
        using var document = Tables.Open("drink-groups");
        string source = document.Root.Text("source");
        foreach (var row in document.Root.Get("groups").Items)
        {
            groups.Add(new DrinkGroup(row.Text("id"), row.Text("name"), (int)row.Number("count"), source)
            {
                Seen = [.. DrinkGroup.Facts.Select(f =>
                    row.TryGet(f, out var band) ? new Band(band.Number("low"), band.Number("high")) : (Band?)null)],
                Usual = [.. DrinkGroup.Facts.Select(f => row.TryGet(f, out var band)
                    ? new Band(band.Number("usualLow"), band.Number("usualHigh"))
                    : (Band?)null)],
            });
        }

        return groups;
    }
}
