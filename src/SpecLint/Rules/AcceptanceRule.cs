using SpecLint.Book;

namespace SpecLint.Rules;

/// <summary>An acceptance of a file, and what became of it.</summary>
/// <param name="File">The file that holds it.</param>
/// <param name="Acceptance">The acceptance.</param>
/// <param name="Covered">Number of findings that it covers.</param>
public sealed record AcceptanceUse(BookFile File, Acceptance Acceptance, int Covered);

/// <summary>A rule about acceptances; it runs when all other findings are known.</summary>
public abstract class AcceptanceRule : Rule
{
    /// <summary>Checks one acceptance.</summary>
    public abstract void Check(BookContext context, AcceptanceUse use);
}
