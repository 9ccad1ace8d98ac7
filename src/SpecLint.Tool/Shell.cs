using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Reflection;
using SpecLint.Reports;
using SpecLint.Tool.Verbs;
using Verb = SpecLint.Tool.Verbs.Verb;

namespace SpecLint.Tool;

/// <summary>The command line: verbs, help, exit status, and one sentence for whatever goes wrong.</summary>
internal static class Shell
{
    /// <summary>Set to 1, a fault prints where in the program it happened.</summary>
    public const string TraceVariable = "SPECLINT_TRACE";

    /// <summary>Version of the product.</summary>
    public static string Version { get; } = VersionOfAssembly();

    /// <summary>
    /// All verbs, in the order of the help, made anew: a verb holds its options. A
    /// verb is one file in <c>Verbs/</c> and one line here.
    /// </summary>
    public static IReadOnlyList<Verb> Verbs =>
    [
        new CheckVerb(),
        new CombineVerb(),
        new FindVerb(),
        new ProfileVerb(),
        new CorrectVerb(),
        new AdjustVerb(),
        new CompareVerb(),
        new BaselineVerb(),
        new LineCheckVerb(),
        new EventVerb(),
        new LabelsVerb(),
        new TraceVerb(),
        new ScaleVerb(),
        new CostsVerb(),
        new PricesVerb(),
        new RecordVerb(),
        new RulesVerb(),
        new SettingsVerb(),
        new CardVerb(),
        new GuestsVerb(),
        new NewVerb(),
        new WriteUpVerb(),
        new HookVerb(),
        new StartVerb(),
        new BenchVerb(),
        new NeatenVerb(),
        new EditorVerb(),
        new CompletionVerb(),
        new ManualVerb(),
    ];

    /// <summary>Runs the tool.</summary>
    /// <returns>The exit status.</returns>
    public static int Run(IReadOnlyList<string> args, Host host)
    {
        try
        {
            // What every pipeline runs on every change does not wait until all other verbs have told their options.
            var root = Build(host, args is [CheckVerb.Word, ..] ? [new CheckVerb()] : Verbs);
            if (ShellWords.IsAsked(args)) return ShellWords.Answer(root, args, host);
            var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            bool asksForHelp = parsed.Action is not (ParseErrorAction or null) && parsed.Errors.Count > 0;
            var mistakes = asksForHelp || parsed.Action is HelpWithExamples or PrintVersion ? [] : Mistakes.Of(parsed, args);
            if (mistakes.Count > 0)
            {
                foreach (string mistake in mistakes) Say(host, mistake);
                string verb = parsed.CommandResult.Command == root ? "" : parsed.CommandResult.Command.Name + " ";
                host.Error.WriteLine($"Run 'speclint {verb}--help' to see how it is used.");
                return ExitStatus.Usage;
            }

            using var output = Host.WriterTo(host.Output);
            int status = parsed.Invoke(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                Output = output,
                Error = host.Error,
                ProcessTerminationTimeout = null,
            });
            output.Flush();
            return status;
        }
        catch (UsageException wrong)
        {
            Say(host, wrong.Message);
            return ExitStatus.Usage;
        }
        catch (HouseRuleException fault)
        {
            Say(host, fault.Message);
            if (host.Variable(TraceVariable) == "1") host.Error.WriteLine(fault);
            return ExitStatus.Fault;
        }
        catch (Exception lack) when (lack is OutOfMemoryException or TooLittleMemoryException)
        {
            Say(
                host,
                $"there is not enough memory: {(lack is TooLittleMemoryException ? lack.Message : "the process may not take more")}. "
                    + $"Check parts of the book, or give it more.");
            return ExitStatus.Fault;
        }
#pragma warning disable CA1031 // Whatever it is, the user gets one sentence and a status that says whose fault it is.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Say(host, $"this is a fault of the tool, not of your book: {fault.GetType().Name}, {fault.Message}");
            if (host.Variable(TraceVariable) == "1") host.Error.WriteLine(fault);
            else host.Error.WriteLine($"Set {TraceVariable}=1 to see where it happened.");
            return ExitStatus.Fault;
        }
    }

    /// <summary>One sentence on standard error, hostile text shown as escapes.</summary>
    public static void Say(Host host, string sentence) => host.Error.WriteLine(DisplayText.Escape("speclint: " + sentence));

    private static RootCommand Build(Host host, IReadOnlyList<Verb> verbs)
    {
        var root = new RootCommand("Recalculates the recipes of a bar and says what is wrong, "
            + "by how much, according to whom, and what would put it right.");
        var examples = new Dictionary<Command, IReadOnlyList<string>>();
        foreach (var verb in verbs)
        {
            var command = new Command(verb.Name, verb.Description);
            verb.Define(command);
            ShellWords.Attach(command, host);
            command.SetAction(parsed => verb.Run(parsed, host));
            root.Subcommands.Add(command);
            examples.Add(command, verb.Examples);
        }

        foreach (var option in root.Options)
        {
            if (option is HelpOption { Action: HelpAction inner } help) help.Action = new HelpWithExamples(inner, examples);
            if (option is VersionOption version) version.Action = new PrintVersion();
        }

        return root;
    }

    private static string VersionOfAssembly()
    {
        string version = typeof(Shell).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0.0.0";
        int build = version.IndexOf('+', StringComparison.Ordinal);
        return build < 0 ? version : version[..build];
    }

    /// <summary>The help of System.CommandLine, at 80 columns, with examples beneath.</summary>
    private sealed class HelpWithExamples(HelpAction inner, Dictionary<Command, IReadOnlyList<string>> examples) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            inner.MaxWidth = DisplayText.Columns;
            inner.Invoke(parseResult);
            var output = parseResult.InvocationConfiguration.Output;
            if (examples.TryGetValue(parseResult.CommandResult.Command, out var lines))
            {
                output.WriteLine(lines.Count == 1 ? "Example:" : "Examples:");
                foreach (string line in lines) output.WriteLine("  " + line);
                output.WriteLine();
            }

            output.WriteLine("Exit status: 0 nothing at or above the threshold, 1 findings, 2 usage or");
            output.WriteLine("unreadable input, 3 a fault of the tool.");
            return ExitStatus.Clean;
        }
    }

    private sealed class PrintVersion : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            parseResult.InvocationConfiguration.Output.WriteLine(Version);
            return ExitStatus.Clean;
        }
    }
}
