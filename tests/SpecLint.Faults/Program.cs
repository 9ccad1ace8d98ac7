using SpecLint.Faults;

// Lets every system call of every write path fail in turn, and looks at what is left. FaultTests builds the shim and runs this with
// LD_PRELOAD; the only argument is the shim's file, and those after it choose write paths by a part of their names.
if (args.Length == 0)
{
    Console.Error.WriteLine("Usage: LD_PRELOAD=SHIM dotnet SpecLint.Faults.dll SHIM [NAME…]");
    return 2;
}

if (args is ["once", var name, var folder])
{
    // A process of its own, which the shim ends at one call.
    WritePaths.All.First(p => p.Name == name).Run(folder);
    return 0;
}

if (WritePaths.Forgotten is { Count: > 0 } forgotten)
{
    Console.WriteLine($"Neither among the write paths nor among the verbs that write nothing of their own: {string.Join(", ", forgotten)}.");
    return 1;
}

var chosen = WritePaths.All.Where(p => args.Length == 1 || args.Skip(1).Any(a => p.Name.Contains(a, StringComparison.Ordinal)));
var trial = new Trial(new Shim(args[0]));
foreach (var path in chosen) trial.Try(path);
Console.WriteLine($"{trial.Points} fault points (at {trial.Deaths} the process was ended) in {trial.Paths} write paths, {trial.Runs} "
    + $"runs, {trial.Broken} broken.");
return trial.Broken == 0 && trial.Points > 0 ? 0 : 1;
