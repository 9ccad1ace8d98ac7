using System.Diagnostics;
using System.Text;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Changes;

/// <summary>The tool is killed at random moments while it writes: every file is the old one or the new one, byte for byte.</summary>
public class KillTests
{
    private const int Workers = 2;
    private const int Files = 40;
    private const int Seed = 20261125;

    private const string Old = """
        { "name": "Groundswell", "ingredients": [ { "item": "gin", "amount": "45,0 ml" }, { "item": "lime-juice", "amount": "22,5 ml" } ],
          "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ], "glass": "coupe", "declares": { "allergens": [] } }
        """;

    [Fact]
    public void A_killed_run_leaves_every_file_old_or_new() => KillRuns(8);

    [LongFact]
    public void Hundreds_of_killed_runs_leave_every_file_old_or_new()
    {
        const int Runs = 400;
        var (cutShort, midway) = KillRuns(Runs);
        Assert.True(cutShort > Runs / 4, $"only {cutShort} of {Runs} runs were killed before they ended");
        Assert.True(midway > 0, "no run was killed between two files");
    }

    private static (int CutShort, int Midway) KillRuns(int runs)
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        for (int i = 0; i < Files; i++) book.Write($"d{i}.drink.json", Old);
        var whole = Stopwatch.StartNew();
        using (var run = Start(book.Path)) run.WaitForExit();
        int length = (int)whole.ElapsedMilliseconds;
        string now = File.ReadAllText(book["d0.drink.json"]);
        Assert.Contains("45.0 ml", now, StringComparison.Ordinal);
        Assert.DoesNotContain("45,0 ml", now, StringComparison.Ordinal);

        // Two at a time, each over a book of its own.
        int cutShort = 0, midway = 0;
        Parallel.For(0, Workers, new ParallelOptions { MaxDegreeOfParallelism = Workers }, worker =>
        {
            var (cut, between) = KillMany(runs / Workers, new Random(Seed + worker), length, now);
            Interlocked.Add(ref cutShort, cut);
            Interlocked.Add(ref midway, between);
        });
        return (cutShort, midway);
    }

    private static (int CutShort, int Midway) KillMany(int runs, Random random, int length, string now)
    {
        using var book = new TestFolder();
        book.Write("bar.json", SmallBook.Bar);
        int cutShort = 0, midway = 0;
        for (int i = 0; i < runs; i++)
        {
            for (int f = 0; f < Files; f++) File.WriteAllText(book[$"d{f}.drink.json"], Old);
            using var run = Start(book.Path);

            // Some runs are killed at any moment, most soon after the first file was replaced.
            if (i % 4 == 0) Thread.Sleep(random.Next(length));
            else WaitForTheFirst(book, run, random);
            if (!run.HasExited) cutShort++;
            run.Kill();
            run.WaitForExit();

            int old = 0, made = 0;
            for (int f = 0; f < Files; f++)
            {
                string text = File.ReadAllText(book[$"d{f}.drink.json"]);
                if (text == Old) old++;
                else if (text == now) made++;
                else Assert.Fail($"run {i}: d{f} is neither the old file nor the new one, but {text.Length} characters of something else");
            }

            Assert.Equal(Files + 1, Directory.GetFiles(book.Path, "*.json").Length);
            if (old > 0 && made > 0) midway++;

            // What it left behind goes with the next run that writes there.
            Assert.Equal(
                AtomicFiles.Outcome.Written,
                new AtomicFiles().Replace(book["d0.drink.json"], File.ReadAllBytes(book["d0.drink.json"]), Encoding.UTF8.GetBytes(Old)));
            Assert.Empty(Directory.GetFiles(book.Path, ".*.tmp"));
        }

        return (cutShort, midway);
    }

    private static void WaitForTheFirst(TestFolder book, Process run, Random random)
    {
        var info = new FileInfo(book["d0.drink.json"]);
        var first = info.LastWriteTimeUtc;
        while (!run.HasExited)
        {
            info.Refresh();
            if (info.LastWriteTimeUtc != first || Directory.EnumerateFiles(book.Path, ".*.tmp").Any()) break;
            Thread.Sleep(1);
        }

        Thread.Sleep(random.Next(4));
    }

    private static Process Start(string folder)
    {
        string tool = Path.Combine(AppContext.BaseDirectory, "SpecLint.Tool.dll");
        var start = new ProcessStartInfo(
            "dotnet", [tool, "correct", "--apply", "SL2001", "--admit-new", "--threads", "1", "--output", "/dev/null", "--quiet"])
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
        };
        return Process.Start(start)!;
    }
}
