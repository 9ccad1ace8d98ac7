using SpecLint;
using SpecLint.Binding;
using SpecLint.Reading;
using SpecLint.Vocabulary;

namespace SpecLint.Tool.Tests.Readme;

/// <summary>The program of the README: the lines between the marks are its lines.</summary>
internal static class LibraryProgram
{
    public static int Run(string[] args)
    {
        // begin
        string root = args[0];
        var listing = Directory.EnumerateFiles(root, "*.json", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(root, f));
        var files = BookFiles.Read(listing, path => File.ReadAllBytes(Path.Combine(root, path)));
        var result = Checker.Check(new BookInput(files, CalendarDate.Parse(args[1])!.Value));
        foreach (var finding in result.Findings)
        {
            var at = finding.Place.Start;
            Console.WriteLine($"{finding.Place.File.Path}:{at.Line}:{at.Column} {finding.Rule.Id} {finding.Message}");
        }

        return result.Highest == Level.Error ? 1 : 0;

        // end
    }
}
