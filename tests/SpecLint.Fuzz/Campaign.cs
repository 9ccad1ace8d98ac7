using System.Diagnostics;
using System.Security.Cryptography;

namespace SpecLint.Fuzz;

/// <summary>A run over one target: inputs that take a new way through the code are kept and changed further.</summary>
internal sealed class Campaign(Target target, string folder)
{
    private static readonly TimeSpan Slow = TimeSpan.FromSeconds(2);

    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private readonly List<byte[]> corpus = [];

    /// <summary>Number of inputs tried.</summary>
    public long Executions { get; private set; }

    /// <summary>Number of different crashes.</summary>
    public int Crashes => known.Count;

    /// <summary>Number of edges taken; 0 where the assemblies are not instrumented.</summary>
    public int Edges { get; private set; }

    /// <summary>Number of inputs that took a new way.</summary>
    public int Kept => corpus.Count;

    /// <summary>Tries inputs until the time is over.</summary>
    /// <param name="time">How long.</param>
    /// <param name="seed">Seed of the choices; the same gives the same inputs.</param>
    public void Run(TimeSpan time, int seed)
    {
        var coverage = new Coverage();
        var random = new Random(seed);
        byte[][] seeds = [.. target.Seeds()];
        var mutator = new Mutator(random, target.Longest, seeds);
        foreach (byte[] input in seeds)
        {
            if (Try(input, coverage) || corpus.Count == 0) corpus.Add(input);
        }

        // The last input stands in a file, for the case that the process ends with it.
        long start = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(start) < time)
        {
            for (int i = 0; i < 64; i++)
            {
                // Half of the time one of the newest, which lead further.
                int newest = Math.Max(0, corpus.Count - 50);
                byte[] input = corpus[random.Next(2) == 0 ? random.Next(newest, corpus.Count) : random.Next(corpus.Count)];
                byte[] made = mutator.Of(input, corpus[random.Next(corpus.Count)]);
                if (Try(made, coverage)) corpus.Add(made);
            }
        }

        Edges = coverage.Edges;
    }

    private bool Try(byte[] input, Coverage coverage)
    {
        Executions++;
        Watchdog.Begin(target.Name, input);
        coverage.Clear();
        long start = Stopwatch.GetTimestamp();
        try
        {
            target.Run(input);
            if (Stopwatch.GetElapsedTime(start) > Slow && ProcessorTime(input) is var took && took > Slow)
                Keep(input, "slow", $"{took.TotalSeconds:0.0} s of processor time");
        }
#pragma warning disable CA1031 // Whatever is thrown is what is looked for.
        catch (Exception crash)
#pragma warning restore CA1031
        {
            Keep(input, "crash", crash.ToString());
        }

        Watchdog.End();
        return coverage.TakeIn();
    }

    /// <summary>How long an input takes; on a busy machine the clock says little.</summary>
    private TimeSpan ProcessorTime(byte[] input)
    {
        var before = Environment.CpuUsage.TotalTime;
        target.Run(input);
        return Environment.CpuUsage.TotalTime - before;
    }

    private void Keep(byte[] input, string kind, string why)
    {
        // One of each place in the code is enough.
        string[] lines = why.Split('\n');
        string place = lines.FirstOrDefault(l => l.Contains(" at SpecLint.", StringComparison.Ordinal)
            && !l.Contains("SpecLint.Fuzz.", StringComparison.Ordinal))
            ?? lines[0][..Math.Min(lines[0].Length, 60)];
        if (!known.Add(kind + place)) return;
        string name = $"{target.Name}-{kind}-{Convert.ToHexStringLower(SHA256.HashData(input))[..12]}";
        Directory.CreateDirectory(folder);
        File.WriteAllBytes(Path.Combine(folder, name), input);
        Console.WriteLine($"  {name}: {string.Join(" | ", lines.Take(6).Select(l => l.Trim()))}");
    }
}
