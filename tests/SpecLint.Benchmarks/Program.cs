using System.Diagnostics;
using System.Globalization;
using SpecLint.Benchmarks;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

// A child process checks one book once, so that time and memory are those of a whole run and of nothing else.
if (args is ["--child", var folder, var threadsOfChild, var howFar]) return Child.Run(folder, int.Parse(threadsOfChild), howFar);

// Only writes a book, for a look at it or for a profiler.
if (args is ["--write", var target, var recipes, .. (["--notes"] or [])])
{
    new BookGenerator(int.Parse(recipes), 20261125) { WritesNotes = args.Length > 3 }.WriteTo(target);
    return 0;
}

if (args is ["--science", ..])
{
    BenchmarkDotNet.Running.BenchmarkRunner.Run<ScienceBenchmarks>(ScienceBenchmarks.Config);
    return 0;
}

if (args is ["--build"]) return BuildBenchmark.Run(RepositoryRoot(), recipes: 1_000, rounds: 4, seed: 20261125);

// What each rule about the whole book takes; an editor runs them after each change.
if (args is ["--book-rules", var ofSize])
{
    var input = new SpecLint.BookInput([.. new BookGenerator(int.Parse(ofSize), 20261125).Files().Select(f => new SpecLint.Reading.SourceFile(f.Path, f.Text))], SpecLint.Reading.CalendarDate.Of(2026, 11, 25)!.Value) { KeepsProfiles = false };
    var result = SpecLint.Checker.Check(input);
    foreach (var rule in SpecLint.Rules.RuleRegistry.All.OfType<SpecLint.Rules.BookRule>())
    {
        var times = Enumerable.Range(0, 9).Select(_ =>
        {
            var clock = Stopwatch.StartNew();
            new SpecLint.Rules.RuleSet([rule]).CheckBook(result.Book, result.Profiles, []);
            return clock.Elapsed.TotalMilliseconds;
        }).Order().ToList();
        Console.WriteLine($"{rule.Info.Id} {rule.Info.Name,-28} median {times[4],7:0.00} ms  first {times.Max(),7:0.00} ms");
    }

    return 0;
}

// The editor server: --editor TOOL [sizes] [edits].
if (args is ["--editor", var editorTool, ..])
{
    return EditorBenchmark.Run(
        Path.GetFullPath(editorTool),
        Path.Combine(RepositoryRoot(), "src", "SpecLint.Tool", "Demo"),
        args.Length > 2 ? [.. args[2].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)] : [10_000],
        args.Length > 3 ? int.Parse(args[3]) : 0);
}

int[] sizes = [1_000, 10_000, 100_000];
int threads = 2, runs = 3;
ulong seed = 20261125;
bool notes = false;
string? tool = null, ajv = null;
for (int i = 0; i < args.Length; i++)
{
    switch (args[i])
    {
        case "--sizes": sizes = [.. args[++i].Split(',').Select(int.Parse)]; break;
        case "--threads": threads = int.Parse(args[++i]); break;
        case "--runs": runs = int.Parse(args[++i]); break;
        case "--notes": notes = true; break;
        case "--seed": seed = ulong.Parse(args[++i]); break;
        case "--tool": tool = Path.GetFullPath(args[++i]); break;
        case "--ajv": ajv = Path.GetFullPath(args[++i]); break;
        default:
            Console.WriteLine("""
                Checks generated books and prints files a second, microseconds a recipe and peak memory.

                  --sizes 1000,10000,100000   recipes in each book
                  --threads 2                 threads
                  --runs 3                    runs of each; the median is printed
                  --seed 20261125             seed of the generator
                  --notes                     a note in each recipe
                  --tool PATH                 measure this speclint (the native one) too
                  --ajv FOLDER                a folder where 'npm install ajv-cli@5' ran: validate the same files
                                              against the drink and preparation schemas, for comparison
                  --science                   measure the models alone, by BenchmarkDotNet
                  --editor TOOL 10000 10000   measure the editor server of this tool: the demo book, books of these sizes, then
                                              memory over so many edits
                  --build                     measure what the plug-in adds to a build of 1,000 recipes
                  --write FOLDER 1000         only write a book of so many recipes (and --notes), and stop
                """);
            return args[i] == "--help" ? 0 : 2;
    }
}

