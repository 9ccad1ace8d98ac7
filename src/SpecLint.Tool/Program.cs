using System.ComponentModel;
using SpecLint.Tool;

// A pattern in a schema of the house can be written so that it searches for years; no pattern of our own comes near this.
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(4));
Host host;
try
{
    host = Host.OfProcess();
}
catch (Exception e) when (IoFault.Is(e) || e is Win32Exception)
{
    // Neither stream is there, as where a process may open hardly any file.
    LastWords.Say($"speclint: the streams of the process cannot be opened: {IoFault.Reason(e)}.");
    return ExitStatus.Fault;
}

using var page = ConsolePage.UseUtf8(
    OperatingSystem.IsWindows(), host.OutputIsTerminal, static () => Console.OutputEncoding, static e => Console.OutputEncoding = e);
return Shell.Run(args, host);
