using System.Diagnostics;
using System.Text;

namespace SpecLint.TestSupport;

/// <summary>Other programs that a test runs.</summary>
internal static class Programs
{
    /// <summary>Whether a program is on the path.</summary>
    public static bool Has(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(p => File.Exists(Path.Combine(p, name)));

    /// <summary>Runs a program to its end.</summary>
    /// <param name="folder">The folder that it runs in.</param>
    /// <param name="program">The program.</param>
    /// <param name="args">Its arguments.</param>
    /// <param name="variables">Variables of its environment, beside those of this process; one without a value is taken out.</param>
    public static ProgramRun Run(string folder, string program, IEnumerable<string> args, params (string Name, string? Value)[] variables)
    {
        var start = new ProcessStartInfo(program, args) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = Encoding.UTF8 };

        // The command line of .NET says what it does and nothing else, and leaves no process behind.
        foreach (var (name, value) in (ReadOnlySpan<(string, string?)>)[("DOTNET_CLI_TELEMETRY_OPTOUT", "1"), ("DOTNET_NOLOGO", "1"), ("DOTNET_CLI_UI_LANGUAGE", "en"), ("MSBUILDDISABLENODEREUSE", "1"), .. variables])
        {
            if (value is null) start.Environment.Remove(name);
            else start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new ProgramRun(process.ExitCode, output, error.Result);
    }
}

/// <summary>What a program came to.</summary>
/// <param name="Status">Exit status.</param>
/// <param name="Output">What it wrote to standard output.</param>
/// <param name="Error">What it wrote to standard error.</param>
internal readonly record struct ProgramRun(int Status, string Output, string Error)
{
    /// <summary>Both, the output first.</summary>
    public string Text => Output + Error;

    /// <summary>Status and text.</summary>
    public void Deconstruct(out int status, out string text) => (status, text) = (Status, Text);
}
