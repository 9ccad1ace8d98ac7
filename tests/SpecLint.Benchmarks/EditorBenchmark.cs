using System.Diagnostics;
using System.Globalization;

namespace SpecLint.Benchmarks;

/// <summary>
/// The editor server at work: milliseconds from a keystroke written to the diagnostics of its version read, bytes sent for it, and
/// memory after many. Each keystroke changes a finding, so that there is always something to be told.
/// </summary>
internal static class EditorBenchmark
{
    private const int Keystrokes = 200;

    /// <summary>What the first value that is typed at stands behind.</summary>
    private const string Amount = "\"amount\": \"", Item = "\"item\": \"";

    /// <summary>Measures the demo book and generated books.</summary>
    /// <param name="tool">The tool, native or portable.</param>
    /// <param name="demo">Folder of the demo book.</param>
    /// <param name="sizes">Recipes of the generated books.</param>
    /// <param name="edits">Edits of the run on memory; 0 for none.</param>
    public static int Run(string tool, string demo, IReadOnlyList<int> sizes, int edits)
    {
        Measure(tool, demo, "demo, amount in a drink", "low-tide.drink.json", Amount, '0');
        Measure(tool, demo, "demo, item of a drink", "low-tide.drink.json", Item, 'x');
        Measure(tool, demo, "demo, amount in a juice", "sour-cucumber.prep.json", Amount, '0');
        foreach (int size in sizes)
        {
            string book = Directory.CreateTempSubdirectory("speclint-editor-").FullName;
            try
            {
                new BookGenerator(size, 20261125).WriteTo(book);
                string syrup = WriteShared(book, size / 5);
                Measure(tool, book, $"{size:N0}, amount in a drink", FirstOf(book, "*.drink.json"), Amount, '0');
                Measure(tool, book, $"{size:N0}, item of a drink", FirstOf(book, "*.drink.json"), Item, 'x');
                Measure(tool, book, $"{size:N0}, a syrup of {size / 5:N0} drinks", syrup, Amount, '0');
                if (edits > 0) Endure(tool, book, FirstOf(book, "*.drink.json"), edits);
            }
            finally
            {
                Directory.Delete(book, recursive: true);
            }
        }

        return 0;
    }

    /// <summary>A syrup, and drinks that use it.</summary>
    private static string WriteShared(string book, int drinks)
    {
        Directory.CreateDirectory(Path.Combine(book, "shared"));
        const string Syrup = "shared/shared-syrup.prep.json";
        File.WriteAllText(Path.Combine(book, Syrup), """
            {
              "name": "Shared syrup",
              "family": "syrup",
              "ingredients": [
                { "item": "white-sugar", "amount": "500 g" },
                { "item": "water", "amount": "500 g" }
              ],
              "method": [ { "do": "stir" } ],
              "yield": "1000 g",
              "keep": { "at": "4 °C", "in": "bottle", "for": "5 d" },
              "declares": { "allergens": [] }
            }
            """);
        for (int i = 0; i < drinks; i++)
        {
            File.WriteAllText(Path.Combine(book, $"shared/shared-{i}.drink.json"), $$"""
                {
                  "name": "Shared {{i}}",
                  "style": "shaken-sour",
                  "ingredients": [
                    { "item": "gin", "amount": "{{40 + (i % 20)}} ml" },
                    { "item": "lime-juice", "amount": "25 ml" },
                    { "item": "shared-syrup", "amount": "20 ml" }
                  ],
                  "method": [ { "do": "shake", "ice": "cubed", "for": "12 s" }, { "do": "strain" } ],
                  "glass": "coupe",
                  "declares": { "allergens": [], "abv": "18 % v/v" }
                }
                """);
        }

        return Syrup;
    }

    private static string FirstOf(string book, string pattern) =>
        Path.GetRelativePath(
            book,
            Directory.EnumerateFiles(book, pattern, SearchOption.AllDirectories)
                .Where(f => !f.Contains("shared", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .First())
            .Replace('\\', '/');

    private static void Measure(string tool, string book, string name, string file, string behind, char sign)
    {
        using var client = new EditorClient(Start(tool), book, "{}");
        string text = File.ReadAllText(Path.Combine(book, file));
        var (line, column) = PlaceIn(text, behind);
        client.Open(file, text);
        client.Settle();
        client.Forget();
        var times = new List<double>();

        // A sign that is typed, and taken back.
        for (int i = 0; i < Keystrokes; i++)
        {
            times.Add(Keystroke(client, file, i, line, column, sign));

            // Between two keys of somebody who types fast.
            Thread.Sleep(80);
        }

        client.Settle();
        Print(name, times, client.Received.Bytes / Keystrokes);
    }

    private static void Endure(string tool, string book, string file, int edits)
    {
        using var client = new EditorClient(Start(tool), book, "{}");
        string text = File.ReadAllText(Path.Combine(book, file));
        var (line, column) = PlaceIn(text, Amount);
        client.Open(file, text);
        client.Settle();
        for (int i = 0; i < edits; i++)
        {
            Keystroke(client, file, i, line, column, '0');
            if (i % (edits / 10) == (edits / 10) - 1)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  after {i + 1,6:N0} edits {client.Memory / 1e6,6:0} MB"));
        }
    }

    private static double Keystroke(EditorClient client, string file, int number, int line, int column, char sign) =>
        number % 2 == 0 ? client.Type(file, number + 2, line, column, column, sign.ToString()) : client.Type(file, number + 2, line, column, column + 1, "");

    /// <summary>The place behind the first letters or digits of the first value of a property.</summary>
    private static (int Line, int Column) PlaceIn(string text, string behind)
    {
        string[] lines = text.Split('\n');
        int line = Array.FindIndex(lines, l => l.Contains(behind, StringComparison.Ordinal));
        int column = lines[line].IndexOf(behind, StringComparison.Ordinal) + behind.Length;
        while (lines[line][column] is not (' ' or '"')) column++;
        return (line, column);
    }

    private static ProcessStartInfo Start(string tool) =>
        tool.EndsWith(".dll", StringComparison.Ordinal) ? new ProcessStartInfo("dotnet", [tool, "editor"]) : new ProcessStartInfo(tool, ["editor"]);

    private static void Print(string name, List<double> times, long bytes)
    {
        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-36} median {times[times.Count / 2],7:0.0} ms  p95 {times[times.Count * 95 / 100],7:0.0} ms  most "
                + $"{times[^1],7:0.0} ms  {bytes,9:N0} bytes a keystroke, the rest of the book counted"));
    }
}
