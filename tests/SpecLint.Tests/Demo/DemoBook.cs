using System.Text.Json;

namespace SpecLint.Tests.Demo;

/// <summary>The demo book as test data: its files by name, and what is planted in them.</summary>
internal static class DemoBook
{
    /// <summary>The endings of the files of a book, with the schema that each points at.</summary>
    internal static readonly (string Ending, string Schema)[] Kinds =
    [
        (".drink.json", "./schemas/drink.schema.json"),
        (".prep.json", "./schemas/prep.schema.json"),
        (".ingredient.json", "./schemas/ingredient.schema.json"),
        (".menu.json", "./schemas/menu.schema.json"),
        (".stock.json", "./schemas/stock.schema.json"),
        (".prices.json", "./schemas/prices.schema.json"),
        ("bar.json", "./schemas/bar.schema.json"),
    ];

    private static readonly string Root = Path.Combine(AppContext.BaseDirectory, "Demo", "Book");

    /// <summary>A mistake that is planted in a file.</summary>
    /// <param name="File">File name.</param>
    /// <param name="Recipe">Id of the recipe or the menu.</param>
    /// <param name="Family">Family of the rule that must find it, 1 to 9.</param>
    /// <param name="Description">What is wrong.</param>
    internal sealed record Planted(string File, string Recipe, int Family, string Description);

    /// <summary>Names of all files of the book, in ordinal order.</summary>
    internal static IReadOnlyList<string> FileNames { get; } =
        [.. Directory.EnumerateFiles(Root, "*.json").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    /// <summary>What is planted.</summary>
    internal static IReadOnlyList<Planted> Expected { get; } = ReadExpected();

    /// <summary>The text of a file.</summary>
    internal static string Read(string fileName) => File.ReadAllText(Path.Combine(Root, fileName));

    /// <summary>The id of a file: its name without the ending.</summary>
    internal static string Id(string fileName) => fileName[..fileName.IndexOf('.', StringComparison.Ordinal)];

    private static List<Planted> ReadExpected()
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Demo", "expected-mistakes.json")));
        return
        [
            .. document.RootElement.GetProperty("expected").EnumerateArray().Select(one => new Planted(
                one.GetProperty("file").GetString()!,
                one.GetProperty("recipe").GetString()!,
                one.GetProperty("family").GetInt32(),
                one.GetProperty("description").GetString()!)),
        ];
    }
}
