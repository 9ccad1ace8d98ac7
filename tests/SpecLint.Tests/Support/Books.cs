using System.Text;
using SpecLint.Reading;

namespace SpecLint.Tests.Support;

/// <summary>Small books for tests.</summary>
internal static class Books
{
    /// <summary>The date of runs in tests.</summary>
    public static readonly CalendarDate On = CalendarDate.Of(2026, 11, 25)!.Value;

    /// <summary>The bar of examples that bring none of their own.</summary>
    public const string PlainBar = """{ "name": "The Saltmarsh Room", "jurisdictions": ["IE"] }""";

    /// <summary>A file of a path and a text.</summary>
    public static SourceFile File(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));

    /// <summary>Checks a book of paths and texts; a plain bar is added where there is none.</summary>
    public static CheckResult Check(params (string Path, string Text)[] files) => Checker.Check(Input(files));

    /// <summary>The input of a book of paths and texts.</summary>
    public static BookInput Input(params (string Path, string Text)[] files)
    {
        var sources = files.Select(f => File(f.Path, f.Text)).ToList();
        if (!files.Any(f => f.Path == "bar.json")) sources.Add(File("bar.json", PlainBar));
        return new BookInput(sources, On);
    }
}
