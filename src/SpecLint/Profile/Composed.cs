namespace SpecLint.Profile;

/// <summary>What is not known of a recipe, and why.</summary>
/// <param name="What">What is not known; <see cref="Unknowns.None"/> where all is.</param>
/// <param name="Because">The reasons in words, parted by semicolons; empty where all is known.</param>
internal readonly record struct Lack(Unknowns What, string Because)
{
    /// <summary>Nothing is unknown.</summary>
    public static Lack None => new(Unknowns.None, "");

    private const int MostReasons = 12;

    private static readonly string[] Parting = ["; "];

    /// <summary>
    /// Reasons as one text. What is named twice, here or in a preparation of a preparation, stands once, and no more than
    /// twelve are named: else the text would double with each level of a book.
    /// </summary>
    public static string Join(List<string> reasons)
    {
        if (reasons.Count == 1) return reasons[0];
        var all = new List<string>();
        foreach (string reason in reasons)
        {
            foreach (string one in reason.Split(Parting, StringSplitOptions.None))
            {
                if (all.Contains(one)) continue;
                if (all.Count == MostReasons) return string.Join("; ", all) + "; and more";
                if (one != "and more") all.Add(one);
            }
        }

        return string.Join("; ", all);
    }

    /// <summary>Whether any of these is not known.</summary>
    public bool Has(Unknowns any) => (What & any) != 0;

    /// <summary>With more that is not known.</summary>
    public Lack And(Unknowns what, string because) => new(What | what, Because.Length == 0 ? because : $"{Because}; {because}");

    /// <summary>Without what has become known.</summary>
    public Lack Without(Unknowns what) => (What & ~what) == Unknowns.None ? None : this with { What = What & ~what };
}

/// <summary>A composition as far as it is known: what one room hands to the next.</summary>
/// <param name="Mix">Masses with their ranges; not changed any more.</param>
/// <param name="Lack">What is not known of it.</param>
internal readonly record struct Composed(Mix Mix, Lack Lack);
