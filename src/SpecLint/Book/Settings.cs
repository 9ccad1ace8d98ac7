using SpecLint.Findings;
using SpecLint.Reading;

namespace SpecLint.Book;

/// <summary>Where the effective value of a setting came from.</summary>
/// <param name="Name">Name of the setting.</param>
/// <param name="Value">Its value, as text.</param>
/// <param name="From">Where it came from: a file and line, or the default.</param>
public sealed record EffectiveSetting(string Name, string Value, string From);

/// <summary>The settings in force for one book.</summary>
public sealed class Settings
{
    /// <summary>Jurisdictions whose limits are known.</summary>
    public static readonly FixedList<string> AllJurisdictions = ["EU", "GB", "US", "CA", "AU", "NZ"];

    private static readonly HashSet<string> EuropeanUnion = new(StringComparer.Ordinal)
    {
        "AT", "BE", "BG", "HR", "CY", "CZ", "DK", "EE", "FI", "FR", "DE", "GR", "HU", "IE", "IT", "LV", "LT", "LU", "MT", "NL",
        "PL", "PT", "RO", "SK", "SI", "ES", "SE",
    };

    /// <summary>Settings of a bar, or the defaults where there is none.</summary>
    public Settings(Bar? bar)
    {
        Bar = bar;
        var stated = new List<string>();
        var inForce = new List<string>();
        foreach (var entry in bar?.Jurisdictions ?? [])
        {
            string code = entry.Value == "UK" ? "GB" : entry.Value;
            stated.Add(code);
            string law = EuropeanUnion.Contains(code) ? "EU" : code;
            if (!inForce.Contains(law)) inForce.Add(law);
        }

        StatedJurisdictions = FixedList.Of(stated);
        JurisdictionIsStated = inForce.Count > 0;
        Jurisdictions = JurisdictionIsStated ? FixedList.Of(inForce) : AllJurisdictions;
    }

    /// <summary>The bar's file; <see langword="null"/> where there is none.</summary>
    public Bar? Bar { get; }

    /// <summary>Country codes as the bar states them.</summary>
    public FixedList<string> StatedJurisdictions { get; }

    /// <summary>Whether the bar states a jurisdiction; if not, the strictest of all is used.</summary>
    public bool JurisdictionIsStated { get; }

    /// <summary>The jurisdictions whose limits apply (member states of the EU count as EU).</summary>
    public FixedList<string> Jurisdictions { get; }

    /// <summary>Whether a jurisdiction's limits apply.</summary>
    public bool AppliesIn(string jurisdiction)
    {
        foreach (string j in Jurisdictions)
        {
            if (j == jurisdiction) return true;
        }

        return false;
    }

    /// <summary>The level that the bar sets for a rule, whether or not it counts; <see langword="null"/> where it sets none.</summary>
    public RuleLevel? LevelOf(string ruleId) => Bar is not null && Bar.Rules.TryGetValue(ruleId, out var level) ? level.Value : null;

    /// <summary>Reads a level's name (SARIF: error, warning, note, none).</summary>
    public static bool TryLevel(string text, out Level level)
    {
        switch (text)
        {
            case "error": level = Level.Error; return true;
            case "warning": level = Level.Warning; return true;
            case "note": level = Level.Note; return true;
            case "none": level = Level.None; return true;
            default: level = Level.None; return false;
        }
    }
}
