using SpecLint.Vocabulary;

namespace SpecLint.Build;

/// <summary>
/// Levels of rules that a build sets, read as the compiler reads them: <c>dotnet_diagnostic.ID.severity</c> in global
/// configuration files, over these NoWarn and WarningsAsErrors.
/// </summary>
internal sealed class BuildLevels
{
    private const string GlobalName = ".globalconfig";
    private const string Prefix = "dotnet_diagnostic.";
    private const string Suffix = ".severity";

    private readonly Dictionary<string, (int Rank, Level? Level, string File)> fromFiles = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> atOdds = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Level> fromProperties = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Takes in a file's text. One that is named <c>.globalconfig</c> is global, another where it has <c>is_global</c>, whatever its value;
    /// the higher <c>global_level</c> (100 for <c>.globalconfig</c>, else 0) wins. Where two files of one level speak of
    /// a rule, neither holds, also where they agree: so the compiler has it.
    /// </summary>
    /// <returns>Ids of rules of which two files of one level speak, with the two files.</returns>
    public List<(string Id, string First, string Second)> Add(string path, string text)
    {
        var disputes = new List<(string, string, string)>();
        bool named = Path.GetFileName(path).Equals(GlobalName, StringComparison.OrdinalIgnoreCase), isGlobal = named;
        int usual = named ? 100 : 0, rank = usual;
        var own = new Dictionary<string, Level?>(StringComparer.OrdinalIgnoreCase);
        foreach (var (key, value) in Head(text))
        {
            if (key.Equals("is_global", StringComparison.OrdinalIgnoreCase)) isGlobal = true;
            else if (key.Equals("global_level", StringComparison.OrdinalIgnoreCase)) rank = int.TryParse(value, out int given) ? given : usual;
            else if (IdOf(key) is { } id) own[id] = LevelOf(value);
        }

        if (!isGlobal) return disputes;
        foreach (var entry in own)
        {
            if (!fromFiles.TryGetValue(entry.Key, out var known) || rank > known.Rank)
            {
                fromFiles[entry.Key] = (rank, entry.Value, path);
                atOdds.Remove(entry.Key);
            }
            else if (rank == known.Rank && atOdds.Add(entry.Key))
            {
                disputes.Add((entry.Key, known.File, path));
            }
        }

        return disputes;
    }

    /// <summary>Takes in a list of ids as a property holds them, with <c>;</c> or <c>,</c> or spaces between.</summary>
    public void Add(string? ids, Level level)
    {
        foreach (string id in (ids ?? "").Split([';', ',', ' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries)) fromProperties[id] = level;
    }

    /// <summary>Levels by id of the rule.</summary>
    public Dictionary<string, Level> ToDictionary()
    {
        var levels = new Dictionary<string, Level>(StringComparer.OrdinalIgnoreCase);
        foreach (var entry in fromFiles)
        {
            if (entry.Value.Level is { } level && !atOdds.Contains(entry.Key)) levels[entry.Key] = level;
        }

        foreach (var entry in fromProperties) levels[entry.Key] = entry.Value;
        return levels;
    }

    /// <summary>Keys and values in front of the first section: what stands in a section is about files of source code.</summary>
    private static IEnumerable<(string Key, string Value)> Head(string text)
    {
        using var reader = new StringReader(text);
        while (reader.ReadLine() is { } line)
        {
            line = line.Trim();
            if (line.Length == 0 || line[0] is '#' or ';') continue;
            if (line[0] == '[') yield break;
            int equals = line.IndexOfAny(['=', ':']);
            if (equals <= 0) continue;
            string value = line.Substring(equals + 1);
            int comment = value.IndexOfAny(['#', ';']);
            yield return (line.Substring(0, equals).Trim(), (comment < 0 ? value : value.Substring(0, comment)).Trim());
        }
    }

    private static string? IdOf(string key) =>
        key.Length > Prefix.Length + Suffix.Length
            && key.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase)
            && key.EndsWith(Suffix, StringComparison.OrdinalIgnoreCase)
            ? key.Substring(Prefix.Length, key.Length - Prefix.Length - Suffix.Length)
            : null;

    private static Level? LevelOf(string severity) => severity.ToUpperInvariant() switch
    {
        "ERROR" => Level.Error,
        "WARNING" => Level.Warning,
        "SUGGESTION" => Level.Note,
        "SILENT" or "NONE" => Level.None,
        _ => null,
    };
}
