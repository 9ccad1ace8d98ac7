namespace SpecLint.Profile;

/// <summary>Numbers by which recipes that may be alike find each other; few that are not share one.</summary>
internal static class PartsKey
{
    /// <summary>A number that drinks of one technique and one set of parts share; <see langword="null"/> where there is nothing to compare.</summary>
    public static long? Of(RecipeProfile profile)
    {
        int count = 0;
        double sum = 0;
        long key = (long)profile.Technique;
        foreach (var part in profile.Parts)
        {
            if (!Counts(part)) continue;
            count++;
            sum += part.Grams.Typical;
            key += ShareOf(part.Item!.Id);
        }

        return count < 2 || sum <= 0 ? null : key;
    }

    /// <summary>Whether a part is of the drink itself, and its share is known.</summary>
    public static bool Counts(Part part) => part.Phase is PartPhase.Mix or PartPhase.Top or PartPhase.TakenOut && part.Item is not null && part.IsWeighed;

    /// <summary>What one item adds to a number that a set of items shares; a sum, since their order says nothing.</summary>
    public static long ShareOf(string item)
    {
        long hash = StringComparer.Ordinal.GetHashCode(item) * 0x1E37_79B9_7F4A_7C15L;
        return hash ^ (hash >> 29);
    }
}
