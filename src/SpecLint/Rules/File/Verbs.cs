using SpecLint.Catalogue;

namespace SpecLint.Rules.File;

/// <summary>The verbs of methods: what a step does.</summary>
internal static class Verbs
{
    private static readonly Lazy<Dictionary<string, string>> ByVerb = new(Load);

    /// <summary>All verbs, in the order of the table.</summary>
    public static IEnumerable<string> All => ByVerb.Value.Keys;

    /// <summary>Whether a verb is known.</summary>
    public static bool Knows(string verb) => ByVerb.Value.ContainsKey(verb);

    /// <summary>Whether a step of the verb takes in everything that the recipe lists, where it names no item.</summary>
    public static bool Gathers(string verb) => Is(verb, "gather") || Is(verb, "chill");

    /// <summary>Whether a step of the verb mixes, extracts or chills: there is something to strain after it.</summary>
    public static bool Works(string verb) => Is(verb, "gather") || Is(verb, "chill") || Is(verb, "work");

    /// <summary>Whether a step of the verb mixes with ice and dilutes.</summary>
    public static bool Chills(string verb) => Is(verb, "chill");

    private static bool Is(string verb, string group) => ByVerb.Value.TryGetValue(verb, out string? of) && of == group;

    private static Dictionary<string, string> Load()
    {
        var verbs = new Dictionary<string, string>(StringComparer.Ordinal);
        using var document = Tables.Open("verbs");
        foreach (var row in Tables.Rows(document))
        {
            string group = row.Text("group");
            foreach (string verb in row.Texts("verbs")) verbs[verb] = group;
        }

        return verbs;
    }
}