var rows = new List<Row>();
foreach (int size in sizes)
{
    string book = Directory.CreateTempSubdirectory("speclint-bench-").FullName;
    try
    {
        long bytes = new BookGenerator(size, seed) { WritesNotes = notes }.WriteTo(book);
        Console.WriteLine($"{size:N0} recipes, {bytes / 1e6:0.0} MB");
        foreach (string part in Child.Parts) rows.Add(Measure(part, size, () => StartChild(book, part)));
        if (tool is not null) rows.Add(Measure("speclint", size, () => new ProcessStartInfo(tool, ["check", book, "--threads", threads.ToString(), "--on", "2026-11-25", "--format", "json", "--output", "/dev/null", "--fail-at", "never"])));
        if (ajv is not null)
        {
            foreach (string kind in new[] { "drink", "prep" }) rows.Add(Ajv(kind, size, book));
        }
    }
    finally
    {
        Directory.Delete(book, recursive: true);
    }
}

foreach (var growth in rows.Where(r => !r.Name.StartsWith("ajv", StringComparison.Ordinal)).GroupBy(r => r.Name).Where(g => g.Count() > 1))
{
    var small = growth.First();
    var large = growth.Last();
    Console.WriteLine($"{growth.Key}: {large.Recipes / small.Recipes} times the recipes took {large.Seconds / small.Seconds:0.0} times as long");
}

return 0;

ProcessStartInfo StartChild(string book, string part)
{
    string[] child = ["--child", book, threads.ToString(), part];
    return Path.GetFileNameWithoutExtension(Environment.ProcessPath!) == "dotnet"
        ? new ProcessStartInfo("dotnet", [typeof(Child).Assembly.Location, .. child])
        : new ProcessStartInfo(Environment.ProcessPath!, child);
}

Row Measure(string name, int size, Func<ProcessStartInfo> start)
{
    var results = Enumerable.Range(0, runs).Select(_ => Run(start())).OrderBy(r => r.Seconds).ToList();
    var median = results[results.Count / 2];
    double peak = results.Max(r => r.PeakBytes) / 1e6;
    double perRecipe = median.Seconds * 1e6 / size;
    Console.WriteLine($"  {name,-14} {median.Seconds,8:0.000} s  {size / median.Seconds,9:N0} files/s  {perRecipe,8:0.0} µs a recipe  {median.CoreSeconds * 1e6 / size,8:0.0} µs of a core  peak {peak,6:0} MB");
    return new Row(name, size, median.Seconds);
}

Row Ajv(string kind, int size, string book)
{
    string cli = Path.Combine(ajv!, "node_modules", ".bin", "ajv");
    string schema = Path.Combine(RepositoryRoot(), "schemas", $"{kind}.schema.json");
    string pattern = Path.Combine(book, kind == "drink" ? "drinks" : "preparations", "**", $"*.{kind}.json");
    var result = Run(new ProcessStartInfo(cli, ["validate", "--spec=draft2020", "--strict=false", "-s", schema, "-d", pattern, "--errors=no"]));
    Console.WriteLine($"  ajv-cli, {kind,-6} {result.Seconds,7:0.000} s  (structure alone)");
    return new Row("ajv " + kind, size, result.Seconds);
}

static (double Seconds, double CoreSeconds, long PeakBytes) Run(ProcessStartInfo start)
{
    start.RedirectStandardOutput = true;
    start.RedirectStandardError = true;
    var clock = Stopwatch.StartNew();
    using var process = Process.Start(start)!;
    process.OutputDataReceived += (_, _) => { };
    var errors = process.StandardError.ReadToEndAsync();
    process.BeginOutputReadLine();
    long peak = 0;
    double core = 0;
    while (!process.WaitForExit(5))
    {
        try
        {
            process.Refresh();
            peak = Math.Max(peak, process.PeakWorkingSet64);
            core = Math.Max(core, process.TotalProcessorTime.TotalSeconds);
        }
        catch (InvalidOperationException)
        {
            break;
        }
    }

    process.WaitForExit();
    double seconds = clock.Elapsed.TotalSeconds;
    if (process.ExitCode > 1) throw new InvalidOperationException($"{start.FileName} ended with {process.ExitCode}: {errors.Result}");
    return (seconds, core, peak);
}

static string RepositoryRoot()
{
    string? folder = AppContext.BaseDirectory;
    while (folder is not null && !File.Exists(Path.Combine(folder, "SpecLint.sln"))) folder = Path.GetDirectoryName(folder);
    return folder ?? throw new InvalidOperationException("The root of the project was not found.");
}
