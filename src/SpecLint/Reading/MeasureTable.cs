namespace SpecLint.Reading;

/// <summary>Reads the trade measures of the built-in table.</summary>
internal static class MeasureTable
{
    internal readonly record struct Entry(Unit Unit, IReadOnlyList<string> Words, bool StandsAlone);

    public static IReadOnlyList<Entry> Read()
    {
        var entries = new List<Entry>();
        using var table = Tables.Open("measures");
        foreach (var unit in table.Root.Get("units").Items)
        {
            if (ReadUnit(unit) is { } entry) entries.Add(entry);
        }

        return entries;
    }

    private static Entry? ReadUnit(TableValue row)
    {
        string id = row.Text("id");
        var dimension = row.Text("dimension") switch
        {
            "volume" => Dimension.Volume,
            "mass" => Dimension.Mass,
            "count" => Dimension.Count,
            _ => Dimension.Part,
        };
        double typical = 1, low = 1, high = 1;
        if (dimension is Dimension.Volume or Dimension.Mass)
        {
            bool volume = dimension == Dimension.Volume;
            typical = row.Number(volume ? "typicalMl" : "typicalG");
            low = row.Number(volume ? "lowMl" : "lowG");
            high = row.Number(volume ? "highMl" : "highG");
            if (!(typical > 0)) return null;
            if (double.IsNaN(low)) low = typical;
            if (double.IsNaN(high)) high = typical;
        }

        var words = new List<string>();
        AddWord(words, id);
        if (id.AsSpan().IndexOf('-') >= 0) AddWord(words, id.Replace('-', ' '));
        foreach (string alias in row.Texts("aliases")) AddWord(words, alias);

        var system = dimension switch
        {
            Dimension.Count => UnitSystem.Piece,
            Dimension.Part => UnitSystem.None,
            _ => UnitSystem.Trade,
        };
        // A measure that must be asked back for (of which country, which size) is never meant by its bare word.
        bool alone = system == UnitSystem.Trade && low != high && !row.TryGet("ask", out _);
        return new Entry(new Unit(id, dimension, system, typical, low, high), words, alone);
    }

    /// <summary>Adds a word that can follow a number: letters, then letters, dots, hyphens and single blanks.</summary>
    private static void AddWord(List<string> words, string text)
    {
        string word = text.ToLowerInvariant();
        if (word.Length == 0 || !char.IsLetter(word[0]) || words.Contains(word)) return;
        foreach (char c in word)
        {
            if (c is not ((>= 'a' and <= 'z') or ' ' or '.' or '-')) return;
        }

        words.Add(word);
    }
}
