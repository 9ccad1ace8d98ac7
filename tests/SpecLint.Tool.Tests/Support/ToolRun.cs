using System.Text;
using SpecLint.Reading;

namespace SpecLint.Tool.Tests.Support;

/// <summary>One run of the tool in this process.</summary>
internal sealed record ToolRun(int Status, byte[] Bytes, string Error)
{
    /// <summary>The day on which the tests' bar is open.</summary>
    public const string Day = "2026-11-25";

    public string Output => Encoding.UTF8.GetString(Bytes);

    public static ToolRun In(string folder, params string[] args) => With(folder, new RunOptions(), args);

    public static ToolRun With(string folder, RunOptions options, params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var host = new Host
        {
            Output = output,
            Input = new MemoryStream(Encoding.UTF8.GetBytes(options.Input)),
            Error = error,
            CurrentDirectory = folder,
            Today = () => CalendarDate.Parse(options.Today)!.Value,
            Variable = name => options.Variables.TryGetValue(name, out string? value) ? value : null,
            OutputIsTerminal = options.Terminal,
            ErrorIsTerminal = options.Terminal,
            TerminalColumns = options.Columns,
            PageFolder = options.PageFolder,
            WaitForChange = options.WaitForChange,
        };
        int status = Shell.Run(args, host);
        return new ToolRun(status, output.ToArray(), error.ToString());
    }
}

/// <summary>The world of a run.</summary>
internal sealed record RunOptions
{
    public bool Terminal { get; init; }

    public string Today { get; init; } = ToolRun.Day;

    public int Columns { get; init; }

    public string PageFolder { get; init; } = "";

    public string Input { get; init; } = "";

    public Func<string, bool> WaitForChange { get; init; } = _ => false;

    public IReadOnlyDictionary<string, string> Variables { get; init; } = new Dictionary<string, string>();
}
