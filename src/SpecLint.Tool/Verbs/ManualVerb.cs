using System.CommandLine;

namespace SpecLint.Tool.Verbs;

/// <summary><c>manual</c>: the man page, made from the text of the help.</summary>
internal sealed class ManualVerb : Verb
{
    public override string Name => "manual";

    public override string Description => "Prints the man page of the command, with every verb and option.";

    public override IReadOnlyList<string> Examples => ["speclint manual > ~/.local/share/man/man1/speclint.1"];

    public override void Define(Command command)
    {
    }

    public override int Run(ParseResult parsed, Host host)
    {
        ResultOutput.DeliverText(host, path: null, writer => ManualPage.Write(writer, parsed.RootCommandResult.Command, Shell.Verbs, Shell.Version));
        return ExitStatus.Clean;
    }
}
