namespace SpecLint.Tool;

/// <summary>The process may take less memory than a book of so many files needs.</summary>
/// <param name="message">How much is needed, and how much there is.</param>
internal sealed class TooLittleMemoryException(string message) : Exception(message);
