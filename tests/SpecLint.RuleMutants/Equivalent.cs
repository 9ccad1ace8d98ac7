namespace SpecLint.RuleMutants;

/// <summary>Mutations that mean the same as what is written, or that only decide how fast it is answered, each with the reason.</summary>
internal static class Equivalent
{
    private static readonly (string Path, string Words, string Reason)[] All =
    [
    ];

    /// <summary>Why a mutation changes nothing; <see langword="null"/> where none is known.</summary>
    public static string? Because(Mutation mutation) => All.FirstOrDefault(e => e.Path == mutation.Path && e.Words == mutation.Words).Reason;
}
