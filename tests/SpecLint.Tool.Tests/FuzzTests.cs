using Xunit.Abstractions;

namespace SpecLint.Tool.Tests;

/// <summary>A short run of every fuzz target; SpecLint.Fuzz says what must hold, and what breaks it is left in artifacts/fuzz.</summary>
public class FuzzTests(ITestOutputHelper output)
{
    [LongFact]
    public void No_target_breaks_within_some_seconds()
    {
        var run = Programs.Run(Repository.Root, "bash", [".ci/fuzz", "10"], ("CI", null));
        output.WriteLine(run.Text);
        Assert.True(run.Status == 0, run.Text);
        Assert.Matches(@"[0-9,]+ executions in 1[0-9] targets and [0-9]+ s, seed -?[0-9]+, 0 crashes[.]", run.Output);

        // Without the instrumentation it would search blindly, and no edge would be counted.
        Assert.DoesNotContain(" 0 edges", run.Output, StringComparison.Ordinal);
    }
}
