using SpecLint.Tool.Tests.Support;
using Xunit.Abstractions;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>
/// Every system call of every write path fails in turn: no space, no right, an interrupted call, half a write, another device, a flush
/// or a close that fails, a disk that is gone from then on. SpecLint.Faults says what must hold; errors are those of the manual pages
/// of Linux for each call.
/// </summary>
public class FaultTests(ITestOutputHelper output)
{
#if DEBUG
    private const string Configuration = "Debug";
#else
    private const string Configuration = "Release";
#endif

    [ShimFact]
    public void A_fault_at_any_call_loses_nothing_and_is_told()
    {
        using var folder = new TestFolder();
        var built = Programs.Run(folder.Path, "gcc", ["-shared", "-fPIC", "-O1", "-Wall", "-o", folder["faults.so"], Repository.At("tests", "SpecLint.Faults", "faults.c"), "-ldl", "-lpthread"]);
        Assert.True(built.Status == 0, built.Text);
        string program = Repository.At("tests", "SpecLint.Faults", "bin", Configuration, "net10.0", "SpecLint.Faults.dll");
        var run = Programs.Run(folder.Path, "dotnet", [program, folder["faults.so"]], ("LD_PRELOAD", folder["faults.so"]));
        output.WriteLine(run.Text);
        Assert.True(run.Status == 0, run.Text);
        Assert.Matches(@"[0-9]{4} fault points [(]at [0-9]{3} the process was ended[)] in [0-9]{2} write paths, [0-9]+ runs, 0 broken[.]", run.Text);
    }

    private sealed class ShimFactAttribute : LongFactAttribute
    {
        public ShimFactAttribute() => Skip ??= !OperatingSystem.IsLinux() ? "The numbers of errors are those of Linux." : !Programs.Has("gcc") ? "gcc is not installed." : null;
    }
}
