using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>The tables A and B of the Food Code (1-201.10): pairs of water activity and pH and what they say of a food.</summary>
internal static class KeepingTables
{
    private static readonly Lazy<Dictionary<string, Cell[]>> ById = new(Load);
    private static readonly Lazy<List<(FixedList<string> Words, bool OfJuice)>> Listed = new(LoadListed);
    private static readonly Lazy<FixedList<string>> Starches = new(LoadStarches);

    /// <summary>Where the tables are printed.</summary>
    public const string Source = "US FDA Food Code 2022, 1-201.10, tables A and B";

    /// <summary>What a box of possible values meets in a table.</summary>
    /// <param name="table"><c>A</c> (heated and then packed) or <c>B</c>.</param>
    /// <param name="waterActivity">What the water activity may be.</param>
    /// <param name="ph">What the pH may be.</param>
    /// <returns>Whether every cell that the box touches says not controlled, and whether any does.</returns>
    public static (bool All, bool Any) NotControlled(string table, Reach waterActivity, Reach ph)
    {
        bool all = true, any = false;
        foreach (var cell in ById.Value[table])
        {
            if (!cell.WaterActivity.Meets(waterActivity) || !cell.Ph.Meets(ph)) continue;
            all &= cell.NotControlled;
            any |= cell.NotControlled;
        }

        return (all && any, any);
    }

    /// <summary>Whether the code lists a plant part as controlled: cut melon, cut tomato, cut leaves, sprouts.</summary>
    /// <param name="ingredient">The ingredient, by its id, name and aliases.</param>
    /// <param name="cutOnly">Whether it is juice or purée, of which the code lists melon alone.</param>
    public static bool IsListedPlant(Ingredient ingredient, bool cutOnly)
    {
        foreach (var row in Listed.Value)
        {
            if ((!cutOnly || row.OfJuice) && IsCalled(ingredient, row.Words)) return true;
        }

        return false;
    }

    /// <summary>Whether a thickener is a starch or a flour, which feeds what grows once it is cooked.</summary>
    public static bool IsStarch(Ingredient ingredient) => IsCalled(ingredient, Starches.Value);

    private static bool IsCalled(Ingredient ingredient, FixedList<string> words)
    {
        foreach (string word in words)
        {
            if (Phrases.Has(ingredient.Id, word) || (ingredient.Name.IsGiven && Phrases.Has(ingredient.Name.Value, word))) return true;
            foreach (var alias in ingredient.Aliases)
            {
                if (alias.IsGiven && Phrases.Has(alias.Value, word)) return true;
            }
        }

        return false;
    }

    private static List<(FixedList<string> Words, bool OfJuice)> LoadListed()
    {
        using var document = Tables.Open("keeping-tables");
        return [.. document.Root.Get("alwaysControlled").Items
            .Select(row => (Spelled(row.Texts("words")), row.Texts("kinds").Contains("juice"))).Where(row => row.Item1.Count > 0)];
    }

    private static FixedList<string> LoadStarches()
    {
        using var document = Tables.Open("keeping-tables");
        return Spelled(document.Root.Texts("starches"));
    }

    /// <summary>Words with the hyphens of ids beside those with spaces.</summary>
    private static FixedList<string> Spelled(FixedList<string> words) =>
        [.. words.Concat(words.Where(w => w.IndexOf(' ') >= 0).Select(w => w.Replace(' ', '-')))];

    private static Dictionary<string, Cell[]> Load()
    {
        var tables = new Dictionary<string, Cell[]>(StringComparer.Ordinal);
        using var document = Tables.Open("keeping-tables");
        foreach (var row in Tables.Rows(document))
            tables.Add(row.Text("id"), [.. row.Get("cells").Items.Select(Cell.Read)]);
        return tables;
    }

    private readonly record struct Interval(double Low, bool LowIncluded, double High, bool HighIncluded)
    {
        public static Interval Read(TableValue side) => new(
            side.Number("low"), side.Get("lowIncluded").IsTrue, side.Number("high"), side.Get("highIncluded").IsTrue);

        public bool Meets(Reach band) =>
            (band.High > Low || (LowIncluded && band.High == Low)) && (band.Low < High || (HighIncluded && band.Low == High));
    }

    private readonly record struct Cell(Interval WaterActivity, Interval Ph, bool NotControlled)
    {
        public static Cell Read(TableValue cell) =>
            new(Interval.Read(cell.Get("waterActivity")), Interval.Read(cell.Get("ph")), cell.Text("verdict") == "not controlled");
    }
}

/// <summary>What a value may be: a closed range.</summary>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
internal readonly record struct Reach(double Low, double High);
