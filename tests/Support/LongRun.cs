namespace SpecLint.LongTests;

/// <summary>
/// Tells the two test runs apart: the one of every change, which ends within minutes, and the long one of <c>.ci/long</c>
/// (hundreds of real kills, native packing, browsers, properties over 100,000 cases), which sets <c>SPECLINT_LONG=1</c>.
/// </summary>
internal static class LongRun
{
    /// <summary>Whether this is the long run.</summary>
    public static bool IsOn { get; } = Environment.GetEnvironmentVariable("SPECLINT_LONG") == "1";

    /// <summary>Why a test is skipped in the short run.</summary>
    public const string Reason = "Runs in the long test run: bash .ci/long";

    /// <summary>How many cases a property is tried on in this run.</summary>
    public static int Cases(int shortRun, int longRun) => IsOn ? longRun : shortRun;
}

/// <summary>A fact of the long run.</summary>
[AttributeUsage(AttributeTargets.Method)]
public class LongFactAttribute : FactAttribute
{
    /// <summary>Skips the test, and says so, in the short run.</summary>
    public LongFactAttribute()
    {
#pragma warning disable MA0056 // xUnit reads Skip of the attribute it finds; no attribute overrides it.
        if (!LongRun.IsOn) Skip = LongRun.Reason;
#pragma warning restore MA0056
    }
}

/// <summary>A theory of the long run.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class LongTheoryAttribute : TheoryAttribute
{
    /// <summary>Skips the test, and says so, in the short run.</summary>
    public LongTheoryAttribute()
    {
        if (!LongRun.IsOn) Skip = LongRun.Reason;
    }
}
