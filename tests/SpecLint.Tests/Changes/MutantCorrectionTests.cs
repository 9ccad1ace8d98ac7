using SpecLint.Mutants;
using Xunit.Abstractions;

namespace SpecLint.Tests.Changes;

/// <summary>Every correction that is offered on a recipe with a mistake in it puts it right, and brings no error or warning.</summary>
public sealed class MutantCorrectionTests(ITestOutputHelper output)
{
    [Fact]
    public void Corrections_put_mutants_right()
    {
        int cases = LongRun.Cases(220, 10_000);
        var wrong = new List<string>();
        int tried = CorrectionTrials.Run(cases, 20261129, wrong.Add);
        foreach (var group in wrong.GroupBy(w => w[..6]).OrderByDescending(g => g.Count())) output.WriteLine($"{group.Key} {group.Count()}");
        output.WriteLine($"{tried} corrections of {cases} mutants, {wrong.Count} wrong");
        foreach (string one in wrong) output.WriteLine(one);
        Assert.True(tried > cases / 2, $"{tried} corrections");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {tried} corrections:\n{string.Join("\n", wrong.Take(30))}");
    }
}
