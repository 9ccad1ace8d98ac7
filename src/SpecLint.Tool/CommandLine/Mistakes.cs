using System.CommandLine;
using System.CommandLine.Parsing;

namespace SpecLint.Tool;

/// <summary>What a parser lets pass and a person did not mean: an unknown verb or option, an empty argument.</summary>
internal static class Mistakes
{
    /// <summary>What is wrong with a command line, a sentence each; none where it can be run.</summary>
    public static IReadOnlyList<string> Of(ParseResult parsed, IReadOnlyList<string> args)
    {
        var root = parsed.RootCommandResult.Command;
        var command = parsed.CommandResult.Command;

        // A verb is missing or not known: what the parser says of the rest is of no use.
        if (command == root && args.Count > 0 && parsed.Errors.Count > 0 && !args[0].StartsWith('-'))
            return [$"there is no verb {args[0]}.{Suggestion.For(args[0], root.Subcommands.Select(c => c.Name))} 'speclint --help' lists them."];

        var wrong = new List<string>();
        foreach (var token in parsed.Tokens)
        {
            // Behind a lone -- everything is a name.
            if (token.Type == TokenType.DoubleDash) break;
            if (token.Type != TokenType.Argument) continue;
            if (token.Value.Length == 0) wrong.Add("an argument is empty; is a variable of the shell not set?");
            else if (token.Value.StartsWith("--", StringComparison.Ordinal))
            {
                string name = token.Value.Split('=', 2)[0];
                wrong.Add($"{command.Name} has no option {name}.{Suggestion.For(name, command.Options.Select(o => o.Name))} A file of "
                    + $"that name goes behind '--'.");
            }
        }

        return wrong.Count > 0 ? wrong : [.. parsed.Errors.Select(e => e.Message)];
    }
}
