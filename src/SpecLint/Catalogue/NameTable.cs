using SpecLint.Book;

namespace SpecLint.Catalogue;

/// <summary>A name with a meaning in law.</summary>
/// <param name="Id">Its id in the table.</param>
/// <param name="Terms">The name and its other spellings.</param>
/// <param name="Jurisdictions">Where it holds.</param>
/// <param name="Kind">Category, protected, name rule, threshold …</param>
/// <param name="StrengthAtLeast">Least strength, % vol; NaN where there is none.</param>
/// <param name="SugarAtLeast">Least sugar, g/L as invert sugar; NaN where there is none.</param>
/// <param name="NeedsSpirit">Whether the word has other meanings too (a bitter, anis), and speaks of a spirit only where one is in it.</param>
/// <param name="Source">Where it is printed.</param>
/// <param name="Mark">How far to trust it.</param>
internal sealed record LegalName(
    string Id, FixedList<string> Terms, FixedList<string> Jurisdictions, string Kind,
    double StrengthAtLeast, double SugarAtLeast, bool NeedsSpirit, TableText Source, Mark Mark)
{
    /// <summary>Whether it applies under the settings of a bar.</summary>
    public bool AppliesIn(Settings settings)
    {
        foreach (string jurisdiction in Jurisdictions)
        {
            if (settings.AppliesIn(jurisdiction)) return true;
        }

        return false;
    }

    /// <summary>The level that a finding may have: one from memory gives at most a warning.</summary>
    public Level? LevelCap => Mark == Mark.Memory ? Level.Warning : null;
}

/// <summary>The table of names with a meaning in law.</summary>
internal static class NameTable
{
    /// <summary>All names, those of several words before those of one, so that "sloe gin" is met before "gin".</summary>
    public static FixedList<LegalName> All { get; } = Load();

    private static FixedList<LegalName> Load()
    {
        var names = new List<LegalName>();
        using var document = Tables.Open("names");
        foreach (var row in Tables.Rows(document))
        {
            FixedList<string> terms = [row.Text("term"), .. row.Texts("aliases")];
            names.Add(new LegalName(
                row.Text("id"), terms, row.RepeatedTexts("jurisdictions"), row.Text("kind"),
                row.Number("strengthAtLeastPercentByVolume"), row.Number("sugarAtLeastGPerL"), row.TryGet("needsSpirit", out _),
                row.TextLater("source"), row.Mark()));
        }

        return [.. names.OrderByDescending(n => n.Terms[0].Count(c => c == ' ')).ThenBy(n => n.Id, StringComparer.Ordinal)];
    }
}
