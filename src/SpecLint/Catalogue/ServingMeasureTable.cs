namespace SpecLint.Catalogue;

/// <summary>The measures in which a law lets a drink be sold by the glass.</summary>
/// <param name="Place">The name of the place.</param>
/// <param name="What">What it is about, in words.</param>
/// <param name="Source">The law.</param>
internal sealed record ServingMeasure(string Place, string What, string Source)
{
    /// <summary>What a jigger shows of a measure: nearer than this it is the measure, mL.</summary>
    private const double Reading = 0.75;

    /// <summary>Where it holds.</summary>
    public required FixedList<string> Jurisdictions { get; init; }

    /// <summary>The kinds of parts that it is about.</summary>
    public required FixedList<ItemKind> Kinds { get; init; }

    /// <summary>Words of which one stands in the name of such a part; none where the kind is enough.</summary>
    public required FixedList<string> Named { get; init; }

    /// <summary>The measures, mL; so are their multiples.</summary>
    public required FixedList<double> Sizes { get; init; }

    /// <summary>Liquids from which on a mixture is left out.</summary>
    public required int NotFromLiquids { get; init; }

    /// <summary>mL under which any amount may be sold.</summary>
    public required double NotBelow { get; init; }

    /// <summary>Whether an amount is a measure, or a multiple of one.</summary>
    public bool Allows(double amount) => amount < NotBelow || Sizes.Any(s => Math.Abs(amount - Nearest(amount, s)) <= Reading);

    /// <summary>The measures, and multiples of them, next to an amount, in order.</summary>
    public IReadOnlyList<double> NextTo(double amount) => [.. Sizes.Select(s => Nearest(amount, s)).Distinct().OrderBy(static s => s)];

    private static double Nearest(double amount, double size) =>
        size * Math.Max(1, Math.Round(amount / size, MidpointRounding.AwayFromZero));
}

/// <summary>The measures of the laws (<c>serving-measures.json</c>).</summary>
internal static class ServingMeasureTable
{
    private static readonly Lazy<FixedList<ServingMeasure>> Rows = new(Load);

    /// <summary>All rows.</summary>
    public static FixedList<ServingMeasure> All => Rows.Value;

    private static FixedList<ServingMeasure> Load()
    {
        using var document = Tables.Open("serving-measures");
        return [.. Tables.Rows(document).Select(static row => new ServingMeasure(row.Text("place"), row.Text("what"), row.Text("source"))
        {
            Jurisdictions = row.RepeatedTexts("jurisdictions"),
            Kinds = [.. row.Texts("kinds").Select(ItemKind.Of)],
            Named = row.Texts("named"),
            Sizes = [.. row.Get("sizes").Items.Select(static s => s.GetNumber())],
            NotFromLiquids = (int)row.Number("notFromLiquids"),
            NotBelow = row.Number("notBelow"),
        })];
    }
}
