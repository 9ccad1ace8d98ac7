using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>What a piece weighs.</summary>
/// <param name="Typical">Typical, g, or a share of the whole.</param>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
internal readonly record struct PieceSize(double Typical, double Low, double High)
{
    /// <summary>A size that is not known.</summary>
    public static PieceSize Unknown { get; } = new(double.NaN, double.NaN, double.NaN);

    /// <summary>Whether it is known.</summary>
    public bool IsKnown => !double.IsNaN(Typical);

    /// <summary>This share of something.</summary>
    public PieceSize Of(PieceSize whole) => new(Typical * whole.Typical, Low * whole.Low, High * whole.High);
}

/// <summary>What pieces weigh: a slice, a wedge, a sprig is not the whole fruit or plant.</summary>
internal static class PieceTable
{
    private static readonly Dictionary<(string Item, string Piece), PieceSize> ByItem = [];
    private static readonly Dictionary<string, PieceSize> Shares = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, PieceSize> Herbs = new(StringComparer.Ordinal);

    static PieceTable()
    {
        using var document = Tables.Open("pieces");
        var root = document.Root;
        foreach (var row in root.Get("pieces").Items)
        {
            foreach (string item in row.Texts("items")) ByItem.Add((item, row.Text("piece")), Size(row, "grams"));
        }

        foreach (var row in root.Get("shares").Items) Shares.Add(row.Text("piece"), Size(row, "share"));
        foreach (var row in root.Get("herbs").Items) Herbs.Add(row.Text("piece"), Size(row, "grams"));
    }

    /// <summary>
    /// What one piece of an item weighs, g: by the catalogue's entry for that piece, by the table, else as a share of the whole;
    /// the item's own piece where the word is none of a part.
    /// </summary>
    /// <param name="ingredient">The item; <see langword="null"/> where it is a preparation.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="piece">The word of the amount: <c>slice</c>.</param>
    /// <param name="whole">What the item's own piece weighs, g.</param>
    public static PieceSize Weigh(Ingredient? ingredient, ItemKind kind, string piece, PieceSize whole)
    {
        if (ingredient is null || !kind.IsBotanical) return whole;
        foreach (string id in new[] { ingredient.Id, ingredient.Like.Or("") })
        {
            if (id.Length == 0) continue;
            if (ByItem.TryGetValue((id, piece), out var size)) return size;
            if (BuiltInCatalogue.Find($"{id}-{piece.Replace(' ', '-')}") is { } entry && entry.Id != id
                && entry.Values.TryGetValue("piece", out var value))
            {
                return new PieceSize(value.Typical, value.Low, value.High);
            }
        }

        // The entry of a herb gives the mass of a leaf: a sprig is not a share of it.
        if (kind.Piece == "sprig") return Herbs.TryGetValue(piece, out var herb) ? herb : whole;
        return Shares.TryGetValue(piece, out var share) ? share.Of(whole) : whole;
    }

    /// <summary>Whether a word names a part of a whole fruit or vegetable.</summary>
    public static bool IsPart(string piece) => Shares.ContainsKey(piece);

    private static PieceSize Size(TableValue row, string name) => new(row.Number(name), row.Number("low"), row.Number("high"));
}
