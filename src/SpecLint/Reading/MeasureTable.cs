namespace SpecLint.Reading;

/// <summary>Reads the trade measures of the built-in table.</summary>
internal static class MeasureTable
{
    internal readonly record struct Entry(Unit Unit, IReadOnlyList<string> Words, bool StandsAlone);

    public static IReadOnlyList<Entry> Read()
    {
        var entries = new List<Entry>();
        using var stream = typeof(MeasureTable).Assembly.GetManifestResourceStream("table/measures");
        if (stream is null) return entries;
        var bytes = new byte[stream.Length];
        int length = 0;
        while (length < bytes.Length && stream.Read(bytes, length, bytes.Length - length) is > 0 and var read) length += read;
        var problems = new List<ReadingProblem>();
        var tree = JsonTree.Parse(new SourceFile("measures.json", bytes), problems);
        if (problems.Count > 0) throw new InvalidDataException("measures.json: " + problems[0].Message);
        if (!tree.Root.TryGetProperty("units"u8, out var units)) return entries;
        foreach (var unit in units.Items)
        {
            if (ReadUnit(unit) is { } entry) entries.Add(entry);
        }

        return entries;
    }

    private static Entry? ReadUnit(JsonNode node)
    {
        string id = Text(node, "id"u8);
        var dimension = Text(node, "dimension"u8) switch
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
            typical = Number(node, volume ? "typicalMl"u8 : "typicalG"u8);
            low = Number(node, volume ? "lowMl"u8 : "lowG"u8);
            high = Number(node, volume ? "highMl"u8 : "highG"u8);
            if (!(typical > 0)) return null;
            if (double.IsNaN(low)) low = typical;
            if (double.IsNaN(high)) high = typical;
        }

        var words = new List<string>();
        AddWord(words, id);
        if (id.AsSpan().IndexOf('-') >= 0) AddWord(words, id.Replace('-', ' '));
        if (node.TryGetProperty("aliases"u8, out var aliases))
        {
            foreach (var alias in aliases.Items) AddWord(words, alias.GetString());
        }

        var system = dimension switch
        {
            Dimension.Count => UnitSystem.Piece,
            Dimension.Part => UnitSystem.None,
            _ => UnitSystem.Trade,
        };
        // A measure that must be asked back for (of which country, which size) is never meant by its bare word.
        bool alone = system == UnitSystem.Trade && low != high && !node.TryGetProperty("ask"u8, out _);
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

    private static string Text(JsonNode node, ReadOnlySpan<byte> name) => node.TryGetProperty(name, out var value) ? value.GetString() : "";

    private static double Number(JsonNode node, ReadOnlySpan<byte> name) => node.TryGetProperty(name, out var value) ? value.GetDouble() : double.NaN;
}
