using System.Globalization;
using SpecLint.Fuzz;

// run SECONDS FOLDER [TARGET…]: fuzzes each target for so long, guided by coverage where the assemblies are instrumented; crashes go
// into the folder. Prints a line for each target and the sum.
// afl TARGET: hands the target to a fuzzer outside, as AFL++ with "afl-fuzz … -- dotnet SpecLint.Fuzz.dll afl TARGET".
// try TARGET FILE…: hands files to a target, as to see a crash again.
// seeds FOLDER TARGET: writes the inputs that a target begins with.
Coverage.Start();
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(4));
switch (args)
{
    case ["run", var seconds, var folder, .. var names]:
        return RunAll(TimeSpan.FromSeconds(double.Parse(seconds, CultureInfo.InvariantCulture)), folder, names);
    case ["afl", var name]:
        var outside = Find(name);
        SharpFuzz.Fuzzer.Run(stream =>
        {
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            outside.Run(bytes.ToArray());
        });
        return 0;
    case ["try", var name, .. var files]:
        foreach (string file in files) Find(name).Run(File.ReadAllBytes(file));
        return 0;
    case ["seeds", var folder, var name]:
        Directory.CreateDirectory(folder);
        int count = 0;
        foreach (byte[] seed in Find(name).Seeds())
            File.WriteAllBytes(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{count++:0000}")), seed);
        return 0;
    default:
        Console.Error.WriteLine("Usage: SpecLint.Fuzz run SECONDS FOLDER [TARGET…] | afl TARGET | try TARGET FILE… | seeds FOLDER TARGET");
        Console.Error.WriteLine("Targets: " + string.Join(", ", Targets.All.Select(t => t.Name)));
        return 2;
}

static Target Find(string name) => Targets.All.First(t => t.Name == name);

static int RunAll(TimeSpan time, string folder, string[] names)
{
    Watchdog.Start(folder);
    long executions = 0;
    int crashes = 0, number = 0;

    // Other inputs each day, the same ones where FUZZ_SEED says so.
    int seed = int.TryParse(
        Environment.GetEnvironmentVariable("FUZZ_SEED"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int given)
        ? given
        : Environment.TickCount;
    var chosen = names.Length == 0 ? Targets.All : [.. names.Select(Find)];
    foreach (var target in chosen)
    {
        var campaign = new Campaign(target, folder);
        campaign.Run(time, seed);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{target.Name}: {campaign.Executions:N0} executions in {time.TotalSeconds:0} s, {campaign.Edges} edges, {campaign.Kept} "
                + $"inputs kept, {campaign.Crashes} crashes"));
        executions += campaign.Executions;
        crashes += campaign.Crashes;
        number++;
    }

    Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{executions:N0} executions in {number} targets and {number * time.TotalSeconds:0} s, seed {seed}, {crashes} crashes."));
    return crashes == 0 ? 0 : 1;
}
