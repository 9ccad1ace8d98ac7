namespace SpecLint.Tool;

/// <summary>Exit statuses: pipelines hang on them.</summary>
internal static class ExitStatus
{
    /// <summary>Nothing at or above the threshold.</summary>
    public const int Clean = 0;

    /// <summary>Findings at or above the threshold.</summary>
    public const int Findings = 1;

    /// <summary>Wrong usage, settings or input that cannot be read; also a run that found no file to check.</summary>
    public const int Usage = 2;

    /// <summary>A fault of the tool.</summary>
    public const int Fault = 3;
}
