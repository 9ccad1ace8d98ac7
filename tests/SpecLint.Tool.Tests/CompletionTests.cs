using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests;

/// <summary>What a shell offers: words that begin with what is written, files where the tool has no word.</summary>
public class CompletionTests
{
    [Theory]
    [InlineData("speclint che", "check")]
    [InlineData("speclint check --form", "--format")]
    [InlineData("speclint check --format s", "sarif")]
    [InlineData("speclint card low-t", "low-tide")]
    [InlineData("speclint linecheck ev", "evening")]
    [InlineData("speclint labels --made sour-cu", "sour-cucumber")]
    [InlineData("speclint rules SL500", "SL5001", "SL5002", "SL5003", "SL5004", "SL5005", "SL5006", "SL5007", "SL5008", "SL5009")]
    [InlineData("speclint check --fail-at note my-bar/")]
    [InlineData("speclint scale tide")]
    public void A_word_is_completed_by_what_it_begins_with(string line, params string[] words)
    {
        using var demo = new DemoBook();
        var run = ToolRun.In(demo.Path, $"[suggest:{line.Length}]", line);
        Assert.Equal(0, run.Status);
        Assert.Equal(words, run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void The_ids_are_those_of_the_book_that_is_named()
    {
        using var demo = new DemoBook();
        string line = $"speclint scale --book \"{demo.Path}\" harbour-l";
        Assert.Equal("harbour-light\nharbour-light-batch\nharbour-light-freezer\n", ToolRun.In(Path.GetTempPath(), $"[suggest:{line.Length}]", line).Output);
    }

    [Fact]
    public void A_new_word_offers_no_options_and_what_stands_behind_the_cursor_does_not_count()
    {
        using var demo = new DemoBook();
        const string Line = "speclint pro --nonsense";
        Assert.Equal("profile\n", ToolRun.In(demo.Path, $"[suggest:{"speclint pro".Length}]", Line).Output);
        const string Blank = "speclint completion ";
        Assert.Equal(
            ["bash", "fish", "powershell", "zsh"],
            ToolRun.In(demo.Path, $"[suggest:{Blank.Length}]", Blank).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    // Each in its real shell, as it asks when the tab key is pressed.
    [ShellFact("bash")]
    public void It_works_in_bash()
    {
        string said = Ask("bash", """
            source speclint.sh
            COMP_LINE='speclint car' COMP_POINT=12; _speclint; echo "${COMPREPLY[*]}"
            COMP_LINE='speclint card low-t' COMP_POINT=19; _speclint; echo "${COMPREPLY[*]}"
            complete -p speclint
            """, "--norc", "--noprofile", "-c");
        Assert.Equal("card\nlow-tide\ncomplete -o default -F _speclint speclint\n", said);
    }

    [ShellFact("zsh")]
    public void It_works_in_zsh()
    {
        string said = Ask("zsh", """
            autoload -U compinit; compinit -u -D; source speclint.sh
            compadd() { print -r -- ${(P)2} }
            _files() { print files }
            words=(speclint car); CURRENT=2; _speclint
            words=(speclint card low-t); CURRENT=3; _speclint
            words=(speclint check low-tide.d); CURRENT=3; _speclint
            """, "-f", "-c");
        Assert.Equal("card\nlow-tide\nfiles\n", said);
    }

    [ShellFact("fish")]
    public void It_works_in_fish()
    {
        string said = Ask("fish", """
            source speclint.sh
            complete -C 'speclint car'
            complete -C 'speclint card low-t'
            complete -C 'speclint check low-tide.d'
            """, "-c");
        Assert.Equal("card\nlow-tide\nlow-tide.drink.json\n", said);
    }

    [ShellFact("pwsh")]
    public void It_works_in_powershell()
    {
        string said = Ask("pwsh", """
            Invoke-Expression (Get-Content -Raw speclint.sh)
            foreach ($line in 'speclint car', 'speclint card low-t') { (TabExpansion2 $line $line.Length).CompletionMatches.CompletionText }
            """, "-NoProfile", "-Command");
        Assert.Equal("card\nlow-tide\n", said.ReplaceLineEndings("\n"));
    }

    /// <summary>What a shell prints, in the demo book, with the tool on its path and its own completion script in <c>speclint.sh</c>.</summary>
    private static string Ask(string shell, string script, params string[] options)
    {
        using var demo = new DemoBook();
        using var bin = new TestFolder();
        string tool = bin["speclint"];
        File.WriteAllText(tool, $"#!/bin/sh\nexec dotnet '{typeof(Shell).Assembly.Location}' \"$@\"\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(tool, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        File.WriteAllText(Path.Combine(demo.Path, "speclint.sh"), ToolRun.In(demo.Path, "completion", shell == "pwsh" ? "powershell" : shell).Output);
        return Programs.Run(
            demo.Path, shell, [.. options, script], ("PATH", bin.Path + Path.PathSeparator + Environment.GetEnvironmentVariable("PATH")),
            ("HOME", bin.Path)).Text;
    }

    /// <summary>A fact that needs a shell; skipped, and said to be so, where it is not installed.</summary>
    private sealed class ShellFactAttribute : FactAttribute
    {
        public ShellFactAttribute(string shell)
        {
            bool isThere = !OperatingSystem.IsWindows() && Programs.Has(shell);
            if (!isThere) Skip = $"{shell} is not installed.";
        }
    }
}
