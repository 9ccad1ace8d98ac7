
namespace SpecLint.Catalogue;

/// <summary>What a number of a recipe can be, as people work in a bar.</summary>
/// <param name="Low">Least, in the base unit of its dimension (°C, s, bar, mL) or in % for a loss.</param>
/// <param name="High">Most, in the same unit.</param>
/// <param name="Condition">What it holds for, in words.</param>
/// <param name="MustNot">Whether a number outside must not be made like this; else it is only unlikely.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record PlausibleRange(double Low, double High, TableText Condition, bool MustNot, TableText Source, Mark Mark)
{
    /// <summary>Whether a whole range lies outside.</summary>
    public bool Excludes(double low, double high) => low > High || high < Low;

    /// <summary>Whether a value lies inside.</summary>
    public bool Holds(double value) => value >= Low && value <= High;
}

/// <summary>What of a step a plausible range is about.</summary>
internal enum PlausibleOf
{
    /// <summary>Temperature, °C.</summary>
    Temperature,

    /// <summary>Duration, s.</summary>
    Duration,

    /// <summary>Gauge pressure, bar.</summary>
    Pressure,

    /// <summary>Share of the mass that the step takes out, %.</summary>
    Loss,
}

/// <summary>
/// The tables of plausible numbers: of the steps by verb (<c>plausible-steps.json</c>) and of other values by id
/// (<c>plausible-values.json</c>). A new verb that has limits of its own is named in a row; the last row without verbs holds
/// for all others.
/// </summary>
internal static class PlausibleTable
{
    private const string GroupPrefix = "group:";

    private static readonly List<Row> Rows = LoadSteps();
    private static readonly Dictionary<string, PlausibleRange> Values = LoadValues();

    /// <summary>The range of a step; <see langword="null"/> where no row is about it.</summary>
    /// <param name="of">What of the step.</param>
    /// <param name="verb">Its verb.</param>
    /// <param name="inDrink">Whether it is a step of a drink, made one at a time.</param>
    /// <param name="isDry">Whether it acts on dry goods, sugar or fat alone.</param>
    public static PlausibleRange? Of(PlausibleOf of, Verb verb, bool inDrink = false, bool isDry = false)
    {
        PlausibleRange? other = null;
        foreach (var row in Rows)
        {
            if (row.Of != of || (row.DrinkOnly && !inDrink) || (row.WetOnly && isDry) || (row.DryOnly && !isDry)) continue;
            if (row.Verbs.Count == 0) other ??= row.Range;
            else if (row.Names(verb)) return row.Range;
        }

        return other;
    }

    /// <summary>The range of a value by its id.</summary>
    /// <exception cref="InvalidOperationException">The table lacks it: a fault of the build.</exception>
    public static PlausibleRange Of(string id) =>
        Values.TryGetValue(id, out var range) ? range : throw new InvalidOperationException($"The table of plausible values lacks {id}.");

    /// <summary>All words that rows name for verbs, for the tests.</summary>
    public static IEnumerable<string> VerbWords => Rows.SelectMany(r => r.Verbs).Where(v => !v.StartsWith(GroupPrefix, StringComparison.Ordinal));

    private static List<Row> LoadSteps()
    {
        var rows = new List<Row>();
        using var document = Tables.Open("plausible-steps");
        foreach (var row in Tables.Rows(document))
            rows.Add(new Row(Quantity(row.Text("of")), row.Texts("verbs"), row.Flag("drink"), row.Flag("wet"), row.Flag("dry"), Range(row)));
        return rows;
    }

    private static Dictionary<string, PlausibleRange> LoadValues()
    {
        var values = new Dictionary<string, PlausibleRange>(StringComparer.Ordinal);
        using var document = Tables.Open("plausible-values");
        foreach (var row in Tables.Rows(document)) values.Add(row.Text("id"), Range(row));
        return values;
    }

    private static PlausibleRange Range(TableValue row) =>
        new(row.Number("low"), row.Number("high"), row.TextLater("condition"), row.Flag("error"), row.TextLater("source"), row.Mark());

    private static PlausibleOf Quantity(string word) => word switch
    {
        "temperature" => PlausibleOf.Temperature,
        "duration" => PlausibleOf.Duration,
        "pressure" => PlausibleOf.Pressure,
        "loss" => PlausibleOf.Loss,
        _ => throw new InvalidOperationException($"The table of plausible steps has {word}, which is not a quantity of a step."),
    };

    private sealed record Row(PlausibleOf Of, FixedList<string> Verbs, bool DrinkOnly, bool WetOnly, bool DryOnly, PlausibleRange Range)
    {
        public bool Names(Verb verb)
        {
            foreach (string word in Verbs)
            {
                if (word == verb.Id
                    || (word.StartsWith(GroupPrefix, StringComparison.Ordinal)
                        && string.Equals(word.Substring(GroupPrefix.Length), verb.Group.ToString(), StringComparison.OrdinalIgnoreCase)))
                    return true;
            }

            return false;
        }
    }
}
