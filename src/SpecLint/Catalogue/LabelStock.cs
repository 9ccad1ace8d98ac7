namespace SpecLint.Catalogue;

/// <summary>Blank labels, on a sheet or a roll: where each stands on its page. All lengths in mm.</summary>
/// <param name="Id">Its name, by its dimensions.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Paper">Size of the page by its name; empty for a roll, whose page is a label.</param>
/// <param name="PageWidth">Width of the page.</param>
/// <param name="PageHeight">Height of the page.</param>
/// <param name="Width">Width of a label.</param>
/// <param name="Height">Height of a label.</param>
/// <param name="Columns">Labels across.</param>
/// <param name="Rows">Labels down.</param>
/// <param name="Left">From the left edge of the page to the first label.</param>
/// <param name="Top">From the upper edge of the page to the first label.</param>
/// <param name="PitchX">From the left edge of a label to that of the next.</param>
/// <param name="PitchY">From the upper edge of a label to that of the next.</param>
/// <param name="Source">Source of the dimensions.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record LabelStock(
    string Id, string Name, string Paper, double PageWidth, double PageHeight, double Width, double Height, int Columns, int Rows,
    double Left, double Top, double PitchX, double PitchY, string Source, Mark Mark)
{
    private static readonly List<LabelStock> Stocks = Load();

    /// <summary>All stock, in the order of the table.</summary>
    public static IReadOnlyList<LabelStock> All => Stocks;

    /// <summary>Labels on a page.</summary>
    public int PerPage => Columns * Rows;

    /// <summary>Whether it is a roll, a page a label.</summary>
    public bool IsRoll => Paper.Length == 0;

    /// <summary>The stock of a name, or of <c>a4</c>, <c>letter</c> and <c>roll</c> the first of its kind; <see langword="null"/> if none.</summary>
    public static LabelStock? Find(string name) => name switch
    {
        "a4" or "letter" => Stocks.Find(s => string.Equals(s.Paper, name, StringComparison.OrdinalIgnoreCase)),
        "roll" => Stocks.Find(s => s.IsRoll),
        _ => Stocks.Find(s => s.Id == name),
    };

    /// <summary>Where a label of a page stands, from 0, line by line.</summary>
    /// <param name="place">Number of the place on the page, from 0.</param>
    public (double X, double Y) At(int place) => (Left + (place % Columns * PitchX), Top + (place / Columns * PitchY));

    private static List<LabelStock> Load()
    {
        var stocks = new List<LabelStock>();
        using var document = Tables.Open("label-stock");
        foreach (var row in document.Root.Get("stock").Items)
        {
            stocks.Add(new LabelStock(
                row.Text("id"), row.Text("name"), row.Text("paper"),
                row.Number("pageWidth"), row.Number("pageHeight"), row.Number("width"), row.Number("height"),
                (int)row.Number("columns"), (int)row.Number("rows"),
                row.Number("left"), row.Number("top"), row.Number("pitchX"), row.Number("pitchY"),
                row.Text("source"), row.Mark()));
        }

        return stocks;
    }
}
