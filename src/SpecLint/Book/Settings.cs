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
    public static readonly FixedList<string> AllJurisdictions = ["EU", "GB", "US", "CA", "AU", "NZ", "CH", "JP"];

    private static readonly HashSet<string> EuropeanUnion = new(StringComparer.Ordinal)
    {
        "AT", "BE", "BG", "HR", "CY", "CZ", "DK", "EE", "FI", "FR", "DE", "GR", "HU", "IE", "IT", "LV", "LT", "LU", "MT", "NL",
        "PL", "PT", "RO", "SK", "SI", "ES", "SE",
    };

    // Norway and Iceland apply the food law of the EU through the Agreement on the European Economic Area. Liechtenstein is
    // in it too and applies Swiss food law by its customs treaty, so that both are held. Northern Ireland keeps the food
    // and spirits law of the EU under the Windsor Framework, beside the measures and licensing of the United Kingdom.
    private static readonly Dictionary<string, string[]> Beyond = new(StringComparer.Ordinal)
    {
        ["NO"] = ["EU"],
        ["IS"] = ["EU"],
        ["LI"] = ["EU", "CH"],
        ["GB-NIR"] = ["EU", "GB"],
    };

    /// <summary>Asked fifty times a recipe.</summary>
    private readonly string[] applying;
    private readonly ulong[] applyingCodes;
    private Measures? measures;

    /// <summary>Settings of a bar, or the defaults where there is none.</summary>
    public Settings(Bar? bar)
    {
        Bar = bar;
        var stated = new List<string>();
        var inForce = new List<string>();
        foreach (var entry in bar?.Jurisdictions ?? [])
        {
            string code = entry.Value switch { "UK" => "GB", "XI" => "GB-NIR", _ => entry.Value };
            stated.Add(code);
            foreach (string law in LawsOf(code))
            {
                if (!inForce.Contains(law)) inForce.Add(law);
            }
        }

        StatedJurisdictions = FixedList.Of(stated);
        JurisdictionIsStated = inForce.Count > 0;
        Jurisdictions = JurisdictionIsStated ? FixedList.Of(inForce) : AllJurisdictions;
        applying = [.. Jurisdictions.Union(StatedJurisdictions)];
        applyingCodes = [.. applying.Select(Packed)];
    }

    /// <summary>The bar's file; <see langword="null"/> where there is none.</summary>
    public Bar? Bar { get; }

    /// <summary>The units that quantities of the book are read with.</summary>
    internal Measures Measures =>
        Volatile.Read(ref measures) ?? Interlocked.CompareExchange(ref measures, Measures.For(Bar?.Measures), null) ?? measures!;

    /// <summary>Country codes as the bar states them.</summary>
    public FixedList<string> StatedJurisdictions { get; }

    /// <summary>Whether the bar states a jurisdiction; if not, the strictest of all is used.</summary>
    public bool JurisdictionIsStated { get; }

    /// <summary>The jurisdictions whose limits apply (member states of the EU count as EU, a state or nation as its country).</summary>
    public FixedList<string> Jurisdictions { get; }

    /// <summary>
    /// Whether a jurisdiction's limits apply: the law of the bar's country, of what the
    /// country is part of, and of its own state or nation.
    /// </summary>
    public bool AppliesIn(string jurisdiction)
    {
        ulong code = Packed(jurisdiction);
        for (int i = 0; i < applyingCodes.Length; i++)
        {
            if (applyingCodes[i] == code && applying[i] == jurisdiction) return true;
        }

        return false;
    }

    /// <summary>Letters that fit a number, which is the quicker to compare; most codes are no longer.</summary>
    private const int LettersOfCode = 4;

    /// <summary>The first letters of a code and how many it has, as a number.</summary>
    private static ulong Packed(string code)
    {
        ulong packed = 0;
        int letters = Math.Min(code.Length, LettersOfCode);
        for (int i = 0; i < letters; i++) packed = (packed << 16) | code[i];
        return packed;
    }

    /// <summary>The laws that hold under a code: of the EU in a member state, of the country in a subdivision (ISO 3166-2).</summary>
    private static FixedList<string> LawsOf(string code)
    {
        if (Beyond.TryGetValue(code, out var laws)) return laws;
        if (EuropeanUnion.Contains(code)) return ["EU"];
        int dash = code.IndexOf('-');
        return [dash < 0 ? code : code.Substring(0, dash)];
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
