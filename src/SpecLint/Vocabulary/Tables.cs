namespace SpecLint.Vocabulary;

/// <summary>Access to the embedded tables of data.</summary>
internal static class Tables
{
    private const string Prefix = "table/";

    /// <summary>Names of the tables that start so, sorted.</summary>
    public static IEnumerable<string> NamesStartingWith(string start) =>
        Resources.Names.Where(n => n.StartsWith(Prefix + start, StringComparison.Ordinal))
            .Select(n => n.Substring(Prefix.Length)).OrderBy(n => n, StringComparer.Ordinal);

    /// <summary>Opens a table.</summary>
    public static Table Open(string name) => new(Resource.Find(Prefix + name));

    /// <summary>The rows: the array at the root, or the first array in the root object.</summary>
    public static TableItems Rows(Table table)
    {
        var root = table.Root;
        if (!root.IsObject) return root.Items;
        foreach (var (_, value) in root.Properties)
        {
            if (value.IsList) return value.Items;
        }

        throw new InvalidOperationException("A table without rows.");
    }

    /// <summary>A text of a row; empty where it has none.</summary>
    public static string Text(this TableValue row, string name) => row.TryGet(name, out var value) && value.IsText ? value.GetText() : "";

    /// <summary>The same for a text that hardly a run reads.</summary>
    public static TableText TextLater(this TableValue row, string name) =>
        row.TryGet(name, out var value) && value.IsText ? value.GetTextLater() : TableText.Empty;

    /// <summary>A number of a row; <see cref="double.NaN"/> where it has none.</summary>
    public static double Number(this TableValue row, string name) => row.TryGet(name, out var value) ? value.GetNumber() : double.NaN;

    /// <summary>A yes or no of a row; no where it has none.</summary>
    public static bool Flag(this TableValue row, string name) => row.TryGet(name, out var value) && value.IsTrue;

    /// <summary>A list of texts of a row; a single text counts as a list of one.</summary>
    public static FixedList<string> Texts(this TableValue row, string name) => row.TryGet(name, out var value) ? Texts(value) : [];

    /// <summary>The same where most rows have the list of the row before, as with jurisdictions.</summary>
    public static FixedList<string> RepeatedTexts(this TableValue row, string name) =>
        !row.TryGet(name, out var value) ? [] : value.IsList ? value.GetRepeatedTexts() : Texts(value);

    /// <summary>The texts of a list.</summary>
    internal static FixedList<string> Texts(TableValue list)
    {
        if (list.IsText) return [list.GetText()];
        if (!list.IsList || list.Count == 0) return [];
        string[] texts = new string[list.Count];
        int i = 0;
        foreach (var item in list.Items) texts[i++] = item.GetText();
        return texts;
    }

    /// <summary>The mark of a row.</summary>
    public static Mark Mark(this TableValue row) =>
        !row.TryGet("mark", out var mark) ? Vocabulary.Mark.Memory
        : mark.Is("read") ? Vocabulary.Mark.Read
        : mark.Is("computed") ? Vocabulary.Mark.Computed
        : mark.Is("common practice") ? Vocabulary.Mark.CommonPractice
        : Vocabulary.Mark.Memory;
}
