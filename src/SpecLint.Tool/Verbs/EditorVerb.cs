using System.CommandLine;
using SpecLint.Tool.Editor;

namespace SpecLint.Tool.Verbs;

/// <summary><c>editor</c>: findings while typing.</summary>
internal sealed class EditorVerb : Verb
{
    // Editors that start a server often add it; standard streams are the only way here.
    private readonly Option<bool> stdio = new("--stdio")
    {
        Description = "Use standard input and output. This is the only transport; "
        + "the option is accepted because some editors add it."
    };

    public override string Name => "editor";

    public override string Description => "Serves an editor over the Language Server Protocol: findings while typing, corrections, facts on hover.";

    public override IReadOnlyList<string> Examples => ["speclint editor"];

    public override void Define(Command command) => command.Options.Add(stdio);

    public override int Run(ParseResult parsed, Host host) => new EditorServer(host, host.Input, host.Output).Run();
}
