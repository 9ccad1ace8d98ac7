namespace SpecLint.Tool;

/// <summary>Wrong usage, or input that cannot be read: one clear sentence, and exit status 2.</summary>
internal sealed class UsageException : Exception
{
    public UsageException()
    {
    }

    public UsageException(string message)
        : base(message)
    {
    }

    public UsageException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
