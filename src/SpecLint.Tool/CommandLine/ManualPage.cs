using System.CommandLine;
using SpecLint.Tool.Verbs;

namespace SpecLint.Tool;

/// <summary>The command as a page for <c>man</c>, in the macros of man(7).</summary>
internal static class ManualPage
{
    /// <summary>Writes it.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="root">The command, with its verbs and their options.</param>
    /// <param name="verbs">The verbs, for their examples.</param>
    /// <param name="version">Version of the command.</param>
    public static void Write(TextWriter writer, Command root, IReadOnlyList<Verb> verbs, string version)
    {
        writer.Write($".TH SPECLINT 1 \"\" \"SpecLint {version}\" \"User commands\"\n");
        writer.Write(".SH NAME\nspeclint \\- lints the JSON recipes of a bar\n");
        writer.Write(".SH SYNOPSIS\n.B speclint\n.I VERB\n[\\fIOPTIONS\\fR] [\\fIARGUMENTS\\fR]\n");
        writer.Write(".SH DESCRIPTION\n" + Text(root.Description) + "\n");
        writer.Write(".SH VERBS\n");
        foreach (var command in root.Subcommands.Where(c => !c.Hidden))
        {
            writer.Write($".SS speclint {Text(command.Name)}{string.Concat(command.Arguments.Select(a => " " + Text(Usage(a))))}"
                + $"\n{Text(command.Description)}\n");
            foreach (var argument in command.Arguments)
                writer.Write($".TP\n.I {Text(argument.HelpName ?? argument.Name)}\n{Text(argument.Description)}\n");
            foreach (var option in command.Options.Where(o => !o.Hidden && o is not System.CommandLine.Help.HelpOption))
                writer.Write($".TP\n.B {Text(option.Name)}{(option.HelpName is { } value ? $" \\fI{Text(value)}\\fR" : "")}"
                    + $"\n{Text(option.Description)}\n");
            var examples = verbs.FirstOrDefault(v => v.Name == command.Name)?.Examples ?? [];
            if (examples.Count > 0)
                writer.Write($".PP\n{(examples.Count == 1 ? "Example:" : "Examples:")}"
                    + $"\n.PP\n.nf\n{string.Concat(examples.Select(e => Text(e) + "\n"))}.fi\n");
        }

        writer.Write(".SH EXIT STATUS\n.TP\n0\nNothing at or above the threshold.\n.TP\n1\nFindings.\n.TP\n2\nWrong usage, or input "
            + "that cannot be read.\n.TP\n3\nA fault of the tool.\n");
        writer.Write(".SH ENVIRONMENT\n.TP\nNO_COLOR\nIf set and not empty, text is not coloured.\n");
        writer.Write(".SH CAUTION\nSpecLint does not replace a house's food\\-safety plan, local law or the judgement of a trained "
            + "person. Its findings defer to all three.\n");
    }

    private static string Usage(Argument argument)
    {
        string name = argument.Name;
        if (argument.Arity.MaximumNumberOfValues > 1) name += "...";
        return argument.Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name;
    }

    /// <summary>Text in which nothing is a command of the typesetter.</summary>
    private static string Text(string? text)
    {
        string safe = (text ?? "")
            .Replace("\\", "\\e", StringComparison.Ordinal)
            .Replace("-", "\\-", StringComparison.Ordinal)
            .Replace("\n", " ", StringComparison.Ordinal);
        return safe.StartsWith('.') || safe.StartsWith('\'') ? "\\&" + safe : safe;
    }
}
