using SpecLint.Reports;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

public class HelpTests
{
    public static TheoryData<string> Verbs
    {
        get
        {
            var names = new TheoryData<string>();
            foreach (var verb in Shell.Verbs) names.Add(verb.Name);
            return names;
        }
    }

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Every_verb_explains_itself_with_an_example(string verb)
    {
        var run = ToolRun.In(Path.GetTempPath(), verb, "--help");
        Assert.Equal(0, run.Status);
        Assert.Contains("Example", run.Output, StringComparison.Ordinal);
        Assert.Contains($"  speclint {verb}", run.Output, StringComparison.Ordinal);
        Assert.Contains("Exit status:", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.True(DisplayText.Width(line) <= 80, line));
    }

    [Fact]
    public void The_help_names_every_verb()
    {
        var run = ToolRun.In(Path.GetTempPath(), "--help");
        Assert.Equal(0, run.Status);
        Assert.All(Shell.Verbs, verb => Assert.Contains("  " + verb.Name, run.Output, StringComparison.Ordinal));
    }

    [Fact]
    public void The_version_is_one_line()
    {
        var run = ToolRun.In(Path.GetTempPath(), "--version");
        Assert.Equal(0, run.Status);
        Assert.Matches(@"^\d+\.\d+\.\d+\S*\n$", run.Output);
    }

    [Fact]
    public void A_shell_can_ask_for_completions()
    {
        var run = ToolRun.In(Path.GetTempPath(), "[suggest:3]", "che");
        Assert.Equal(0, run.Status);
        Assert.Contains("check", run.Output.Split('\n'));
    }
}
