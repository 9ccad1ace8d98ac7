namespace SpecLint.Tests.Properties;

/// <summary>
/// A property that does not hold on every case yet. It is kept out of the suite, and the run says so; with
/// <c>SPECLINT_OPEN=1</c> it runs and prints the books on which it fails.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class OpenPropertyAttribute : FactAttribute
{
    public OpenPropertyAttribute()
    {
        if (Environment.GetEnvironmentVariable("SPECLINT_OPEN") != "1") Skip = "Does not hold on every case yet; SPECLINT_OPEN=1 runs it and prints the books.";
    }
}
