using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>A duty, a statement or a claim of the law on labels.</summary>
/// <param name="Id">Its id in the table.</param>
/// <param name="Jurisdictions">Where it holds; <c>any</c> for everywhere.</param>
/// <param name="Words">The words that trigger it.</param>
/// <param name="Text">The text that it asks for; empty where it asks for none.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record LabelRule(string Id, FixedList<string> Jurisdictions, FixedList<string> Words, TableText Text, TableText Source, Mark Mark)
{
    /// <summary>Whether it applies under the settings of a bar; a code of a member state counts as stated.</summary>
    public bool AppliesIn(Settings settings)
    {
        foreach (string jurisdiction in Jurisdictions)
        {
            if (jurisdiction == "any" || settings.AppliesIn(jurisdiction)) return true;
        }

        return false;
    }

    /// <summary>The level that a finding may have: one from memory gives at most a warning.</summary>
    public Level? LevelCap => Mark == Mark.Memory ? Level.Warning : null;
}

/// <summary>The table of the law on labels.</summary>
internal static class LabellingTable
{
    private static readonly Dictionary<string, LabelRule> ById = Load();

    /// <summary>The row of an id.</summary>
    /// <exception cref="InvalidOperationException">The table lacks it: a fault of the build.</exception>
    public static LabelRule Of(string id) =>
        ById.TryGetValue(id, out var row) ? row : throw new InvalidOperationException($"The table of labelling lacks {id}.");

    private static Dictionary<string, LabelRule> Load()
    {
        var rows = new Dictionary<string, LabelRule>(StringComparer.Ordinal);
        using var document = Tables.Open("labelling");
        foreach (var row in Tables.Rows(document))
        {
            string id = row.Text("id");
            rows.Add(id, new LabelRule(
                id, row.RepeatedTexts("jurisdictions"), row.Texts("words"), row.TextLater("text"), row.TextLater("source"), row.Mark()));
        }

        return rows;
    }
}
