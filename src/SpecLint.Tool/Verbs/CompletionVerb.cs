using System.CommandLine;

namespace SpecLint.Tool.Verbs;

/// <summary><c>completion</c>: a script that lets a shell complete the command.</summary>
internal sealed class CompletionVerb : Verb
{
    private static readonly Dictionary<string, string> Scripts = new(StringComparer.Ordinal)
    {
        ["bash"] = """
            # Words from the tool; where it has none, files.
            _speclint() {
              local words
              mapfile -t words < <(speclint "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)
              COMPREPLY=("${words[@]}")
            }
            complete -o default -F _speclint speclint
            """,
        ["zsh"] = """
            #compdef speclint
            # Words from the tool; where it has none, files.
            _speclint() {
              local line="${(j: :)words[1,CURRENT]}"
              local -a found
              found=("${(@f)$(speclint "[suggest:${#line}]" "$line" 2>/dev/null)}")
              found=(${found:#})
              if (( ${#found} )); then compadd -a found; else _files; fi
            }
            compdef _speclint speclint
            """,
        ["fish"] = """
            # Words from the tool; where it has none, files.
            function __speclint_words
                set -l line (commandline -cp)
                set -l found (speclint "[suggest:"(string length -- $line)"]" $line 2>/dev/null)
                if test (count $found) -gt 0
                    printf '%s\n' $found
                else
                    __fish_complete_path (commandline -ct)
                end
            end
            complete -c speclint -f -a '(__speclint_words)'
            """,
        ["powershell"] = """
            # Words from the tool; where it has none, files.
            Register-ArgumentCompleter -Native -CommandName speclint -ScriptBlock {
                param($wordToComplete, $commandAst, $cursorPosition)
                $line = $commandAst.ToString().PadRight($cursorPosition)
                speclint "[suggest:$cursorPosition]" "$line" 2>$null | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                }
            }
            """,
    };

    private readonly Argument<string> shell = new("SHELL") { Description = "The shell.", HelpName = "bash|zsh|fish|powershell" };

    public CompletionVerb()
    {
        shell.CompletionSources.Add([.. Scripts.Keys]);
        shell.Validators.Add(result =>
        {
            string word = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (word.Length > 0 && !Scripts.ContainsKey(word))
                result.AddError($"completion knows bash, zsh, fish and powershell, not '{word}'.{Suggestion.For(word, Scripts.Keys)}");
        });
    }

    public override string Name => "completion";

    public override string Description => "Prints a script with which a shell completes verbs, options, files, and the ids of recipes and rules.";

    public override IReadOnlyList<string> Examples =>
    [
        "source <(speclint completion bash)",
        "speclint completion zsh > ~/.zfunc/_speclint",
        "speclint completion fish > ~/.config/fish/completions/speclint.fish",
        "speclint completion powershell | Out-String | Invoke-Expression",
    ];

    public override void Define(Command command) => command.Arguments.Add(shell);

    public override int Run(ParseResult parsed, Host host)
    {
        ResultOutput.DeliverText(host, path: null, writer => writer.WriteLine(Scripts[parsed.GetValue(shell)!]));
        return ExitStatus.Clean;
    }
}
