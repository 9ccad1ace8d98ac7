namespace SpecLint.Tool;

/// <summary>A rule of the house's own fell over: one sentence that names it.</summary>
internal sealed class HouseRuleException : Exception
{
    public HouseRuleException()
    {
    }

    public HouseRuleException(string message)
        : base(message)
    {
    }

    public HouseRuleException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
