using SpecLint.Findings;

namespace SpecLint.Rules;

/// <summary>A rule about acceptances; it runs when all other findings are known.</summary>
public abstract class AcceptanceRule : Rule
{
    /// <summary>Checks one acceptance.</summary>
    public abstract void Check(BookContext context, AcceptanceUse use);
}
