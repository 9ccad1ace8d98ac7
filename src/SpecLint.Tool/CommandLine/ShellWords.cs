using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Parsing;
using System.Globalization;
using SpecLint.Book;
using SpecLint.Rules;

namespace SpecLint.Tool;

/// <summary>
/// What a shell may offer for the word at its cursor. The shell asks <c>speclint [suggest:COLUMN] "THE LINE"</c>, a convention of
/// System.CommandLine; the answer is a word a line, all of which begin with what is written. No word means: offer files.
/// </summary>
internal static class ShellWords
{
    private const string Question = "[suggest:";

    /// <summary>Kinds of files whose ids an argument or option of a name takes.</summary>
    private static readonly Dictionary<string, FileKind[]> KindsByName = new(StringComparer.Ordinal)
    {
        ["RECIPE"] = [FileKind.Drink, FileKind.Prep],
        ["RECIPE-OR-LOT"] = [FileKind.Drink, FileKind.Prep],
        ["ITEM"] = [FileKind.Drink, FileKind.Prep, FileKind.Ingredient],
        ["LOT"] = [FileKind.Prep, FileKind.Ingredient],
        ["MENU"] = [FileKind.Menu],
        ["STOCK"] = [FileKind.Stock],
        ["--menu"] = [FileKind.Menu],
        ["--stock"] = [FileKind.Stock],
        ["--item"] = [FileKind.Prep, FileKind.Ingredient],
        ["--made"] = [FileKind.Prep],
        ["--keep"] = [FileKind.Drink, FileKind.Prep, FileKind.Ingredient],
        ["--add"] = [FileKind.Prep, FileKind.Ingredient],
        ["--without"] = [FileKind.Prep, FileKind.Ingredient],
        ["--use"] = [FileKind.Prep, FileKind.Ingredient],
        ["--like"] = [FileKind.Drink, FileKind.Prep, FileKind.Ingredient],
    };

    /// <summary>Whether the command line asks for words in place of a run.</summary>
    public static bool IsAsked(IReadOnlyList<string> args) =>
        args.Count == 2 && args[0].StartsWith(Question, StringComparison.Ordinal) && args[0].EndsWith(']');

    /// <summary>Lets the arguments and options of a verb offer ids of the book, and rules.</summary>
    public static void Attach(Command command, Host host)
    {
        foreach (var argument in command.Arguments)
        {
            // Without it the help would list every id of the book in place of the argument's name.
            argument.HelpName ??= argument.Name;
            if (KindsByName.TryGetValue(argument.Name, out var kinds)) argument.CompletionSources.Add(context => Ids(context, command, host, kinds));
            if (argument.Name == "RULE") argument.CompletionSources.Add(static _ => RuleWords());
        }

        foreach (var option in command.Options)
        {
            if (KindsByName.TryGetValue(option.Name, out var kinds)) option.CompletionSources.Add(context => Ids(context, command, host, kinds));
        }
    }

    /// <summary>Ids and names of all rules.</summary>
    public static IEnumerable<CompletionItem> RuleWords() => RuleRegistry.All.Select(static r => new CompletionItem(r.Info.Id));

    /// <summary>Writes the words for a line.</summary>
    /// <returns>The exit status; 0 also where there is no word.</returns>
    public static int Answer(RootCommand root, IReadOnlyList<string> args, Host host)
    {
        string line = args[1];
        if (!int.TryParse(args[0].AsSpan(Question.Length..^1), NumberStyles.None, CultureInfo.InvariantCulture, out int column))
            return ExitStatus.Usage;
        string before = line[..Math.Min(column, line.Length)];
        var words = CommandLineParser.SplitCommandLine(before).ToList();
        bool startsNew = before.Length == 0 || char.IsWhiteSpace(before[^1]);
        string word = startsNew || words.Count == 0 ? "" : words[^1];

        // The first word is the command itself, by whatever name it was called.
        var behind = words.Skip(1).Take(words.Count - (startsNew ? 1 : 2)).ToList();
        var parsed = root.Parse(behind, new ParserConfiguration { ResponseFileTokenReplacer = null });
        var found = Candidates(parsed, behind, word)
            .Where(w => w.StartsWith(word, StringComparison.Ordinal))
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
        using var output = Host.WriterTo(host.Output);
        foreach (string label in found) output.WriteLine(label);
        return ExitStatus.Clean;
    }

    /// <summary>Values of the option before the word, else options for a word with a hyphen, else verbs, else what an argument takes.</summary>
    private static IEnumerable<string> Candidates(ParseResult parsed, List<string> behind, string word)
    {
        var command = parsed.CommandResult.Command;
        var context = parsed.GetCompletionContext();
        if (behind.Count > 0
            && command.Options.FirstOrDefault(o => o.Name == behind[^1]
                && o.Arity.MaximumNumberOfValues > 0
                && o.ValueType != typeof(bool)) is { } option)
            return option.GetCompletions(context).Select(static c => c.Label);
        if (word.StartsWith('-')) return command.Options.Where(static o => !o.Hidden).Select(static o => o.Name);
        return command.Subcommands.Count > 0
            ? command.Subcommands.Select(static c => c.Name)
            : command.Arguments.SelectMany(a => a.GetCompletions(context)).Select(static c => c.Label);
    }

    private static IEnumerable<CompletionItem> Ids(CompletionContext context, Command command, Host host, FileKind[] kinds)
    {
        string? named = command.Options.OfType<Option<string?>>().FirstOrDefault(static o => o.Name == "--book") is { } book
            ? context.ParseResult.GetValue(book)
            : null;
        try
        {
            string root = BookFolder.RootOf(host, named ?? ".");
            return BookFolder.PathsOf(root)
                .Where(path => FileKinds.Of(path) is { } kind && kinds.Contains(kind))
                .Select(static path => new CompletionItem(FileKinds.IdOf(path)));
        }
        catch (Exception e) when (e is UsageException || IoFault.Is(e))
        {
            // Somewhere a person only wanted a word: no book, no words.
            return [];
        }
    }
}
